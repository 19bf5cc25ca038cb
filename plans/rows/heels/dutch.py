"""A slipped-stitch flap, turned square on its middle third; the gusset is picked up along the flap.

The last stitch of the middle is worked together with the next one beside it, row after row, until the middle alone is
left: ten of 30 stitches, after 20 rows ("Learn to knit square or Dutch sock heel", mirellamoments.com). Those rows are
the bottom of the heel, all of them under the foot (derived).
"""

from plans.rows.picked_up import Turning, flap_first
from plans.rows.rounds import Ops, groups
from plans.stitches import Op


def _middle(half: int) -> int:
    """A third, and even, so that as many stitches lie on one side of it as on the other."""
    return max(2, 2 * round(half / 6))


def _beside(half: int) -> int:
    return (half - _middle(half)) // 2


def _row(half: int, number: int) -> Ops:
    middle = _middle(half)
    if number == 1:
        return groups((Op.K, _beside(half) + middle - 1), (Op.SSK, 1))
    if number % 2:
        return groups((Op.SL_WYIB, 1), (Op.K, middle - 2), (Op.SSK, 1))
    return groups((Op.SL_WYIF, 1), (Op.P, middle - 2), (Op.P2TOG, 1))


def _look(half: int, number: int) -> str:
    if number == 1:
        return rf"k {_beside(half) + _middle(half) - 1}, ssk 1"
    return r"sl_wyib 1, (k \d+, )?ssk 1" if number % 2 else r"sl_wyif 1, (p \d+, )?p2tog 1"


HEEL = flap_first(
    Turning(
        rows=lambda half: 2 * _beside(half),
        row=_row,
        waits=lambda half, number: _beside(half) - (number + 1) // 2,
        look=_look,
        depth=lambda pairs: 2 * pairs,
        fewest=4,
    )
)
