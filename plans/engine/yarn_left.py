"""The ball on the scales, and a new one joined: how far it reaches, and where to join it."""

from collections.abc import Iterator
from fractions import Fraction
from math import floor
from typing import NamedTuple

from plans.conversation import BallBegun, Decision, NewBall, Progress, Reply, Value, Weighed, YarnLeft
from plans.engine.courses import Course, course
from plans.engine.naming import half_of, round_number, sock_name, stage_name
from plans.engine.places import in_hand
from plans.engine.wished import wishes_of
from plans.pattern import Half, Plan, Row, Sock, StageName
from plans.wishes import Swatch, Wishes
from plans.yarn.ball import Ball, ball_of
from plans.yarn.enough import leg_allowed
from plans.yarn.use import Use, bind_off_rows, use_of

_TRUSTED = Fraction(5)
"""Grams: a ball that lost as much on kitchen scales, good to a gram, tells how much she really takes."""
_LIKELY = (Fraction(7, 10), Fraction(14, 10))
"""What she takes over what geometry says; beyond this it was another ball, or the band is wrong (our own bound)."""
_JOINING_TAIL_CM = 15
"""Left at a join, to be woven in: 15 to 20 cm (common practice)."""
_UNDER_THE_FOOT = frozenset({StageName.TOE, StageName.FOOT, StageName.GUSSET})
_ABOVE_THE_HEEL = frozenset({StageName.LEG, StageName.CUFF})


class _Served(NamedTuple):
    """A ball on the needles: the socks it serves, and the yarn they take."""

    the_course: Course
    socks: tuple[Sock, ...]
    ball: Ball
    use: Use
    starts: dict[Sock, int]

    def rows(self, first: int, end: int) -> list[Row]:
        """Rows of its socks between two."""
        return [row for row in self.the_course.plan.rows[first:end] if row.sock in self.socks]


def yarn_left(plan: Plan, progress: Progress, command: YarnLeft) -> Decision:
    """How much further the ball reaches, with the bind-off kept back."""
    the_course = course(plan)
    at = in_hand(the_course, progress.now)
    if at >= the_course.end:
        return Decision(events=(), reply=Reply.of("finished-already"))
    served = _served(the_course, progress, command.sock)
    if served.ball.is_known and command.grams > served.ball.grams * Fraction(11, 10):
        reply = Reply.of("yarn-left-too-much", grams=command.grams, ball=round(served.ball.grams))
        return Decision(events=(), reply=reply)
    event = Weighed(grams=command.grams, socks=served.socks, at=progress.now)
    return Decision(events=(event,), reply=_reach(served, the_course.row(at), progress, command.grams))


def _served(the_course: Course, progress: Progress, wished: Sock | None) -> _Served:
    plan = the_course.plan
    wishes = wishes_of(plan)
    gauge = plan.gauge
    asked = wishes or Wishes(swatch=Swatch(stitches=gauge.stitches_per_10cm, rounds=gauge.rounds_per_10cm))
    ball = ball_of(asked, gauge.stitches_per_10cm)
    in_work = the_course.row(in_hand(the_course, progress.now)).sock
    both: tuple[Sock, ...] = (1, 2)
    socks = both if ball.skeins == 1 and wished is None else (wished or in_work,)
    starts: dict[Sock, int] = dict.fromkeys(socks, 0)
    for begun in progress.balls:
        if begun.sock in starts:
            place = begun.at.first if begun.sock == 1 else begun.at.second
            starts[begun.sock] = place.row_index
    return _Served(the_course, socks, ball, use_of(plan, washed=asked.swatch.washed), starts)


def _reach(served: _Served, now: Row, progress: Progress, grams: int) -> Reply:
    plan, use = served.the_course.plan, served.use
    here: dict[Sock, int] = {
        sock: (progress.now.first if sock == 1 else progress.now.second).row_index for sock in served.socks
    }
    taken = sum((use.of(_own(served, sock, served.starts[sock], here[sock])) for sock in served.socks), Fraction(0))
    lost, reckoned = served.ball.grams - grams, taken / served.ball.mm_per_gram
    ratio = _ratio(served.ball, lost, reckoned)
    mm_per_gram = served.ball.mm_per_gram / (ratio or 1)
    there = grams * mm_per_gram
    values: dict[str, Value] = {
        "grams": grams, "metres": floor(there / 1000),
        "whose": _whose(plan, served.socks),
        "doubts": tuple(_doubts(served.ball, lost, reckoned, odd=ratio is None)),
    }  # fmt: skip
    left = there - sum((use.of(bind_off_rows(plan, sock)) for sock in served.socks), Fraction(0))
    for row in served.rows(min(here.values()), len(plan.rows)):
        if row.index < here[row.sock] or row.stage is StageName.BIND_OFF:
            continue
        left -= use.of((row.index,))
        if left < 0:
            return _short(served, row, here, there, values)
    if left < 0:
        return _short(served, now, here, there, values)
    return Reply.of("yarn-left-enough", spare=floor(left / mm_per_gram), **values)


def _whose(plan: Plan, socks: tuple[Sock, ...]) -> Reply:
    names = [sock_name(plan, sock) for sock in socks]
    return names.pop() if len(names) == 1 else Reply.of("sock-both")


def _own(served: _Served, sock: Sock, first: int, end: int) -> list[int]:
    return [row.index for row in served.the_course.plan.rows[first:end] if row.sock == sock]


def _ratio(ball: Ball, lost: Fraction, reckoned: Fraction) -> Fraction | None:
    """How much more yarn she takes than geometry says, by what the ball lost.

    1 where that cannot be told yet, None where it cannot be so: it was another ball, or something else was knitted.
    """
    if not ball.is_known or max(lost, reckoned) < _TRUSTED:
        return Fraction(1)
    ratio = lost / reckoned if reckoned else Fraction(0)
    return ratio if _LIKELY[0] <= ratio <= _LIKELY[1] else None


def _doubts(ball: Ball, lost: Fraction, reckoned: Fraction, *, odd: bool) -> Iterator[Reply]:
    if not ball.is_known:
        yield Reply.of("yarn-taken-as", metres=round(ball.mm_per_gram / 10))
    if odd:
        yield Reply.of("yarn-lost-otherwise", lost=round(lost), reckoned=round(reckoned))


def _short(
    served: _Served, row: Row, here: dict[Sock, int], there: Fraction, values: dict[str, Value]
) -> Reply:
    """Where it gives out, and the leg it allows."""
    plan, sock = served.the_course.plan, served.socks[0]
    number, of = round_number(served.the_course, row.index)
    where: dict[str, Value] = {"stage": stage_name(row.stage), "round": number, "of": of}
    behind = served.use.of(_own(served, sock, 0, here[sock]))
    leg = leg_allowed(plan, served.use, behind + there / len(served.socks))
    knitted = sum(1 for run in served.the_course.rounds
                  if run.end <= here[sock] and plan.rows[run.first].stage in _ABOVE_THE_HEEL)  # fmt: skip
    height = knitted * 1000 / plan.gauge.rounds_per_10cm
    if leg is None or leg.tenths_mm < height:
        return Reply.of("yarn-left-short-foot", **where, **values)
    return Reply.of("yarn-left-short", leg=leg, **where, **values)


def new_ball(plan: Plan, progress: Progress, command: NewBall) -> Decision:
    """A new ball is begun: name the next good place to join it, the tail to leave, what to keep for the bind-offs."""
    the_course = course(plan)
    at = in_hand(the_course, progress.now)
    if at >= the_course.end:
        return Decision(events=(), reply=Reply.of("finished-already"))
    sock = command.sock or the_course.row(at).sock
    events = (BallBegun(sock=sock, at=progress.now),)
    values: dict[str, Value] = {"sock": sock_name(plan, sock), "tail": _JOINING_TAIL_CM, "metres": _reserve_m(plan)}
    own = progress.now.first if sock == 1 else progress.now.second
    first = own.row_index if own.step_index == 0 else own.row_index + 1
    good = next((row for row in plan.rows[first:] if row.sock == sock and _is_good(row)), None)
    if good is None:
        return Decision(events=events, reply=Reply.of("new-ball-anywhere", **values))
    number, of = round_number(the_course, good.index)
    where = half_of(plan, sock, good.half)
    values |= {"where": where, "stage": stage_name(good.stage), "round": number, "of": of}
    key = "new-ball-here" if good.index == own.row_index else "new-ball"
    return Decision(events=events, reply=Reply.of(key, **values))


def _is_good(row: Row) -> bool:
    """At the side line where a half begins: up the leg the back's, so that the ends lie inside the back of the leg.

    Along the foot the front's, so that no end lies under the foot; never within a heel (common practice).
    """
    if row.stage in _UNDER_THE_FOOT:
        return row.half is Half.FRONT
    return row.stage in _ABOVE_THE_HEEL and row.half is Half.BACK


def _reserve_m(plan: Plan) -> int:
    """Metres to be kept for both bind-offs, rounded up."""
    wishes = wishes_of(plan)
    use = use_of(plan, washed=wishes is None or wishes.swatch.washed)
    return -int(-use.of(bind_off_rows(plan)) // 1000)
