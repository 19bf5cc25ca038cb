"""Amounts of yarn that carry their unit: how heavy, how long. Exact: fractions, never floats."""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, ClassVar, Self

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

from plans.quantities import MM_PER_INCH, Unreadable, exact_number, parse_number

_AMOUNT = re.compile(r"(?P<number>[^a-zA-Z]*?)\s*(?P<unit>[a-zA-Z]+)")
_LONGEST = 100
_YARD = 36 * MM_PER_INCH / 1000
_OUNCE = Fraction("28.349523125")


@dataclass(frozen=True, slots=True, order=True)
class _Amount:
    """An amount, exact, in its first unit."""

    value: Fraction
    units: ClassVar[dict[str, Fraction]]
    unit: ClassVar[str]

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read a number and its unit.

        Raises:
            Unreadable: no number, or no unit known here.
        """
        found = _AMOUNT.fullmatch(text.strip()) if len(text) <= _LONGEST else None
        scale = cls.units.get(found["unit"].lower()) if found else None
        if found is None or scale is None:
            message = f"“{text}” is no amount: write a number and its unit, such as 50{cls.unit}"
            raise Unreadable(message, "unit", found["unit"] if found else "")
        return cls(parse_number(found["number"]) * scale)

    def __str__(self) -> str:
        return f"{exact_number(self.value)}{self.unit}"

    @classmethod
    def __get_pydantic_core_schema__(cls, source: type[Any], handler: GetCoreSchemaHandler) -> CoreSchema:
        """Reads text with a unit; writes the same."""
        return core_schema.no_info_plain_validator_function(
            lambda value: value if isinstance(value, cls) else cls.parse(str(value)),
            serialization=core_schema.plain_serializer_function_ser_schema(str, when_used="json"),
        )

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """A string with a number and a unit."""
        return {"type": "string"}


class Weight(_Amount):
    """How heavy yarn is: "50g", "1.75 oz"."""

    __slots__ = ()
    unit = "g"
    units: ClassVar[dict[str, Fraction]] = {
        "g": Fraction(1), "gram": Fraction(1), "grams": Fraction(1), "kg": Fraction(1000),
        "oz": _OUNCE, "ounce": _OUNCE, "ounces": _OUNCE,
    }  # fmt: skip

    @property
    def grams(self) -> Fraction:
        """In grams."""
        return self.value


class Thread(_Amount):
    """How long yarn is: "210m", "230 yd"."""

    __slots__ = ()
    unit = "m"
    units: ClassVar[dict[str, Fraction]] = {
        "m": Fraction(1), "metre": Fraction(1), "metres": Fraction(1), "meter": Fraction(1), "meters": Fraction(1),
        "yd": _YARD, "yds": _YARD, "yard": _YARD, "yards": _YARD,
    }  # fmt: skip

    @property
    def metres(self) -> Fraction:
        """In metres."""
        return self.value
