"""The leg above the ankle: how far it is round it at any height, and how a calf-shaped leg widens to go round it."""

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Problem, Reply
from plans.pattern import Calf, Direction
from plans.quantities import Gauge, Length
from plans.rows.legs import leg as leg_part
from plans.sizing.feet import is_childs
from plans.sizing.measures import is_longer, measure
from plans.sizing.proportions import DEFAULT_EASE_PERCENT, MULTIPLE, rounds_in
from plans.sizing.tape import Tape
from plans.wishes import Wishes

CALF_BEGINS, CALF_WIDEST = Length.of_cm(15), Length.of_cm(30)
"""Legs widen from 15 cm above the heel ("From socks to stockings: calf shaping", jriede.com; 15 to 20 cm: "Sizing
guidelines", Knitty 2023), to about 30 cm in adults (from memory)."""
_ADULT_FOOT = Length.of_cm(25)
_MOST_EASE = Fraction(20)
"""Per cent at the calf: in print 60 stitches become about 80 for women and 96 for men ("From socks to stockings: calf
shaping", jriede.com); at 30 stitches to 10 cm that is 28 and 18 % less than the mean calf of ANSUR II."""
PRACTICE_CALF = Calf(pairs=2, first_round=2, every=2)


def girth_at(tape: Tape, leg: Length) -> tuple[Length, Length]:
    """How far it is round the leg at the top of the sock, and how far off that may be.

    From the ankle to the calf in a straight line between the heights at which a leg begins to widen and is
    widest; on a child's leg these are lower in proportion to the foot.
    """
    begins, widest = _heights(tape)
    up = min(max((leg - begins).mm / (widest - begins).mm, Fraction(0)), Fraction(1))
    girth = tape.ankle + (tape.calf.length - tape.ankle) * up
    return girth, tape.ankle_give_or_take + (tape.calf.give_or_take - tape.ankle_give_or_take) * up


def reaches_calf(tape: Tape, leg: Length) -> bool:
    """Whether a leg comes up to where legs widen."""
    return is_longer(leg, _heights(tape)[0])


def _heights(tape: Tape) -> tuple[Length, Length]:
    scale = tape.foot.mm / _ADULT_FOOT.mm if is_childs(tape.foot) else Fraction(1)
    return CALF_BEGINS * scale, CALF_WIDEST * scale


class Rise(NamedTuple):
    """A leg to be widened.

    Attributes:
        leg: its height, cuff included.
        rounds: those below the cuff.
    """

    gauge: Gauge
    around: int
    leg: Length
    rounds: int


def widened(wishes: Wishes, tape: Tape, rise: Rise) -> Calf | None:
    """Pairs of increases at even intervals; None where the leg needs none, or has no room for any.

    As many as bring the top to the leg there, less twice the ease of the foot and a fifth at the most, by fours so
    that any rib still fits. They stand between the heights at which a leg begins to widen and is widest, every so many
    rounds as there are rounds for each ("Calculating calf increases", actechniques.co.uk 2021); where there is no
    room for that they come closer, in every second round, and begin lower.
    """
    if not reaches_calf(tape, rise.leg):
        return None
    ease = DEFAULT_EASE_PERCENT if wishes.ease_percent is None else wishes.ease_percent
    wanted = girth_at(tape, rise.leg)[0] * (1 - min(2 * ease, _MOST_EASE) / 100)
    more = wanted.mm * rise.gauge.stitches_per_mm - rise.around
    begins, widest = (rounds_in(height, rise.gauge) for height in _heights(tape))
    last = min(rise.rounds, widest)
    pairs = min(2 * -(-more // MULTIPLE), last // 4 * 2)
    if pairs < 1:
        return None
    first = min(max(2, begins + 1), last - 2 * (pairs - 1))
    return Calf(pairs=pairs, first_round=first, every=max(2, (last - first + 1) // pairs))


def check_calf(wishes: Wishes, leg_rounds: int) -> Iterator[Problem]:
    """Increases of her own that the leg has no room for, or above which a rib does not come out."""
    shape = wishes.calf_shape
    if shape is None or not leg_part(wishes.leg_style).widens:
        return
    if shape.last_round > leg_rounds:
        yield Problem.of("calf-shape-too-high", "calf_shape", last=shape.last_round, rounds=leg_rounds)
    if shape.pairs % 2:
        values = {"pairs": shape.pairs, "better": shape.pairs + 1}
        yield Problem.of("calf-shape-uneven", "calf_shape", **values)


def calf_of(wishes: Wishes, tape: Tape, rise: Rise) -> tuple[Calf | None, tuple[Reply, ...]]:
    """How the leg widens, where it is to, and what is said of that.

    From the cuff down it narrows where it would widen, so that the sock is the same; the first round below the cuff
    stays as wide.
    """
    if not leg_part(wishes.leg_style).widens:
        return None, ()
    down = wishes.direction is Direction.CUFF_DOWN
    room = rise._replace(rounds=rise.rounds - 1) if down else rise
    calf = wishes.calf_shape or widened(wishes, tape, room)
    if calf is None:
        return None, (Reply.of("calf-straight", leg=measure(rise.leg)),)
    if down and wishes.calf_shape is None:
        calf = calf.model_copy(update={"first_round": rise.rounds + 1 - calf.last_round})
    top = rise.around + 2 * calf.pairs
    return calf, (
        Reply.of(
            "calf-narrowed" if down else "calf-shaped",
            pairs=calf.pairs,
            first=calf.first_round,
            every=calf.every,
            stitches=top,
            circumference=measure(rise.gauge.width(top)),
        ),
    )
