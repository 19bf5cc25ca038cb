"""How much yarn is in a stitch: the geometry of plain knitting.

A knitted loop keeps its shape: stitches to the square centimetre times the square of the loop's length are one
constant, whatever the yarn: 19.0 dry-relaxed and 21.6 wet-relaxed (D. L. Munden, Journal of the Textile Institute
50, 1959, T448), 23.1 fully relaxed (Knapton, Ahrens, Ingenthron and Fong, Textile Research Journal 38, 1968,
999); the first two from memory, agreeing with the course and wale constants 5.0 x 3.8 and 5.3 x 4.1, the third
with 5.5 x 4.2, printed in an examination paper (GATE textile 2015, question 54). So from the gauge the loop, and
from the loop the yarn; between dry and fully relaxed the loop differs by a tenth. Ribbing takes about as much as
plain knitting (common practice).
"""

from fractions import Fraction
from math import sqrt
from typing import NamedTuple

from plans.pattern import BindOff
from plans.stitches import MARKERS, Op, makes

WET_RELAXED = Fraction("21.6")
DRY_RELAXED = Fraction("19.0")
FULLY_RELAXED = Fraction("23.1")


class Stitch(NamedTuple):
    """What the gauge makes of one stitch, in mm: the yarn in its loop, and how wide it lies."""

    loop: Fraction
    width: Fraction


class Take(NamedTuple):
    """What an operation takes: half loops, and stitch widths of yarn that lies straight."""

    half_loops: int
    widths: int


def loop_mm(stitches_per_10cm: Fraction, rounds_per_10cm: Fraction, constant: Fraction = WET_RELAXED) -> Fraction:
    """The length of one loop, in mm: the root of the constant over the stitches to the square centimetre."""
    density = stitches_per_10cm * rounds_per_10cm / 100
    return Fraction(round(10_000 * sqrt(constant / density)), 1000)


def stitch(stitches_per_10cm: Fraction, rounds_per_10cm: Fraction, *, washed: bool = True) -> Stitch:
    """One stitch of a gauge counted on a washed swatch, or on one as it came off the needles."""
    constant = WET_RELAXED if washed else DRY_RELAXED
    return Stitch(loop_mm(stitches_per_10cm, rounds_per_10cm, constant), 100 / stitches_per_10cm)


_SLIPPED = Take(0, 1)
_TAKES: dict[Op, Take] = {
    Op.SL_WYIB: _SLIPPED,                      # the yarn floats past
    Op.SL_WYIF: _SLIPPED,
    Op.WRAP_TURN: _SLIPPED,                    # the yarn goes round the neck of one stitch
    Op.DS: Take(0, 0),                         # the last stitch pulled over
    Op.TWIN: Take(2, 0),
    Op.YO_BO: Take(5, 0),
    Op.SEW_BO: Take(0, 4),
    Op.FASTEN: Take(0, 0),
    Op.GATHER: _SLIPPED,
    Op.BO: Take(2, 0),
    Op.GRAFT: Take(2, 0),
    Op.GRAFT_RIB: Take(2, 0),
    Op.THREE_NEEDLE: Take(2, 0),               # as bound off in the usual way
    Op.WASTE: Take(0, 0),                      # other yarn
    Op.THREAD: Take(0, 0),
    Op.FREE: Take(0, 0),                       # worked before
    Op.PICK_UP: Take(0, 0),
}
"""Where it is not one loop for each that is made. Bound off by a yarn over: two loops and a half; a sewn edge: four
times its width ("A stretchy sewn bind-off", alpacadirect.com; loops counted: "A tidy stretchy chain bind-off",
mathemaknitter.com 2018)."""
_DECREASE_BIND_OFF = Take(4, 0)
"""Each is knitted once, and once more together with the one before (mathemaknitter.com 2018)."""


def take(op: Op, bind_off: BindOff | None) -> Take:
    """What one operation takes."""
    if op is Op.BO and bind_off == "decrease":
        return _DECREASE_BIND_OFF
    if op in MARKERS:
        return Take(0, 0)
    return _TAKES.get(op) or Take(2 * makes(op), 0)
