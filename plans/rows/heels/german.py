"""Gusset, heel turned with German double stitches, slipped-stitch flap."""

from plans.rows.flaps import flap_heel, slipped, slipped_look
from plans.rows.short_rows import GERMAN

HEEL = flap_heel(GERMAN, slipped, slipped_look)
