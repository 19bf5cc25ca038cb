"""A faint, even noise under an utterance, always as far below it.

Rooms, microphones that gate their noise away and files with digital silence then sound alike to an acoustic model
that was trained in rooms. Measured with PocketSphinx, choosing among all commands and numbers: of 260 real and
synthetic commands 202 were right without it, 213 with it 25 dB below the speech, 211 at 20 dB, 202 at 16 dB; white
instead of pink noise did less.
"""

from functools import cache

import numpy as np
from numpy.typing import NDArray

from models.recognising import SAMPLE_RATE_HZ, Samples

BELOW_DB = 24.0
"""Below the mean level of the utterance with its pauses."""


def with_room_tone(samples: Samples) -> Samples:
    """The same sound with the tone under it; always the same for the same sound. Digital silence stays."""
    wide = samples.astype(np.float64)
    level = np.sqrt(np.mean(np.square(wide))) if len(wide) else 0.0
    tone = np.resize(_tone(), len(wide)) * level * 10.0 ** (-BELOW_DB / 20.0)
    louder: Samples = np.clip(np.rint(wide + tone), -32_768, 32_767).astype(np.int16)
    return louder


@cache
def _tone() -> NDArray[np.float64]:
    """Some seconds of pink noise, root mean square 1: its power falls as 1 / frequency."""
    length = 8 * SAMPLE_RATE_HZ
    spectrum = np.fft.rfft(np.random.default_rng(0).normal(0.0, 1.0, length))
    noise = np.fft.irfft(spectrum / np.sqrt(np.arange(1, len(spectrum) + 1)), length)
    return np.asarray(noise / noise.std())
