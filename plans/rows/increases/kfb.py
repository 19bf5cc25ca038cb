"""Knit front and back, in the first stitch and in the last but one.

The bump falls to the left of the knit, so these places put both bumps second from their edges ("Making a rounded
toe", alpacadirect.com, has the same pair one stitch further in; the places are derived).
"""

from plans.rows.parts import IncreasePart
from plans.rows.rounds import Ops, groups
from plans.stitches import Op


def _ops(stitches: int, start: bool, end: bool) -> Ops:
    if stitches == 2 and start and end:
        return groups((Op.KFB, 2))
    return groups((Op.KFB, int(start)), (Op.K, stitches - start - 2 * end), (Op.KFB, int(end)), (Op.K, int(end)))


def _look(start: bool, end: bool) -> str:
    if not end:
        return r"kfb 1, k \d+"
    return r"kfb 1, k \d+, kfb 1, k 1|kfb 2(, k 1)?" if start else r"(k \d+, )?kfb 1, k 1"


INCREASE = IncreasePart(_ops, _look)
