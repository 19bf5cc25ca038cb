"""Ways to increase, each in a module that bears its name and holds an INCREASE."""

from functools import cache
from typing import cast

from plans.names import load
from plans.rows.parts import IncreasePart
from plans.rows.rounds import Ops, groups
from plans.stitches import Op

__all__ = ["between", "increase"]


@cache
def increase(name: str) -> IncreasePart:
    """The way of that name."""
    return cast("IncreasePart", load("increases", name, "INCREASE"))


def between(first: Op, last: Op) -> IncreasePart:
    """Increases between stitches, one in from each edge, mirrored: k1, first, k to the last, last, k1.

    At the centre they stand on either side of two plain stitches ("Shaping knee socks", Shaltz, hjsstudio.com).
    """

    @cache
    def ops(stitches: int, start: bool, end: bool) -> Ops:
        middle = stitches - start - end
        return groups((Op.K, int(start)), (first, int(start)), (Op.K, middle), (last, int(end)), (Op.K, int(end)))

    def look(start: bool, end: bool) -> str:
        middle = r"(k \d+, )?" if end else r"k \d+"
        return (f"k 1, {first} 1, " if start else "") + middle + (f"{last} 1, k 1" if end else "")

    def centre(stitches: int) -> Ops:
        side = stitches // 2 - 1
        return groups((Op.K, side), (first, 1), (Op.K, 2), (last, 1), (Op.K, side))

    def centre_look(stitches: int) -> str:
        side = stitches // 2 - 1
        return f"k {side}, {first} 1, k 2, {last} 1, k {side}"

    return IncreasePart(ops, look, centre, centre_look)
