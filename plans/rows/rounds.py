"""What one sock's part of a round is made of, before the needle puts the pair in order."""

from functools import cache
from typing import NamedTuple

from plans.pattern import ChartRow, Facing, Group, StageName
from plans.stitches import Op

Ops = tuple[Group, ...]


class Pass(NamedTuple):
    """One pass across one half of a sock.

    Attributes:
        number: of its round, or of the row within turn or flap.
        after: loops on the half after it.
        turns: the work is turned after it because the next pass goes back over the same half.
        chart: the row of a chart that it follows.
    """

    stage: StageName
    number: int
    ops: Ops
    after: int
    facing: Facing = Facing.RS
    turns: bool = False
    chart: ChartRow | None = None


class Round(NamedTuple):
    """A round of one sock: the front in one pass, the back in one, or in the heel in many."""

    front: Pass
    back: tuple[Pass, ...]


@cache
def group(op: Op, times: int, *, wrap: bool = False, double: bool = False) -> Group:
    """The group; the same object each time, so that comparing and storing many is cheap."""
    return Group(op=op, times=times, wrap=wrap, double=double)


def groups(*parts: tuple[Op, int]) -> Ops:
    """Groups in order, without those of no stitches."""
    return tuple(group(op, times) for op, times in parts if times)


@cache
def plain(stitches: int) -> Ops:
    """Knit all."""
    return groups((Op.K, stitches))


@cache
def widened(stitches: int) -> Ops:
    """Knit all, with mirrored increases one stitch in from each edge: `stitches` become two more.

    The right-leaning one comes after the first stitch, the left-leaning one before the last: the order most
    often printed (for instance Knitty, Fall 2008, toe-up sock pattern).
    """
    return groups((Op.K, 1), (Op.M1R, 1), (Op.K, stitches - 2), (Op.M1L, 1), (Op.K, 1))


def even_round(stage: StageName, number: int, front: Ops, back: Ops, after: tuple[int, int]) -> Round:
    """A round of one pass a half; `after` are the loops of front and back after it."""
    return Round(Pass(stage, number, front, after[0]), (Pass(stage, number, back, after[1]),))
