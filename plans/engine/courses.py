"""A plan prepared for calling: all steps in the order of the needle, with counts and bounds.

Positions are flat numbers over the steps of all rows, from 0; the number of steps itself is the end.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import lru_cache

from plans.conversation import PlanId
from plans.engine.steps import Step, steps
from plans.json_form import plan_id
from plans.pattern import Half, Order, Plan, Row, StageName
from plans.rows.heels import heel
from plans.rows.toes import cup_depth

HEEL_STAGES = frozenset({StageName.HEEL_TURN, StageName.HEEL_FLAP, StageName.HEEL})
"""The stages of a heel that is worked row by row on the back of one sock: the coarsest step there is one row."""

_SLOTS = {(1, Half.FRONT): 0, (1, Half.BACK): 1, (2, Half.FRONT): 2, (2, Half.BACK): 3}


def slot(sock: int, half: Half) -> int:
    """Where the count of a sock's half stands in a tuple of four."""
    return _SLOTS[sock, half]


@dataclass(frozen=True, slots=True)
class Run:
    """Rows from `first` to before `end` that belong together."""

    first: int
    end: int


@dataclass(frozen=True, slots=True)
class Course:
    """A plan, ready for calling.

    Attributes:
        steps: every step of every row.
        row_of: the row of each step.
        starts: the position of each row's first step, and the end.
        counts: loops on each half of each sock (see `slot`) before each step, and at the end.
        own: the position of the next step of sock 1 and of sock 2, from each position on.
        alone: the next position from each one on at which an act stands alone.
        stages: rows with one stage name; those of a heel once for each sock.
        rounds: rows of one round; in a heel each row is a round of its own.
        sides: rows on one half of both socks within a round.
        stage_of, round_of, side_of: which of these each row is in.
        longest: the highest round number in each stage.
        cup: rounds of the foot's length that a toe of short rows makes; 0 of any other.
    """

    plan: Plan = field(repr=False)
    steps: tuple[Step, ...] = field(repr=False)
    row_of: tuple[int, ...] = field(repr=False)
    starts: tuple[int, ...] = field(repr=False)
    counts: tuple[tuple[int, ...], ...] = field(repr=False)
    own: tuple[tuple[int, int], ...] = field(repr=False)
    alone: tuple[int, ...] = field(repr=False)
    stages: tuple[Run, ...] = field(repr=False)
    rounds: tuple[Run, ...] = field(repr=False)
    sides: tuple[Run, ...] = field(repr=False)
    stage_of: tuple[int, ...] = field(repr=False)
    round_of: tuple[int, ...] = field(repr=False)
    side_of: tuple[int, ...] = field(repr=False)
    longest: tuple[int, ...] = field(repr=False)
    cup: int = 0

    @property
    def end(self) -> int:
        """The position past the last step."""
        return len(self.steps)

    def row(self, position: int) -> Row:
        """The row of a step; of the last one at the end."""
        return self.plan.rows[self.row_of[min(position, self.end - 1)]]

    def is_heel(self, row_index: int) -> bool:
        """Whether a row belongs to a heel worked back and forth; the fronts of its round do not."""
        return _is_of_heel(self.plan.rows[row_index], heel_stages(self.plan))

    def is_cup(self, row_index: int) -> bool:
        """Whether a row belongs to a toe of short rows, which is worked back and forth too."""
        return self.cup > 0 and self.plan.rows[row_index].stage is StageName.TOE

    def is_row(self, row_index: int) -> bool:
        """Whether it is called row by row on one sock, in a heel or a toe."""
        return self.is_heel(row_index) or self.is_cup(row_index)

    @property
    def one_sock(self) -> bool:
        """Whether one sock is on the needle at a time."""
        return self.plan.construction.order is Order.ONE_AFTER_THE_OTHER


def heel_stages(plan: Plan) -> frozenset[StageName]:
    """The stages whose backs are worked back and forth; none where the heel is made last, round and round."""
    name = plan.construction.heel
    return frozenset() if name is not None and heel(name).made_last else HEEL_STAGES


def is_turned_by_decreases(plan: Plan) -> bool:
    """Whether no stitch of the heel is marked, and its gusset comes after it."""
    name = plan.construction.heel
    return name is not None and heel(name).picked_up is not None


def _is_of_heel(row: Row, stages: frozenset[StageName]) -> bool:
    return row.half is Half.BACK and row.stage in stages


def course(plan: Plan) -> Course:
    """The plan prepared for calling; kept for the plans used last."""
    return _prepared(_Same(plan))


def identity(plan: Plan) -> PlanId:
    """The plan's hash; kept like its course."""
    return _identified(_Same(plan))


class _Same:
    """A plan that equals only itself: its hash costs nothing."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan

    def __hash__(self) -> int:
        return id(self.plan)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and self.plan is other.plan


@lru_cache(maxsize=8)
def _identified(same: _Same) -> PlanId:
    return plan_id(same.plan)


@lru_cache(maxsize=8)
def _prepared(same: _Same) -> Course:
    plan = same.plan
    cut = [steps(row) for row in plan.rows]
    flat = tuple(step for row_steps in cut for step in row_steps)
    row_of = tuple(index for index, row_steps in enumerate(cut) for _ in row_steps)
    stage_mark, round_mark, side_mark = _marks(plan)
    stages = _runs(plan, stage_mark)
    stage_of = _which(stages)
    return Course(
        plan=plan,
        steps=flat,
        row_of=row_of,
        starts=_starts(cut),
        counts=_counts(plan, cut, flat, row_of),
        own=_own(plan, row_of),
        alone=_next_alone(flat),
        stages=stages,
        rounds=(rounds := _runs(plan, round_mark)),
        sides=(sides := _runs(plan, side_mark)),
        stage_of=stage_of,
        round_of=_which(rounds),
        side_of=_which(sides),
        longest=tuple(max(row.round for row in plan.rows[run.first : run.end]) for run in stages),
        cup=_cup(plan),
    )


def _cup(plan: Plan) -> int:
    name = plan.construction.toe
    return cup_depth(name, plan.half) if name is not None else 0


Mark = Callable[[Row], tuple[object, ...]]


def _marks(plan: Plan) -> tuple[Mark, Mark, Mark]:
    """What rows of one stage, one round and one side have in common."""
    stages, cup = heel_stages(plan), _cup(plan)

    def is_row(row: Row) -> bool:
        return _is_of_heel(row, stages) or (cup > 0 and row.stage is StageName.TOE)

    def stage_mark(row: Row) -> tuple[object, ...]:
        return (row.stage, row.sock if is_row(row) else 0)

    def round_mark(row: Row) -> tuple[object, ...]:
        return (*stage_mark(row), row.index if is_row(row) else row.round)

    def side_mark(row: Row) -> tuple[object, ...]:
        return (*round_mark(row), row.half)

    return stage_mark, round_mark, side_mark


def _runs(plan: Plan, mark: Mark) -> tuple[Run, ...]:
    marks = [mark(row) for row in plan.rows]
    bounds = [at for at in range(len(marks)) if at == 0 or marks[at] != marks[at - 1]]
    return tuple(Run(first, end) for first, end in zip(bounds, [*bounds[1:], len(marks)], strict=True))


def _which(runs: tuple[Run, ...]) -> tuple[int, ...]:
    return tuple(number for number, run in enumerate(runs) for _ in range(run.first, run.end))


def _starts(cut: list[tuple[Step, ...]]) -> tuple[int, ...]:
    starts = [0]
    for row_steps in cut:
        starts.append(starts[-1] + len(row_steps))
    return tuple(starts)


def _counts(
    plan: Plan, cut: list[tuple[Step, ...]], flat: tuple[Step, ...], row_of: tuple[int, ...]
) -> tuple[tuple[int, ...], ...]:
    """Loops before each step. In the bind-off a waiting loop is taken by the sock's other half."""
    now = [0, 0, 0, 0]
    found = [(0, 0, 0, 0)]
    for position, (step, row_index) in enumerate(zip(flat, row_of, strict=True)):
        row = plan.rows[row_index]
        here, other = slot(row.sock, row.half), slot(row.sock, _OTHER[row.half])
        if position == 0 or row_of[position - 1] != row_index:
            waiting = -min(0, now[here] + sum(each.gains for each in cut[row_index]))
            now[here] += waiting
            now[other] -= waiting
        now[here] += step.gains
        found.append((now[0], now[1], now[2], now[3]))
    return tuple(found)


_OTHER = {Half.FRONT: Half.BACK, Half.BACK: Half.FRONT}


def _own(plan: Plan, row_of: tuple[int, ...]) -> tuple[tuple[int, int], ...]:
    following = [len(row_of), len(row_of)]
    found = [(following[0], following[1])]
    for position in range(len(row_of) - 1, -1, -1):
        following[plan.rows[row_of[position]].sock - 1] = position
        found.append((following[0], following[1]))
    return tuple(reversed(found))


def _next_alone(flat: tuple[Step, ...]) -> tuple[int, ...]:
    following = len(flat)
    found = [following]
    for position in range(len(flat) - 1, -1, -1):
        following = position if flat[position].alone else following
        found.append(following)
    return tuple(reversed(found))
