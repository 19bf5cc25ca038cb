"""The toe of a sock from the cuff down, its halves knitted together and bound off, inside out (common practice)."""

from plans.rows.parts import DOWN, BindOffPart
from plans.rows.rounds import groups
from plans.stitches import Op

BIND_OFF = BindOffPart(
    front=lambda loops: groups((Op.THREE_NEEDLE, loops)),
    back=lambda _: (),
    looks=(r"three_needle \d+", ""),
    leaves=0,
    inside_out=True,
    joins=True,
    directions=frozenset({DOWN}),
)
