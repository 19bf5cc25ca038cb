"""A hem with a scalloped edge: plain rounds, a round of holes, as many plain rounds again to be sewn down inside.

The hem folds at the holes, knit two together and yarn over by turns (common practice).
"""

from plans.rows.parts import CuffPart
from plans.rows.rounds import Ops, groups, plain
from plans.stitches import Op


def _ops(number: int, of: int, _first: int, stitches: int) -> Ops:
    holes = groups(*((Op.K2TOG, 1), (Op.YO, 1)) * (stitches // 2))
    return holes if number == of // 2 + 1 else plain(stitches)


CUFF = CuffPart(
    rounds=lambda shown: 2 * shown + 1,
    ops=_ops,
    look=lambda number, of, _, __: r"(k2tog 1, yo 1, )+k2tog 1, yo 1" if number == of // 2 + 1 else r"k \d+",
    hemmed=True,
    folds=True,
)
