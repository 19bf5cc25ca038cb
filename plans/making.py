"""From wishes to a proven plan; the only place that hands one out."""

from collections.abc import Iterator
from fractions import Fraction

from plans.conversation import Measure, Problem, Reply
from plans.files import wishes_text
from plans.pattern import GiveOrTake, Plan
from plans.proof import prove
from plans.quantities import Gauge, Length
from plans.record import Record
from plans.rows.charting import lies_around, unfitting
from plans.rows.joining import join
from plans.sizing import measured, size_sock
from plans.sizing.gauge import Measured
from plans.wishes import SockSize, Wishes
from plans.yarn.enough import yarn_notes


class Made(Record):
    """A proven plan, and what was estimated, rounded or looks doubtful on the way."""

    plan: Plan
    notes: tuple[Reply, ...] = ()


def make_plan(wishes: Wishes) -> Made | tuple[Problem, ...]:
    """Size the sock, write its rows, prove them; or say all that stands in the way. Raises nothing."""
    size = size_sock(wishes)
    if isinstance(size, tuple):
        return size
    if wishes.chart is not None and (wrong := unfitting(wishes.chart, size.around)) is not None:
        return (Problem.of(wrong[0], "chart", **wrong[1]),)
    if wishes.chart is not None and size.calf is not None and lies_around(wishes.chart):
        return (Problem.of("chart-on-calf", "leg_style", name=wishes.chart.name),)
    swatch = measured(wishes)
    plan = _with_spread(join(wishes, size, swatch.gauge), swatch, wishes)
    problems = (*prove(plan), *_beside_target(plan, size, swatch.gauge))
    return problems or Made(plan=plan, notes=(*size.notes, *_lie_notes(wishes), *yarn_notes(plan, wishes)))


def _lie_notes(wishes: Wishes) -> Iterator[Reply]:
    """That double-pointed needles hold one sock alone, where she did not say so."""
    if wishes.needles.pointed and not wishes.one_at_a_time:
        yield Reply.of("needles-hold-one")


def _with_spread(plan: Plan, swatch: Measured, wishes: Wishes) -> Plan:
    """The plan with what it was made from, and how far off its measures may be, to a tenth of a millimetre."""
    finished = plan.finished
    off = GiveOrTake(
        circumference_cm=_hundredth(finished.circumference_cm * swatch.stitches.share),
        foot_length_cm=_hundredth(finished.foot_length_cm * swatch.rounds.share),
        leg_cm=_hundredth(finished.leg_cm * swatch.rounds.share),
    )
    return plan.model_copy(update={"give_or_take": off, "wishes": wishes_text(wishes)})


def _hundredth(cm: Fraction) -> Fraction:
    return Fraction(round(cm * 100), 100)


def _beside_target(plan: Plan, size: SockSize, gauge: Gauge) -> Iterator[Problem]:
    """Finished circumference within half the multiple of what was aimed at, lengths within one round."""
    finished, one_round = plan.finished, gauge.height(1)
    half_multiple = gauge.width(size.multiple) * Fraction(1, 2)
    for key, made, wanted, tolerance in (
        ("circumference-off", finished.circumference_cm, size.target_circumference, half_multiple),
        ("foot-length-off", finished.foot_length_cm, size.target_foot, one_round),
        ("leg-length-off", finished.leg_cm, size.target_leg, one_round),
    ):
        if abs(made - wanted.cm) > tolerance.cm:
            yield Problem.of(key, found=_measure(Length.of_cm(made)), wanted=_measure(wanted))


def _measure(length: Length) -> Measure:
    return Measure(tenths_mm=round(length.mm * 10))
