"""What a check hands back, and what it is given."""

from typing import NamedTuple

from plans.conversation import Problem, Value
from plans.pattern import Half, Order, Plan, Row, Stage, StageName
from plans.proof.knitting import Knitted
from plans.rows.bind_offs import bind_off
from plans.rows.cuffs import cuff
from plans.rows.heels import heel
from plans.rows.increases import increase
from plans.rows.legs import leg
from plans.rows.parts import (
    BindOffPart,
    CuffPart,
    HeelPart,
    IncreasePart,
    LegPart,
    Numbers,
    SolePart,
    ToePart,
)
from plans.rows.soles import sole
from plans.rows.toes import toe


class Finding(NamedTuple):
    """Something that cannot be, at a row or, with None, in what the plan says of itself."""

    row: int | None
    key: str
    values: dict[str, Value]

    def problem(self) -> Problem:
        """As it is handed out; rows by their index, as they stand in the plan's JSON."""
        return Problem.of(self.key, "" if self.row is None else f"row {self.row}", **self.values)


def found(row: int | None, key: str, **values: Value) -> Finding:
    """Short form."""
    return Finding(row, key, values)


class Told(NamedTuple):
    """A plan and what came of each row, up to the first that cannot be knitted."""

    plan: Plan
    knitted: tuple[Knitted, ...]

    def after(self, row: Row) -> int | None:
        """Loops on the row's half after it; None where no row of its index was knitted."""
        return self.knitted[row.index].after if row.index < len(self.knitted) else None


class Parts(NamedTuple):
    """What a plan says it is made of."""

    toe: ToePart
    increase: IncreasePart
    sole: SolePart
    heel: HeelPart
    leg: LegPart
    cuff: CuffPart
    bind_off: BindOffPart


def parts_of(plan: Plan) -> Parts:
    """The parts of a sock that was worked out.

    Raises:
        ValueError: it was written by hand, and names none.
    """
    made_of = plan.construction
    if made_of.toe is None or made_of.heel is None or made_of.bind_off is None:
        raise ValueError("a piece written by hand has no parts")
    return Parts(
        toe(made_of.toe),
        increase(made_of.increase),
        sole(made_of.sole),
        heel(made_of.heel),
        leg(made_of.leg),
        cuff(made_of.cuff),
        bind_off(made_of.bind_off),
    )


class Case(NamedTuple):
    """A plan under proof.

    Attributes:
        knitted: what came of each row, up to the first that cannot be knitted.
        owners: the stage of each row by the plan's list of stages; None where no stage claims it.
        parts: what it is made of.
        numbers: what its head says.
        due: the number due to each row: of its round, or in a heel of the row itself; 0 where no stage claims it.
        of: the number of the last round of each row's stage.
    """

    plan: Plan
    knitted: tuple[Knitted, ...]
    owners: tuple[Stage | None, ...]
    parts: Parts
    numbers: Numbers
    due: tuple[int, ...]
    of: tuple[int, ...]

    @property
    def complete(self) -> bool:
        """Whether every row could be knitted."""
        return len(self.knitted) == len(self.plan.rows) and not (self.knitted and self.knitted[-1].stopped)

    @property
    def alone(self) -> bool:
        """Whether the second sock is begun when the first is done."""
        return self.plan.construction.order is Order.ONE_AFTER_THE_OTHER

    @property
    def pointed(self) -> bool:
        """Whether it is knitted on double-pointed needles."""
        return self.plan.construction.needles.pointed

    @property
    def passes(self) -> int:
        """Rows of a round: two halves of the socks on the needle."""
        return 2 if self.alone else 4

    def rows(self, stage: Stage) -> tuple[Row, ...]:
        """The rows of a stage."""
        return self.plan.rows[stage.first_row : stage.last_row + 1]

    def named(self, name: StageName) -> tuple[Stage, ...]:
        """The stages of that name."""
        return tuple(stage for stage in self.plan.stages if stage.name is name)

    def after(self, row: Row) -> int | None:
        """Loops on the row's half after it; None where no row of its index was knitted."""
        return self.knitted[row.index].after if row.index < len(self.knitted) else None

    def turns_back(self, place: int) -> bool:
        """Whether a row stands in a heel or a toe worked back and forth, as the plan's stages have it."""
        stage = self.owners[place]
        heel_stage = stage is not None and stage.name in self.parts.heel.stages
        heel = heel_stage and not self.parts.heel.made_last and self.plan.rows[place].half is Half.BACK
        return heel or self.in_cup(place)

    def in_cup(self, place: int) -> bool:
        """Whether a row stands in a toe of short rows."""
        stage = self.owners[place]
        return self.parts.toe.cup is not None and stage is not None and stage.name is StageName.TOE

    def ends_cup(self, place: int) -> bool:
        """Whether a row puts the front's loops of such a toe on the needle."""
        return self.in_cup(place) and self.due[place] == self.of[place]

    def opens_heel(self, place: int) -> bool:
        """Whether a row sets up a heel made last."""
        stage = self.owners[place]
        return self.parts.heel.made_last and stage is not None and stage.name is StageName.HEEL and self.due[place] == 1

    def grafts(self, place: int) -> bool:
        """Whether a row takes both halves off: grafts a heel made last, or closes a toe from the cuff down."""
        stage = self.owners[place]
        if self.plan.cuff_down:
            return self.parts.bind_off.joins and stage is not None and stage.name is StageName.BIND_OFF
        made_last = self.parts.heel.made_last and stage is not None and stage.name is StageName.HEEL
        return made_last and self.due[place] == self.of[place]


def case_of(plan: Plan, knitted: tuple[Knitted, ...]) -> Case:
    """The case of a plan."""
    parts = parts_of(plan)
    numbers = Numbers(plan.half, plan.tip, plan.gusset, plan.turned, plan.calf)
    case = Case(plan, knitted, owners_of(plan), parts, numbers, (), ())
    due, of = [0] * len(plan.rows), [0] * len(plan.rows)
    seen: set[StageName] = set()
    for stage in plan.stages:
        counted = tuple(_numbers(case, stage, again=stage.name in seen))
        last = _last(case, stage, dict(counted))
        seen.add(stage.name)
        for index, number in counted:
            if index < len(due):
                due[index], of[index] = number, last
    return case._replace(due=tuple(due), of=tuple(of))


def _numbers(case: Case, stage: Stage, *, again: bool) -> list[tuple[int, int]]:
    """The number due to each row of a stage: of its round, or in a heel that goes back and forth of the row itself.

    A heel begins with the fronts of its round, then the first sock to knit its heel begins to count.
    """
    heel_part, passes = case.parts.heel, case.passes
    back_and_forth = stage.name in heel_part.stages and not heel_part.made_last
    begins = back_and_forth and stage.name is heel_part.stages[0]
    fronts = passes // 2 if begins and (case.alone or not again) else 0
    places = range(stage.first_row, stage.last_row + 1)
    if stage.name is StageName.CAST_ON:
        return [(index, 1) for index in places]
    if stage.name is StageName.TOE and case.parts.toe.cup is not None:
        return [(index, index - stage.first_row + 1) for index in places]
    if back_and_forth:
        return [(index, max(1, index - stage.first_row - fronts + 1)) for index in places]
    return [(index, (index - stage.first_row) // passes + 1) for index in places]


def _last(case: Case, stage: Stage, due: dict[int, int]) -> int:
    """The number of a stage's last round: as many as its rows make, one too few or too many not counted.

    Where a round is two rows one too many is half a round: then its last two rows say, or where they disagree, it is
    as it counts, but for a row of another part.

    A heel made last has, besides the rounds of its depth, one that sets it up and the graft; a toe of short rows has,
    besides these, the one that frees the front's loops.
    """
    if stage.name is StageName.HEEL and case.parts.heel.made_last:
        return case.parts.heel.depth(case.numbers) + 2
    cup = case.parts.toe.cup
    if stage.name is StageName.TOE and cup is not None:
        return len(cup.waits(cup.on(case.numbers))) + 1
    last = stage.last_row
    if last >= len(case.plan.rows) or not due:
        return max(due.values(), default=0)
    if case.passes == 4 and stage.name not in case.parts.heel.stages:
        return max(1, (len(due) + 1) // case.passes)
    said = {row.round for row in case.plan.rows[max(stage.first_row, last - 1) : last + 1]}
    if len(said) == 1 and case.passes == 2:
        return said.pop()
    return due[last] - (case.passes == 2 and case.plan.rows[last].stage is not stage.name)


def owners_of(plan: Plan) -> tuple[Stage | None, ...]:
    """For each row the stage that claims it."""
    owners: list[Stage | None] = [None] * len(plan.rows)
    for stage in plan.stages:
        for index in range(stage.first_row, min(stage.last_row + 1, len(owners))):
            owners[index] = owners[index] or stage
    return tuple(owners)
