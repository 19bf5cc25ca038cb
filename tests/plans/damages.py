"""Every single damage that can be done to a plan, with the rows at which it must be noticed."""

from collections.abc import Callable, Iterator
from enum import StrEnum
from fractions import Fraction
from functools import partial
from typing import Any, NamedTuple, TypeVar

from plans.pattern import Act, Facing, Group, Half, Plan, Row, Stage, StageName
from plans.stitches import INCREASES, Op

Name = TypeVar("Name", bound=StrEnum)


class Damage(NamedTuple):
    """A plan with one thing wrong; made only when it is asked for, since most tests try a few of thousands.

    Attributes:
        rows: the damaged row and the next; empty where the head of the plan was damaged.
    """

    kind: str
    rows: frozenset[int]
    made: Callable[[], Plan]

    @property
    def plan(self) -> Plan:
        """The plan, made anew each time."""
        return self.made()


def all_damages(plan: Plan) -> Iterator[Damage]:
    """All kinds at all places."""
    for place, row in enumerate(plan.rows):
        for kind, changes in _row_damages(row):
            yield Damage(kind, frozenset({place, place + 1}), partial(_with_row, plan, place, changes))
    yield from _order_damages(plan)
    yield from _stage_damages(plan)
    yield from _head_damages(plan)


# --- one row ---------------------------------------------------------------------------------------------------

Changes = dict[str, Any]


def _row_damages(row: Row) -> Iterator[tuple[str, Changes]]:
    yield "socks swapped", {"sock": 3 - row.sock}
    yield "halves swapped", {"half": Half.BACK if row.half is Half.FRONT else Half.FRONT}
    yield "yarns swapped", {"yarn": 3 - row.yarn}
    yield "facing flipped", {"facing": Facing.WS if row.facing is Facing.RS else Facing.RS}
    yield "turn lost" if row.turn_after else "turn added", {"turn_after": not row.turn_after}
    yield "count one more", {"stitches_after": row.stitches_after + 1}
    if row.stitches_after:
        yield "count one less", {"stitches_after": row.stitches_after - 1}
    yield "round one more", {"round": row.round + 1}
    if row.round > 1:
        yield "round one less", {"round": row.round - 1}
    for stage in _some(StageName, row, but=(row.stage,)):
        yield "stage altered", {"stage": stage}
    yield from _act_damages(row)
    yield from _group_damages(row)
    if row.needles:
        yield "needles altered", {"needles": (row.needles[0] + 1, *(loops - 1 for loops in row.needles[1:]))}
        yield "needles altered", {"slipped": row.slipped + 1}
        yield "needles altered", {"needles": (row.stitches_after,) if len(row.needles) > 1 else ()}
    else:
        yield "needles altered", {"needles": (row.stitches_after,)}


def _some(names: type[Name], row: Row, but: tuple[Name, ...]) -> tuple[Name, ...]:
    """Two of many names, others at each row."""
    wrong = [name for name in names if name not in but]
    return tuple(wrong[(2 * row.index + step) % len(wrong)] for step in range(2))


def _act_damages(row: Row) -> Iterator[tuple[str, Changes]]:
    for place in range(len(row.acts)):
        yield "act lost", {"acts": row.acts[:place] + row.acts[place + 1 :]}
    for act in _some(Act, row, but=row.acts):
        yield "act added", {"acts": (*row.acts, act)}
    for place in range(len(row.acts) - 1):
        swapped = (row.acts[place + 1], row.acts[place])
        yield "acts exchanged", {"acts": row.acts[:place] + swapped + row.acts[place + 2 :]}
    turns = {Act.TURN_CLOCKWISE: Act.TURN_ANTICLOCKWISE, Act.TURN_ANTICLOCKWISE: Act.TURN_CLOCKWISE}
    if any(act in turns for act in row.acts):
        yield "turned the same way twice", {"acts": tuple(turns.get(act, act) for act in row.acts)}


def _group_damages(row: Row) -> Iterator[tuple[str, Changes]]:
    for place, group in enumerate(row.ops):
        yield "times one more", _with_group(row, place, times=group.times + 1)
        if group.times > 1:
            yield "times one less", _with_group(row, place, times=group.times - 1)
        mark = "wrap left" if group.wrap else "wrap invented"
        yield mark, _with_group(row, place, wrap=not group.wrap)
        double = "double left" if group.double else "double invented"
        yield double, _with_group(row, place, double=not group.double)
        rest = row.ops[:place] + row.ops[place + 1 :]
        dropped = "increase dropped" if group.op in INCREASES else "operation dropped"
        yield dropped, {"ops": rest}
        for op in _MISTAKEN.get(group.op, ()):
            kind = "increase leans the wrong way" if group.op in INCREASES else "operation mistaken"
            yield kind, _with_group(row, place, op=op)
        if group.op in INCREASES and 0 < place < len(row.ops) - 1:
            yield from _moved(row, place, group)


_MISTAKEN: dict[Op, tuple[Op, ...]] = {
    Op.M1R: (Op.M1L,), Op.M1L: (Op.M1R,), Op.K: (Op.P, Op.SL_WYIB), Op.P: (Op.K,), Op.SL_WYIB: (Op.K,),
    Op.SL_WYIF: (Op.P,), Op.SSK: (Op.K2TOG,), Op.P2TOG: (Op.SSP,), Op.K2TOG_STRAND: (Op.K,),
    Op.SSK_STRAND: (Op.K,), Op.DS: (Op.K, Op.P), Op.BO: (Op.YO_BO,), Op.CO: (Op.K,), Op.FASTEN: (Op.BO,),
    Op.GRAFT: (Op.THREE_NEEDLE,), Op.THREE_NEEDLE: (Op.GRAFT,), Op.GATHER: (Op.BO,),
}  # fmt: skip


def _moved(row: Row, place: int, group: Group) -> Iterator[tuple[str, Changes]]:
    """The increase is worked a stitch too early or too late, or changes places with its neighbour."""
    before, after = row.ops[place - 1], row.ops[place + 1]
    for step in (-1, 1):
        moved = [*row.ops[: place - 1], *_by(before, step), group, *_by(after, -step), *row.ops[place + 2 :]]
        yield "increase moved", {"ops": tuple(moved)}


def _by(group: Group, step: int) -> tuple[Group, ...]:
    times = group.times + step
    return (group.model_copy(update={"times": times}),) if times else ()


def _with_group(row: Row, place: int, **changes: Any) -> Changes:
    group = row.ops[place].model_copy(update=changes)
    return {"ops": (*row.ops[:place], group, *row.ops[place + 1 :])}


def _with_row(plan: Plan, place: int, changes: Changes) -> Plan:
    row = plan.rows[place].model_copy(update=changes)
    return plan.model_copy(update={"rows": (*plan.rows[:place], row, *plan.rows[place + 1 :])})


# --- the order of rows -----------------------------------------------------------------------------------------


def _order_damages(plan: Plan) -> Iterator[Damage]:
    """Rows dropped, doubled, exchanged, as they would be by someone who numbers them anew afterwards."""
    rows = plan.rows
    for place in range(len(rows)):
        noticed = frozenset({min(place, len(rows) - 2), place + 1})
        dropped = partial(_renumbered, plan, rows[:place] + rows[place + 1 :], place, -1)
        yield Damage("row dropped", noticed, dropped)
        doubled = partial(_renumbered, plan, (*rows[: place + 1], *rows[place:]), place, 1)
        yield Damage("row doubled", frozenset({place, place + 1}), doubled)
        if place + 1 < len(rows):
            exchanged = (*rows[:place], rows[place + 1], rows[place], *rows[place + 2 :])
            both = frozenset({place, place + 1})
            yield Damage("rows exchanged", both, partial(_renumbered, plan, exchanged, place, 0))
        index = {"index": rows[place].index + 1}
        yield Damage("index altered", frozenset({place}), partial(_with_row, plan, place, index))


def _renumbered(plan: Plan, rows: tuple[Row, ...], place: int, longer: int) -> Plan:
    numbered = tuple(
        row if row.index == index else row.model_copy(update={"index": index}) for index, row in enumerate(rows)
    )
    stages = tuple(_stretched(stage, place, longer) for stage in plan.stages)
    return plan.model_copy(update={"rows": numbered, "stages": stages})


def _stretched(stage: Stage, place: int, longer: int) -> Stage:
    first = stage.first_row + (longer if stage.first_row > place else 0)
    last = stage.last_row + (longer if stage.last_row >= place else 0)
    return stage.model_copy(update={"first_row": first, "last_row": last})


# --- the head --------------------------------------------------------------------------------------------------


def _stage_damages(plan: Plan) -> Iterator[Damage]:
    for place, stage in enumerate(plan.stages):
        for field, step in (("first_row", 1), ("first_row", -1), ("last_row", 1), ("last_row", -1)):
            at = getattr(stage, field) + step
            if at < 0:
                continue
            changed = stage.model_copy(update={field: at})
            near = frozenset(range(at - 1, at + 2))
            yield Damage("stage list altered", near, partial(_with_stage, plan, place, (changed,)))
        first = frozenset({stage.first_row, stage.first_row + 1})
        yield Damage("stage dropped", first, partial(_with_stage, plan, place, ()))


def _with_stage(plan: Plan, place: int, stages: tuple[Stage, ...]) -> Plan:
    return plan.model_copy(update={"stages": (*plan.stages[:place], *stages, *plan.stages[place + 1 :])})


def _head_damages(plan: Plan) -> Iterator[Damage]:
    for field in ("around", "cast_on", "closing", "gusset", "turned", "heel_depth", "multiple"):
        for step in (-1, 1):
            yield _headed(plan, "number altered", {field: getattr(plan, field) + step})
    for field in type(plan.calf).model_fields if plan.calf else ():
        for step in (-1, 1):
            calf = plan.calf.model_copy(update={field: getattr(plan.calf, field) + step})
            yield _headed(plan, "number altered", {"calf": calf})
    if plan.calf:
        yield _headed(plan, "number altered", {"calf": None})
    rounds, stitches = 10 / plan.gauge.rounds_per_10cm, 10 / plan.gauge.stitches_per_10cm
    for field, step in (
        ("circumference_cm", stitches * Fraction(plan.multiple + 1, 2)),
        ("foot_length_cm", rounds * Fraction(11, 10)),
        ("leg_cm", rounds * Fraction(11, 10)),
    ):
        for sign in (-1, 1):
            finished = plan.finished.model_copy(update={field: getattr(plan.finished, field) + sign * step})
            yield _headed(plan, "measure altered", {"finished": finished})


def _headed(plan: Plan, kind: str, changes: Changes) -> Damage:
    return Damage(kind, frozenset(), partial(plan.model_copy, update=changes))
