"""A plan in a sentence: its stitches, what it will measure, and how far off that may be."""

from fractions import Fraction

from plans.conversation import Measure, Reply
from plans.pattern import GiveOrTake, Plan


def summary(plan: Plan) -> Reply:
    """What the pair, or a piece written by hand, will measure."""
    finished, off = plan.finished, plan.give_or_take or GiveOrTake(**_EXACT)
    return Reply.of(
        "pair-summary",
        around=plan.around,
        circumference=_measure(finished.circumference_cm),
        circumference_off=_measure(off.circumference_cm),
        foot=_measure(finished.foot_length_cm),
        foot_off=_measure(off.foot_length_cm),
        leg=_measure(finished.leg_cm),
        leg_off=_measure(off.leg_cm),
    )


_EXACT = dict.fromkeys(("circumference_cm", "foot_length_cm", "leg_cm"), Fraction(0))


def _measure(cm: Fraction) -> Measure:
    return Measure(tenths_mm=round(cm * 100))
