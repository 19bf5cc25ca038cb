"""Values as TOML writes them."""

import json
from fractions import Fraction

from plans.quantities import Length, exact_number
from plans.wishes import Swatch


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
        case Length():
            return _basic_string(str(value))
        case tuple():
            return f"[{', '.join(map(toml_value, value))}]"
        case Swatch(stitches=stitches, rounds=rounds, over=over):
            parts = {"stitches": stitches, "rounds": rounds, "over": over}
            return f"{{ {', '.join(f'{name} = {toml_value(part)}' for name, part in parts.items())} }}"
        case _:
            raise TypeError(f"{value!r} has no place in a plan file")


def _basic_string(text: str) -> str:
    """JSON's escapes are TOML's, but TOML wants the delete character escaped too."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _number(number: Fraction) -> str:
    """A bare number where a binary float holds it to the digit, else the exact number in quotes."""
    written = exact_number(number)
    bare = "/" not in written and Fraction(str(float(number))) == number
    return written if bare else _basic_string(written)
