"""The heel turn: short rows, each one stitch shorter, marked by a wrap or by a German double stitch."""

from collections.abc import Iterator

from plans.pattern import Facing, Heel, StageName
from plans.rows.rounds import Ops, Pass, groups
from plans.stitches import Op


def turn(heel: Heel, half: int, gusset: int, turned: int) -> Iterator[Pass]:
    """The 2w rows of the turn on h heel stitches between two gussets of g; the sole keeps its h + 2g loops.

    Wrap and turn: row 1 works g + h - 1, row r works h - r, then the next stitch is wrapped. German: row 1
    works g + h, row r makes the first stitch a double stitch and works h - r + 1 beyond it. The same stitches
    end marked; the German row works one more ("An easier short row", wiseowlknits.com). Row counts derived;
    the rule of thirds for w is common practice.
    """
    row = _wrapped_row if heel is Heel.WRAPPED else _german_row
    for number in range(1, 2 * turned + 1):
        facing = Facing.RS if number % 2 else Facing.WS
        beyond = gusset if number == 1 else 0
        ops = row(number, half, beyond, Op.K if number % 2 else Op.P)
        yield Pass(StageName.HEEL_TURN, number, ops, half + 2 * gusset, facing, turns=True)


def _wrapped_row(number: int, half: int, gusset: int, op: Op) -> Ops:
    return groups((op, gusset + half - number), (Op.WRAP_TURN, 1))


def _german_row(number: int, half: int, gusset: int, op: Op) -> Ops:
    return groups((Op.DS, int(number > 1)), (op, gusset + half - number + 1))
