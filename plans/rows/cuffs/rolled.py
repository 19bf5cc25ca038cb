"""Plain rounds that roll outwards by themselves (common practice)."""

from plans.rows.parts import CuffPart
from plans.rows.rounds import plain

CUFF = CuffPart(
    rounds=lambda shown: shown,
    ops=lambda _, __, ___, stitches: plain(stitches),
    look=lambda _, __, ___, ____: r"k \d+",
)
