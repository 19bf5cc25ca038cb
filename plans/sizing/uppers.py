"""Leg and cuff in rounds: as wished, else in proportion to the foot."""

from fractions import Fraction
from itertools import count
from typing import NamedTuple

from plans.conversation import Problem, Reply
from plans.quantities import Gauge, Length
from plans.sizing.measures import is_longer, measure
from plans.sizing.proportions import rounds_in
from plans.wishes import Height, Wishes

_LEG_OF_FOOT = {Height.ANKLE: Fraction(2, 10), Height.CREW: Fraction(6, 10), Height.KNEE: Fraction(13, 10)}
"""Of an adult's foot of 25 cm: 5 cm, just over the ankle bone (common practice); 15 cm, as 11 cm and 5 cm of rib are
usual ("Calculating calf increases", actechniques.co.uk 2021); 32 cm, below the knee (from memory: the hollow of the
knee is 1.6 foot lengths above the floor, the top of the heel a quarter of one)."""
_DEEPEST_CUFF = Length.of_cm(4)


class Upper(NamedTuple):
    """The sock above the heel.

    Attributes:
        leg: aimed at, cuff included.
        leg_rounds: without the cuff.
    """

    leg: Length
    leg_rounds: int
    cuff_rounds: int
    notes: tuple[Reply, ...]


def size_upper(wishes: Wishes, foot: Length, gauge: Gauge) -> Upper | Problem:
    """Rounds of leg and cuff.

    A leg not wished for is 0.6 of the foot to the half centimetre, or as high as its name says, and never under twice
    a cuff wished for; a cuff not wished for is 4 cm, or a third of the leg where that is less (our choice).
    """
    leg = wishes.leg or default_leg(foot, wishes.cuff, wishes.leg_height or Height.CREW)
    cuff = _size_cuff(wishes, leg, gauge)
    if isinstance(cuff, Problem):
        return cuff
    cuff_rounds, cuff_notes = cuff
    if wishes.leg_rounds is not None:
        return Upper(gauge.height(wishes.leg_rounds + cuff_rounds), wishes.leg_rounds, cuff_rounds, cuff_notes)
    if rounds_in(leg, gauge) <= cuff_rounds:
        if wishes.leg:
            return _too_short(wishes, leg, gauge)
        leg = gauge.height(cuff_rounds + 1)
    notes = [] if wishes.leg else [Reply.of("leg-chosen", length=measure(leg))]
    notes += [Reply.of("leg-height-unused")] if wishes.leg and wishes.leg_height else []
    total = rounds_in(leg, gauge)
    notes += [*cuff_notes, *rounded("leg-rounded", leg, total, gauge)]
    return Upper(leg, total - cuff_rounds, cuff_rounds, tuple(notes))


def _size_cuff(wishes: Wishes, leg: Length, gauge: Gauge) -> tuple[int, tuple[Reply, ...]] | Problem:
    """Rounds of the cuff: hers, as deep as wished, or as usual and then at least one."""
    if wishes.cuff_rounds is not None:
        return wishes.cuff_rounds, ()
    cuff = wishes.cuff or default_cuff(leg)
    rounds = rounds_in(cuff, gauge)
    if wishes.cuff and rounds == 0:
        return Problem.of("cuff-too-short", "cuff", cuff=measure(cuff), least=measure(gauge.height(1)))
    notes = [] if wishes.cuff else [Reply.of("cuff-chosen", length=measure(cuff))]
    if rounds == 0:
        return 1, (*notes, Reply.of("cuff-at-least-one-round", made=measure(gauge.height(1))))
    return rounds, (*notes, *rounded("cuff-rounded", cuff, rounds, gauge))


def default_leg(foot: Length, cuff: Length | None, height: Height = Height.CREW) -> Length:
    """In proportion to the foot, to the half centimetre, or twice the cuff."""
    leg = Length(Fraction(5 * round(foot.mm * _LEG_OF_FOOT[height] / 5)))
    return leg if cuff is None else max(leg, cuff * 2)


def default_cuff(leg: Length) -> Length:
    """4 cm, or a third of the leg."""
    return min(_DEEPEST_CUFF, leg * Fraction(1, 3))


def rounded(key: str, wanted: Length, rounds: int, gauge: Gauge) -> tuple[Reply, ...]:
    """A note where whole rounds make another length than was wanted, to the millimetre in which it is said."""
    made = gauge.height(rounds)
    if not is_longer(made, wanted) and not is_longer(wanted, made):
        return ()
    return (Reply.of(key, wanted=measure(wanted), made=measure(made), rounds=rounds),)


def _too_short(wishes: Wishes, leg: Length, gauge: Gauge) -> Problem:
    """The refusal, with the shortest leg in whole millimetres that has a round below its cuff."""
    def has_room(taller: Length) -> bool:
        return rounds_in(taller, gauge) > _cuff_rounds(wishes, taller, gauge)

    taller = (Length(Fraction(mm)) for mm in count(int(leg.mm) + 1))
    least = next(length for length in taller if has_room(length))
    cuff = wishes.cuff or gauge.height(_cuff_rounds(wishes, leg, gauge))
    return Problem.of("leg-too-short", "leg", leg=measure(leg), cuff=measure(cuff), least=measure(least))


def _cuff_rounds(wishes: Wishes, leg: Length, gauge: Gauge) -> int:
    return wishes.cuff_rounds or max(1, rounds_in(wishes.cuff or default_cuff(leg), gauge))
