"""Numbers as a language says and hears them: words from CLDR's spell-out rules, choices from its data."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

MOST = 999
"""The largest number that can be heard."""


@dataclass(frozen=True)
class Numbers:
    """How one language says counts.

    Attributes:
        language: CLDR code.
        forms: names of grammatical forms → CLDR spell-out rule sets; "" is the usual one.
        heard_forms: which of the forms are also heard.
        variants: pairs of a regular expression and what may stand in its place when heard.
        also: further words heard for single numbers.
        alike: pairs of numbers below a hundred that are easily taken for each other.
        digits: words for 0 to 9 in a number said digit by digit.
        digits_also: further words heard for a digit in a number said digit by digit.
    """

    language: str
    forms: Mapping[str, str]
    heard_forms: tuple[str, ...] = ("",)
    variants: tuple[tuple[str, str], ...] = ()
    also: Mapping[int, tuple[str, ...]] | None = None
    alike: tuple[tuple[int, int], ...] = ()
    digits: tuple[str, ...] = ()
    digits_also: Mapping[int, tuple[str, ...]] | None = None

    @cached_property
    def _engine(self) -> Any:  # noqa: ANN401 (the library has no public name for it)
        from unicode_rbnf import RbnfEngine  # noqa: PLC0415 (slow to import)

        return RbnfEngine.for_language(self.language)

    def say(self, number: int, form: str = "") -> str:
        """A count in words, as "eighteen".

        Raises:
            KeyError: the language names no such form.
        """
        rules = self.forms[form]
        return str(self._engine.format_number(number, ruleset_names=[rules]).text)

    def spell(self, number: int) -> str:
        """A number digit by digit, as "one three"."""
        return " ".join(self.digits[int(digit)] for digit in str(number))

    @cached_property
    def heard(self) -> Mapping[str, int]:
        """Every way to say 0 to 999 → the number; the first way of each number is the usual one.

        Raises:
            ValueError: two numbers would sound the same.
        """
        table: dict[str, int] = {}
        for number in range(MOST + 1):
            for words in self.ways(number):
                if table.setdefault(words, number) != number:
                    raise ValueError(f"“{words}” is both {table[words]} and {number}")
        return table

    def ways(self, number: int) -> tuple[str, ...]:
        """All ways to hear a number, the usual one first."""
        found = [plain(self.say(number, form)) for form in self.heard_forms]
        for pattern, instead in self.variants:
            found += [re.sub(pattern, instead, words) for words in tuple(found)]
        return tuple(dict.fromkeys([*found, *(self.also or {}).get(number, ())]))

    @cached_property
    def spelled(self) -> Mapping[str, int]:
        """Numbers of two and three digits said digit by digit → the number; heard only to settle a doubt."""
        also = self.digits_also or {}
        words = {digit: (word, *also.get(digit, ())) for digit, word in enumerate(self.digits)}
        table: dict[str, int] = {}
        for number in range(10, MOST + 1):
            ways = [""]
            for digit in str(number):
                ways = [f"{way} {word}".strip() for way in ways for word in words[int(digit)]]
            table |= dict.fromkeys(ways, number)
        return table

    def understood(self, words: str) -> int | None:
        """The number said, also where it is written in digits; None where it is none."""
        if words.isdecimal() and len(words) <= 3:
            return int(words)
        return self.heard.get(words)

    def twin(self, number: int) -> int | None:
        """The number that this one is easily taken for, as 30 for 13."""
        hundreds, rest = divmod(number, 100)
        for pair in self.alike:
            if rest in pair:
                return hundreds * 100 + sum(pair) - rest
        return None


def plain(words: str) -> str:
    """Words as a recogniser gives them: lower case, no hyphens, no punctuation, single spaces."""
    spaced = re.sub(r"[^\w'{}\[\]]+", " ", words.casefold().replace("\u2019", "'"))
    return " ".join(spaced.split())


def read_numbers(language: str, data: Mapping[str, Any]) -> Numbers:
    """From the content of a language's numbers.toml."""
    heard = data.get("heard", {})
    spelled = data.get("spelled", {})
    return Numbers(
        language=language,
        forms={"": data["rules"], **data.get("forms", {})},
        heard_forms=("", *heard.get("forms", ())),
        variants=tuple((pattern, instead) for pattern, instead in heard.get("variants", ())),
        also={int(number): tuple(words) for number, words in heard.get("also", {}).items()},
        alike=tuple((one, other) for one, other in heard.get("alike", ())),
        digits=tuple(spelled["digits"]),
        digits_also={int(digit): tuple(words) for digit, words in spelled.get("also", {}).items()},
    )
