"""Gusset, heel turned with wrapped stitches, plain flap."""

from plans.rows.flaps import flap_heel, smooth, smooth_look
from plans.rows.short_rows import WRAP

HEEL = flap_heel(WRAP, smooth, smooth_look)
