"""One field of the wishes at a time: from what was written or typed to its value, or to a problem."""

import json
import re
from collections.abc import Callable, Iterable
from enum import StrEnum
from fractions import Fraction
from math import isfinite

from plans.amounts import Thread, Weight
from plans.charts import fault_of_even, rows_of
from plans.conversation import Problem, Value
from plans.pattern import BindOff, Calf, Chart, Cuff, Direction, Heel, Increase, Leg, Needles, Sole, StageName, Toe
from plans.quantities import Length, Unreadable, parse_number, plain_number
from plans.sizing.measures import field
from plans.sizing.standards import needle_by_us
from plans.wishes import Count, Height, Worked

Reader = Callable[[str, object, str], object]
_LONGEST_QUOTE = 60
_LENGTH_KEYS = {"no-unit": "length-no-unit", "unit": "length-unknown-unit"}


def quoted(value: object) -> str:
    """What was written, short enough to be said."""
    plain = not isinstance(value, (bool, list, dict))
    text = str(value) if plain else json.dumps(value, ensure_ascii=False, default=str)
    return text if len(text) <= _LONGEST_QUOTE else text[:_LONGEST_QUOTE] + "…"


def _problem(key: str, name: str, value: object, where: str, **more: Value) -> Problem:
    return Problem.of(key, where, field=field(name), text=quoted(value), **more)


def _length(name: str, value: object, where: str) -> Length | Problem:
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        return _problem("length-unreadable", name, value, where)
    try:
        return Length.parse(str(value))
    except Unreadable as wrong:
        key = _LENGTH_KEYS.get(wrong.kind, "length-unreadable")
        more: dict[str, dict[str, Value]] = {
            "length-no-unit": {"number": wrong.part},
            "length-unknown-unit": {"unit": quoted(wrong.part)},
        }
        return _problem(key, name, value, where, **more.get(key, {}))


def _amount(kind: type[Weight] | type[Thread], key: str) -> Reader:
    def read(name: str, value: object, where: str) -> Weight | Thread | Problem:
        try:
            return kind.parse(value if isinstance(value, str) else "")
        except Unreadable:
            return _problem(key, name, value, where)

    return read


def _needle(name: str, value: object, where: str) -> Length | Problem:
    """A thickness, or a US number; of one sold in two thicknesses it is asked which."""
    text = str(value).strip().lower()
    if not text.startswith("us"):
        return _length(name, value, where)
    size = needle_by_us(text.removeprefix("us"))
    if size is None:
        return _problem("needle-unknown", name, value, where)
    if size.us_is_ambiguous:
        thick = [plain_number(mm) for mm in sorted({size.mm, *size.us_also_mm})]
        return _problem("needle-ambiguous", name, value, where, thin=thick[0], thick=thick[-1])
    return Length(size.mm)


def _number(name: str, value: object, where: str) -> Fraction | Problem:
    if isinstance(value, str):
        try:
            return parse_number(value.removesuffix("%"))
        except Unreadable:
            return _problem("number-unreadable", name, value, where)
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not isfinite(value):
        return _problem("number-unreadable", name, value, where)
    return Fraction(str(value))


def _whole(name: str, value: object, where: str) -> int | Problem:
    if isinstance(value, bool) or not isinstance(value, int):
        return _problem("whole-number-unreadable", name, value, where)
    return value


def _text(name: str, value: object, where: str) -> str | Problem:
    return value if isinstance(value, str) else _problem("text-unreadable", name, value, where)


def _names(name: str, value: object, where: str) -> tuple[str, str] | Problem:
    match value:
        case [str() as first, str() as second]:
            return first, second
        case _:
            return _problem("two-names-unreadable", name, value, where)


def _flag(name: str, value: object, where: str) -> bool | Problem:
    return value if isinstance(value, bool) else _problem("yes-or-no-unreadable", name, value, where)


PAIR_NEEDLES = tuple(needles for needles in Needles if needles is not Needles.ONE_CIRCULAR)
"""What a pair of socks can be knitted on."""


def _needles(name: str, value: object, where: str) -> StrEnum | Problem:
    for kind in PAIR_NEEDLES:
        if value == kind.value:
            return kind
    return _problem("choice-unknown", name, value, where, choices=", ".join(PAIR_NEEDLES))


DIRECTIONS = (Direction.TOE_UP, Direction.CUFF_DOWN)
"""Where a sock that is worked out may begin."""


def _direction(name: str, value: object, where: str) -> StrEnum | Problem:
    for kind in DIRECTIONS:
        if value == kind.value:
            return kind
    return _problem("choice-unknown", name, value, where, choices=", ".join(DIRECTIONS))


def _choice(kinds: type[StrEnum]) -> Reader:
    def read(name: str, value: object, where: str) -> StrEnum | Problem:
        for kind in kinds:
            if value == kind.value:
                return kind
        return _problem("choice-unknown", name, value, where, choices=", ".join(kinds))

    return read


def _counts(name: str, value: object, where: str) -> tuple[Count, ...] | Problem:
    """A list of tables, each with some of a count's fields."""
    if not isinstance(value, list):
        return _problem("counts-unreadable", name, value, where)
    found = [_count(each, where) for each in value]
    wrong = [each for each in found if isinstance(each, Problem)]
    return wrong[0] if wrong else tuple(each for each in found if isinstance(each, Count))


def _count(table: object, where: str) -> Count | Problem:
    if not isinstance(table, dict) or not table.keys() <= Count.model_fields.keys():
        return _problem("counts-unreadable", "counts", table, where)
    read = {name: READERS[f"swatch.{name}"](f"swatch.{name}", value, where) for name, value in table.items()}
    wrong = [each for each in read.values() if isinstance(each, Problem)]
    return wrong[0] if wrong else Count(**read)  # type: ignore[arg-type]


_PARTS = {"foot": StageName.FOOT, "leg": StageName.LEG}
_CHART_FIELDS = frozenset({"name", "rows", "on", "parts", "main", "contrast"})


def _chart(name: str, value: object, where: str) -> Chart | Problem:
    """A table: rows as drawn (a text or a list, the bottom row last), where it lies, and on which parts."""
    table = value if isinstance(value, dict) else {}
    called, parts = table.get("name", name), table.get("parts", ["leg"])
    yarns = (table.get("main", "main"), table.get("contrast", "contrast"))
    well_made = table.keys() <= _CHART_FIELDS and isinstance(parts, list) and table.get("on", "front") in _ON
    texts = all(isinstance(each, str) and each.strip() for each in (called, *yarns))
    if not well_made or not texts or not parts or not all(part in _PARTS for part in parts):
        return Problem.of("chart-wish-wrong", where, name=quoted(called))
    rows = rows_of(table.get("rows"))
    wrong = fault_of_even(called, rows)
    if wrong is not None:
        return Problem.of(wrong[0], where, **wrong[1])
    named = yarns if table.keys() & {"main", "contrast"} else None
    stages = tuple(stage for part, stage in _PARTS.items() if part in parts)
    return Chart(name=called, rows=rows, on=table.get("on", "front"), stages=stages, yarns=named)


_ON = ("front", "around")


def _calf(name: str, value: object, where: str) -> Calf | Problem:
    """A table of three whole numbers."""
    table = value if isinstance(value, dict) else {}
    whole = all(isinstance(each, int) and not isinstance(each, bool) for each in table.values())
    if table.keys() != Calf.model_fields.keys() or not whole:
        return _problem("calf-shape-unreadable", name, value, where)
    if table["pairs"] < 1 or min(table["first_round"], table["every"]) < 2:
        return _problem("calf-shape-unreadable", name, value, where)
    return Calf(**table)


READERS: dict[str, Reader] = {
    "schema_version": _whole,
    "name": _text,
    "socks": _names,
    "swatch.stitches": _number,
    "swatch.rounds": _number,
    "swatch.over": _length,
    "swatch.worked": _choice(Worked),
    "swatch.washed": _flag,
    "counts": _counts,
    "foot_length": _length,
    "shoe": _text,
    "ball": _length,
    "ankle": _length,
    "heel_diagonal": _length,
    "calf": _length,
    "leg": _length,
    "leg_height": _choice(Height),
    "cuff": _length,
    "ease_percent": _number,
    "around": _whole,
    "cast_on": _whole,
    "gusset": _whole,
    "foot_rounds": _whole,
    "leg_rounds": _whole,
    "cuff_rounds": _whole,
    "calf_shape": _calf,
    "needle": _needle,
    "skein": _amount(Weight, "weight-unreadable"),
    "skein_length": _amount(Thread, "yarn-length-unreadable"),
    "skeins": _whole,
    "direction": _direction,
    "toe": _choice(Toe),
    "increase": _choice(Increase),
    "sole": _choice(Sole),
    "heel": _choice(Heel),
    "leg_style": _choice(Leg),
    "cuff_style": _choice(Cuff),
    "bind_off": _choice(BindOff),
    "needles": _needles,
    "one_at_a_time": _flag,
    "through_back_loop": _flag,
    "practice": _flag,
    "chart": _chart,
}
"""Every field there is, and how its value is read."""


def read_field(name: str, value: object, where: str) -> object:
    """A field's value as `Wishes` wants it, or a `Problem` at `where`.

    Args:
        name: one of `READERS`.
        value: as TOML gives it.
        where: "line 3, column 8", an option's name, or whatever tells the place.
    """
    return READERS[name](name, value, where)


_COUNTED = re.compile(
    r"(?:(?P<stitches>[0-9][0-9., /½¼¾]*?)\s*(?:stitches|stitch|sts|st)\b[\s,]*)?"
    r"(?:(?P<rounds>[0-9][0-9., /½¼¾]*?)\s*(?:rounds|round|rnds|rnd|rows|row)\b[\s,]*)?"
    r"(?:over\s+(?P<over>[^,]*?(?:cm|mm|in(?:ch(?:es)?)?|\"|″)))?"
    r"(?P<how>(?:[\s,]+(?:in the round|flat|unwashed|washed))*)"
)


def read_counts(texts: Iterable[str], where: str) -> tuple[Count, ...] | Problem:
    """Counts typed as "31 stitches 43 rounds over 10cm, flat, unwashed"; a width left out is 10 cm."""
    return _counts("counts", [_counted(text) for text in texts], where)


def _counted(text: str) -> object:
    """The same as a table of the plan file; the text itself where it is none."""
    found = _COUNTED.fullmatch(text.strip().lower())
    if found is None or not (found["stitches"] or found["rounds"]):
        return text
    how = found["how"]
    told = {"worked": "flat" if "flat" in how else None, "washed": False if "unwashed" in how else None}
    parts = {name: found[name] for name in ("stitches", "rounds", "over")} | told
    return {name: part for name, part in parts.items() if part is not None}


def read_answer(name: str, text: str, where: str) -> object:
    """The same for a field typed as plain text: "64" is a whole number, "yes" is none."""
    if READERS[name] is _whole and text.strip().isdecimal() and len(text) < _LONGEST_QUOTE:
        return read_field(name, int(text), where)
    return read_field(name, text.strip(), where)
