"""The toe of a sock from the cuff down, narrowed to eight stitches and drawn together (common practice)."""

from plans.rows.parts import DOWN, BindOffPart
from plans.rows.rounds import Ops, groups
from plans.stitches import Op


def _gather(loops: int) -> Ops:
    return groups((Op.GATHER, loops))


BIND_OFF = BindOffPart(
    front=_gather,
    back=_gather,
    looks=(r"gather \d+", r"gather \d+"),
    leaves=0,
    long_tail=True,
    closes_at=8,
    directions=frozenset({DOWN}),
)
