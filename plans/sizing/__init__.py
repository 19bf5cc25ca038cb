"""From the tape measure to the numbers of a sock, and all that was assumed on the way."""

from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Problem, Reply
from plans.quantities import Gauge, Length, plain_number
from plans.rows.charting import multiple_of
from plans.rows.legs import leg as leg_part
from plans.rows.toes import toe_height
from plans.sizing.calves import PRACTICE_CALF, Rise, calf_of, check_calf
from plans.sizing.cures import foot_too_short
from plans.sizing.directions import check_direction
from plans.sizing.fit import Sock, fit_notes, swatch_notes
from plans.sizing.gauge import Measured, gauge_of, measured
from plans.sizing.limits import check_cast_on, check_counts, check_end, check_measures, check_names, check_yarn
from plans.sizing.measures import field, measure
from plans.sizing.proportions import (
    DEFAULT_EASE_PERCENT,
    MULTIPLE,
    cast_on_of,
    fewest_around,
    finished_foot,
    gusset_of,
    gusset_stitches,
    nearest_around,
    rounds_besides_even,
    rounds_in,
    rounds_there,
    turned_stitches,
)
from plans.sizing.tape import Tape, check_tape, read_tape
from plans.sizing.uppers import rounded, size_upper
from plans.wishes import SockSize, Wishes

__all__ = ["gauge_of", "measured", "size_sock"]

PRACTICE_AROUND = 24
PRACTICE_EVEN_ROUNDS = 4
PRACTICE_LEG_ROUNDS = 4
PRACTICE_CUFF_ROUNDS = 4
_UNUSED_IN_PRACTICE = (
    "foot_length", "shoe", "ball", "ankle", "heel_diagonal", "calf", "leg", "leg_height", "cuff", "ease_percent",
    "around", "cast_on", "gusset", "foot_rounds", "leg_rounds", "cuff_rounds", "calf_shape",
)  # fmt: skip


def size_sock(wishes: Wishes) -> SockSize | tuple[Problem, ...]:
    """Compute one sock's stitches and rounds, or say everything that stands in the way.

    N = the multiple of 4 nearest to ball x (1 - ease) x stitches; even rounds = round(L x rounds) - toe - 2g
    - w, with L the finished foot. Formulas and their sources: `plans.sizing.proportions`.
    """
    always = [*check_names(wishes), *check_counts(wishes), *check_direction(wishes), *check_end(wishes)]
    if wishes.practice:
        return (*always, *check_yarn(wishes)) or _practice(wishes, measured(wishes))
    problems = (*always, *check_measures(wishes), *check_tape(wishes))
    return problems or _size(wishes, read_tape(wishes), measured(wishes))


def _size(wishes: Wishes, tape: Tape, swatch: Measured) -> SockSize | tuple[Problem, ...]:
    gauge = swatch.gauge
    target, around, notes = _around(wishes, tape, gauge)
    fewest = fewest_around(wishes.heel, wishes.toe)
    if around < fewest:
        return (_too_few(around, target, fewest),)
    cast_on = cast_on_of(wishes, around)
    upper = size_upper(wishes, tape.foot, gauge)
    problems = [*check_cast_on(cast_on, around, wishes.toe), *([upper] if isinstance(upper, Problem) else [])]
    if problems or isinstance(upper, Problem):
        return tuple(problems)
    if wrong := tuple(check_calf(wishes, upper.leg_rounds)):
        return wrong
    gusset = gusset_of(wishes, around)
    foot = _foot(wishes, tape, gauge, rounds_besides_even(wishes.toe, cast_on, around, gusset, wishes.heel))
    if foot is None:
        return (foot_too_short(wishes, tape, gauge, around, cast_on),)
    rise = Rise(gauge, around, upper.leg, upper.leg_rounds)
    calf, calf_notes = calf_of(wishes, tape, rise)
    top = around + 2 * calf.pairs if calf else around
    sock = Sock(gauge, around, around + 2 * gusset, top, cast_on, rise)
    return SockSize(
        around=around,
        multiple=multiple_of(wishes.chart),
        cast_on=cast_on,
        toe_rounds=toe_height(wishes.toe, cast_on // 2, around // 2),
        even_rounds=foot.even_rounds,
        gusset=gusset,
        turned=turned_stitches(around, cast_on, wishes.heel),
        leg_rounds=upper.leg_rounds,
        cuff_rounds=upper.cuff_rounds,
        target_circumference=target,
        target_foot=foot.length,
        target_leg=upper.leg,
        calf=calf,
        notes=(
            *tape.notes, *swatch.notes, *notes, *fit_notes(wishes, tape, sock), *foot.notes, *upper.notes, *calf_notes,
        ),
    )


class _Foot(NamedTuple):
    """The sock's foot: how long it is to be, and how many plain rounds make it so."""

    length: Length
    even_rounds: int
    notes: tuple[Reply, ...]


def _foot(wishes: Wishes, tape: Tape, gauge: Gauge, besides: int) -> _Foot | None:
    """Plain rounds of her own, else those that the foot leaves beside toe, gusset and turn; None where it has not."""
    if wishes.foot_rounds is not None:
        made = gauge.height(wishes.foot_rounds + besides)
        note = Reply.of("foot-yours", foot=measure(tape.foot), made=measure(made), rounds=wishes.foot_rounds)
        return _Foot(made, wishes.foot_rounds, (note,))
    foot = finished_foot(tape.foot)
    if besides > rounds_there(foot, gauge):
        return None
    even = max(0, rounds_in(foot, gauge) - besides)
    return _Foot(foot, even, _foot_notes(tape.foot, foot, even + besides, gauge))


def _around(wishes: Wishes, tape: Tape, gauge: Gauge) -> tuple[Length, int, tuple[Reply, ...]]:
    """Circumference aimed at, stitches, and what was chosen or rounded on the way."""
    if wishes.around is not None:
        return gauge.width(wishes.around), wishes.around, ()
    ease = DEFAULT_EASE_PERCENT if wishes.ease_percent is None else wishes.ease_percent
    target = tape.ball * (1 - ease / 100)
    exact = target.mm * gauge.stitches_per_mm
    multiple = multiple_of(wishes.chart)
    around = nearest_around(exact, multiple)
    notes = [] if wishes.ease_percent is not None else [Reply.of("ease-chosen", percent=plain_number(ease))]
    if exact != around:
        values = {"stitches": around, "multiple": multiple}
        notes = [*notes, Reply.of("stitches-rounded", exact=plain_number(exact), **values)]
    return target, around, tuple(notes)


def _too_few(around: int, target: Length, fewest: int) -> Problem:
    """The refusal, with the gauge at which the fewest stitches come out, to the next tenth up."""
    exact = Fraction(fewest - MULTIPLE // 2)
    gauge = Fraction(-(-exact * 1000 // target.mm), 10)
    values = {"stitches": around, "least": fewest}
    return Problem.of("too-few-stitches", "swatch.stitches", **values, gauge=plain_number(gauge))


def _foot_notes(foot: Length, finished: Length, rounds: int, gauge: Gauge) -> tuple[Reply, ...]:
    lengths = {"foot": measure(foot), "finished": measure(finished), "shorter": measure(foot - finished)}
    return (Reply.of("foot-shortened", **lengths), *rounded("foot-rounded", finished, rounds, gauge))


def _practice(wishes: Wishes, swatch: Measured) -> SockSize:
    """The fewest stitches that still show every step, in any yarn; its lengths follow from its counts."""
    gauge = swatch.gauge
    around, cast_on = PRACTICE_AROUND, cast_on_of(wishes.model_copy(update={"cast_on": None}), PRACTICE_AROUND)
    foot = gauge.height(PRACTICE_EVEN_ROUNDS + rounds_besides_even(wishes.toe, cast_on, around, None, wishes.heel))
    leg, width = gauge.height(PRACTICE_LEG_ROUNDS + PRACTICE_CUFF_ROUNDS), gauge.width(around)
    lengths = {"circumference": measure(width), "foot": measure(foot), "leg": measure(leg)}
    unused = [name for name in _UNUSED_IN_PRACTICE if getattr(wishes, name) is not None]
    return SockSize(
        around=around,
        multiple=multiple_of(wishes.chart),
        cast_on=cast_on,
        toe_rounds=toe_height(wishes.toe, cast_on // 2, around // 2),
        even_rounds=PRACTICE_EVEN_ROUNDS,
        gusset=gusset_stitches(around, wishes.heel),
        turned=turned_stitches(around, cast_on, wishes.heel),
        leg_rounds=PRACTICE_LEG_ROUNDS,
        cuff_rounds=PRACTICE_CUFF_ROUNDS,
        target_circumference=width,
        target_foot=foot,
        target_leg=leg,
        calf=PRACTICE_CALF if leg_part(wishes.leg_style).widens else None,
        notes=(
            Reply.of("practice-size", stitches=around, **lengths),
            *(Reply.of("practice-ignores", field=field(name)) for name in unused),
            *swatch.notes,
            *swatch_notes(wishes.swatch, gauge),
        ),
    )
