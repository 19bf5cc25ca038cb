"""From the cuff down: a slipped-stitch flap, turned by decreases, its gusset picked up along the flap's edges."""

from plans.rows.picked_up import flap_first

HEEL = flap_first()
