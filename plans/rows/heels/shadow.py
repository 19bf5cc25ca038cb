"""Gusset, heel turned with shadow twins, slipped-stitch flap."""

from plans.rows.flaps import flap_heel, slipped, slipped_look
from plans.rows.short_rows import SHADOW

HEEL = flap_heel(SHADOW, slipped, slipped_look)
