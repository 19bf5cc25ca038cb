"""The fit check: how far the sock must stretch where, what it gives, and what cures a bad fit. Nothing is refused."""

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Reply, Value
from plans.pattern import Direction, Leg
from plans.quantities import Gauge, Length, plain_number
from plans.rows.charting import lies_around
from plans.rows.legs import leg as leg_part
from plans.rows.toes import toe
from plans.sizing.calves import Rise, girth_at, reaches_calf, widened
from plans.sizing.fit_cures import Cut, edge_cure, girth_cure, heel_cure, heel_loose_cure
from plans.sizing.measures import is_longer, measure
from plans.sizing.proportions import nearest_around, usual_cast_on
from plans.sizing.stretch import COMFORT, PULLED_ON, WORN, edge_gives
from plans.sizing.tape import Tape
from plans.wishes import Swatch, Wishes

TIGHTEST_EASE = Fraction(25)
"""Per cent; the most in print, for ribbing (Eckman, How to Knit Socks, ch. 3)."""
LOOSE = Fraction(4, 60)
"""Wider than the ankle or the heel by more than this hangs loose: four stitches in sixty either way still wear
well ("Ease-y socks", wabi-sabi.ca), and as stitches come by fours a sock cannot be made nearer than half of that."""
_SHAPED = {Leg("straight"): Leg("calf-shaped"), Leg("ribbed"): Leg("ribbed-calf-shaped")}
"""The leg that goes round a calf in place of one that does not."""
_SMALLEST_SWATCH = Length.of_cm(5)
""""Toe up socks with heel flap, part II", southerncrossfibre.com."""


class Sock(NamedTuple):
    """What the check needs to know of a sock.

    Attributes:
        widest: stitches around where foot and gusset meet the heel.
        top: stitches around at the top of the leg.
        rise: the leg.
    """

    gauge: Gauge
    around: int
    widest: int
    top: int
    cast_on: int
    rise: Rise

    @property
    def leg(self) -> Length:
        """Its height, cuff included."""
        return self.rise.leg


def fit_notes(wishes: Wishes, tape: Tape, sock: Sock) -> tuple[Reply, ...]:
    """All doubts about one sock's stitches on this foot, each with its cure; and how far it stretches where."""
    doubts = (
        *_around(wishes, tape, sock),
        *_ankle(wishes, tape, sock),
        *_heel(wishes, tape, sock),
        *_calf(wishes, tape, sock),
        *_edge(wishes, tape, sock),
    )
    return (*swatch_notes(wishes.swatch, sock.gauge), *_cast_on(wishes, sock), *doubts, _checked(wishes, tape, sock))


def swatch_notes(swatch: Swatch, gauge: Gauge) -> Iterator[Reply]:
    """A swatch too narrow to trust, or one whose stitches and rounds look exchanged."""
    if is_longer(_SMALLEST_SWATCH, swatch.over):
        yield Reply.of("swatch-small", length=measure(swatch.over), least=measure(_SMALLEST_SWATCH))
    if gauge.rounds_per_10cm < gauge.stitches_per_10cm:
        values = {"stitches": plain_number(swatch.stitches), "rounds": plain_number(swatch.rounds)}
        yield Reply.of("gauge-more-stitches-than-rounds", **values)


def _around(wishes: Wishes, tape: Tape, sock: Sock) -> Iterator[Reply]:
    around, width = sock.around, sock.gauge.width(sock.around)
    ease = (1 - width.mm / tape.ball.mm) * 100
    values: dict[str, Value] = {"stitches": around, "circumference": measure(width)}
    if wishes.around is not None and ease >= 0:
        yield Reply.of("around-yours", **values, percent=plain_number(ease, 0))
    usual = nearest_around(tape.ball.mm * Fraction(9, 10) * sock.gauge.stitches_per_mm)
    if is_longer(width, tape.ball):
        yield Reply.of("around-larger-than-foot", **values, ball=measure(tape.ball), better=usual)
    if ease > TIGHTEST_EASE:
        percent = plain_number(ease, 0)
        yield Reply.of("around-tight", **values, ball=measure(tape.ball), percent=percent, better=usual)


def _cast_on(wishes: Wishes, sock: Sock) -> Iterator[Reply]:
    least, most = usual_cast_on(sock.around)
    if toe(wishes.toe).cup or wishes.direction is Direction.CUFF_DOWN:
        return
    if wishes.cast_on is not None and not least <= sock.cast_on <= most:
        yield Reply.of("cast-on-unusual", loops=sock.cast_on, least=least, most=most)


def _cut(wishes: Wishes, tape: Tape, sock: Sock) -> Cut:
    return Cut(wishes, sock.gauge, sock.around, sock.widest - sock.around, tape.ball)


def _ankle(wishes: Wishes, tape: Tape, sock: Sock) -> Iterator[Reply]:
    """A leg too wide or too tight for the ankle, by more than an estimated ankle may be off."""
    ankle, spread, width = tape.ankle, tape.ankle_give_or_take, sock.gauge.width(sock.around)
    if is_longer(width, (ankle + spread) * (1 + LOOSE)):
        cure = girth_cure(_cut(wishes, tape, sock), ankle * (1 + LOOSE), tight=False)
        yield Reply.of("leg-wide", circumference=measure(width), ankle=measure(ankle), cure=cure)
    if ankle - spread > width * COMFORT:
        percent = plain_number((ankle.mm / width.mm - 1) * 100, 0)
        cure = girth_cure(_cut(wishes, tape, sock), ankle * (1 / COMFORT), tight=True)
        values = {"circumference": measure(width), "ankle": measure(ankle)}
        yield Reply.of("leg-tight", **values, percent=percent, cure=cure)


def _heel(wishes: Wishes, tape: Tape, sock: Sock) -> Iterator[Reply]:
    """The heel must lie in foot and gusset, and go through the leg.

    At 10 % ease and a gusset of half the stitches, 0.90 x 1.50 = 1.35 of the ball, unstretched.
    """
    heel, spread = tape.heel_girth
    width, leg = sock.gauge.width(sock.widest), sock.gauge.width(sock.around)
    most = min(width * WORN, leg * PULLED_ON)
    if is_longer(heel - spread, most):
        cure = heel_cure(_cut(wishes, tape, sock), heel - spread)
        yield Reply.of("heel-tight", heel=measure(heel), most=measure(most), cure=cure)
    if is_longer(width, (heel + spread) * (1 + LOOSE)):
        cure = heel_loose_cure(_cut(wishes, tape, sock), heel * (1 + LOOSE))
        yield Reply.of("heel-loose", heel=measure(heel), circumference=measure(width), cure=cure)


def _calf(wishes: Wishes, tape: Tape, sock: Sock) -> Iterator[Reply]:
    """A leg that reaches the calf, and is too tight for it by more than an estimated calf may be off."""
    if not reaches_calf(tape, sock.leg):
        return
    yield from tape.calf_notes
    width = sock.gauge.width(sock.top)
    if _is_tight(tape, sock.leg, width):
        girth, _ = girth_at(tape, sock.leg)
        values = {"leg": measure(sock.leg), "circumference": measure(width), "girth": measure(girth)}
        percent = plain_number((girth.mm / width.mm - 1) * 100, 0)
        yield Reply.of("calf-tight", **values, percent=percent, cure=_calf_cure(wishes, tape, sock))


def _is_tight(tape: Tape, leg: Length, width: Length) -> bool:
    girth, spread = girth_at(tape, leg)
    return reaches_calf(tape, leg) and is_longer(girth - spread, width * COMFORT)


def _calf_cure(wishes: Wishes, tape: Tape, sock: Sock) -> Reply:
    """The calf-shaped leg where that is wide enough; else the highest that is not too tight, in half centimetres."""
    widens = leg_part(wishes.leg_style).widens or lies_around(wishes.chart)
    calf = None if widens else widened(wishes, tape, sock.rise)
    if calf and not _is_tight(tape, sock.leg, sock.gauge.width(sock.around + 2 * calf.pairs)):
        return Reply.of("cure-calf-shaped", name=_SHAPED[wishes.leg_style])
    heights = (Length(Fraction(5 * halves)) for halves in range(-(-sock.leg.mm // 5) - 1, 0, -1))
    width = sock.gauge.width(sock.around)
    return Reply.of("cure-leg", length=measure(next(leg for leg in heights if not _is_tight(tape, leg, width))))


def _edge(wishes: Wishes, tape: Tape, sock: Sock) -> Iterator[Reply]:
    """The edge must let the heel through, and the top of the leg."""
    gives, width = edge_gives(wishes.bind_off), sock.gauge.width(sock.top)
    girth, spread = max((tape.heel_girth, girth_at(tape, sock.leg)))
    if is_longer(girth - spread, width * gives):
        cure = edge_cure(wishes, (girth - spread).mm / width.mm)
        values = {"circumference": measure(width), "girth": measure(girth), "gives": measure(width * gives)}
        yield Reply.of("edge-tight", **values, cure=cure)


def _checked(wishes: Wishes, tape: Tape, sock: Sock) -> Reply:
    gauge = sock.gauge
    heel = tape.heel_girth.length
    return Reply.of(
        "fit-checked",
        ball=_stretched(tape.ball, gauge.width(sock.around)),
        heel=_stretched(heel, gauge.width(sock.widest)),
        leg=_stretched(girth_at(tape, sock.leg)[0], gauge.width(sock.top)),
        edge=_stretched(max(heel, girth_at(tape, sock.leg)[0]), gauge.width(sock.top)),
        gives=plain_number((edge_gives(wishes.bind_off) - 1) * 100, 0),
    )


def _stretched(girth: Length, width: Length) -> str:
    """By how many per cent the fabric opens; nought where it lies loose."""
    return plain_number(max(girth.mm / width.mm - 1, Fraction(0)) * 100, 0)


