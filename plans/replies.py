"""What is said, before it is put into words: a key of a language's sentences, and the values that stand in it."""

from collections.abc import Iterator
from typing import Union

from plans.record import Record

Value = Union[int, str, "Measure", "Reply", tuple["Reply", ...]]


class Measure(Record):
    """A length to be said, in tenths of a millimetre (245 mm is 2450)."""

    tenths_mm: int


class Reply(Record):
    """A key of the language's sentences, and the values that stand in it; parts of a sentence are replies too."""

    key: str
    values: tuple[tuple[str, Value], ...] = ()

    @classmethod
    def of(cls, key: str, **values: Value) -> "Reply":
        """Short form: `Reply.of("makes", count=18)`."""
        return cls(key=key, values=tuple(values.items()))

    def walk(self) -> Iterator["Reply"]:
        """This reply and all replies inside it."""
        yield self
        for _, value in self.values:
            parts = value if isinstance(value, tuple) else (value,)
            for part in parts:
                if isinstance(part, Reply):
                    yield from part.walk()


class Problem(Record):
    """Something that cannot be: what it is, where, and the values its sentence needs (the sentence says the cure).

    Attributes:
        where: a row's index, a line and column, a field or a file, as the key says; empty where there is none.
    """

    key: str
    where: str = ""
    values: tuple[tuple[str, Value], ...] = ()

    @classmethod
    def of(cls, key: str, where: str = "", **values: Value) -> "Problem":
        """Short form."""
        return cls(key=key, where=where, values=tuple(values.items()))


Reply.model_rebuild()
Problem.model_rebuild()
