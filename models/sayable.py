"""Errors that carry what can be said about them: a key and values; the sentences are each language's own."""

from types import MappingProxyType
from typing import ClassVar


class Sayable(Exception):
    """The base of all that is raised on purpose.

    Attributes:
        key: which sentence says it; empty in a base that is never raised itself.
        names: of the values that stand in that sentence.
        values: these values, by name.
    """

    key: ClassVar[str] = ""
    names: ClassVar[frozenset[str]] = frozenset()

    def __init__(self, **values: str) -> None:
        if self.names != values.keys():
            message = f"{type(self).__name__} takes {sorted(self.names)}, not {sorted(values)}"
            raise TypeError(message)
        self.values = MappingProxyType(dict(values))
        super().__init__(f"{self.key}: " + ", ".join(f"{name}={value}" for name, value in values.items()))


def kinds(base: type[Sayable]) -> tuple[type[Sayable], ...]:
    """The base, where it has a key, and every kind below it that has one."""
    below = tuple(kind for sub in base.__subclasses__() for kind in kinds(sub))
    return (base, *below) if base.key else below


def sayings(base: type[Sayable]) -> dict[str, frozenset[str]]:
    """Every key that errors of this kind can carry, with the names of its values."""
    return {kind.key: kind.names for kind in kinds(base)}
