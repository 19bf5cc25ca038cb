"""Soles, each in a module that bears its name and holds a SOLE."""

from functools import cache
from typing import cast

from plans.names import load
from plans.rows.parts import SolePart

__all__ = ["sole"]


@cache
def sole(name: str) -> SolePart:
    """The sole of that name."""
    return cast("SolePart", load("soles", name, "SOLE"))
