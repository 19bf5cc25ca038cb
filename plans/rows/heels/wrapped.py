"""Gusset, heel turned with wrapped stitches, slipped-stitch flap."""

from plans.rows.flaps import flap_heel, slipped, slipped_look
from plans.rows.short_rows import WRAP

HEEL = flap_heel(WRAP, slipped, slipped_look)
