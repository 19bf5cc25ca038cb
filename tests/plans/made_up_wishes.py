"""Invented knitters: every foot from an infant's to EU 50, every yarn from lace to bulky, and odd ones."""

from fractions import Fraction

from hypothesis import strategies as st

from plans.amounts import Thread, Weight
from plans.files.fields import PAIR_NEEDLES
from plans.pattern import BindOff, Cuff, Direction, Heel, Increase, Leg, Sole, Toe
from plans.quantities import Length
from plans.sizing.directions import serving
from plans.wishes import Count, Height, Swatch, Wishes, Worked

INFANT_MM, EU_50_MM = 80, 320
LACE, BULKY = 40, 12
UP = Direction.TOE_UP


def tenths(least: int, most: int) -> st.SearchStrategy[Fraction]:
    """Numbers written with one decimal."""
    return st.integers(10 * least, 10 * most).map(lambda tenth: Fraction(tenth, 10))


def lengths(least_mm: int, most_mm: int) -> st.SearchStrategy[Length]:
    """Lengths in whole millimetres."""
    return st.integers(least_mm, most_mm).map(lambda mm: Length(Fraction(mm)))


def seldom(numbers: st.SearchStrategy[int]) -> st.SearchStrategy[int | None]:
    """Now and then a multiple of 4, now and then any number, mostly none."""
    return st.none() | st.none() | numbers | numbers.map(lambda number: number - number % 4)


@st.composite
def swatches(draw: st.DrawFn) -> Swatch:
    """Lace to bulky; rounds 0.9 to 1.7 times the stitches."""
    over = draw(lengths(40, 160))
    stitches = draw(tenths(BULKY, LACE))
    rounds = stitches * draw(st.integers(90, 170)) / 100
    return Swatch(stitches=stitches * over.mm / 100, rounds=rounds * over.mm / 100, over=over)


@st.composite
def feet(draw: st.DrawFn) -> dict[str, Length | None]:
    """A foot of any build, measured all over or only in length."""
    foot = draw(lengths(INFANT_MM, EU_50_MM))
    ball = foot * draw(st.integers(80, 130)) * Fraction(1, 100)
    ankle = ball * draw(st.integers(80, 108)) * Fraction(1, 100)
    leg = draw(lengths(10, 400))
    return {
        "foot_length": foot,
        "ball": draw(st.sampled_from([None, ball])),
        "ankle": draw(st.sampled_from([None, ankle])),
        "leg": draw(st.sampled_from([None, leg])),
        "cuff": draw(st.none() | lengths(2, 100)),
        "heel_diagonal": draw(st.none() | st.integers(110, 160).map(lambda percent: ball * Fraction(percent, 100))),
        "calf": draw(st.none() | st.integers(90, 190).map(lambda percent: ball * Fraction(percent, 100))),
    }


@st.composite
def yarn(draw: st.DrawFn) -> dict[str, object]:
    """A needle and balls of yarn, or some of it, or none."""
    return {
        "needle": draw(st.none() | lengths(2, 8)),
        "skein": draw(st.none() | st.integers(10, 200).map(lambda grams: Weight(Fraction(grams)))),
        "skein_length": draw(st.none() | st.integers(20, 900).map(lambda metres: Thread(Fraction(metres)))),
        "skeins": draw(st.none() | st.integers(1, 6)),
    }


@st.composite
def counts(draw: st.DrawFn) -> Count:
    """Anything that may be counted, and how."""
    numbers = st.none() | st.fractions(0, 1000)
    return Count(
        stitches=draw(numbers), rounds=draw(numbers), over=draw(st.fractions(0, 1000).map(Length)),
        worked=draw(st.sampled_from(Worked)), washed=draw(st.booleans()),
    )  # fmt: skip


@st.composite
def wishes(draw: st.DrawFn) -> Wishes:
    """Ordinary knitters, and those who choose their own counts, well or badly; now and then from the cuff down."""
    way = draw(st.sampled_from([UP, UP, UP, Direction.CUFF_DOWN]))
    return Wishes(
        direction=way,
        swatch=draw(swatches()),
        **draw(feet()),
        ease_percent=draw(st.none() | tenths(0, 40)),
        around=draw(seldom(st.integers(0, 120))),
        cast_on=draw(seldom(st.integers(0, 60))) if way is UP else None,
        gusset=draw(st.none() | st.none() | st.integers(1, 30)),
        **draw(yarn()),
        toe=draw(st.sampled_from([Toe(name) for name in serving("toe", way)])),
        increase=draw(st.sampled_from(Increase)),
        sole=draw(st.sampled_from(Sole)),
        leg_style=draw(st.sampled_from([Leg(name) for name in serving("leg_style", way)])),
        cuff_style=draw(st.sampled_from([Cuff(name) for name in serving("cuff_style", way)])),
        needles=draw(st.sampled_from(PAIR_NEEDLES)),
        one_at_a_time=draw(st.booleans()),
        leg_height=draw(st.none() | st.sampled_from(Height)),
        heel=draw(st.sampled_from([Heel(name) for name in serving("heel", way)])),
        bind_off=draw(st.sampled_from([BindOff(name) for name in serving("bind_off", way)])),
        practice=draw(st.sampled_from([False, False, False, False, False, True])),
    )


@st.composite
def absurd_wishes(draw: st.DrawFn) -> Wishes:
    """Anything the types allow."""
    numbers = st.fractions(0, 10_000) | st.sampled_from([Fraction(0), Fraction(1, 10**6)])
    any_length = st.none() | numbers.map(Length)
    return Wishes(
        name=draw(st.text(max_size=3)),
        socks=draw(st.tuples(st.text(max_size=2), st.text(max_size=2))),
        swatch=Swatch(stitches=draw(numbers), rounds=draw(numbers), over=Length(draw(numbers))),
        shoe=draw(st.none() | st.text(max_size=8) | st.sampled_from(["EU 39", "US 8", "EU 0"])),
        **{name: draw(any_length) for name in (
            "foot_length", "ball", "ankle", "heel_diagonal", "calf", "leg", "cuff", "needle",
        )},
        counts=tuple(draw(st.lists(counts(), max_size=2))),
        **{name: draw(st.none() | st.integers()) for name in (
            "gusset", "foot_rounds", "leg_rounds", "cuff_rounds", "skeins",
        )},
        skein=draw(st.none() | numbers.map(Weight)),
        skein_length=draw(st.none() | numbers.map(Thread)),
        ease_percent=draw(st.none() | numbers),
        around=draw(st.none() | st.integers()),
        cast_on=draw(st.none() | st.integers()),
        practice=draw(st.booleans()),
    )
