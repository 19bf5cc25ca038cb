"""Spoken texts as a speech model writes English, and back again.

In writing there are capitals, a full stop or a question mark, hyphens, and numbers are in words or in digits; then what
is measured is abbreviated.
"""

import re
from collections.abc import Mapping
from functools import cache
from typing import Any

_MOST = 999
_LONGEST = 5
"""Words in a number."""
_RULES = ("spellout-cardinal-verbose", "spellout-cardinal")
_NOT_SPOKEN = re.compile(r"[^a-z0-9' ]")
_DIGITS = re.compile(r"\d+")
_POINT = re.compile(r"(?<=\d)\.(?=\d)")
_SPOKEN_POINT = re.compile(r"(?<=\d) point (?=\d)")
_I = re.compile(r"\bi\b")
_ASKING = frozenset({"how", "what", "where"})
_UNITS = {"cm": "centimetre", "mm": "millimetre"}
_AMERICAN = re.compile(r"\b(centi|milli)metre")


def written(text: str) -> tuple[str, ...]:
    """The ways to write a text of small letters; each begins with a space, as words do within a line.

    Returns:
        Numbers in words, and where there are numbers, also in digits.
    """
    words = text.split()
    end = "?" if words[:1] and words[0] in _ASKING else "."
    in_words = _AMERICAN.sub(r"\1meter", " ".join(_numbers_in(words, in_digits=False)))
    in_digits = _SPOKEN_POINT.sub(".", " ".join(_abbreviated(_numbers_in(words, in_digits=True))))
    ways = dict.fromkeys((in_words, in_digits)) if _DIGITS.search(in_digits) else (in_words,)
    return tuple(" " + _I.sub("I", way[:1].upper() + way[1:]) + end for way in ways)


def spoken(line: str) -> str:
    """A written line as small letters and single spaces, numbers in words; numbers beyond 999 stay digits."""
    apart = _DIGITS.sub(r" \g<0> ", _POINT.sub(" point ", line.lower()))
    words = (_usual().get(word, word) for word in _NOT_SPOKEN.sub(" ", apart).split())
    whole = (f"{_UNITS[word]}s" if word in _UNITS else word for word in words)
    return " ".join(whole).replace("-", " ").replace("meter", "metre")


def sounding_alike(text: str) -> tuple[str, ...]:
    """The text with a teen in place of a ten, or the other way round, as thirteen for thirty; once for each of them."""
    words = text.split()
    return tuple(
        " ".join((*words[:at], _alike()[word], *words[at + 1 :])) for at, word in enumerate(words) if word in _alike()
    )


def _abbreviated(words: list[str]) -> list[str]:
    short = {form: unit for unit, word in _UNITS.items() for form in (word, f"{word}s", *_american(word))}
    return [short.get(word, word) for word in words]


def _american(word: str) -> tuple[str, str]:
    here = _AMERICAN.sub(r"\1meter", word)
    return here, f"{here}s"


def _numbers_in(words: list[str], *, in_digits: bool) -> list[str]:
    done: list[str] = []
    while words:
        length = next((most for most in range(_LONGEST, 0, -1) if " ".join(words[:most]) in _values()), 0)
        if length:
            digits = _values()[" ".join(words[:length])]
            done.append(digits if in_digits else _hyphened(words[:length]))
        else:
            done.append(words[0])
        words = words[max(length, 1) :]
    return done


def _hyphened(words: list[str]) -> str:
    tens = _usual().get(_values()[" ".join(words[-2:])], "") if " ".join(words[-2:]) in _values() else ""
    return " ".join((*words[:-2], tens)) if "-" in tens else " ".join(words)


@cache
def _values() -> Mapping[str, str]:
    """Words of a number → its digits."""
    found: dict[str, str] = {}
    for number in range(_MOST + 1):
        for words in _ways(number):
            plain = words.replace("-", " ")
            found[plain] = str(number)
            found[re.sub("^one hundred", "a hundred", plain)] = str(number)
    return found


@cache
def _alike() -> Mapping[str, str]:
    pairs = [(_ways(number)[0], _ways(number % 10 * 10)[0]) for number in range(13, 20)]
    return {**dict(pairs), **{ten: teen for teen, ten in pairs}}


@cache
def _usual() -> Mapping[str, str]:
    """Digits → the number in words."""
    return {str(number): _ways(number)[0] for number in range(_MOST + 1)}


def _ways(number: int) -> tuple[str, ...]:
    return tuple(str(_engine().format_number(number, ruleset_names=[rules]).text) for rules in _RULES)


@cache
def _engine() -> Any:  # noqa: ANN401 - the library has no public name for it
    from unicode_rbnf import RbnfEngine  # noqa: PLC0415 - slow to import

    return RbnfEngine.for_language("en")
