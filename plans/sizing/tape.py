"""The tape's numbers for one foot: as measured, else from the shoe, else estimated, and said to be."""

from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Problem, Reply
from plans.quantities import Length
from plans.sizing.feet import Estimate, estimate_ankle, estimate_ball, is_childs
from plans.sizing.measures import measure
from plans.sizing.shoes import parse_shoe
from plans.wishes import Wishes


class Tape(NamedTuple):
    """All three measures of a foot.

    Attributes:
        ankle_give_or_take: nothing where it was measured.
        notes: which of them were not measured.
    """

    foot: Length
    ball: Length
    ankle: Length
    ankle_give_or_take: Length
    notes: tuple[Reply, ...]


def read_tape(wishes: Wishes) -> Tape | Problem:
    """Fill in what was not measured; no foot at all, or a shoe size that tells no length, is a problem."""
    found = _foot(wishes)
    if isinstance(found, Problem):
        return found
    foot, notes = found
    ball = wishes.ball
    if ball is None:
        guess = estimate_ball(foot)
        ball, notes = guess.length, [*notes, _estimated("ball-estimated", guess)]
        if is_childs(foot):
            notes = [*notes, Reply.of("child-estimated")]
    ankle = Estimate(wishes.ankle, Length(Fraction(0))) if wishes.ankle else estimate_ankle(ball)
    if wishes.ankle is None:
        notes = [*notes, _estimated("ankle-estimated", ankle)]
    return Tape(foot, ball, *ankle, tuple(notes))


def _foot(wishes: Wishes) -> tuple[Length, list[Reply]] | Problem:
    if wishes.foot_length is not None:
        return wishes.foot_length, []
    if wishes.shoe is None:
        return Problem.of("foot-missing", "foot_length")
    shoe = parse_shoe(wishes.shoe)
    if isinstance(shoe, Problem):
        return shoe
    values = {"length": measure(shoe.foot), "give_or_take": measure(shoe.give_or_take)}
    return shoe.foot, [Reply.of("foot-from-shoe", shoe=str(shoe), **values)]


def _estimated(key: str, guess: Estimate) -> Reply:
    return Reply.of(key, length=measure(guess.length), give_or_take=measure(guess.give_or_take))
