"""The proportions of a toe-up sock with gusset and flap. N stitches around, h = N/2 on each half.

All are the usual proportions of hand-knitted socks (common practice) where no source is named.
"""

from fractions import Fraction

from plans.pattern import Direction, StageName
from plans.quantities import Gauge, Length
from plans.rows.bind_offs import bind_off
from plans.rows.heels import heel
from plans.rows.parts import Numbers
from plans.rows.toes import toe, toe_height
from plans.wishes import Wishes

MULTIPLE = 4
"""Equal halves, each even: the slipped stitches of the heel flap pair up only on an even half."""

FEWEST_AROUND = 8
"""h = 4: two loops a tip, and a heel turn of 1 + 2 + 1. On h = 2, the next fewer, a turn that marks a stitch on each
side leaves none between them to turn on."""

MOST_AROUND = 400
FEWEST_CAST_ON = 4

DEFAULT_EASE_PERCENT = Fraction(10)
"""For stockinette: "Ease-y socks", wabi-sabi.ca; Eckman, How to Knit Socks, ch. 3; and two more."""


def fewest_around(kind: str, toe_kind: str = "wedge") -> int:
    """The fewest stitches around that a heel, and a toe of short rows, can be knitted on."""
    cup = toe(toe_kind).cup
    fewest = max(heel(kind).fewest, cup.fewest if cup else 0)
    return max(FEWEST_AROUND, MULTIPLE * -(-2 * fewest // MULTIPLE))


def takes_gusset(kind: str) -> bool:
    """Whether a heel's gusset may be as wide as the knitter likes: a flap eats it, whatever it is."""
    return StageName.HEEL_FLAP in heel(kind).stages


def gusset_of(wishes: Wishes, around: int) -> int:
    """The gusset as wished, where the heel leaves the choice; else as usual."""
    usual = gusset_stitches(around, wishes.heel)
    return usual if wishes.gusset is None or not takes_gusset(wishes.heel) else wishes.gusset


def nearest_around(stitches: Fraction, multiple: int = MULTIPLE) -> int:
    """The multiple (of 4) nearest to an exact number of stitches; of two as near, the even multiple."""
    return multiple * round(stitches / multiple)


def default_cast_on(around: int, kind: str = "wedge") -> int:
    """Loops of one sock, both tips: 2c with c twice the part of h that the toe says, even as h is; 2 a tip at least.

    A toe of short rows has one half's loops cast on, over waste yarn, and no others.
    """
    if toe(kind).cup:
        return around // 2
    over, of = toe(kind).tip_of_half
    return max(FEWEST_CAST_ON, 2 * 2 * (over * (around // 2) // of))


def cast_on_of(wishes: Wishes, around: int) -> int:
    """The cast-on as wished, else as the toe says; from the cuff down the loops it is closed with."""
    usual = default_cast_on(around, wishes.toe)
    if wishes.direction is Direction.CUFF_DOWN:
        return min(bind_off(wishes.bind_off).closes_at or usual, usual)
    return usual if wishes.cast_on is None else wishes.cast_on


def usual_cast_on(around: int) -> tuple[int, int]:
    """Fewest and most loops of a usual toe: a third to 0.45 of each half."""
    return -(-around // 3), int(around * Fraction(45, 100))


def gusset_stitches(around: int, kind: str = "wrapped") -> int:
    """The gusset, g a side in 2g rounds, as the heel says."""
    return heel(kind).gusset(around // 2)


def turned_stitches(around: int, cast_on: int = 0, kind: str = "wrapped") -> int:
    """The stitches marked on each side of the heel, as it says; of a heel made last, its decrease rounds."""
    return heel(kind).turned(around // 2, cast_on // 2)


def heel_depth(around: int, cast_on: int, gusset: int, kind: str) -> int:
    """Rounds of the foot's length that the heel makes besides its gusset."""
    turned = turned_stitches(around, cast_on, kind)
    return heel(kind).depth(Numbers(around // 2, cast_on // 2, gusset, turned))


def finished_foot(foot: Length) -> Length:
    """Foot less 1 cm ("Ease-y socks", wabi-sabi.ca), less 5 % where that is smaller, for children."""
    return foot - min(Length.of_cm(1), foot * Fraction(5, 100))


def rounds_in(length: Length, gauge: Gauge) -> int:
    """Rounds nearest to a length; of two as near, the even number."""
    return round(length.mm * gauge.rounds_per_mm)


def rounds_besides_even(
    kind: str, cast_on: int, around: int, gusset: int | None = None, heel_kind: str = "wrapped"
) -> int:
    """Rounds of the foot that are not plain: the toe's, 2g of the gusset, the heel's; g as usual if left out."""
    g = gusset_stitches(around, heel_kind) if gusset is None else gusset
    return toe_height(kind, cast_on // 2, around // 2) + 2 * g + heel_depth(around, cast_on, g, heel_kind)


def rounds_there(foot: Length, gauge: Gauge) -> int:
    """The most rounds that make a foot of this finished length, give or take one round."""
    return int(foot.mm * gauge.rounds_per_mm + 1)
