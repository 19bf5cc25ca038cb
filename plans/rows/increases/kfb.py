"""Knit front and back, in the first stitch and in the last but one.

The bump falls to the left of the knit, so these places put both bumps second from their edges ("Making a rounded
toe", alpacadirect.com, has the same pair one stitch further in; the places are derived). At the centre a
stitch between the two puts the bumps as far from one edge as from the other (derived).
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


def _centre(stitches: int) -> Ops:
    side = stitches // 2 - 2
    return groups((Op.K, side), (Op.KFB, 1), (Op.K, 1), (Op.KFB, 1), (Op.K, side + 1))


def _centre_look(stitches: int) -> str:
    side = stitches // 2 - 2
    return (f"k {side}, " if side else "") + f"kfb 1, k 1, kfb 1, k {side + 1}"


INCREASE = IncreasePart(_ops, _look, _centre, _centre_look)
