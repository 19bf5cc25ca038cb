"""Which round comes next: rounds told in any order, in ranges, and told to be worked again."""

from collections.abc import Iterator

from plans.written.reading.cursor import Wrong
from plans.written.reading.tokens import Token
from plans.written.reading.tree import Repeat, Rounds


class Numbering:
    """The rounds of one part.

    A pattern may number on from the last round it told, or from the last round that was worked: after "rnds 1-2"
    and "repeat rnds 1-2 five times" the next may be called 3 as well as 13.
    """

    def __init__(self) -> None:
        self._told: dict[int, Rounds] = {}
        self._waiting: dict[int, Rounds] = {}
        self._worked: list[Rounds] = []
        self._label = 0
        self._base = 0
        self._anew = False
        self._charts: dict[str, int] = {}

    @classmethod
    def of_other_sock(cls) -> "Numbering":
        """Rounds told anew, of another sock, or of both again; the first may bear any number."""
        numbering = cls()
        numbering._anew = True
        return numbering

    def take(self, rounds: Rounds) -> Iterator[tuple[int, Rounds]]:
        """The rounds that can be worked now, each with its number.

        Raises:
            Wrong: a round is told twice.
        """
        for label in (self._label + 1,) if rounds.numbers is None else rounds.numbers:
            if label in self._waiting or (label <= self._label and label in self._told):
                raise Wrong("written-round-twice", rounds.at, round=label)
            self._waiting[label] = rounds
        if self._waiting and self._anew and not self._worked:
            self._label = self._base = min(self._waiting) - 1
        while self._waiting:
            if self._label + 1 not in self._waiting and self._base + len(self._worked) + 1 in self._waiting:
                self._label = self._base + len(self._worked)
            label = self._label + 1
            if label not in self._waiting:
                return
            self._told[label] = self._waiting.pop(label)
            self._label = label
            yield self._next(self._told[label])

    def _next(self, rounds: Rounds) -> tuple[int, Rounds]:
        self._worked.append(rounds)
        return self._base + len(self._worked), rounds

    def again(self, repeat: Repeat) -> Iterator[tuple[int, Rounds]]:
        """The rounds of a repeat, as often as they come.

        Raises:
            Wrong: one of them was not told.
        """
        if repeat.first < 0:
            if -repeat.first > len(self._worked):
                raise Wrong("written-no-such-round", repeat.at, round=-repeat.first)
            chosen = self._worked[repeat.first :]
        else:
            labels = range(repeat.first, repeat.last + 1)
            for label in labels:
                if label not in self._told:
                    raise Wrong("written-no-such-round", repeat.at, round=label)
            chosen = [self._told[label] for label in labels]
        for _ in range(repeat.times):
            for rounds in chosen:
                yield self._next(rounds)

    def close(self, at: Token) -> None:
        """Something else follows.

        Raises:
            Wrong: a round before one that was told is missing.
        """
        if self._waiting:
            raise Wrong("written-round-missing", at, round=self._label + 1, following=min(self._waiting))

    def chart_row(self, name: str) -> int:
        """Which row of a chart is due, from 0 on; the next one the next time."""
        row = self._charts.get(name, 0)
        self._charts[name] = row + 1
        return row
