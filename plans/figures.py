"""Numbers that a plan says of itself: its gauge, what it will measure, how its leg widens."""

from fractions import Fraction
from typing import Annotated

from pydantic import BeforeValidator, Field, PlainSerializer

from plans.record import Record


def _decimal(value: object) -> object:
    return Fraction(str(value)) if isinstance(value, (int, float)) and not isinstance(value, bool) else value


Decimal = Annotated[Fraction, BeforeValidator(_decimal), PlainSerializer(float, return_type=float)]
"""An exact number inside, a plain JSON number outside."""


class PlanGauge(Record):
    """Stitches and rounds over 10 cm."""

    stitches_per_10cm: Decimal
    rounds_per_10cm: Decimal


class Finished(Record):
    """What the socks will measure, relaxed, in cm."""

    circumference_cm: Decimal
    foot_length_cm: Decimal
    leg_cm: Decimal
    height_cm: Decimal | None = None           # of a piece that is no sock


class GiveOrTake(Record):
    """How far off the finished measures may be, in cm, as far as the swatches tell: nineteen times in twenty."""

    circumference_cm: Decimal
    foot_length_cm: Decimal
    leg_cm: Decimal


class Calf(Record):
    """How the back of a leg widens towards the calf: pairs of increases at its centre.

    Attributes:
        first_round: the leg's round with the first pair.
        every: rounds from one pair to the next.
    """

    pairs: Annotated[int, Field(ge=1)]
    first_round: Annotated[int, Field(ge=2)]
    every: Annotated[int, Field(ge=2)]

    @property
    def last_round(self) -> int:
        """The leg's round with the last pair."""
        return self.first_round + self.every * (self.pairs - 1)

    def before(self, number: int) -> int:
        """Pairs made before a round of the leg."""
        return min(self.pairs, max(0, -((self.first_round - number) // self.every)))
