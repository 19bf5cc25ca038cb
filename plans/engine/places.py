"""Where the knitter is: a place for each sock, the step in hand at any grain, and what is still to go."""

from dataclasses import dataclass
from typing import Literal

from plans.conversation import Grain, Place, PlanId, Standing
from plans.engine.courses import Course, course, slot
from plans.engine.likeness import is_knitted_throughout, is_plain, is_read_out, is_told_by_number
from plans.engine.steps import Step, steps
from plans.pattern import Act, Half, Plan, StageName

Fixed = Literal["group", "half", "side", "round"]
"""A grain without "follow"."""

GRAINS: tuple[Fixed, ...] = ("group", "half", "side", "round")
"""From the finest to the coarsest."""

__all__ = [
    "GRAINS", "Fixed", "Span", "Step", "ToGo", "after", "effective", "in_hand", "is_finished", "is_plain",
    "loops_on", "loops_to_go", "place", "position", "span", "standing_at", "steps", "to_go", "worked_loops",
]  # fmt: skip

@dataclass(frozen=True, slots=True)
class Span:
    """The step in hand: positions from `start` to before `end`; `done` lie behind a sock that is ahead."""

    start: int
    end: int
    done: frozenset[int] = frozenset()

    @property
    def positions(self) -> tuple[int, ...]:
        """What is still to be worked, in order."""
        return tuple(at for at in range(self.start, self.end) if at not in self.done)


def position(the_course: Course, place: Place) -> int:
    """A place as a number over all steps; places past a row's end count as its end."""
    if place.row_index >= len(the_course.plan.rows):
        return the_course.end
    start, following = the_course.starts[place.row_index : place.row_index + 2]
    return min(start + place.step_index, following)


def place(the_course: Course, at: int) -> Place:
    """The other way round."""
    if at >= the_course.end:
        return Place(row_index=len(the_course.plan.rows))
    row_index = the_course.row_of[at]
    return Place(row_index=row_index, step_index=at - the_course.starts[row_index])


def standing_at(the_course: Course, plan_id: PlanId, at: int) -> Standing:
    """Both socks at their next own step from a position on."""
    first, second = the_course.own[at]
    return Standing(plan=plan_id, first=place(the_course, first), second=place(the_course, second))


def in_hand(the_course: Course, standing: Standing) -> int:
    """The position where the step in hand begins."""
    return min(position(the_course, standing.first), position(the_course, standing.second))


def is_finished(plan: Plan, standing: Standing) -> bool:
    """Whether nothing is to go."""
    the_course = course(plan)
    return in_hand(the_course, standing) >= the_course.end


def effective(the_course: Course, at: int, grain: Grain) -> Fixed:
    """The grain at a position: "follow" resolved, and never coarser than a row in the heel."""
    row_index = the_course.row_of[min(at, the_course.end - 1)]
    if the_course.is_row(row_index):
        return "group" if grain == "group" else "half"
    if grain != "follow":
        return grain
    return _following(the_course, row_index)


def _following(the_course: Course, row_index: int) -> Fixed:
    row = the_course.plan.rows[row_index]
    if row.stage in {StageName.CAST_ON, StageName.BIND_OFF}:
        return "half"
    if is_told_by_number(the_course, row_index) or is_knitted_throughout(the_course, row_index):
        return "round"
    return "half" if is_read_out(the_course, row_index) else "side"


def span(plan: Plan, standing: Standing, grain: Grain) -> Span:
    """The step in hand: to the end of the group, of the row, of the side over both socks, or of the round.

    A row that lies on two double-pointed needles goes by needles; there one sock's side is a half.

    Acts that stand alone are spans of their own, and a span stops before one; a round that one interrupts
    goes by sides. Empty when finished.
    """
    the_course = course(plan)
    places = (position(the_course, standing.first), position(the_course, standing.second))
    start = min(places)
    end = _end(the_course, start, effective(the_course, start, grain))
    return Span(
        start, end, frozenset(at for at in range(start, end) if at < places[the_course.row(at).sock - 1])
    )


def _end(the_course: Course, start: int, grain: Fixed) -> int:
    if start >= the_course.end:
        return start
    if grain == "group" or the_course.steps[start].alone:
        return start + 1
    row_index = the_course.row_of[start]
    stop = the_course.alone[start + 1]
    if grain == "half":
        return min(_needle_end(the_course, start), the_course.starts[row_index + 1], stop)
    whole = the_course.starts[the_course.rounds[the_course.round_of[row_index]].end]
    if grain == "round" and stop >= whole:
        return whole
    return min(the_course.starts[the_course.sides[the_course.side_of[row_index]].end], stop)


def _needle_end(the_course: Course, start: int) -> int:
    """Where the next double-pointed needle is taken up; the end where there is none."""
    row_end = the_course.starts[the_course.row_of[start] + 1]
    ahead = range(start + 1, row_end)
    return next((at for at in ahead if Act.NEXT_NEEDLE in the_course.steps[at].before), row_end)


def after(plan: Plan, standing: Standing, grain: Grain) -> Standing:
    """Where both socks are once the step in hand is done; a sock that was ahead stays where it is."""
    the_course = course(plan)
    own = the_course.own[span(plan, standing, grain).end]
    return Standing(
        plan=standing.plan,
        first=place(the_course, max(own[0], position(the_course, standing.first))),
        second=place(the_course, max(own[1], position(the_course, standing.second))),
    )


def loops_on(plan: Plan, standing: Standing, sock: int, half: Half) -> int:
    """Loops on one half of one sock, at that sock's own place."""
    the_course = course(plan)
    own = standing.first if sock == 1 else standing.second
    return the_course.counts[position(the_course, own)][slot(sock, half)]


def worked_loops(plan: Plan, standing: Standing, grain: Grain) -> int:
    """Stitches to be worked in the step in hand: what the least time for it is reckoned from."""
    the_course = course(plan)
    return sum(the_course.steps[at].loops_worked for at in span(plan, standing, grain).positions)


def loops_to_go(plan: Plan, standing: Standing) -> int:
    """Loops still to be taken in the row in hand."""
    the_course = course(plan)
    start = in_hand(the_course, standing)
    if start >= the_course.end:
        return 0
    end = the_course.starts[the_course.row_of[start] + 1]
    return sum(step.ahead for step in the_course.steps[start:end])


@dataclass(frozen=True, slots=True)
class ToGo:
    """What is still to be knitted, the one in hand counted.

    Attributes:
        in_stage: rounds in the stage in hand; rows of one sock in a heel.
        rounds: rounds of the pair outside what is worked back and forth, cast-on and bind-off counted.
        heel_rows: rows of both heels.
        toe_rows: rows of both toes, where these are of short rows.
    """

    in_stage: int
    rounds: int
    heel_rows: int
    toe_rows: int


def to_go(plan: Plan, standing: Standing) -> ToGo:
    """Rounds and rows to go from the step in hand."""
    the_course = course(plan)
    start = in_hand(the_course, standing)
    if start >= the_course.end:
        return ToGo(0, 0, 0, 0)
    row_index = the_course.row_of[start]
    this = the_course.round_of[row_index]
    stage = the_course.stages[the_course.stage_of[row_index]]
    ahead = [run.first for run in the_course.rounds[this:]]
    heels, toes = (sum(map(kind, ahead)) for kind in (the_course.is_heel, the_course.is_cup))
    last = the_course.round_of[stage.end - 1]
    return ToGo(in_stage=last - this + 1, rounds=len(ahead) - heels - toes, heel_rows=heels, toe_rows=toes)
