"""Make one left after the first stitch, make one right before the last: the mirrored order (common practice)."""

from plans.rows.increases import between
from plans.stitches import Op

INCREASE = between(Op.M1L, Op.M1R)
