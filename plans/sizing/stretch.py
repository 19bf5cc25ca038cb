"""How far knitting opens, over the width at which it lies relaxed.

Plain knitting, worn: half as wide again at the most, a quarter all day long (common practice; the quarter is
our own bound). While a sock is pulled on it opens further for a moment: a loop can be no wider than half its
length, there and back, and lies relaxed at a wale spacing of length / 4.1 (Munden 1959, plain knit, wet-relaxed;
from memory), so 2.05 times; a twentieth is left to the yarn's own thickness. Ribbing of as many stitches lies at
about three quarters of that width (from memory) and opens as far, about twice as far as plain knitting relative
to itself (textbooks of weft knitting).
"""

from fractions import Fraction

from plans.pattern import Direction
from plans.rows.bind_offs import bind_off as bind_off_part
from plans.rows.cuffs import cuff

WORN = Fraction(3, 2)
COMFORT = Fraction(5, 4)
PULLED_ON = Fraction(39, 20)
RIB_RELAXED = Fraction(3, 4)

_CONVENTIONAL = Fraction(139, 100)
_EDGES = {
    "decrease": Fraction(157, 100),
    "sewn": Fraction(175, 100),
    "yarn-over": Fraction(185, 100),
    "tubular": PULLED_ON,
}
"""Measured on swatches, "How stretchy is stretchy?", susannawinter.net 2019: the conventional bind-off opens by
39 %, two stitches knitted together through the back by 57 %. Sewn and yarn-over, more than that, from memory; which
of the two opens further depends on the knitter ("Stretchy bind off comparison", stitchdiva.com). A tubular edge is
a last round of ribbing, grafted: it opens as the ribbing does."""
_CAST_ON = Fraction(3, 2)
"""An edge that was cast on over both needle tips, from the cuff down: half as far again, from memory."""


def edge_gives(bind_off: str) -> Fraction:
    """How far the edge of a sock that ends so opens, over the width of the plain fabric below it."""
    if Direction.TOE_UP not in bind_off_part(bind_off).directions:
        return _CAST_ON
    return min(_EDGES.get(bind_off, _CONVENTIONAL), PULLED_ON)


def ends(bind_off: str, cuff_style: str) -> bool:
    """Whether a bind-off can end a cuff: a tubular one grafts knits to purls by turns."""
    return cuff(cuff_style).one_by_one or not bind_off_part(bind_off).needs_rib


def stretchier(bind_off: str, cuff_style: str) -> tuple[str, ...]:
    """Bind-offs of a cuff that open further, the least of them first."""
    of_cuffs = (name for name in _EDGES if ends(name, cuff_style))
    found = [name for name in of_cuffs if edge_gives(name) > edge_gives(bind_off)]
    return tuple(sorted(found, key=edge_gives))


def stretchiest(cuff_style: str) -> str:
    """The bind-off of a cuff that opens furthest."""
    return max((name for name in _EDGES if ends(name, cuff_style)), key=edge_gives)
