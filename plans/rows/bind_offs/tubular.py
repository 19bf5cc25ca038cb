"""A tubular end: two rounds of double knitting, then each knit is grafted to its purl (common practice).

First round: knit the knits, slip the purls with the yarn in front. Second round: slip the knits with the yarn
behind, purl the purls. So the knits lie before and the purls behind, and are grafted like two rows.
"""

from plans.rows.parts import BindOffPart
from plans.rows.rounds import Ops, groups
from plans.stitches import Op


def _first(loops: int) -> Ops:
    return groups(*((Op.K, 1), (Op.SL_WYIF, 1)) * (loops // 2))


def _second(loops: int) -> Ops:
    return groups(*((Op.SL_WYIB, 1), (Op.P, 1)) * (loops // 2))


def _graft(loops: int) -> Ops:
    return groups((Op.GRAFT_RIB, loops // 2))


BIND_OFF = BindOffPart(
    front=_graft,
    back=_graft,
    looks=(r"graft_rib \d+", r"graft_rib \d+"),
    leaves=0,
    long_tail=True,
    needs_rib=True,
    rounds=((_first, r"(k 1, sl_wyif 1, )+k 1, sl_wyif 1"), (_second, r"(sl_wyib 1, p 1, )+sl_wyib 1, p 1")),
)
