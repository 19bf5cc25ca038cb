"""What a check hands back, and what it is given."""

from typing import NamedTuple

from plans.conversation import Problem, Value
from plans.pattern import Half, Plan, Row, Stage, StageName
from plans.proof.knitting import Knitted


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


class Case(NamedTuple):
    """A plan under proof.

    Attributes:
        knitted: what came of each row, up to the first that cannot be knitted.
        owners: the stage of each row by the plan's list of stages; None where no stage claims it.
    """

    plan: Plan
    knitted: tuple[Knitted, ...]
    owners: tuple[Stage | None, ...]

    @property
    def complete(self) -> bool:
        """Whether every row could be knitted."""
        return len(self.knitted) == len(self.plan.rows) and not (self.knitted and self.knitted[-1].stopped)

    def rows(self, stage: Stage) -> tuple[Row, ...]:
        """The rows of a stage."""
        return self.plan.rows[stage.first_row : stage.last_row + 1]

    def named(self, name: StageName) -> tuple[Stage, ...]:
        """The stages of that name."""
        return tuple(stage for stage in self.plan.stages if stage.name is name)

    def after(self, row: Row) -> int | None:
        """Loops on the row's half after it; None where no row of its index was knitted."""
        return self.knitted[row.index].after if row.index < len(self.knitted) else None


def owners_of(plan: Plan) -> tuple[Stage | None, ...]:
    """For each row the stage that claims it."""
    owners: list[Stage | None] = [None] * len(plan.rows)
    for stage in plan.stages:
        for index in range(stage.first_row, min(stage.last_row + 1, len(owners))):
            owners[index] = owners[index] or stage
    return tuple(owners)


def in_the_round(row: Row, stage: Stage | None) -> bool:
    """Whether the row is one half of a round, not one of the heel's rows that go back and forth."""
    heel = stage is not None and stage.name in {StageName.HEEL_TURN, StageName.HEEL_FLAP}
    return row.half is Half.FRONT or not heel
