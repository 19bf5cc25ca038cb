"""Gusset increases on the sole, and the slipped-stitch flap that eats them again."""

from collections.abc import Iterator

from plans.pattern import Facing, Heel, StageName
from plans.rows.rounds import Ops, Pass, Round, even_round, group, groups, plain, widened
from plans.stitches import Op


def gusset_rounds(gusset: int, half: int) -> Iterator[Round]:
    """The 2g rounds of the gusset: an increase round, on the back only, then a plain one, g times.

    The back grows by 2 every second round from h to h + 2g; half as many stitches again on each side of the
    sole, g = h/2, is usual (gusset-arithmetic tutorial, april-klich.squarespace.com, 2015).
    """
    for number in range(1, 2 * gusset + 1):
        increases = number % 2
        before = half + 2 * (number // 2)
        back = widened(before) if increases else plain(before)
        yield even_round(StageName.GUSSET, number, plain(half), back, (half, before + 2 * increases))


def flap(heel: Heel, half: int, gusset: int, turned: int) -> Iterator[Pass]:
    """The 2g rows of the flap, in pairs, and the right-side row across that brings the round to its end.

    The first pair (A, B) resolves the marks of the turn; each row ends by working the last heel stitch
    together with the next gusset stitch, so the sole loses one loop a row, from h + 2g to h. Derived.
    """
    rows = (*_first_pair(heel, half, turned), *(gusset - 1) * _pair(half))
    loops = half + 2 * gusset
    for number, ops in enumerate(rows, start=1):
        facing = Facing.RS if number % 2 else Facing.WS
        yield Pass(StageName.HEEL_FLAP, number, ops, loops - number, facing, turns=True)
    yield Pass(StageName.HEEL_FLAP, len(rows) + 1, plain(half), half)


def _first_pair(heel: Heel, half: int, turned: int) -> tuple[Ops, Ops]:
    mark = {"wrap": True} if heel is Heel.WRAPPED else {"double": True}
    middle, marked = half - 2 * turned, turned - 1
    first = groups((Op.DS, int(heel is Heel.GERMAN)), (Op.K, middle))
    second = groups((Op.SL_WYIF, 1), (Op.P, half - 1 - turned))
    right_side = (group(Op.K, marked, **mark),) if marked else ()
    wrong_side = (group(Op.P, marked, **mark),) if marked else ()
    return (
        (*first, *right_side, group(Op.SSK, 1, **mark)),
        (*second, *wrong_side, group(Op.P2TOG, 1, **mark)),
    )


def _pair(half: int) -> tuple[Ops, Ops]:
    """Right side: slip one, knit one until two heel stitches remain; wrong side: slip one, purl across."""
    slipped = groups(*((Op.SL_WYIB, 1), (Op.K, 1)) * (half // 2 - 1), (Op.SL_WYIB, 1), (Op.SSK, 1))
    return slipped, groups((Op.SL_WYIF, 1), (Op.P, half - 2), (Op.P2TOG, 1))
