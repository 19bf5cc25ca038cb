"""Knit two, purl two, all the way round."""

from plans.rows.cuffs import ribbed_cuff
from plans.stitches import Op

CUFF = ribbed_cuff(((Op.K, 2), (Op.P, 2)), "kkpp")
