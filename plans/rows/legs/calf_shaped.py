"""A plain leg that goes round the calf: wider by pairs of stitches, made or taken in at the centre of the back.

"Shaping knee socks", Shaltz, hjsstudio.com; "Calculating calf increases", actechniques.co.uk 2021.
"""

from plans.rows.legs.straight import LEG as STRAIGHT
from plans.rows.parts import LegPart

LEG = LegPart(ops=STRAIGHT.ops, look=STRAIGHT.look, widens=True)
