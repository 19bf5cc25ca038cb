"""One field of the wishes at a time: from what was written or typed to its value, or to a problem."""

import json
from collections.abc import Callable
from enum import StrEnum
from fractions import Fraction
from math import isfinite

from plans.conversation import Problem, Value
from plans.pattern import BindOff, Heel, Toe
from plans.quantities import Length, Unreadable, parse_number
from plans.sizing.measures import field

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


def _choice(kinds: type[StrEnum]) -> Reader:
    def read(name: str, value: object, where: str) -> StrEnum | Problem:
        for kind in kinds:
            if value == kind.value:
                return kind
        return _problem("choice-unknown", name, value, where, choices=", ".join(kinds))

    return read


READERS: dict[str, Reader] = {
    "schema_version": _whole,
    "name": _text,
    "socks": _names,
    "swatch.stitches": _number,
    "swatch.rounds": _number,
    "swatch.over": _length,
    "foot_length": _length,
    "shoe": _text,
    "ball": _length,
    "ankle": _length,
    "leg": _length,
    "cuff": _length,
    "ease_percent": _number,
    "around": _whole,
    "cast_on": _whole,
    "toe": _choice(Toe),
    "heel": _choice(Heel),
    "bind_off": _choice(BindOff),
    "through_back_loop": _flag,
    "practice": _flag,
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


def read_answer(name: str, text: str, where: str) -> object:
    """The same for a field typed as plain text: "64" is a whole number, "yes" is none."""
    if READERS[name] is _whole and text.strip().isdecimal() and len(text) < _LONGEST_QUOTE:
        return read_field(name, int(text), where)
    return read_field(name, text.strip(), where)
