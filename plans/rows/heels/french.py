"""A slipped-stitch flap, turned with decreases that move outwards; the gusset is picked up along the flap.

Turned: half of the stitches and two more, a decrease, one more, turn; five in the middle, a decrease, one more, turn;
then always one more before the decrease, which closes the gap ("New Red Cross directions for socks", 1918, with one
and four in place of two and five; Knitty, Winter 2007). Of 32 stitches 18 are left, and ten are the gusset's on each
side. Half of the rows lie under the foot (derived).
"""

from plans.rows.picked_up import Turning, flap_first
from plans.rows.rounds import Ops, groups
from plans.stitches import Op

_PAST_THE_MIDDLE = 2
"""Knitted past the middle of the heel before the first decrease."""


def _beside(half: int) -> int:
    """Stitches on either side that wait beyond the first two rows."""
    return half // 2 - _PAST_THE_MIDDLE - 3


def _rows(half: int) -> int:
    return 2 + 2 * -(-_beside(half) // 2)


def _row(half: int, number: int) -> Ops:
    knit, decrease = (Op.K, Op.SSK) if number % 2 else (Op.P, Op.P2TOG)
    ends = int(_waits(half, number) > 0 or _beside(half) % 2 == 0 or number <= 2)
    if number == 1:
        return groups((knit, half // 2 + _PAST_THE_MIDDLE), (decrease, 1), (knit, 1))
    slip, lacks = (Op.SL_WYIB, 0) if number % 2 else (Op.SL_WYIF, 1 - ends)
    return groups((slip, 1), (knit, 2 * _PAST_THE_MIDDLE + number - 1 - lacks), (decrease, 1), (knit, ends))


def _waits(half: int, number: int) -> int:
    return max(0, _beside(half) - 2 * ((number - 1) // 2))


def _look(_: int, number: int) -> str:
    if number == 1:
        return r"k \d+, ssk 1, k 1"
    return r"sl_wyib 1, k \d+, ssk 1(, k 1)?" if number % 2 else r"sl_wyif 1, p \d+, p2tog 1(, p 1)?"


HEEL = flap_first(Turning(_rows, _row, _waits, _look, depth=lambda pairs: pairs, fewest=10))
