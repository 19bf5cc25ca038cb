"""A sole made thicker with the sock's own yarn: every second round slips every second stitch.

The strands that float behind the slips double the fabric, as on a slipped-stitch heel flap (common practice).
"""

from plans.rows.parts import SolePart
from plans.rows.rounds import Ops, groups, plain
from plans.stitches import Op


def _ops(number: int, half: int) -> Ops:
    return groups(*((Op.SL_WYIB, 1), (Op.K, 1)) * (half // 2)) if number % 2 else plain(half)


SOLE = SolePart(ops=_ops, look=lambda number: r"(sl_wyib 1, k 1, )+sl_wyib 1, k 1" if number % 2 else r"k \d+")
