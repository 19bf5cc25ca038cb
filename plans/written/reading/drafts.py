"""Rows as they are read, and what every row brings with it without being told."""

from collections.abc import Iterable
from dataclasses import dataclass

from plans.pattern import Act, ChartRow, Facing, Group, Half, Row, Sock, StageName
from plans.stitches import JOINS, Op

_ORDER = (
    Act.LIFELINE, Act.TRY_ON, Act.MEASURE, Act.MARKER, Act.CHANGE_YARN, Act.PREPARE_TIPS, Act.LOOSELY, Act.SECURE_TAIL,
    Act.JOIN, Act.PULL_WASTE, Act.SNIP, Act.JOIN_YARN, Act.FIRST_NEEDLE, Act.SECOND_NEEDLE, Act.BRING_LOOP,
    Act.ONE_NEEDLE, Act.SNUG, Act.SLIDE_AWAY, Act.READY_TO_KNIT, Act.PULL_TAIL, Act.CUT, Act.CUT_LONG, Act.TURN,
    Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE, Act.SEW_HEM, Act.WEAVE_IN, Act.WASH,
)  # fmt: skip
_PLACE = {act: place for place, act in enumerate(_ORDER)}
_TURNS = frozenset({Act.TURN, Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE})
_UNSNUG = frozenset({StageName.CAST_ON, StageName.BIND_OFF})


@dataclass
class Draft:
    """A row to be.

    Attributes:
        acts: those that were told.
        exactly: all of them, where they were all told.
    """

    stage: StageName
    number: int
    sock: Sock
    half: Half
    facing: Facing
    ops: tuple[Group, ...]
    after: int
    acts: list[Act]
    exactly: tuple[Act, ...] | None
    chart: ChartRow | None


def finished(drafts: list[Draft], *, halves: bool, turned: bool) -> tuple[Row, ...]:
    """The rows, with what goes without saying: the change of yarn, the snug first stitches, the turn.

    Args:
        drafts: in the order of the needle.
        halves: whether each piece lies in two halves.
        turned: whether the work is turned between them.
    """
    return tuple(
        _row(index, drafts[index - 1] if index else None, draft, following, halves=halves, turned=turned)
        for index, (draft, following) in enumerate(zip(drafts, [*drafts[1:], None], strict=False))
    )


def _row(  # noqa: PLR0913 (a row, its neighbours, and how they lie)
    index: int, before: Draft | None, draft: Draft, following: Draft | None, *, halves: bool, turned: bool
) -> Row:
    acts = draft.exactly
    if acts is None:
        usual = _usual(before, draft, following, turned=turned) if halves else _change(before, draft)
        told = [*draft.acts, *usual]
        acts = tuple(sorted(told, key=_place))
    return Row(
        index=index,
        stage=draft.stage,
        round=draft.number,
        sock=draft.sock,
        half=draft.half,
        facing=draft.facing,
        yarn=draft.sock,
        ops=draft.ops,
        turn_after=not _TURNS.isdisjoint(acts),
        stitches_after=draft.after,
        acts=acts,
        chart=draft.chart,
    )


def _place(act: Act) -> int:
    return _PLACE.get(act, _PLACE[Act.CUT] if act.follows else 0)


def _change(before: Draft | None, draft: Draft) -> Iterable[Act]:
    if before is not None and before.sock != draft.sock:
        yield Act.CHANGE_YARN


def _ends_cup(draft: Draft, following: Draft) -> bool:
    """Whether a toe of short rows is done but for the other half, which is only put on the needle."""
    return draft.stage is StageName.TOE and any(group.op is Op.FREE for group in following.ops)


def _is_whole_by_itself(draft: Draft) -> bool:
    """Whether loops are only put on the needle, or both halves are taken off it: nothing is snug, nothing turned."""
    ops = {group.op for group in draft.ops}
    return bool(ops & JOINS) or (bool(ops) and ops <= {Op.FREE, Op.PICK_UP})


def _usual(before: Draft | None, draft: Draft, following: Draft | None, *, turned: bool) -> Iterable[Act]:
    yield from _change(before, draft)
    if _is_whole_by_itself(draft):
        return
    goes_on = before is not None and (before.sock, before.half) == (draft.sock, draft.half)
    if draft.stage not in _UNSNUG and not goes_on:
        yield Act.SNUG
    if not _TURNS.isdisjoint(draft.acts) or draft.stage is StageName.CAST_ON:
        return
    if draft.ops and draft.ops[-1].op is Op.WRAP_TURN:
        yield Act.TURN
    elif turned and (following is None or (following.half is not draft.half and not _ends_cup(draft, following))):
        yield Act.TURN_CLOCKWISE if draft.half is Half.FRONT else Act.TURN_ANTICLOCKWISE
