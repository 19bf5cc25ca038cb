"""Gusset, heel turned with wrapped stitches, ribbed flap: knit one, purl one, with a slipped edge (common practice)."""

from plans.rows.flaps import flap_heel
from plans.rows.rounds import Ops, groups
from plans.rows.short_rows import WRAP
from plans.stitches import Op


def _pair(half: int, number: int) -> tuple[Ops, Ops]:  # noqa: ARG001 (all pairs are alike)
    """Each row slips its edge; between the edges the purls of the one side lie behind the knits of the other."""
    rib = ((Op.P, 1), (Op.K, 1)) * (half // 2 - 1)
    return groups((Op.SL_WYIB, 1), *rib, (Op.SSK, 1)), groups((Op.SL_WYIF, 1), *rib, (Op.P2TOG, 1))


def _look(number: int) -> tuple[str, str]:  # noqa: ARG001 (all pairs are alike)
    return r"sl_wyib 1(, p 1, k 1)+", r"sl_wyif 1(, p 1, k 1)+"


HEEL = flap_heel(WRAP, _pair, _look)
