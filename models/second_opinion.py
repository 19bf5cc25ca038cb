"""A second opinion on what was said, where the first is unsure: another network scores a few texts on the same sound.

The best by that score is weighed by logistic regression: how sure the first was of it, how likely the second finds it,
and how much likelier whatever it would write down by itself. So it says no as well: talk is written down as talk.
"""

import math
import time
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple, Protocol

import numpy as np

from models.logistic import likelihood
from models.recognising import SAMPLE_RATE_HZ, UNKNOWN_WORD, Alternative, Readings, Samples
from models.written_english import sounding_alike

MOST_TEXTS = 6
SLOWEST_S = 0.5
"""It is worth waiting so long for."""
_MOST_ODDS, _FARTHEST, _LEAST_A_PIECE = 9.0, 15.0, -6.0


class Scored(NamedTuple):
    """How likely a text is in a sound: natural logarithm of the whole, and the mean of its pieces' in one writing."""

    score: float
    a_piece: float


class Encoded(Protocol):
    """One sound, as the network has taken it in."""

    @property
    def words(self) -> str:
        """What it would write down by itself, in small letters, numbers in words."""
        ...

    def scored(self, texts: Sequence[str]) -> tuple[float, tuple[Scored, ...]]:
        """How likely is what it would write down by itself (natural logarithm), and how likely is each text."""
        ...


class Scorer(Protocol):
    """Another network."""

    def encode(self, sound: Samples) -> Encoded:
        """Take in a sound."""
        ...


class Opinion(NamedTuple):
    """What both come to.

    Attributes:
        readings: the likeliest first; unknown words where none is plausible.
        words: the best text.
        features: what was weighed, for fitting the weights.
    """

    readings: Readings
    words: str
    features: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Trust:
    """What was settled by measurement, see DEVELOPERS.md.

    Attributes:
        weights: a constant, then one for each of `features`.
        unsure: from this confidence of the first opinion on it is asked.
        sure: from this confidence on it is not.
        plausible: below this confidence nothing but unknown words was heard.
    """

    weights: tuple[float, ...] = (3.22, 0.605, -1.114, 0.129, 1.062)
    unsure: float = 0.02
    sure: float = 0.95
    plausible: float = 0.3


@dataclass(frozen=True)
class SecondOpinion:
    """Whom to ask, and how far to trust both.

    Attributes:
        scorer: the other network.
        trust: what was settled by measurement.
    """

    scorer: Scorer
    trust: Trust = Trust()

    def is_wanted(self, first: Alternative) -> bool:
        """Whether the first opinion, the text that it finds likeliest, is neither sure nor sheer chance."""
        return self.trust.unsure <= first.confidence < self.trust.sure

    def on(self, sound: Samples, first: Alternative, others: Iterable[str], may_be: Callable[[str], bool]) -> Opinion:
        """The opinion of both.

        Args:
            sound: the utterance.
            first: the text that the first finds likeliest, be it ever so implausible.
            others: what it finds likely after that.
            may_be: whether a text may be said now.
        """
        encoded = self.scorer.encode(sound)
        texts = _candidates(first.words, encoded.words, others, may_be)
        freely, scores = encoded.scored(texts)
        found = dict(zip(texts, scores, strict=True))
        best = max(found, key=lambda text: found[text].score)
        weighed = features(best, first, found[best], freely)
        sure = likelihood(weighed, self.trust.weights)
        if sure < self.trust.plausible:
            return Opinion((Alternative(UNKNOWN_WORD, 1.0 - sure),), best, weighed)
        return Opinion(tuple(_shared(found, sure)), best, weighed)


def features(text: str, first: Alternative, scored: Scored, freely: float) -> tuple[float, ...]:
    """What is weighed.

    Returns:
        The first opinion's log odds where it is of this text, else 0; 1 where it is not; by how much the text is
        likelier than what would be written down freely (natural logarithm); how likely its pieces are.
    """
    agree = text == first.words
    odds = math.log(max(first.confidence, 1e-9) / max(1.0 - first.confidence, 1e-9))
    return (
        max(-_MOST_ODDS, min(_MOST_ODDS, odds)) if agree else 0.0,
        0.0 if agree else 1.0,
        max(-_FARTHEST, min(2.0, scored.score - freely)),
        max(_LEAST_A_PIECE, scored.a_piece),
    )


def seconds_needed(scorer: Scorer, clock: Callable[[], float] = time.perf_counter) -> float:
    """How long an opinion takes on this machine; the quicker of two, as the first also sets the library up."""
    noise = np.rint(np.random.default_rng(0).normal(0.0, 300.0, 2 * SAMPLE_RATE_HZ)).astype(np.int16)
    texts = [f"i have {number} stitches" for number in ("one", "two", "three", "forty", "fifty", "sixty")]
    spent = []
    for _ in range(2):
        began = clock()
        scorer.encode(noise).scored(texts)
        spent.append(clock() - began)
    return min(spent)


def _candidates(
    first: str, freely: str, others: Iterable[str], may_be: Callable[[str], bool]
) -> tuple[str, ...]:  # fmt: skip
    texts = dict.fromkeys((freely, *sounding_alike(first), *others))
    return (first, *(text for text in texts if text != first and may_be(text)))[:MOST_TEXTS]


def _shared(found: Mapping[str, Scored], sure: float) -> Iterable[Alternative]:
    """The best text with its confidence; the others' in proportion to how likely they are."""
    top = max(each.score for each in found.values())
    shares = {text: math.exp(each.score - top) for text, each in found.items()}
    for text in sorted(shares, key=lambda text: -shares[text]):
        yield Alternative(text, sure * shares[text])
