"""Short soft tones that say what words would say too slowly, told apart by how their pitch moves."""

from enum import StrEnum
from functools import cache

import numpy as np
from numpy.typing import NDArray

from assistant.ports import Sound

RATE_HZ = 22_050
"""The rate of espeak-ng's voices, so that a speaker need not change its own between the two."""
PEAK = 0.2
"""Share of full scale: some 14 dB below full, softer than the voice and far from overloading a recording."""
_FADE_S = 0.012


class Earcon(StrEnum):
    """What a tone says."""

    LISTENING_AGAIN = "listening_again"
    HEARD = "heard"
    NOT_UNDERSTOOD = "not_understood"
    TURN_THE_WORK = "turn_the_work"
    ATTENTION = "attention"


_NOTES: dict[Earcon, tuple[tuple[float, float, int], ...]] = {
    Earcon.LISTENING_AGAIN: ((523.25, 523.25, 70),),
    Earcon.HEARD: ((587.33, 587.33, 50), (880.0, 880.0, 60)),
    Earcon.NOT_UNDERSTOOD: ((440.0, 440.0, 70), (311.13, 311.13, 100)),
    Earcon.TURN_THE_WORK: ((493.88, 493.88, 55), (739.99, 739.99, 55), (493.88, 493.88, 75)),
    Earcon.ATTENTION: ((392.0, 784.0, 170),),
}
"""Notes of each tone: hertz at its start, hertz at its end, milliseconds."""


@cache
def earcon(name: Earcon, rate_hz: int = RATE_HZ, volume: float = 1.0) -> Sound:
    """The tone at a rate, under 200 ms long.

    Args:
        name: what it says.
        rate_hz: samples a second, at least 8000.
        volume: 0 to 1, as the voice's.
    """
    tone = np.concatenate([_note(*note, rate_hz) for note in _NOTES[name]])
    samples = np.rint(tone * (PEAK * volume * 32_767)).astype(np.int16)
    samples.flags.writeable = False
    return Sound(samples, rate_hz)


def _note(from_hz: float, to_hz: float, length_ms: int, rate_hz: int) -> NDArray[np.float64]:
    """A sine with a soft octave above it, gliding evenly in pitch, faded in and out; peak at most 1."""
    count = length_ms * rate_hz // 1000
    pitch_hz = from_hz * (to_hz / from_hz) ** (np.arange(count) / count)
    phase = 2 * np.pi * np.cumsum(pitch_hz) / rate_hz
    wave: NDArray[np.float64] = (np.sin(phase) + 0.2 * np.sin(2 * phase)) / 1.2
    return wave * _fade(count, int(_FADE_S * rate_hz))


def _fade(count: int, length: int) -> NDArray[np.float64]:
    """One, but for a raised cosine from zero at the start and to zero at the end."""
    rising = 0.5 - 0.5 * np.cos(np.pi * np.arange(length) / length)
    return np.concatenate((rising, np.ones(count - 2 * length), rising[::-1]))
