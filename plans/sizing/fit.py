"""Doubts about the fit: nothing is refused, all is said."""

from collections.abc import Iterator
from fractions import Fraction

from plans.conversation import Reply, Value
from plans.quantities import Gauge, Length, plain_number
from plans.sizing.feet import estimate_heel
from plans.sizing.measures import is_longer, measure
from plans.sizing.proportions import gusset_stitches, usual_cast_on
from plans.sizing.tape import Tape
from plans.wishes import Swatch, Wishes

STRETCH = Fraction(3, 2)
"""What plain knitted fabric gives around at the most, over its relaxed width (common practice)."""
COMFORT = Fraction(5, 4)
"""Half of that: what it may be stretched all day (our own bound)."""
_TIGHTEST_EASE = Fraction(25)
"""Per cent; the most in print, for ribbing (Eckman, How to Knit Socks, ch. 3)."""
_SMALLEST_SWATCH = Length.of_cm(5)
""""Toe up socks with heel flap, part II", southerncrossfibre.com."""


def fit_notes(wishes: Wishes, tape: Tape, gauge: Gauge, around: int, cast_on: int) -> tuple[Reply, ...]:
    """All doubts about one sock's stitches on this foot."""
    return (
        *swatch_notes(wishes.swatch, gauge),
        *_around(wishes, tape, gauge, around),
        *_cast_on(wishes, around, cast_on),
        *_ankle(tape, gauge.width(around)),
        *_heel(tape.ball, gauge, around),
    )


def swatch_notes(swatch: Swatch, gauge: Gauge) -> Iterator[Reply]:
    """A swatch too narrow to trust, or one whose stitches and rounds look exchanged."""
    if is_longer(_SMALLEST_SWATCH, swatch.over):
        yield Reply.of("swatch-small", length=measure(swatch.over), least=measure(_SMALLEST_SWATCH))
    if gauge.rounds_per_10cm < gauge.stitches_per_10cm:
        values = {"stitches": plain_number(swatch.stitches), "rounds": plain_number(swatch.rounds)}
        yield Reply.of("gauge-more-stitches-than-rounds", **values)


def _around(wishes: Wishes, tape: Tape, gauge: Gauge, around: int) -> Iterator[Reply]:
    width = gauge.width(around)
    ease = (1 - width.mm / tape.ball.mm) * 100
    values: dict[str, Value] = {"stitches": around, "circumference": measure(width)}
    if wishes.around is not None and ease >= 0:
        yield Reply.of("around-yours", **values, percent=plain_number(ease, 0))
    if is_longer(width, tape.ball):
        yield Reply.of("around-larger-than-foot", **values, ball=measure(tape.ball))
    if ease > _TIGHTEST_EASE:
        yield Reply.of("around-tight", **values, ball=measure(tape.ball), percent=plain_number(ease, 0))


def _cast_on(wishes: Wishes, around: int, cast_on: int) -> Iterator[Reply]:
    least, most = usual_cast_on(around)
    if wishes.cast_on is not None and not least <= cast_on <= most:
        yield Reply.of("cast-on-unusual", loops=cast_on, least=least, most=most)


def _ankle(tape: Tape, width: Length) -> Iterator[Reply]:
    """A leg too wide or too tight for the ankle, by more than an estimated ankle may be off."""
    ankle, spread = tape.ankle, tape.ankle_give_or_take
    if is_longer(width, ankle + spread):
        yield Reply.of("leg-wide", circumference=measure(width), ankle=measure(ankle))
    if ankle - spread > width * COMFORT:
        percent = plain_number((ankle.mm / width.mm - 1) * 100, 0)
        yield Reply.of("leg-tight", circumference=measure(width), ankle=measure(ankle), percent=percent)


def _heel(ball: Length, gauge: Gauge, around: int) -> Iterator[Reply]:
    """The heel must go through foot and gusset: at 10 % ease 0.90 x 1.50 = 1.35 of the ball, unstretched."""
    heel, most = estimate_heel(ball), gauge.width(around + 2 * gusset_stitches(around)) * STRETCH
    if is_longer(heel, most):
        yield Reply.of("heel-tight", heel=measure(heel), most=measure(most))
