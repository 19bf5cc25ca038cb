"""A leg in a wide rib, knit three, purl one, all the way round; it fits every multiple of four."""

from plans.rows.parts import LegPart
from plans.rows.ribs import rib, rib_look
from plans.stitches import Op

PARTS, COLUMNS = ((Op.K, 3), (Op.P, 1)), "kkkp"

LEG = LegPart(
    ops=lambda _, first, stitches: rib(PARTS, first, stitches),
    look=lambda _, first, stitches: rib_look(COLUMNS, first, stitches),
)
