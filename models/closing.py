"""A recogniser's likeliest readings, held against the texts that may be said: only those come out, or unknown words.

How sure one may be of a text differs from model to model; a model's own weights lie in `judging.toml` in its folder:

    alternatives = 10       how many readings are asked for
    scale = 0.5             of their scores, before they are made shares
    plausible = 0.3         below this confidence nothing but unknown words was heard
    weights = [0, 1, 0, 0]  for `confidence`, as `models.fitting` writes them
"""

import math
import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from models.following import NOTHING_KNOWN
from models.grammar import Grammar
from models.homophones import Homophones, said
from models.logistic import likelihood
from models.recognising import UNKNOWN_WORD, Alternative, Readings

FILE = "judging.toml"
_MOST_SURE = 6.0
_SECONDS_A_LETTER = 0.065
"""About the mean of English commands."""


@dataclass(frozen=True, slots=True)
class Hypothesis:
    """What may have been said, and its log-likelihood; only differences between scores mean anything."""

    words: str
    score: float


@dataclass(frozen=True, slots=True)
class Judging:
    """How a model's scores are taken.

    Attributes:
        alternatives: how many readings are asked for.
        scale: of their scores, before they are made shares.
        plausible: below this confidence nothing but unknown words was heard.
        weights: a constant, then one for each of `features`; by themselves the confidence is the share.
    """

    alternatives: int = 10
    scale: float = 1.0
    plausible: float = 0.3
    weights: tuple[float, ...] = (0.0, 1.0, 0.0, 0.0)

    def __post_init__(self) -> None:
        if self.alternatives < 1 or self.scale <= 0.0 or len(self.weights) != 1 + len(features(0.5, "a", 1.0)):
            message = "alternatives and scale are above 0, and a weight stands for each feature"
            raise ValueError(message)


def read_judging(folder: Path) -> Judging:
    """Of the model in a folder; the usual one where it has none of its own.

    Raises:
        OSError, ValueError, TypeError: the file cannot be read, or says something else than it should.
    """
    file = folder / FILE
    if not file.is_file():
        return Judging()
    found: dict[str, Any] = tomllib.loads(file.read_text(encoding="utf-8"))
    if "weights" in found:
        found["weights"] = tuple(map(float, found["weights"]))
    return Judging(**found)


def joined(pieces: Iterable[Sequence[Hypothesis]], most: int) -> tuple[Hypothesis, ...]:
    """The likeliest ways to read pieces of sound that follow each other, best first."""
    ways = [Hypothesis("", 0.0)]
    for piece in pieces:
        further = [
            Hypothesis(f"{before.words} {after.words}".strip(), before.score + after.score)
            for before in ways
            for after in piece or [Hypothesis("", 0.0)]
        ]
        ways = sorted(further, key=lambda way: -way.score)[:most]
    return tuple(ways)


def sayable(
    ways: Sequence[Hypothesis], grammar: Grammar, scale: float = 1.0, homophones: Homophones = ()
) -> dict[str, float]:
    """The texts among the readings that may be said, each with its share of the likelihood, the likeliest first.

    What only sounds like such a text ("back to rounds") is a reading of it.
    """
    shares = _shares([way.score * scale for way in ways])
    texts: dict[str, float] = {}
    for way, share in zip(ways, shares, strict=True):
        text = said(way.words, grammar, homophones)
        if text is not None:
            texts[text] = texts.get(text, 0.0) + share
    return dict(sorted(texts.items(), key=lambda text: -text[1]))


def judged(texts: Mapping[str, float], seconds: float, judging: Judging) -> Readings:
    """How sure one may be of texts with their shares; unknown words where none is plausible.

    Args:
        texts: as `sayable` gives them.
        seconds: how long the speech is.
        judging: the model's own.
    """
    if not texts:
        return (NOTHING_KNOWN,)
    first = next(iter(texts))
    best = likelihood(features(texts[first], first, seconds), judging.weights)
    if best < judging.plausible:
        return (Alternative(UNKNOWN_WORD, 1.0 - best),)
    return tuple(Alternative(text, best * share / texts[first]) for text, share in texts.items())


def features(share: float, text: str, seconds: float) -> tuple[float, ...]:
    """What is weighed: the share as log odds, how long the text is, how far its pace is from usual."""
    letters = max(1, sum(not letter.isspace() for letter in text))
    odds = math.log(max(share, 1e-9) / max(1.0 - share, 1e-9))
    pace = math.log(max(seconds, 0.05) / (_SECONDS_A_LETTER * letters))
    return max(-_MOST_SURE, min(_MOST_SURE, odds)), math.log(letters), pace**2


def _shares(scores: Sequence[float]) -> list[float]:
    top = max(scores, default=0.0)
    powers = [math.exp(max(-700.0, score - top)) for score in scores]
    return [power / sum(powers) for power in powers]
