"""The proportions of a toe-up sock with gusset and flap. N stitches around, h = N/2 on each half.

All are the usual proportions of hand-knitted socks (common practice) where no source is named.
"""

from fractions import Fraction

from plans.pattern import Toe
from plans.quantities import Gauge, Length
from plans.rows.toes import toe_schedule

MULTIPLE = 4
"""Equal halves, each even: the slipped stitches of the heel flap pair up only on an even half."""

FEWEST_AROUND = 8
"""h = 4: two loops a tip, and a heel turn of 1 + 2 + 1. On h = 2, the next fewer, a turn that marks a stitch on each
side leaves none between them to turn on."""

MOST_AROUND = 400
FEWEST_CAST_ON = 4

DEFAULT_EASE_PERCENT = Fraction(10)
"""For stockinette: "Ease-y socks", wabi-sabi.ca; Eckman, How to Knit Socks, ch. 3; and two more."""


def nearest_around(stitches: Fraction, multiple: int = MULTIPLE) -> int:
    """The multiple (of 4) nearest to an exact number of stitches; of two as near, the even multiple."""
    return multiple * round(stitches / multiple)


def default_cast_on(around: int) -> int:
    """Loops of one sock, both tips: 2c with c = 2 floor(3h/16), even as h is; never fewer than 2 a tip."""
    half = around // 2
    return max(FEWEST_CAST_ON, 2 * 2 * (3 * half // 16))


def usual_cast_on(around: int) -> tuple[int, int]:
    """Fewest and most loops of a usual toe: a third to 0.45 of each half."""
    return -(-around // 3), int(around * Fraction(45, 100))


def gusset_stitches(around: int) -> int:
    """The gusset: g = h/2 a side, in 2g rounds: Morgan-Oakes, Toe-Up 2-at-a-Time Socks, 2010."""
    return around // 4


def turned_stitches(around: int) -> int:
    """The heel turn: w = floor(h/3) a side, the outer thirds; it lies w rounds deep under the foot."""
    return max(1, around // 2 // 3)


def finished_foot(foot: Length) -> Length:
    """Foot less 1 cm ("Ease-y socks", wabi-sabi.ca), less 5 % where that is smaller, for children."""
    return foot - min(Length.of_cm(1), foot * Fraction(5, 100))


def rounds_in(length: Length, gauge: Gauge) -> int:
    """Rounds nearest to a length; of two as near, the even number."""
    return round(length.mm * gauge.rounds_per_mm)


def rounds_besides_even(toe: Toe, cast_on: int, around: int, gusset: int | None = None) -> int:
    """Rounds of the foot that are not plain: toe + 2g of the gusset + w of the heel turn; g as usual if left out."""
    toe_rounds = len(toe_schedule(toe, cast_on // 2, around // 2))
    g = gusset_stitches(around) if gusset is None else gusset
    return toe_rounds + 2 * g + turned_stitches(around)


def rounds_there(foot: Length, gauge: Gauge) -> int:
    """The most rounds that make a foot of this finished length, give or take one round."""
    return int(foot.mm * gauge.rounds_per_mm + 1)
