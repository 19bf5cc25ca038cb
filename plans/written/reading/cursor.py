"""Going through the tokens of a pattern, one size chosen of all."""

from collections.abc import Collection, Mapping
from typing import NoReturn, TypeVar

from plans.replies import Problem, Value
from plans.written.reading.abbreviations import NUMBERS
from plans.written.reading.tokens import LONGEST_NUMBER, Token

Found = TypeVar("Found")
_SAME = {"rnd": "round", "rnds": "rounds"}


class Wrong(Exception):
    """Something in a pattern that cannot be; carries the problem."""

    def __init__(self, key: str, at: Token, **values: Value) -> None:
        super().__init__(key)
        self.problem = Problem.of(key, at.where, **values)


class Cursor:
    """The token in hand, and ways past it.

    Attributes:
        at: which token is in hand.
    """

    def __init__(self, tokens: list[Token], sizes: int, size: int) -> None:
        self._tokens = tokens
        self._sizes = sizes
        self._size = size
        self.at = 0

    @property
    def here(self) -> Token:
        """The token in hand."""
        return self._tokens[self.at]

    def ahead(self, steps: int) -> Token:
        """A token further on; the end where there are no more."""
        return self._tokens[min(self.at + steps, len(self._tokens) - 1)]

    def step(self) -> Token:
        """Take the token in hand."""
        token = self.here
        if token.kind != "end":
            self.at += 1
        return token

    def sees(self, *texts: str) -> bool:
        """Whether these words or signs stand here, one after the other."""
        return all(self.ahead(step).text == text for step, text in enumerate(texts))

    def takes(self, *texts: str) -> bool:
        """Go past them if they stand here."""
        if not self.sees(*texts):
            return False
        self.at += len(texts)
        return True

    def takes_any(self, texts: Collection[str]) -> str | None:
        """Go past any one of these if it stands here."""
        return self.step().text if self.here.kind in ("word", "sign") and self.here.text in texts else None

    def phrase(self, known: Mapping[tuple[str, ...], Found]) -> Found | None:
        """The longest of these phrases that stands here; goes past it."""
        for length in range(max(map(len, known)), 0, -1):
            words = tuple(_SAME.get(token.text, token.text) for token in map(self.ahead, range(length)))
            if words in known:
                self.at += length
                return known[words]
        return None

    def number(self) -> int | None:
        """A number in digits or in a word, of the size chosen: "64 (72, 80)"; None where none stands here."""
        if self.here.kind == "number":
            return self.sized(self.step())
        if self.here.text in NUMBERS and self.here.text not in ("once", "twice"):
            return NUMBERS[self.step().text]
        return None

    def sized(self, first: Token, value: int | None = None) -> int:
        """The number of the size chosen, `first` (whose value is `value`) being that of the first size."""
        numbers = [self._value(first) if value is None else value]
        if self.sees("(") and self.ahead(1).kind == "number" and self.ahead(2).text in (",", ")"):
            opened = self.step()
            while self.here.kind == "number":
                numbers.append(self._value(self.step()))
                self.takes(",")
            if not self.takes(")"):
                self.refuse()
            if len(numbers) != self._sizes:
                raise Wrong("written-sizes-differ", opened, found=len(numbers), wanted=self._sizes)
        return numbers[self._size] if len(numbers) > 1 else numbers[0]

    def _value(self, token: Token) -> int:
        if len(token.text) > LONGEST_NUMBER:
            raise Wrong("written-not-understood", token, text=token.text[:20])
        return token.number

    def times(self) -> int | None:
        """"twice", "3 times"; None, and nowhere gone, where no such thing stands here."""
        began = self.at
        once = self.takes_any(("once", "twice"))
        if once is not None:
            return NUMBERS[once]
        number = self.number()
        if number is not None and (self.takes("times") or self.takes("time") or self.takes("x")):
            return number
        self.at = began
        return None

    def refuse(self) -> NoReturn:
        """What stands here is not understood.

        Raises:
            Wrong: always.
        """
        raise Wrong("written-not-understood", self.here, text=self.here.text[:60] or "…")
