"""Words that one person has taught: a few takes of each in her own voice, kept as cepstra, never as sound.

What is said is laid on every take (see `models.likeness`). It is like the word whose takes are nearest, the surer the
nearer they are as takes of one word go, and the farther the other words' are.
"""

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from io import BytesIO
from pathlib import Path
from zipfile import BadZipFile

import numpy as np

from models.likeness import Features, distance
from models.logistic import likelihood
from models.recognising import UNKNOWN_WORD, Alternative, Readings

TAKES = 3
"""So many of each word are enough: a fourth changes little."""
_NEAREST = 2
_BETWEEN = "#"
_WEIGHTS = (-0.2, -5.0, 6.0)
"""A constant, of the logarithm of how far it is beside the takes from each other, of that of how far the next word is.

Set on eleven synthetic voices, in a quiet room and at 30 dB above its noise: of 270 takes of taught words the farthest
came out at 1.73 and 1.87, or at 1.15 and 1.28; of 515 other words and sentences the nearest at 1.98 and 1.53 (“nectar”
for “next”), or at 1.27 and 1.15.
"""
_FARTHEST = 2.0
_PLAUSIBLE = 0.3
_DOUBT = 0.05


@dataclass(frozen=True)
class Taught:
    """What one person has taught.

    Attributes:
        takes: text → cepstra of each take, shape (frames, 25), at least one.
    """

    takes: Mapping[str, tuple[Features, ...]]

    def like(self, said: Features, may_be: Callable[[str], bool]) -> Alternative | None:
        """The text that it is most like, and how surely; None where it is like none.

        Args:
            said: cepstra of an utterance.
            may_be: whether a text can be meant now; others count as what it may be instead.
        """
        far = {text: _mean_of_nearest(distance(said, take) for take in takes) for text, takes in self.takes.items()}
        text = min((text for text in far if may_be(text)), key=far.__getitem__, default=None)
        if text is None or math.isinf(far[text]):
            return None
        rival = min((far[other] for other in far if other != text), default=math.inf)
        nearness, lead = far[text] / self._usual(text), min(rival / far[text], _FARTHEST)
        sure = likelihood((math.log(nearness), math.log(lead)), _WEIGHTS)
        return Alternative(text, sure) if sure >= _PLAUSIBLE else None

    def fits(self, text: str, said: Features) -> bool:
        """Whether it can be another take of a text: about as near to its takes as those of the other words are far."""
        known = self.takes.get(text, ())
        others = (take for other, takes in self.takes.items() if other != text for take in takes)
        own = _mean_of_nearest(distance(said, take) for take in known)
        return not known or own < min((distance(said, take) for take in others), default=math.inf)

    def with_take(self, text: str, said: Features) -> "Taught":
        """The same with one take more."""
        return Taught({**self.takes, text: (*self.takes.get(text, ()), said)})

    def without(self, text: str) -> "Taught":
        """The same without the takes of a text."""
        return Taught({other: takes for other, takes in self.takes.items() if other != text})

    def _usual(self, text: str) -> float:
        """How far takes of the text are from each other; where there is but one, as those of all words are."""
        spreads = (self._spreads[text], *self._spreads.values())
        return next((spread for spread in spreads if spread > 0.0), 1.0)

    @cached_property
    def _spreads(self) -> Mapping[str, float]:
        """Reckoned once, not for each utterance."""
        return {text: _spread(takes) for text, takes in self.takes.items()}


def _spread(takes: Sequence[Features]) -> float:
    pairs = [distance(one, other) for one in takes for other in takes if one is not other]
    finite = [far for far in pairs if math.isfinite(far)]
    return sum(finite) / len(finite) if finite else 0.0


def _mean_of_nearest(far: Iterable[float]) -> float:
    nearest = sorted(far)[:_NEAREST]
    return sum(nearest) / len(nearest) if nearest else math.inf


def fused(readings: Readings, own: Alternative | None, sure: float) -> Readings:
    """What a recogniser read, and what was taught, taken together.

    Args:
        readings: of the recogniser, the likeliest first.
        own: what it is most like of all that was taught.
        sure: from this confidence on each would be trusted alone; where both are sure of different texts, neither is.
    """
    if own is None:
        return readings
    best, *others = readings
    if best.words == own.words:
        return (Alternative(own.words, 1.0 - (1.0 - best.confidence) * (1.0 - own.confidence)), *others)
    if best.words == UNKNOWN_WORD:
        return (own,)
    if min(best.confidence, own.confidence) >= sure:
        doubt = sure - _DOUBT
        return (Alternative(best.words, doubt), Alternative(own.words, doubt), *others)
    first, second = sorted((best, own), key=lambda reading: -reading.confidence)
    return (first, second, *(other for other in others if other.words != own.words))


def as_archive(taught: Taught) -> bytes:
    """All takes, at half precision, as a NumPy archive without any object in it."""
    arrays = {
        f"{text}{_BETWEEN}{number}": take.astype(np.float16)
        for text, takes in taught.takes.items()
        for number, take in enumerate(takes)
    }
    archive = BytesIO()
    np.savez_compressed(archive, **arrays)  # type: ignore[arg-type]
    return archive.getvalue()


def read_taught(file: Path) -> Taught:
    """All takes in a file; none where there is no such file.

    Raises:
        OSError: it cannot be read.
        ValueError: it holds something else.
    """
    taught = Taught({})
    try:
        with file.open("rb") as stream, np.load(stream, allow_pickle=False) as arrays:
            for name in arrays.files:
                taught = taught.with_take(name.partition(_BETWEEN)[0], _checked(arrays[name]))
    except FileNotFoundError:
        return taught
    except (BadZipFile, EOFError, KeyError, AttributeError, TypeError) as broken:
        raise ValueError(str(broken)) from broken
    return taught


def _checked(take: Features) -> Features:
    if take.ndim != 2 or take.dtype.kind != "f" or not np.isfinite(take).all():
        message = "takes are tables of numbers"
        raise ValueError(message)
    return take.astype(np.float64)
