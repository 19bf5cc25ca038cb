"""Lengths and numbers put into the form in which they are said."""

from plans.conversation import Measure, Reply
from plans.quantities import Length


def measure(length: Length) -> Measure:
    """A length to be said, to the nearest tenth of a millimetre (ties to the even tenth)."""
    return Measure(tenths_mm=round(length.mm * 10))


def is_longer(one: Length, other: Length) -> bool:
    """Whether it is longer in whole millimetres, in which lengths are said."""
    return _said(one) > _said(other)


def _said(length: Length) -> int:
    return round(measure(length).tenths_mm / 10)


def field(name: str) -> Reply:
    """What a field of the plan file is called: "foot_length" and "swatch.stitches" by their last part."""
    return Reply(key="field-" + name.rpartition(".")[2].replace("_", "-"))
