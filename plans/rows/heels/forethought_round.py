"""A heel made last, on stitches kept by waste yarn; it closes round."""

from plans.rows.openings import faster_later, heel_made_last
from plans.stitches import Op

HEEL = heel_made_last(Op.WASTE, faster_later)
