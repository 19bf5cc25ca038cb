"""A plan in a sentence: its stitches, what it will measure, and how far off that may be."""

from fractions import Fraction

from plans.conversation import Measure, Reply
from plans.pattern import Plan


def summary(plan: Plan) -> Reply:
    """What the pair, or a piece written by hand, will measure."""
    finished = plan.finished
    if plan.written is not None:
        around, height = _measure(finished.circumference_cm), _measure(finished.height_cm or Fraction(0))
        return Reply.of("piece-summary", around=plan.around, circumference=around, height=height)
    return Reply.of(
        "pair-summary",
        around=plan.around,
        circumference=_measure(finished.circumference_cm),
        circumference_off=_measure(finished.circumference_off_cm),
        foot=_measure(finished.foot_length_cm),
        foot_off=_measure(finished.foot_length_off_cm),
        leg=_measure(finished.leg_cm),
        leg_off=_measure(finished.leg_off_cm),
    )


def _measure(cm: Fraction) -> Measure:
    return Measure(tenths_mm=round(cm * 100))
