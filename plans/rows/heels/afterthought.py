"""A heel made last, where a thread was run through the stitches and the fabric is cut above it; a wedge."""

from plans.rows.openings import every_other, heel_made_last
from plans.stitches import Op

HEEL = heel_made_last(Op.THREAD, every_other)
