"""The threaded tail goes through both loops as if to purl, back through the waiting one, and that one drops.

"Binding off", kristinbelle.com.
"""

from plans.rows.bind_offs import passed_over
from plans.stitches import Op

BIND_OFF = passed_over(Op.SL_WYIB, Op.SEW_BO, long_tail=True)
