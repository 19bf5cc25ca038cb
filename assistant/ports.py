"""The needs of a session, each met by a real adapter or by a file."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import ClassVar, Protocol

import numpy as np
from numpy.typing import NDArray

from models.recognising import Block


@dataclass(frozen=True, slots=True)
class Sound:
    """Mono sound ready to play: samples of shape (n,), int16, and their rate."""

    samples: NDArray[np.int16]
    rate_hz: int

    @property
    def seconds(self) -> float:
        """Duration."""
        return len(self.samples) / self.rate_hz


@dataclass(frozen=True, slots=True)
class Played:
    """What a sink did with a sound: when it began and ended in the stream of the ears (16 kHz samples)."""

    began: int
    ended: int
    cut_short: bool


class AudioSource(Protocol):
    """Where sound comes from. Blocks are 16 kHz mono, in order; iteration ends with the stream."""

    def blocks(self) -> Iterator[Block]:
        """The stream from here on."""
        ...

    def close(self) -> None:
        """Let the device or file go."""
        ...


class AudioSink(Protocol):
    """Where sound goes."""

    def play(self, sound: Sound) -> Played:
        """Play to the end, or until `cut` is called from any thread."""
        ...

    def cut(self) -> None:
        """Stop what is playing now, at once."""
        ...

    def close(self) -> None:
        """Let the device go, or finish the file."""
        ...


class Synthesiser(Protocol):
    """Text in, sound out. May be called from any thread; raises SpeechFailed when no sound can be made."""

    def render(self, text: str) -> Sound:
        """The spoken text."""
        ...


class SpeechFailed(Exception):
    """No sound could be made of a text, after retries.

    Attributes:
        key: which sentence says it; the tree of all such errors stands in `assistant.devices`.
        values: what stands in that sentence, by name.
    """

    key: ClassVar[str] = "speech-failed"

    def __init__(self, text: str = "") -> None:
        super().__init__(f"{self.key}: {text}")
        self.values: Mapping[str, str] = {"text": text}


class Clock(Protocol):
    """Wall time and stream time."""

    def now_ms(self) -> int:
        """Milliseconds since the epoch."""
        ...

    def stream_ms(self) -> int:
        """Milliseconds of the ears' stream so far."""
        ...
