"""What one sock's part of a round is made of, before the needle puts the pair in order."""

from enum import Enum, auto
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


class RoundKind(Enum):
    """What is done with the needle.

    A round, both halves set up on it at once, the back worked to a cup before the front is, or both grafted off it.
    """

    ROUND = auto()
    SET_UP = auto()
    CUP = auto()
    GRAFT = auto()


class Round(NamedTuple):
    """A round of one sock: the front in one pass, the back in one, or in the heel in many; none in a graft."""

    front: Pass
    back: tuple[Pass, ...]
    kind: RoundKind = RoundKind.ROUND


@cache
def group(op: Op, times: int, *, wrap: bool = False, double: bool = False) -> Group:
    """The group; the same object each time, so that comparing and storing many is cheap."""
    return Group(op=op, times=times, wrap=wrap, double=double)


def groups(*parts: tuple[Op, int]) -> Ops:
    """Groups in order, without those of no stitches."""
    return tuple(group(op, times) for op, times in parts if times > 0)


@cache
def plain(stitches: int) -> Ops:
    """Knit all."""
    return groups((Op.K, stitches))


@cache
def narrowed(stitches: int) -> Ops:
    """Knit all, with mirrored decreases one stitch in from each edge: two stitches fewer; of four, both edges."""
    edge = int(stitches > 4)
    return groups((Op.K, edge), (Op.SSK, 1), (Op.K, stitches - 4 - 2 * edge), (Op.K2TOG, 1), (Op.K, edge))


def even_round(stage: StageName, number: int, front: Ops, back: Ops, after: tuple[int, int]) -> Round:
    """A round of one pass a half; `after` are the loops of front and back after it."""
    return Round(Pass(stage, number, front, after[0]), (Pass(stage, number, back, after[1]),))
