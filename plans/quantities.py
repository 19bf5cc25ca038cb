"""Lengths that carry their unit, gauge, and counts that cannot be mixed up. Exact: fractions, never floats."""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any

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
_NUMBER = re.compile(r"(?:(?P<whole>\d+)\s+)?(?P<top>\d+)/(?P<bottom>\d+)|(?P<decimal>\d+(?:[.,]\d+)?|[.,]\d+)")


def parse_number(text: str) -> Fraction:
    """A plain positive number: "24", "24.5", "24,5", "9 1/2", "9½".

    Raises:
        ValueError: where it is none.
    """
    for sign, written in _FRACTIONS.items():
        text = text.replace(sign, written)
    found = _NUMBER.fullmatch(text.strip())
    if found is None:
        raise ValueError(f"“{text.strip()}” is not a number")
    if found["decimal"] is not None:
        return Fraction(found["decimal"].replace(",", "."))
    if int(found["bottom"]) == 0:
        raise ValueError(f"“{text.strip()}” divides by zero")
    return int(found["whole"] or 0) + Fraction(int(found["top"]), int(found["bottom"]))


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """A length, exact, in millimetres."""

    mm: Fraction

    @classmethod
    def parse(cls, text: str) -> "Length":
        """Read "24.5cm", "245 mm", "9 1/2 in", '9½"'.

        Raises:
            ValueError: no unit, no number, or an unknown unit; says which.
        """
        found = re.fullmatch(r"\s*(?P<number>[^a-zA-Z\"″]*?)\s*(?P<unit>[a-zA-Z]+|\"|″)?\s*", text)
        if found is None or not found["number"]:
            raise ValueError(f"“{text}” is not a length: write a number and its unit, such as 24.5cm")
        number = parse_number(found["number"])
        if found["unit"] is None:
            raise ValueError(
                f"“{text}” has no unit: write {found['number']}cm, {found['number']}mm or {found['number']}in"
            )
        scale = _UNITS.get(found["unit"].lower())
        if scale is None:
            raise ValueError(f"“{found['unit']}” is not a unit of length here: use cm, mm or in")
        return cls(number * scale)

    @classmethod
    def of_cm(cls, cm: Fraction | int) -> "Length":
        """From centimetres."""
        return cls(Fraction(cm) * 10)

    @property
    def cm(self) -> Fraction:
        """In centimetres."""
        return self.mm / 10

    def __str__(self) -> str:
        return f"{float(self.cm):.4g}cm"

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
    def __get_pydantic_json_schema__(cls, schema: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        """A string with a number and a unit."""
        return {"type": "string", "pattern": r"^\s*[0-9].*(mm|cm|in|inch|inches|\"|″)\s*$"}


def _text(value: object) -> str:
    if not isinstance(value, str):
        raise ValueError(f"{value} has no unit: write {value}cm, {value}mm or {value}in")  # noqa: TRY004 (pydantic)
    return value


def _fraction(value: object) -> Fraction:
    if isinstance(value, bool) or not isinstance(value, (int, float, str, Fraction)):
        raise ValueError(f"{value!r} is not a number")  # noqa: TRY004 (pydantic)
    return value if isinstance(value, Fraction) else parse_number(str(value))


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


Number = Annotated[Fraction, BeforeValidator(_fraction)]
