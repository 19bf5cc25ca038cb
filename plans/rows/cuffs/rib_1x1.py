"""Knit one, purl one: it fits every even half, so the columns run on across the sides."""

from plans.rows.cuffs import ribbed_cuff
from plans.stitches import Op

CUFF = ribbed_cuff(((Op.K, 1), (Op.P, 1)), "kp")
