"""Lengths that carry their unit, gauge, and plain numbers. Exact: fractions, never floats."""

import re
from dataclasses import dataclass
from fractions import Fraction
from math import isfinite
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

MM_PER_INCH = Fraction(254, 10)
_UNITS = {
    "mm": Fraction(1), "millimetre": Fraction(1), "millimetres": Fraction(1),
    "millimeter": Fraction(1), "millimeters": Fraction(1),
    "cm": Fraction(10), "centimetre": Fraction(10), "centimetres": Fraction(10),
    "centimeter": Fraction(10), "centimeters": Fraction(10),
    "in": MM_PER_INCH, "inch": MM_PER_INCH, "inches": MM_PER_INCH, '"': MM_PER_INCH, "″": MM_PER_INCH,
}  # fmt: skip
_FRACTIONS = {"¼": " 1/4", "½": " 1/2", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}
_LENGTH_PATTERN = r"^\s*[0-9.,¼½¾⅛⅜⅝⅞][0-9.,/ ¼½¾⅛⅜⅝⅞]*\s*([A-Za-z]+|\"|″)\s*$"
_NUMBER = re.compile(
    r"(?:(?P<whole>[0-9]+)\s+)?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)|(?P<decimal>[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)"
)
_LENGTH = re.compile(r"(?P<number>[^a-zA-Z\"″]*?)\s*(?P<unit>[a-zA-Z]+|\"|″)?")
_LONGEST = 1000


class Unreadable(ValueError):
    """Text that is no quantity.

    Attributes:
        kind: what it lacks.
        part: the number that stands without a unit, or the unit that is none.
    """

    def __init__(self, message: str, kind: Literal["number", "length", "no-unit", "unit"], part: str) -> None:
        super().__init__(message)
        self.kind = kind
        self.part = part


def parse_number(text: str) -> Fraction:
    """A plain positive number: "24", "24.5", "24,5", "9 1/2", "9½".

    Raises:
        Unreadable: where it is none.
    """
    for sign, written in _FRACTIONS.items():
        text = text.replace(sign, written)
    found = _NUMBER.fullmatch(text.strip()) if len(text) <= _LONGEST else None
    if found is None:
        raise Unreadable(f"“{text.strip()}” is not a number", "number", text.strip())
    if found["decimal"] is not None:
        return Fraction(found["decimal"].replace(",", "."))
    if int(found["bottom"]) == 0:
        raise Unreadable(f"“{text.strip()}” divides by zero", "number", text.strip())
    return int(found["whole"] or 0) + Fraction(int(found["top"]), int(found["bottom"]))


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """A length, exact, in millimetres."""

    mm: Fraction

    @classmethod
    def parse(cls, text: str) -> "Length":
        """Read "24.5cm", "245 mm", "9 1/2 in", '9½"'.

        Raises:
            Unreadable: no unit, no number, or an unknown unit; says which.
        """
        found = _LENGTH.fullmatch(text.strip()) if len(text) <= _LONGEST else None
        if found is None or not found["number"]:
            message = f"“{text}” is not a length: write a number and its unit, such as 24.5cm"
            raise Unreadable(message, "length", "")
        written = found["number"]
        number = parse_number(written)
        if found["unit"] is None:
            raise Unreadable(
                f"“{text}” has no unit: write {written}cm, {written}mm or {written}in", "no-unit", written
            )
        scale = _UNITS.get(found["unit"].lower())
        if scale is None:
            message = f"“{found['unit']}” is not a unit of length here: use cm, mm or in"
            raise Unreadable(message, "unit", found["unit"])
        return cls(number * scale)

    @classmethod
    def of_cm(cls, cm: Fraction | int) -> "Length":
        """From centimetres."""
        return cls(Fraction(cm) * 10)

    @property
    def cm(self) -> Fraction:
        """In centimetres."""
        return self.mm / 10

    @property
    def inches(self) -> Fraction:
        """In inches of exactly 25.4 mm."""
        return self.mm / MM_PER_INCH

    def __str__(self) -> str:
        """Exact: decimal centimetres where they end, else the plainer fraction of a centimetre or an inch."""
        if self.cm.denominator <= self.inches.denominator or _ends(self.cm):
            return f"{exact_number(self.cm)}cm"
        return f"{exact_number(self.inches)} in"

    def __add__(self, other: "Length") -> "Length":
        return Length(self.mm + other.mm)

    def __sub__(self, other: "Length") -> "Length":
        return Length(self.mm - other.mm)

    def __mul__(self, factor: Fraction | int) -> "Length":
        return Length(self.mm * factor)

    @classmethod
    def __get_pydantic_core_schema__(cls, source: type[Any], handler: GetCoreSchemaHandler) -> CoreSchema:
        """Reads text with a unit; writes the same."""
        return core_schema.no_info_plain_validator_function(
            lambda value: value if isinstance(value, cls) else cls.parse(_text(value)),
            serialization=core_schema.plain_serializer_function_ser_schema(str, when_used="json"),
        )

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """A string with a number and a unit."""
        return {"type": "string", "pattern": _LENGTH_PATTERN}


def _ends(number: Fraction) -> bool:
    """Whether the decimal form comes to an end: no prime factor but 2 and 5 below the line."""
    return pow(10, number.denominator.bit_length(), number.denominator) == 0


def exact_number(number: Fraction) -> str:
    """Exactly, as `parse_number` reads it: "24.5", "1/3", "9 1/3"."""
    sign, number = "-" if number < 0 else "", abs(number)
    whole, part = divmod(number, 1)
    if not part:
        return f"{sign}{whole}"
    if not _ends(number):
        return f"{sign}{f'{whole} ' if whole else ''}{part.numerator}/{part.denominator}"
    places = next(n for n in range(1, part.denominator.bit_length() + 1) if 10**n % part.denominator == 0)
    return f"{sign}{whole}.{part.numerator * 10**places // part.denominator:0{places}d}"


def _text(value: object) -> str:
    if not isinstance(value, str):
        raise ValueError(f"{value} has no unit: write {value}cm, {value}mm or {value}in")  # noqa: TRY004 (pydantic)
    return value


def _fraction(value: object) -> Fraction:
    if isinstance(value, Fraction):
        return value
    if isinstance(value, str):
        return parse_number(value)
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not isfinite(value):
        raise ValueError(f"{value!r} is not a number")
    return Fraction(str(value))


@dataclass(frozen=True, slots=True)
class Gauge:
    """Stitches and rounds over 10 cm of the washed swatch, exact."""

    stitches_per_10cm: Fraction
    rounds_per_10cm: Fraction

    @property
    def stitches_per_mm(self) -> Fraction:
        """Stitches a millimetre."""
        return self.stitches_per_10cm / 100

    @property
    def rounds_per_mm(self) -> Fraction:
        """Rounds a millimetre."""
        return self.rounds_per_10cm / 100

    def width(self, stitches: int) -> Length:
        """How wide so many stitches lie."""
        return Length(stitches / self.stitches_per_mm)

    def height(self, rounds: int) -> Length:
        """How high so many rounds stand."""
        return Length(rounds / self.rounds_per_mm)


def plain_number(number: Fraction | int, places: int = 2) -> str:
    """In decimals for a person: "30", "60.75", "8.53"; rounded to so many places, no needless zeros."""
    rounded = round(Fraction(number), places)
    return exact_number(rounded)


Number = Annotated[Fraction, BeforeValidator(_fraction)]
"""An exact number, written as a whole number, a decimal or a fraction; a length is never one."""
