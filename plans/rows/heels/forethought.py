"""A heel made last, on stitches kept by waste yarn; it narrows as a wedge."""

from plans.rows.openings import every_other, heel_made_last
from plans.stitches import Op

HEEL = heel_made_last(Op.WASTE, every_other)
