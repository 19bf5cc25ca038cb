"""One sound on its way out, at the rate of what plays it."""

import threading
import time
from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from assistant.clocks import StreamClock
from assistant.ports import Played, Sound
from models.recognising import SAMPLE_RATE_HZ

_FADE_S = 0.005


def at_rate(sound: Sound, rate_hz: int) -> Sound:
    """The same sound at another rate: its spectrum, cut or padded to the new length."""
    if sound.rate_hz == rate_hz or not len(sound.samples):
        return Sound(sound.samples, rate_hz)
    seconds = -(-len(sound.samples) // sound.rate_hz)
    spectrum = np.fft.rfft(sound.samples, seconds * sound.rate_hz)[: seconds * rate_hz // 2 + 1]
    long = np.fft.irfft(spectrum, seconds * rate_hz) * (rate_hz / sound.rate_hz)
    samples = np.rint(long[: len(sound.samples) * rate_hz // sound.rate_hz])
    return Sound(np.clip(samples, -32_768, 32_767).astype(np.int16), rate_hz)


class Playing:
    """One sound on its way out; filled by the audio callback, watched by whoever called `play`.

    Args:
        sound: what is played.
        clock: the ears' stream.
        held_s: how much sound the system holds; so much silence follows, as what is held at the end is lost.
        tell: is given the sample of the ears' stream at which the first sound was asked for.
    """

    def __init__(
        self, sound: Sound, clock: StreamClock, held_s: float = 0.0, tell: Callable[[int], None] = lambda _: None
    ) -> None:
        rate_hz = sound.rate_hz
        self.samples = sound.samples
        self._silence_to_go = int(held_s * rate_hz)
        self._held_s = held_s
        self._fade = int(_FADE_S * rate_hz)
        self._clock = clock
        self.given = 0
        self.began: int | None = None
        self.asked_at_s = time.monotonic()
        self.cut_short = False
        self.cut = threading.Event()
        self.done = threading.Event()
        self._rate_hz = rate_hz
        self._tell = tell

    def played(self) -> Played:
        """What came of it; it is heard when the system has played what it holds."""
        began = (self._clock.now() if self.began is None else self.began) + int(self._held_s * SAMPLE_RATE_HZ)
        return Played(began, began + self.given * SAMPLE_RATE_HZ // self._rate_hz, self.cut_short)

    def fill(self, out: NDArray[np.int16]) -> bool:
        """Put the next samples into `out`, shape (n,); whether more are to come."""
        self.asked_at_s = time.monotonic()
        if self.began is None:
            self.began = self._clock.now()
            self._tell(self.began)
        if self.cut.is_set() and not self.cut_short and self.given < len(self.samples):
            self.cut_short = True
            self.samples = self._faded()
        part = self.samples[self.given : self.given + len(out)]
        out[: len(part)] = part
        out[len(part) :] = 0
        self.given += len(part)
        self._silence_to_go -= len(out) - len(part)
        return self.given < len(self.samples) or self._silence_to_go > 0

    def _faded(self) -> NDArray[np.int16]:
        """What was given already and a short way down to silence."""
        end = min(self.given + self._fade, len(self.samples))
        ramp = np.linspace(1.0, 0.0, end - self.given)
        tail = (self.samples[self.given : end] * ramp).astype(np.int16)
        return np.concatenate((self.samples[: self.given], tail))
