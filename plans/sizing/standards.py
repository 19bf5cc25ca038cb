"""Needle sizes and yarn weights as the trade writes them. Millimetres are the only safe key.

Needle sizes: the columns of old-UK, metric and US charts in which three independent ones agree
(sizechartly.com, milloutlets.wordpress.com 2011, germander-cottage-crafts, niniecrochet.com); what is sold
under two sizes: two notes on needle-size confusion, lindysknitslaces.com 2009 and overtherainbowyarn.com.
Yarn weights: Craft Yarn Council, Standard Yarn Weight System, classes 0 to 7.
"""

from fractions import Fraction
from typing import NamedTuple

from plans.quantities import MM_PER_INCH, Length

STANDARD_SWATCH = Length(4 * MM_PER_INCH)
"""The 4 inches of the yarn standard: exactly 10.16 cm, not 10."""


class NeedleSize(NamedTuple):
    """One thickness of needle.

    Attributes:
        us: the US number it is sold under, None where there is none.
        old_uk: the old UK number, which falls as needles grow; None where there is none.
        us_also_mm: other thicknesses sold under the same US number: ask which.
    """

    mm: Fraction
    us: str | None
    old_uk: str | None
    us_also_mm: tuple[Fraction, ...] = ()

    @property
    def us_is_ambiguous(self) -> bool:
        """Whether the US number alone does not tell the thickness."""
        return bool(self.us_also_mm)


def _needle(mm: str, us: str | None, old_uk: str | None, *also: str) -> NeedleSize:
    return NeedleSize(Fraction(mm), us, old_uk, tuple(Fraction(other) for other in also))


NEEDLE_SIZES = (
    _needle("1.5", "000", "17"), _needle("1.75", "00", None, "1.5"), _needle("2", "0", "14"),
    _needle("2.25", "1", "13", "2.5"), _needle("2.5", "1½", None), _needle("2.75", "2", "12", "3"),
    _needle("3", "2½", "11"), _needle("3.25", "3", "10"), _needle("3.5", "4", None),
    _needle("3.75", "5", "9"), _needle("4", "6", "8"), _needle("4.5", "7", "7"),
    _needle("5", "8", "6"), _needle("5.5", "9", "5"),
    _needle("6", "10", "4"), _needle("6.5", "10½", "3"), _needle("7", None, "2"), _needle("7.5", None, "1"),
    _needle("8", "11", "0"), _needle("9", "13", "00"), _needle("10", "15", "000"),
    _needle("12.75", "17", None, "12"), _needle("15", "19", None, "16"), _needle("19", "35", None, "20"),
    _needle("25", "50", None),
)  # fmt: skip
"""All sizes, thinnest first; the usual thickness of a US number is the one listed."""


def _same_number(one: str | None, other: str) -> bool:
    return one == other.strip().replace(".5", "½").replace(" 1/2", "½")


def needle_by_us(number: str) -> NeedleSize | None:
    """The usual needle of a US number ("6", "10½", "1.5", "000"); None where there is none."""
    return next((size for size in NEEDLE_SIZES if _same_number(size.us, number)), None)


def needle_by_old_uk(number: str) -> NeedleSize | None:
    """The needle of an old UK number ("13", "000"); None where there is none."""
    return next((size for size in NEEDLE_SIZES if _same_number(size.old_uk, number)), None)


def needle_by_thickness(thickness: Length) -> NeedleSize | None:
    """The needle of exactly this thickness; None where none is sold under a number."""
    return next((size for size in NEEDLE_SIZES if size.mm == thickness.mm), None)


class YarnWeight(NamedTuple):
    """One class of the yarn standard.

    Attributes:
        fewest: stitches over 4 inches of stockinette, fewest; 0 where the standard says "and fewer".
        most: the most.
        needle_mm: recommended needles, thinnest and thickest; None where the standard says "and up".
        needle_us: the same as US numbers.
        metres_per_100g: what a ball of it is taken for where its band is not known: within the bounds of "Yarn
            Standards", Spin-Off magazine, for classes 0 to 5; 400 is usual for sock yarn (common practice);
            classes 6 and 7 from memory.
    """

    number: int
    name: str
    fewest: int
    most: int
    needle_mm: tuple[Fraction, Fraction | None]
    needle_us: tuple[str, str | None]
    metres_per_100g: int


YARN_WEIGHTS = (
    YarnWeight(0, "lace", 33, 40, (Fraction("1.5"), Fraction("2.25")), ("000", "1"), 600),
    YarnWeight(1, "super fine", 27, 32, (Fraction("2.25"), Fraction("3.25")), ("1", "3"), 400),
    YarnWeight(2, "fine", 23, 26, (Fraction("3.25"), Fraction("3.75")), ("3", "5"), 310),
    YarnWeight(3, "light", 21, 24, (Fraction("3.75"), Fraction("4.5")), ("5", "7"), 210),
    YarnWeight(4, "medium", 16, 20, (Fraction("4.5"), Fraction("5.5")), ("7", "9"), 150),
    YarnWeight(5, "bulky", 12, 15, (Fraction("5.5"), Fraction(8)), ("9", "11"), 100),
    YarnWeight(6, "super bulky", 7, 11, (Fraction(8), Fraction("12.75")), ("11", "17"), 60),
    YarnWeight(7, "jumbo", 0, 6, (Fraction("12.75"), None), ("17", None), 30),
)
"""Finest first. The standard calls the gauges of class 0 a guide only; socks are knitted tighter."""


def over_four_inches(stitches: Fraction, over: Length) -> Fraction:
    """Stitches counted over a width, as a number over 4 inches."""
    return stitches * STANDARD_SWATCH.mm / over.mm


def yarn_weights(stitches_over_4_inches: Fraction) -> tuple[YarnWeight, ...]:
    """The classes a gauge belongs to, finest first.

    Classes 2 and 3 overlap at 23 and 24 stitches: both. Between whole numbers (20.5, 26.5) and beyond 40 no
    class holds the gauge: the nearest, both where two are as near.
    """
    def distance(weight: YarnWeight) -> Fraction:
        return max(weight.fewest - stitches_over_4_inches, stitches_over_4_inches - weight.most, Fraction(0))

    nearest = min(map(distance, YARN_WEIGHTS))
    return tuple(weight for weight in YARN_WEIGHTS if distance(weight) == nearest)
