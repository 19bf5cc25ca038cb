"""What she names when the work was pulled out to a part: that part's first row, of each sock that has begun it."""

from plans.conversation import Reply, RippedBack, Standing
from plans.engine.courses import HEEL_STAGES, Course
from plans.engine.naming import round_number, stage_name
from plans.engine.places import in_hand, position
from plans.pattern import Row, Sock, StageName

_CUP = frozenset({StageName.CAST_ON, StageName.TOE})
"""With a toe of short rows each sock's cast-on and toe come before the other's."""


def pulled_back_to(the_course: Course, standing: Standing, wish: RippedBack, wanted: str) -> tuple[int, ...] | Reply:
    """The rows named, of one sock or of both, in the order of the needle; or why there is none."""
    names = HEEL_STAGES if wanted == StageName.HEEL else frozenset({wanted})
    socks = _socks(the_course, standing, wish, names)
    parts = [part for sock in socks if (part := _part(the_course, standing, sock, names))]
    if not parts:
        return _none(the_course, socks, names)
    number = 1 if wish.round is None else wish.round
    found = [next((row for row in part if round_number(the_course, row.index)[0] == number), None) for part in parts]
    rows = tuple(sorted(row.index for row in found if row is not None))
    stage = stage_name(parts[0][0].stage)
    if not rows:
        of = max(round_number(the_course, row.index)[1] for row in parts[0])
        return Reply.of("no-such-round", stage=stage, round=number, of=of)
    ahead = [row for row in rows if the_course.starts[row] > _position(the_course, standing, _sock_of(the_course, row))]
    return Reply.of("not-knitted-yet", stage=stage, round=number) if ahead else rows


def named(the_course: Course, row_index: int) -> tuple[int, int]:
    """A row's number and of how many; the front before a heel's back counts as one of the heel's rows."""
    (number, of), row = round_number(the_course, row_index), the_course.plan.rows[row_index]
    if row.stage not in HEEL_STAGES or the_course.is_heel(row_index):
        return number, of
    return number, max(one.round for one in the_course.plan.rows if (one.stage, one.sock) == (row.stage, row.sock))


def _sock_of(the_course: Course, row: int) -> Sock:
    return the_course.plan.rows[row].sock


def _socks(the_course: Course, standing: Standing, wish: RippedBack, names: frozenset[str]) -> tuple[Sock, ...]:
    """The one she names, or has in hand where a part is worked on one sock alone; else both."""
    if wish.sock is not None and len(the_course.plan.socks) == 2:
        return (wish.sock,)
    row = the_course.row(in_hand(the_course, standing))
    in_heel = the_course.is_heel(row.index) and names & HEEL_STAGES
    in_toe = the_course.cup > 0 and row.stage in _CUP and names & _CUP
    alone = the_course.one_sock or len(the_course.plan.socks) == 1 or in_heel or in_toe
    return (row.sock,) if alone else (1, 2)


def _part(the_course: Course, standing: Standing, sock: Sock, names: frozenset[str]) -> list[Row]:
    """The rows of a sock's part begun last, up to where its own name changes; in a heel only those of its back."""
    at = _position(the_course, standing, sock)
    here = the_course.row(at)
    own = [row for row in the_course.plan.rows if row.sock == sock]
    if names & HEEL_STAGES and the_course.is_heel(here.index):
        own = [row for row in own if the_course.is_heel(row.index)]
    begun = [n for n, row in enumerate(own) if row.stage in names and the_course.starts[row.index] <= at]
    if not begun:
        return []
    first = begun[-1]
    while first and own[first - 1].stage in names:
        first -= 1
    end = first
    while end < len(own) and own[end].stage is own[first].stage:
        end += 1
    return own[first:end]


def _none(the_course: Course, socks: tuple[Sock, ...], names: frozenset[str]) -> Reply:
    """It is still to come, or no part of this piece."""
    ahead = next((row for row in the_course.plan.rows if row.sock in socks and row.stage in names), None)
    if ahead is None:
        return Reply.of("no-such-stage")
    return Reply.of("not-knitted-yet", stage=stage_name(ahead.stage), round=1)


def _position(the_course: Course, standing: Standing, sock: Sock) -> int:
    return position(the_course, standing.first if sock == 1 else standing.second)
