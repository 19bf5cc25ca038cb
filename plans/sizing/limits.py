"""Measurements that no sock can have, and numbers that contradict each other."""

from collections.abc import Iterator
from fractions import Fraction

from plans.conversation import Problem, Value
from plans.quantities import Length, plain_number
from plans.sizing.measures import field, measure
from plans.sizing.proportions import FEWEST_AROUND, MOST_AROUND, MULTIPLE
from plans.sizing.shoes import LONGEST_FOOT, SHORTEST_FOOT
from plans.wishes import Swatch, Wishes

LENGTHS = {
    "foot_length": (SHORTEST_FOOT, LONGEST_FOOT),
    "ball": (Length.of_cm(5), Length.of_cm(45)),
    "ankle": (Length.of_cm(5), Length.of_cm(45)),
    "leg": (Length.of_cm(1), Length.of_cm(80)),
    "cuff": (Length(Fraction(2)), Length.of_cm(40)),
}
"""Shortest and longest of each measure: from before birth to beyond any living foot."""

SWATCH_WIDTHS = (Length.of_cm(1), Length.of_cm(100))
GAUGES = {"stitches": (4, 80), "rounds": (4, 120)}
"""Over 10 cm: from arm-thick yarn to sewing thread."""
EASE_PERCENTS = (0, 40)
FEWEST_CAST_ON = 4


def check_swatch(swatch: Swatch) -> Iterator[Problem]:
    """What is wrong with the gauge."""
    if not SWATCH_WIDTHS[0] <= swatch.over <= SWATCH_WIDTHS[1]:
        yield _length_problem("swatch.over", swatch.over, SWATCH_WIDTHS)
        return
    for name, counted in (("stitches", swatch.stitches), ("rounds", swatch.rounds)):
        least, most = GAUGES[name]
        gauge = counted * 100 / swatch.over.mm
        where = f"swatch.{name}"
        if counted == 0:
            yield Problem.of("gauge-zero", where, field=field(name))
        elif not least <= gauge <= most:
            values: dict[str, Value] = {"gauge": plain_number(gauge), "least": least, "most": most}
            yield Problem.of("gauge-out-of-range", where, field=field(name), **values)


def check_names(wishes: Wishes) -> Iterator[Problem]:
    """Socks that cannot be told apart by name, or have none."""
    names = [name.strip().casefold() for name in wishes.socks]
    if not wishes.name.strip():
        yield Problem.of("text-empty", "name", field=field("name"))
    if not all(names):
        yield Problem.of("text-empty", "socks", field=field("socks"))
    elif names[0] == names[1]:
        yield Problem.of("names-alike", "socks", name=wishes.socks[0])


def check_measures(wishes: Wishes) -> Iterator[Problem]:
    """Lengths, ease and counts beyond any sock."""
    for name, bounds in LENGTHS.items():
        length = getattr(wishes, name)
        if length is not None and not bounds[0] <= length <= bounds[1]:
            yield _length_problem(name, length, bounds)
    ease = wishes.ease_percent
    least, most = EASE_PERCENTS
    if ease is not None and not least <= ease <= most:
        shown = plain_number(ease)
        yield Problem.of("ease-out-of-range", "ease_percent", percent=shown, least=least, most=most)
    yield from check_around(wishes.around)


def check_around(around: int | None) -> Iterator[Problem]:
    """A stitch count of her own that no sock can be knitted on, with the nearest that can."""
    if around is None:
        return
    if around < FEWEST_AROUND:
        yield Problem.of("around-too-few", "around", stitches=around, least=FEWEST_AROUND)
    elif around > MOST_AROUND:
        yield Problem.of("around-too-many", "around", stitches=around, most=MOST_AROUND)
    elif around % MULTIPLE:
        below = around - around % MULTIPLE
        bounds = {"below": below, "above": below + MULTIPLE}
        yield Problem.of("around-uneven", "around", stitches=around, multiple=MULTIPLE, **bounds)


def check_cast_on(loops: int, around: int) -> Iterator[Problem]:
    """Whether a cast-on grows to the stitches around: each tip as even as its half, and no wider."""
    if loops < FEWEST_CAST_ON:
        yield Problem.of("cast-on-too-few", "cast_on", loops=loops, least=FEWEST_CAST_ON)
    elif loops > around:
        yield Problem.of("cast-on-too-many", "cast_on", loops=loops, stitches=around, most=around)
    elif loops % MULTIPLE:
        below = loops - loops % MULTIPLE
        bounds = {"below": below, "above": below + MULTIPLE}
        yield Problem.of("cast-on-unfit", "cast_on", loops=loops, stitches=around, **bounds)


def _length_problem(name: str, length: Length, bounds: tuple[Length, Length]) -> Problem:
    values = {"length": measure(length), "least": measure(bounds[0]), "most": measure(bounds[1])}
    return Problem.of("length-out-of-range", name, field=field(name), **values)
