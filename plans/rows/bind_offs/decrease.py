"""The waiting loop and the next are knitted together through the back.

"Stretchy sock bind-off", rhyflowerknits.com.
"""

from plans.rows.bind_offs import passed_over
from plans.stitches import Op

BIND_OFF = passed_over(Op.K, Op.BO)
