"""Which acts of a row have to be told, and which go without saying."""

from typing import NamedTuple

from plans.pattern import Act, Half, Row, StageName
from plans.stitches import JOINS, Op

_RANKS = [
    Act.LIFELINE, Act.TRY_ON, Act.MEASURE, Act.MARKER, Act.CHANGE_YARN, Act.PREPARE_TIPS, Act.LOOSELY, Act.SECURE_TAIL,
    Act.JOIN, Act.PULL_WASTE, Act.SNIP, Act.JOIN_YARN, Act.FIRST_NEEDLE, Act.SECOND_NEEDLE, Act.BRING_LOOP,
    Act.ONE_NEEDLE, Act.SNUG,
    Act.SLIDE_AWAY, Act.READY_TO_KNIT, Act.PULL_TAIL, Act.CUT, Act.CUT_LONG, Act.TURN,
    Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE, Act.SEW_HEM, Act.WEAVE_IN, Act.WASH,
]  # fmt: skip
_SET_UP = {Op.FREE, Op.PICK_UP}
_TURNING = (Act.TURN, Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE)


class Told(NamedTuple):
    """The acts of a row that are written.

    Attributes:
        exactly: all of them, where they are not the usual ones with a few more.
    """

    before: tuple[Act, ...] = ()
    after: tuple[Act, ...] = ()
    exactly: tuple[Act, ...] | None = None


def told(rows: tuple[Row, ...], at: int, *, halves: bool, turned: bool) -> Told:
    """What must be written of the acts of the row at a place of all."""
    row = rows[at]
    usual = _without_saying(rows, at, halves=halves, turned=turned)
    extra = list(row.acts)
    for act in usual:
        if act not in extra:
            return Told(exactly=row.acts)
        extra.remove(act)
    merged = sorted([*extra, *usual], key=_rank)
    if tuple(merged) != row.acts:
        return Told(exactly=row.acts)
    before = tuple(act for act in extra if not act.follows)
    return Told(before, tuple(act for act in extra if act.follows))


def _rank(act: Act) -> int:
    if act in _RANKS:
        return _RANKS.index(act)
    return _RANKS.index(Act.CUT) if act.follows else 0


def _without_saying(rows: tuple[Row, ...], at: int, *, halves: bool, turned: bool) -> list[Act]:
    row, earlier = rows[at], rows[at - 1] if at else None
    later = rows[at + 1] if at + 1 < len(rows) else None
    found = [Act.CHANGE_YARN] if earlier is not None and earlier.sock != row.sock else []
    ops = {group.op for group in row.ops}
    if not halves or ops & JOINS or (ops and ops <= _SET_UP):
        return found
    same_place = earlier is not None and earlier.sock == row.sock and earlier.half == row.half
    if row.stage not in (StageName.CAST_ON, StageName.BIND_OFF) and not same_place:
        found.append(Act.SNUG)
    if row.stage is StageName.CAST_ON:
        return found
    if row.ops and row.ops[-1].op is Op.WRAP_TURN:
        return [*found, Act.TURN]
    cup = row.stage is StageName.TOE and later is not None and any(group.op is Op.FREE for group in later.ops)
    goes_on = cup or (later is not None and later.half is row.half)
    if turned and Act.TURN not in row.acts and not goes_on:
        found.append(_TURNING[1] if row.half is Half.FRONT else _TURNING[2])
    return found
