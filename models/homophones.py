"""Words that sound the same: a reading that nobody may say can stand for one that may."""

from collections.abc import Iterable, Iterator
from itertools import islice, product

from models.grammar import Grammar

Homophones = tuple[tuple[str, ...], ...]
"""Groups of words that sound the same, other spellings of a word among them."""

_MOST_WAYS = 256


def said(words: str, grammar: Grammar, homophones: Homophones) -> str | None:
    """The text that may be said and sounds like these words; one and the same for all that sound so; None for none."""
    return next((way for way in _ways(words.split(), homophones) if grammar.accepts(way)), None)


def _ways(words: Iterable[str], homophones: Homophones) -> Iterator[str]:
    """Every way to write them."""
    choices = [next((group for group in homophones if word in group), (word,)) for word in words]
    return (" ".join(way) for way in islice(product(*choices), _MOST_WAYS))
