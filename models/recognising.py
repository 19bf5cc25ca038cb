"""What every recogniser is given and gives back. Sample numbers count from the start of the stream."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

SAMPLE_RATE_HZ = 16_000
UNKNOWN_WORD = "[unk]"

Samples = NDArray[np.int16]


@dataclass(frozen=True, slots=True)
class Block:
    """A stretch of mono sound.

    Attributes:
        first_sample: number of its first sample in the stream, at 16 kHz.
        samples: shape (n,), int16, 16 kHz.
        speech: whether voice activity was marked in it; None where nobody looked.
    """

    first_sample: int
    samples: Samples
    speech: bool | None = None

    @property
    def end_sample(self) -> int:
        """Number of the first sample after this block."""
        return self.first_sample + len(self.samples)


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """All that may be said: phrases, and what may stand in their slots.

    Attributes:
        phrases: lower-case texts; a phrase may hold a slot's name in braces, as in "back {number} rounds".
        slots: for each slot every text that may stand there.
        pronounced: words that a pronouncing dictionary may lack → their phones, as "G AH S AH T" (CMU's).
        costly: those phrases that are worst when heard wrongly: a little more silence is waited for after them.
        begins_talk: those with which talk begins too: still more silence is waited for.
        homophones: groups of words that sound the same, such as "two" and "to".
    """

    phrases: tuple[str, ...]
    slots: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    pronounced: Mapping[str, str] = field(default_factory=dict)
    costly: frozenset[str] = frozenset()
    homophones: tuple[tuple[str, ...], ...] = ()
    begins_talk: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Alternative:
    """One reading of an utterance: words (unknown ones as "[unk]") and confidence from 0 to 1."""

    words: str
    confidence: float


Readings = tuple[Alternative, ...]
"""Of one utterance, the likeliest first; at least one."""


@dataclass(frozen=True, slots=True)
class Partial:
    """Words so far of an utterance that is still going on."""

    words: str
    began: int


@dataclass(frozen=True, slots=True)
class Heard:
    """An utterance that has ended.

    Attributes:
        words: the best reading; words outside the vocabulary, and any talk, stand as "[unk]".
        confidence: 0 to 1; how sure the recogniser is that exactly these words, and nothing else, were said.
        began: first sample of the utterance in the stream.
        ended: first sample after it.
        alternatives: the best readings, best first, the first being `words`.
    """

    words: str
    confidence: float
    began: int
    ended: int
    alternatives: tuple[Alternative, ...] = ()


class Recogniser(Protocol):
    """Sound in, words out. One stream at a time, on one thread."""

    @property
    def name(self) -> str:
        """As in `--recogniser NAME`."""
        ...

    def expect(self, vocabulary: Vocabulary) -> None:
        """Take what may be said from the next utterance on."""
        ...

    def accept(self, block: Block) -> tuple[Partial | Heard, ...]:
        """Take the next block of the stream; blocks may skip samples (while something was spoken)."""
        ...

    def finish(self) -> tuple[Heard, ...]:
        """End of the stream: what was still open."""
        ...

    def reset(self) -> None:
        """Forget an utterance that has begun, as after the assistant's own voice."""
        ...
