"""One sock ahead of the other: which, where it is, and the turn past its stitches when it rests."""

from plans.conversation import Reply, Standing
from plans.engine.courses import Course
from plans.engine.naming import round_number, sock_name, stage_name
from plans.engine.places import Span, in_hand, position
from plans.pattern import Act, Sock

TURNS = frozenset({Act.TURN, Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE})


def sock_ahead(the_course: Course, standing: Standing) -> Sock | None:
    """The sock that has more done than the order of the needle has brought; None where they go together."""
    first, second = the_course.own[in_hand(the_course, standing)]
    if position(the_course, standing.first) > first:
        return 1
    return 2 if position(the_course, standing.second) > second else None


def apart(the_course: Course, standing: Standing) -> tuple[Reply, ...]:
    """Which sock is ahead, and where its own next stitches are."""
    sock = sock_ahead(the_course, standing)
    if sock is None:
        return ()
    name = sock_name(the_course.plan, sock)
    at = position(the_course, standing.first if sock == 1 else standing.second)
    if at >= the_course.end:
        return (Reply.of("sock-finished", sock=name),)
    row = the_course.row(at)
    number, of = round_number(the_course, row.index)
    return (Reply.of("sock-ahead", sock=name, stage=stage_name(row.stage), round=number, of=of),)


def turn_passed(the_course: Course, standing: Standing, span: Span) -> tuple[Act, ...]:
    """The turn due after a span because the needle goes on to its other side past stitches that rest.

    It stands in the plan after stitches of the sock that is ahead, and is called though they are done.
    """
    if not span.positions:
        return ()
    last = span.positions[-1]
    own = the_course.own[span.end]
    places = (position(the_course, standing.first), position(the_course, standing.second))
    following = min(max(own[0], places[0]), max(own[1], places[1]))
    if following >= the_course.end or following == last + 1:
        return ()
    row = the_course.row(last)
    if row.turn_after or row.half is the_course.row(following).half:
        return ()
    acts = (act for at in range(last + 1, following) for act in the_course.steps[at].acts)
    return tuple(act for act in acts if act in TURNS)[:1]
