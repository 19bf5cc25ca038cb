"""Gusset, heel turned with wrapped stitches, eye-of-partridge flap."""

from plans.rows.flaps import flap_heel, partridge, partridge_look
from plans.rows.short_rows import WRAP

HEEL = flap_heel(WRAP, partridge, partridge_look)
