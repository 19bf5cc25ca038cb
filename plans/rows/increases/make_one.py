"""Make one right after the first stitch, make one left before the last.

The order most often printed (for instance Knitty, Fall 2008, toe-up sock pattern).
"""

from plans.rows.increases import between
from plans.stitches import Op

INCREASE = between(Op.M1R, Op.M1L)
