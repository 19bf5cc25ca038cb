"""A ribbed cuff of twice its depth, turned down over itself (common practice)."""

from plans.rows.cuffs import ribbed_cuff
from plans.stitches import Op

CUFF = ribbed_cuff(((Op.K, 1), (Op.P, 1)), "kp", folds=True)
