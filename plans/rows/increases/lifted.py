"""Lifted increases, right after the first stitch and left before the last (common practice).

They tighten where every round increases.
"""

from plans.rows.increases import between
from plans.stitches import Op

INCREASE = between(Op.LIFTED_R, Op.LIFTED_L)
