"""A plain leg that widens towards the calf, by pairs of increases at the centre of the back.

"Shaping knee socks", Shaltz, hjsstudio.com; "Calculating calf increases", actechniques.co.uk 2021.
"""

from plans.rows.legs.straight import LEG as STRAIGHT
from plans.rows.parts import LegPart

LEG = LegPart(ops=STRAIGHT.ops, look=STRAIGHT.look, widens=True)
