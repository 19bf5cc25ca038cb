"""A yarn over before each stitch is passed over with the waiting loop (common practice)."""

from plans.rows.bind_offs import passed_over
from plans.stitches import Op

BIND_OFF = passed_over(Op.K, Op.YO_BO)
