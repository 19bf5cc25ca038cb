"""A ball of yarn: what it weighs and how long it is, as its band says, or as is usual for the gauge."""

from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Reply
from plans.quantities import Length, plain_number
from plans.sizing.standards import YarnWeight, over_four_inches, yarn_weights
from plans.wishes import Wishes

_USUAL_GRAMS = 100


class Ball(NamedTuple):
    """One ball.

    Attributes:
        skeins: how many there are for the pair; None where she did not say.
        is_known: whether weight and length are both from its band.
    """

    grams: Fraction
    mm: Fraction
    skeins: int | None
    is_known: bool

    @property
    def mm_per_gram(self) -> Fraction:
        """How much a gram of it gives."""
        return self.mm / self.grams


def classes_of(stitches_per_10cm: Fraction) -> tuple[YarnWeight, ...]:
    """Classes of the yarn standard that a gauge belongs to."""
    return yarn_weights(over_four_inches(stitches_per_10cm, Length.of_cm(10)))


def ball_of(wishes: Wishes, stitches_per_10cm: Fraction) -> Ball:
    """The knitter's ball; weight or length that she did not give are those usual for yarn of this gauge."""
    per_gram = Fraction(classes_of(stitches_per_10cm)[0].metres_per_100g * 10)
    grams = wishes.skein.grams if wishes.skein else None
    mm = wishes.skein_length.metres * 1000 if wishes.skein_length else None
    if grams is None:
        grams = Fraction(_USUAL_GRAMS) if mm is None else mm / per_gram
    if mm is None:
        mm = grams * per_gram
    return Ball(grams, mm, wishes.skeins, is_known=wishes.skein is not None and wishes.skein_length is not None)


def class_note(stitches_per_10cm: Fraction) -> Reply:
    """The yarn's class, and the needles that the standard recommends for it."""
    classes = classes_of(stitches_per_10cm)
    thin, thick = classes[0].needle_mm[0], classes[-1].needle_mm[1]
    names = tuple(Reply.of(f"yarn-weight-{each.number}") for each in classes)
    if thick is None:
        return Reply.of("yarn-class-and-up", classes=names, thin=plain_number(thin))
    return Reply.of("yarn-class", classes=names, thin=plain_number(thin), thick=plain_number(thick))
