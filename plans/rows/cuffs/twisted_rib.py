"""Knit one through the back, purl one: the knits stand out and the rib is firmer (common practice)."""

from plans.rows.cuffs import ribbed_cuff
from plans.stitches import Op

CUFF = ribbed_cuff(((Op.KTBL, 1), (Op.P, 1)), "tp")
