"""What cures a bad fit: one change, computed to work; else the change that knitters make without reckoning."""

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Reply
from plans.pattern import Direction
from plans.quantities import Gauge, Length, plain_number
from plans.sizing.proportions import FEWEST_AROUND, MOST_AROUND, MULTIPLE, takes_gusset
from plans.sizing.standards import NEEDLE_SIZES
from plans.sizing.stretch import PULLED_ON, WORN, edge_gives, stretchier
from plans.wishes import Wishes

_TIGHTEST = Fraction(75, 100)


class Cut(NamedTuple):
    """A sock as it is cut out: its wishes, gauge, stitches around, those of the gusset, and the ball it goes round."""

    wishes: Wishes
    gauge: Gauge
    around: int
    gusset: int
    ball: Length


def _counts(cut: Cut, step: int) -> Iterator[int]:
    """Other stitch counts, ever further, as long as they go round the ball neither tight nor loose."""
    for around in range(cut.around + step, MOST_AROUND + 1 if step > 0 else FEWEST_AROUND - 1, step):
        if cut.ball * _TIGHTEST <= cut.gauge.width(around) <= cut.ball:
            yield around


def girth_cure(cut: Cut, wanted: Length, *, tight: bool) -> Reply:
    """For a leg: other stitches around that still fit the ball; else another needle for the leg.

    Args:
        cut: the sock.
        wanted: the leg's width at the least where it is tight, at the most where it is wide.
        tight: which of the two.
    """
    for around in _counts(cut, MULTIPLE if tight else -MULTIPLE):
        width = cut.gauge.width(around)
        if (width >= wanted) if tight else (width <= wanted):
            return Reply.of("cure-around", stitches=around)
    return _needle(cut.wishes, thicker=tight)


def heel_cure(cut: Cut, heel: Length) -> Reply:
    """For a tight heel: a wider gusset where the leg opens far enough, else more stitches, else a thicker needle."""
    if cut.gauge.width(cut.around) * PULLED_ON >= heel:
        if not takes_gusset(cut.wishes.heel):
            return Reply.of("cure-heel-with-gusset")
        needed = heel.mm / WORN * cut.gauge.stitches_per_mm - cut.around
        return Reply.of("cure-gusset", stitches=-(-needed // 2))
    for around in _counts(cut, MULTIPLE):
        if cut.gauge.width(around) * PULLED_ON >= heel and cut.gauge.width(around + around // 2) * WORN >= heel:
            return Reply.of("cure-around", stitches=around)
    return _needle(cut.wishes, thicker=True)


def heel_loose_cure(cut: Cut, wanted: Length) -> Reply:
    """For a loose heel: a narrower gusset, if that is enough; else fewer stitches, else a thinner needle."""
    room = int(wanted.mm * cut.gauge.stitches_per_mm) - cut.around
    if takes_gusset(cut.wishes.heel) and cut.gusset > 2 <= room:
        return Reply.of("cure-gusset", stitches=room // 2)
    for around in _counts(cut, -MULTIPLE):
        if cut.gauge.width(around + around // 2) <= wanted:
            return Reply.of("cure-around", stitches=around)
    return _needle(cut.wishes, thicker=False)


def edge_cure(wishes: Wishes, needed: Fraction) -> Reply:
    """For a tight edge: the first bind-off that opens far enough, else a thicker needle; for a cast-on this alone."""
    if wishes.direction is Direction.CUFF_DOWN:
        return Reply.of("cure-cast-on-needle")
    for name in stretchier(wishes.bind_off, wishes.cuff_style):
        if edge_gives(name) >= needed:
            return Reply.of("cure-bind-off", name=name)
    return Reply.of("cure-bind-off-needle")


def _needle(wishes: Wishes, *, thicker: bool) -> Reply:
    """A needle a size up or down; which, where hers is known."""
    mm = Fraction(0) if wishes.needle is None else wishes.needle.mm
    sizes = [size.mm for size in NEEDLE_SIZES if mm and (size.mm > mm if thicker else size.mm < mm)]
    if not sizes:
        return Reply.of("cure-needle-up" if thicker else "cure-needle-down")
    key, size = ("cure-needle-up-to", min(sizes)) if thicker else ("cure-needle-down-to", max(sizes))
    return Reply.of(key, millimetres=plain_number(size))
