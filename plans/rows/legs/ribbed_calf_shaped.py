"""A leg in a wide rib that goes round the calf, by pairs of stitches at the centre of the back.

Stitches that are made there are worked into the rib from the next round on, with two knits between them (common
practice): on each side of the two the rib is counted from the half's own edge, so that no column breaks. Where the
back is as narrow as the front the rib goes all the way round.
"""

import re

from plans.rows.legs.ribbed import COLUMNS, PARTS
from plans.rows.legs.ribbed import LEG as RIBBED
from plans.rows.parts import LegPart
from plans.rows.ribs import columns_look, in_runs, rib_letters, rib_ops
from plans.rows.rounds import Ops
from plans.stitches import Op

_CENTRE = 2
_KNITS_BESIDE = re.compile(r"^k (\d+), |, k (\d+)$")


def _ops(number: int, first: int, stitches: int) -> Ops:
    if stitches == first or not first:
        return RIBBED.ops(number, first, stitches)
    side = (stitches - _CENTRE) // 2
    return in_runs([*rib_ops(PARTS, first, side), *[Op.K] * _CENTRE, *rib_ops(PARTS, -side, side)])


def _look(number: int, first: int, stitches: int) -> str:
    if stitches == first or not first:
        return RIBBED.look(number, first, stitches)
    side = (stitches - _CENTRE) // 2
    return columns_look(rib_letters(COLUMNS, first, side) + "k" * _CENTRE + rib_letters(COLUMNS, -side, side))


def _beside(ops: Ops, first: int) -> Ops:
    """The knits before the shaping and after it as rib."""
    right, left = (each.times if each.op is Op.K else 0 for each in (ops[0], ops[-1]))
    shaping = ops[bool(right) : len(ops) - bool(left)]
    return (*in_runs(rib_ops(PARTS, first, right)), *shaping, *in_runs(rib_ops(PARTS, -left, left)))


def _beside_look(look: str, first: int) -> str:
    def as_rib(found: re.Match[str]) -> str:
        before, after = (int(each or 0) for each in found.groups())
        if before:
            return columns_look(rib_letters(COLUMNS, first, before)) + ", "
        return ", " + columns_look(rib_letters(COLUMNS, -after, after))

    return _KNITS_BESIDE.sub(as_rib, look)


LEG = LegPart(ops=_ops, look=_look, widens=True, beside=_beside, beside_look=_beside_look)
