"""Measurements that no sock can have, and numbers that contradict each other."""

from collections.abc import Iterator
from fractions import Fraction

from plans.conversation import Problem, Value
from plans.quantities import Length, plain_number
from plans.rows.toes import toe
from plans.sizing.measures import field, measure
from plans.sizing.proportions import FEWEST_CAST_ON, MOST_AROUND, MULTIPLE, fewest_around
from plans.sizing.shoes import LONGEST_FOOT, SHORTEST_FOOT
from plans.sizing.stretch import ends, stretchiest
from plans.wishes import Count, Swatch, Wishes

LENGTHS = {
    "foot_length": (SHORTEST_FOOT, LONGEST_FOOT),
    "ball": (Length.of_cm(5), Length.of_cm(45)),
    "ankle": (Length.of_cm(5), Length.of_cm(45)),
    "heel_diagonal": (Length.of_cm(6), Length.of_cm(72)),
    "calf": (Length.of_cm(5), Length.of_cm(80)),
    "leg": (Length.of_cm(1), Length.of_cm(80)),
    "cuff": (Length(Fraction(2)), Length.of_cm(40)),
}
"""Shortest and longest of each measure: from before birth to beyond any living foot, its heel 1.6 times its ball."""

SWATCH_WIDTHS = (Length.of_cm(1), Length.of_cm(100))
GAUGES = {"stitches": (4, 80), "rounds": (4, 120)}
"""Over 10 cm: from arm-thick yarn to sewing thread."""
EASE_PERCENTS = (0, 40)
COUNTS = {"foot_rounds": (0, 2000), "leg_rounds": (1, 2000), "cuff_rounds": (1, 2000), "gusset": (1, 400),
          "skeins": (1, 100)}  # fmt: skip
"""Fewest and most: a sock has at least a round of leg and of cuff, and a flap that joins at least one stitch a side."""
NEEDLES = (Length(Fraction(1, 2)), Length(Fraction(25)))

MOST_GRAMS, MOST_METRES = 2_000, 20_000
"""A ball of two kilograms, or of twenty kilometres, is none."""


def check_counts(wishes: Wishes) -> Iterator[Problem]:
    """What is wrong with any count."""
    yield from check_swatch(wishes.swatch)
    for count in wishes.counts:
        yield from check_swatch(count, "counts")


def check_swatch(swatch: Swatch | Count, within: str = "") -> Iterator[Problem]:
    """What is wrong with the gauge; `within` names the field that holds the count, where it is not the swatch."""
    if not SWATCH_WIDTHS[0] <= swatch.over <= SWATCH_WIDTHS[1]:
        yield _length_problem("swatch.over", swatch.over, SWATCH_WIDTHS, within)
        return
    for name, counted in (("stitches", swatch.stitches), ("rounds", swatch.rounds)):
        if counted is None:
            continue
        least, most = GAUGES[name]
        gauge = counted * 100 / swatch.over.mm
        where = within or f"swatch.{name}"
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


def check_end(wishes: Wishes) -> Iterator[Problem]:
    """A bind-off that cannot end the cuff, with one that can."""
    if not ends(wishes.bind_off, wishes.cuff_style):
        names = {"name": str(wishes.bind_off), "cuff": str(wishes.cuff_style), "better": stretchiest(wishes.cuff_style)}
        yield Problem.of("bind-off-needs-rib", "bind_off", **names)


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
    yield from check_around(wishes.around, wishes.heel, wishes.toe)
    yield from _check_numbers(wishes)
    yield from check_yarn(wishes)


def _check_numbers(wishes: Wishes) -> Iterator[Problem]:
    for name, (least, most) in COUNTS.items():
        number = getattr(wishes, name)
        if number is not None and not least <= number <= most:
            yield Problem.of("number-out-of-range", name, field=field(name), number=number, least=least, most=most)


def check_yarn(wishes: Wishes) -> Iterator[Problem]:
    """A needle, or a ball of yarn, that there is not; a ball has both weight and length, or neither matters."""
    needle = wishes.needle
    if needle is not None and not NEEDLES[0] <= needle <= NEEDLES[1]:
        thin, thick = (plain_number(length.mm) for length in NEEDLES)
        yield Problem.of("needle-out-of-range", "needle", millimetres=plain_number(needle.mm), least=thin, most=thick)
    if wishes.skein is not None and not 1 <= wishes.skein.grams <= MOST_GRAMS:
        text = str(wishes.skein)
        yield Problem.of("skein-out-of-range", "skein", field=field("skein"), text=text, most=f"{MOST_GRAMS}g")
    if wishes.skein_length is not None and not 1 <= wishes.skein_length.metres <= MOST_METRES:
        text, most = str(wishes.skein_length), f"{MOST_METRES}m"
        yield Problem.of("skein-out-of-range", "skein_length", field=field("skein_length"), text=text, most=most)


def check_around(around: int | None, heel: str = "wrapped", toe_kind: str = "wedge") -> Iterator[Problem]:
    """A stitch count of her own that no sock can be knitted on, with the nearest that can."""
    if around is None:
        return
    least = fewest_around(heel, toe_kind)
    if around < least:
        yield Problem.of("around-too-few", "around", stitches=around, least=least)
    elif around > MOST_AROUND:
        yield Problem.of("around-too-many", "around", stitches=around, most=MOST_AROUND)
    elif around % MULTIPLE:
        below = around - around % MULTIPLE
        bounds = {"below": below, "above": below + MULTIPLE}
        yield Problem.of("around-uneven", "around", stitches=around, multiple=MULTIPLE, **bounds)


def check_cast_on(loops: int, around: int, kind: str = "wedge") -> Iterator[Problem]:
    """Whether a cast-on grows to the stitches around: each tip as even as its half, and no wider.

    A toe of short rows has just the one half.
    """
    if toe(kind).cup:
        if loops != around // 2:
            yield Problem.of("cast-on-not-half", "cast_on", loops=loops, stitches=around, half=around // 2)
    elif loops < FEWEST_CAST_ON:
        yield Problem.of("cast-on-too-few", "cast_on", loops=loops, least=FEWEST_CAST_ON)
    elif loops > around:
        yield Problem.of("cast-on-too-many", "cast_on", loops=loops, stitches=around, most=around)
    elif loops % MULTIPLE:
        below = loops - loops % MULTIPLE
        bounds = {"below": below, "above": below + MULTIPLE}
        yield Problem.of("cast-on-unfit", "cast_on", loops=loops, stitches=around, **bounds)


def _length_problem(
    name: str, length: Length, bounds: tuple[Length, Length], within: str = ""
) -> Problem:
    values = {"length": measure(length), "least": measure(bounds[0]), "most": measure(bounds[1])}
    return Problem.of("length-out-of-range", within or name, field=field(name), **values)
