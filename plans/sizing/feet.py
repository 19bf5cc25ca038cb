"""What one measure of a foot lets us guess of another: for what the knitter has not measured.

Adults: lines through ANSUR II, the US Army's anthropometric survey of 2012 (public domain; 4,082 men and
1,986 women), fitted in mm with L = foot length: ball = 45.8 + 0.754 L, residual sd 10.6; ankle = 0.922 x
ball, sd 0.050. Nobody in it has a child's foot: below `CHILD` each line is replaced by the ratio it has
there, so that nothing jumps, and the uncertainty is set to a tenth (our own caution, no source).
"""

from fractions import Fraction
from typing import NamedTuple

from plans.quantities import Length

CHILD = Length(Fraction(210))
"""Shorter feet are taken for children's; a twentieth of the survey's women have less than 226 mm."""

_ANKLE_OF_BALL = Fraction("0.922")
_ANKLE_SPREAD = Fraction("0.050")
_CHILD_SPREAD = Fraction("0.1")
HEEL_OF_BALL = Fraction("1.35")
"""Front of the ankle round the back of the heel, over ball: 1.35, "Sizing guidelines", Knitty 2023.

ANSUR II gives 1.363, sd 0.049.
"""


class Estimate(NamedTuple):
    """A guess, and how far off nineteen feet in twenty are at most (two standard deviations)."""

    length: Length
    give_or_take: Length


def is_childs(foot: Length) -> bool:
    """Whether a foot is shorter than the adults the lines were fitted to."""
    return foot < CHILD


def estimate_ball(foot: Length) -> Estimate:
    """Circumference at the ball from the length of the foot."""
    adult = _ball_line(max(foot, CHILD))
    if not is_childs(foot):
        return Estimate(adult, Length(2 * Fraction("10.6")))
    ball = adult * (foot.mm / CHILD.mm)
    return Estimate(ball, ball * _CHILD_SPREAD)


def _ball_line(foot: Length) -> Length:
    return Length(Fraction("45.8") + Fraction("0.754") * foot.mm)


def estimate_ankle(ball: Length) -> Estimate:
    """Circumference at the narrowest place above the ankle bones from that at the ball.

    A magazine's survey says 1.00 ("Sizing guidelines", Knitty 2023); six thousand measured adults say less.
    """
    return Estimate(ball * _ANKLE_OF_BALL, ball * (2 * _ANKLE_SPREAD))


def estimate_heel(ball: Length) -> Length:
    """The longest way round that the sock must pass: front of the ankle, round the back of the heel."""
    return ball * HEEL_OF_BALL
