"""The needs of a session, each met by a real adapter or by a file."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from pydantic import Field

from models.recognising import Block
from models.sayable import Sayable
from plans.record import Record

SLOWEST_WPM = 80
FASTEST_WPM = 450
SOFTEST = 0.1


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
        """The stream from here on; after a pause the next block begins later than the last one ended."""
        ...

    def pause(self) -> None:
        """Stop handing out sound, as while something is spoken; the stream goes on."""
        ...

    def resume(self) -> None:
        """Hand out what comes from now on."""
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


class VoiceSettings(Record):
    """How to speak.

    Attributes:
        rate_wpm: words a minute.
        volume: 0 to 1, in steps of a straight line in amplitude.
        voice: the system's name of a voice, part of its name, or a language tag; None for the system's own.
    """

    rate_wpm: int = Field(default=170, ge=SLOWEST_WPM, le=FASTEST_WPM)
    volume: float = Field(default=1.0, ge=0.0, le=1.0)
    voice: str | None = None

    def faster(self, by: int = 20) -> "VoiceSettings":
        """More words a minute, up to `FASTEST_WPM`; less than zero is slower, down to `SLOWEST_WPM`."""
        rate_wpm = min(max(self.rate_wpm + by, SLOWEST_WPM), FASTEST_WPM)
        return VoiceSettings(rate_wpm=rate_wpm, volume=self.volume, voice=self.voice)

    def louder(self, by: float = 0.2) -> "VoiceSettings":
        """More volume, up to 1; less than zero is softer, down to `SOFTEST`, which can still be heard."""
        volume = round(min(max(self.volume + by, SOFTEST), 1.0), 3)
        return VoiceSettings(rate_wpm=self.rate_wpm, volume=volume, voice=self.voice)


class Voice(Protocol):
    """One try at making sound of a text. It may fail or give less than the text: see `speaking.synthesis`."""

    def attempt(self, text: str, settings: VoiceSettings) -> Sound:
        """The spoken text, at full volume; raises AttemptFailed."""
        ...

    def close(self) -> None:
        """Let go of whatever renders."""
        ...


class AttemptFailed(Exception):
    """A voice gave no sound this time; the next time it may."""


class SpeechFailed(Sayable):
    """No sound could be made of a text, after retries; the tree of all such errors: `assistant.device_errors`."""

    key = "speech-failed"
    names = frozenset({"text"})

    def __init__(self, text: str = "") -> None:
        super().__init__(text=text)


class Clock(Protocol):
    """Wall time and stream time."""

    def now_ms(self) -> int:
        """Milliseconds since the epoch."""
        ...

    def stream_ms(self) -> int:
        """Milliseconds of the ears' stream so far."""
        ...
