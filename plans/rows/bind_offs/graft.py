"""The toe of a sock from the cuff down, its halves grafted together."""

from plans.rows.parts import DOWN, BindOffPart
from plans.rows.rounds import groups
from plans.stitches import Op

BIND_OFF = BindOffPart(
    front=lambda loops: groups((Op.GRAFT, loops)),
    back=lambda _: (),
    looks=(r"graft \d+", ""),
    leaves=0,
    long_tail=True,
    joins=True,
    directions=frozenset({DOWN}),
)
