"""Values as TOML writes them."""

import json
from collections.abc import Iterator
from fractions import Fraction

from plans.amounts import Thread, Weight
from plans.pattern import Calf, Chart
from plans.quantities import Length, exact_number
from plans.wishes import Count, Swatch


def toml_value(value: object) -> str:
    """One value of the wishes, so that it reads back as the same.

    Raises:
        TypeError: no kind of value that wishes hold.
    """
    match value:
        case bool():
            return str(value).lower()
        case int():
            return str(value)
        case str():
            return _basic_string(value)
        case Fraction():
            return _number(value)
        case Length() | Weight() | Thread():
            return _basic_string(str(value))
        case Chart():
            return _chart(value)
        case tuple():
            return f"[{', '.join(map(toml_value, value))}]"
        case Calf():
            return f"{{ {', '.join(f'{name} = {toml_value(part)}' for name, part in value)} }}"
        case Swatch() | Count():
            return f"{{ {', '.join(f'{name} = {toml_value(part)}' for name, part in _parts(value))} }}"
        case _:
            raise TypeError(f"{value!r} has no place in a plan file")


def _chart(chart: Chart) -> str:
    """Its rows as drawn, the bottom one last."""
    yarns = dict(zip(("main", "contrast"), chart.yarns, strict=True)) if chart.yarns else {}
    holds: dict[str, object] = {"name": chart.name, "on": chart.on, **yarns}
    holds |= {"parts": tuple(str(stage) for stage in chart.stages), "rows": tuple(reversed(chart.rows))}
    return f"{{ {', '.join(f'{name} = {toml_value(part)}' for name, part in holds.items())} }}"


def _parts(count: Swatch | Count) -> Iterator[tuple[str, object]]:
    """What was counted, and how it was knitted where that is not as usual."""
    fields = type(count).model_fields
    for name, value in count:
        if (name in _ALWAYS and value is not None) or value != fields[name].default:
            yield name, value


_ALWAYS = frozenset({"stitches", "rounds", "over"})


def _basic_string(text: str) -> str:
    """JSON's escapes are TOML's, but TOML wants the delete character escaped too."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _number(number: Fraction) -> str:
    """A bare number where a binary float holds it to the digit, else the exact number in quotes."""
    written = exact_number(number)
    bare = "/" not in written and Fraction(str(float(number))) == number
    return written if bare else _basic_string(written)
