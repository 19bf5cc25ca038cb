"""From the tape measure to the numbers of a sock, and all that was assumed on the way."""

from fractions import Fraction
from itertools import chain

from plans.conversation import Problem, Reply
from plans.quantities import Gauge, Length, plain_number
from plans.rows.toes import toe_schedule
from plans.sizing.cures import foot_too_short
from plans.sizing.fit import fit_notes, swatch_notes
from plans.sizing.limits import check_cast_on, check_measures, check_names, check_swatch
from plans.sizing.measures import field, measure
from plans.sizing.proportions import (
    DEFAULT_EASE_PERCENT,
    FEWEST_AROUND,
    MULTIPLE,
    default_cast_on,
    finished_foot,
    gusset_stitches,
    nearest_around,
    rounds_besides_even,
    rounds_in,
    turned_stitches,
)
from plans.sizing.tape import Tape, read_tape
from plans.sizing.uppers import rounded, size_upper
from plans.wishes import SockSize, Swatch, Wishes

PRACTICE_AROUND = 24
PRACTICE_EVEN_ROUNDS = 4
PRACTICE_LEG_ROUNDS = 4
PRACTICE_CUFF_ROUNDS = 4
_UNUSED_IN_PRACTICE = (
    "foot_length", "shoe", "ball", "ankle", "leg", "cuff", "ease_percent", "around", "cast_on",
)  # fmt: skip


def gauge_of(swatch: Swatch) -> Gauge:
    """Stitches and rounds over exactly 10 cm, from what was counted over the swatch's own width."""
    scale = Length.of_cm(10).mm / swatch.over.mm
    return Gauge(swatch.stitches * scale, swatch.rounds * scale)


def size_sock(wishes: Wishes) -> SockSize | tuple[Problem, ...]:
    """Compute one sock's stitches and rounds, or say everything that stands in the way.

    N = the multiple of 4 nearest to ball x (1 - ease) x stitches; even rounds = round(L x rounds) - toe - 2g
    - w, with L the finished foot. Formulas and their sources: `plans.sizing.proportions`.
    """
    always = [*check_names(wishes), *check_swatch(wishes.swatch)]
    if wishes.practice:
        return tuple(always) or _practice(wishes, gauge_of(wishes.swatch))
    problems = (*always, *check_measures(wishes))
    tape = read_tape(wishes)
    if isinstance(tape, Problem):
        return (*problems, tape)
    return problems or _size(wishes, tape, gauge_of(wishes.swatch))


def _size(wishes: Wishes, tape: Tape, gauge: Gauge) -> SockSize | tuple[Problem, ...]:
    target, around, notes = _around(wishes, tape, gauge)
    if around < FEWEST_AROUND:
        return (_too_few(around, target),)
    cast_on = default_cast_on(around) if wishes.cast_on is None else wishes.cast_on
    upper = size_upper(wishes, tape.foot, gauge)
    problems = [*check_cast_on(cast_on, around), *([upper] if isinstance(upper, Problem) else [])]
    if problems or isinstance(upper, Problem):
        return tuple(problems)
    foot = finished_foot(tape.foot)
    foot_rounds = rounds_in(foot, gauge)
    even_rounds = foot_rounds - rounds_besides_even(wishes.toe, cast_on, around)
    if even_rounds < 0:
        return (foot_too_short(wishes, tape, gauge, around, cast_on),)
    return SockSize(
        around=around,
        multiple=MULTIPLE,
        cast_on=cast_on,
        toe_rounds=len(toe_schedule(wishes.toe, cast_on // 2, around // 2)),
        even_rounds=even_rounds,
        gusset=gusset_stitches(around),
        turned=turned_stitches(around),
        leg_rounds=upper.leg_rounds,
        cuff_rounds=upper.cuff_rounds,
        target_circumference=target,
        target_foot=foot,
        target_leg=upper.leg,
        notes=tuple(chain(
            tape.notes,
            notes,
            fit_notes(wishes, tape, gauge, around, cast_on),
            _foot_notes(tape.foot, foot, foot_rounds, gauge),
            upper.notes,
        )),
    )  # fmt: skip


def _around(wishes: Wishes, tape: Tape, gauge: Gauge) -> tuple[Length, int, tuple[Reply, ...]]:
    """Circumference aimed at, stitches, and what was chosen or rounded on the way."""
    if wishes.around is not None:
        return gauge.width(wishes.around), wishes.around, ()
    ease = DEFAULT_EASE_PERCENT if wishes.ease_percent is None else wishes.ease_percent
    target = tape.ball * (1 - ease / 100)
    exact = target.mm * gauge.stitches_per_mm
    around = nearest_around(exact)
    notes = [] if wishes.ease_percent is not None else [Reply.of("ease-chosen", percent=plain_number(ease))]
    if exact != around:
        values = {"stitches": around, "multiple": MULTIPLE}
        notes = [*notes, Reply.of("stitches-rounded", exact=plain_number(exact), **values)]
    return target, around, tuple(notes)


def _too_few(around: int, target: Length) -> Problem:
    """The refusal, with the gauge at which the fewest stitches come out, to the next tenth up."""
    exact = Fraction(FEWEST_AROUND - MULTIPLE // 2)
    gauge = Fraction(-(-exact * 1000 // target.mm), 10)
    values = {"stitches": around, "least": FEWEST_AROUND}
    return Problem.of("too-few-stitches", "swatch.stitches", **values, gauge=plain_number(gauge))


def _foot_notes(foot: Length, finished: Length, rounds: int, gauge: Gauge) -> tuple[Reply, ...]:
    lengths = {"foot": measure(foot), "finished": measure(finished), "shorter": measure(foot - finished)}
    return (Reply.of("foot-shortened", **lengths), *rounded("foot-rounded", finished, rounds, gauge))


def _practice(wishes: Wishes, gauge: Gauge) -> SockSize:
    """The fewest stitches that still show every step, in any yarn; its lengths follow from its counts."""
    around, cast_on = PRACTICE_AROUND, default_cast_on(PRACTICE_AROUND)
    foot = gauge.height(PRACTICE_EVEN_ROUNDS + rounds_besides_even(wishes.toe, cast_on, around))
    leg, width = gauge.height(PRACTICE_LEG_ROUNDS + PRACTICE_CUFF_ROUNDS), gauge.width(around)
    lengths = {"circumference": measure(width), "foot": measure(foot), "leg": measure(leg)}
    unused = [name for name in _UNUSED_IN_PRACTICE if getattr(wishes, name) is not None]
    return SockSize(
        around=around,
        multiple=MULTIPLE,
        cast_on=cast_on,
        toe_rounds=len(toe_schedule(wishes.toe, cast_on // 2, around // 2)),
        even_rounds=PRACTICE_EVEN_ROUNDS,
        gusset=gusset_stitches(around),
        turned=turned_stitches(around),
        leg_rounds=PRACTICE_LEG_ROUNDS,
        cuff_rounds=PRACTICE_CUFF_ROUNDS,
        target_circumference=width,
        target_foot=foot,
        target_leg=leg,
        notes=(
            Reply.of("practice-size", stitches=around, **lengths),
            *(Reply.of("practice-ignores", field=field(name)) for name in unused),
            *swatch_notes(wishes.swatch, gauge),
        ),
    )
