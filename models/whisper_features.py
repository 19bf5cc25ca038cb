"""What Whisper looks at: 80 mel bands of the sound, on a logarithmic scale, a hundred times a second.

As in A. Radford and others, "Robust Speech Recognition via Large-Scale Weak Supervision" (2022): windows of 25 ms each
10 ms, levels down to 80 dB below the loudest, brought to about -1 to 1. Mel scale: M. Slaney, "Auditory Toolbox", 1998.
"""

import numpy as np
from numpy.typing import NDArray

from models.loudness import FULL_SCALE
from models.recognising import SAMPLE_RATE_HZ, Samples

FRAMES_A_SECOND = 100
BANDS = 80
_HOP = SAMPLE_RATE_HZ // FRAMES_A_SECOND
_WINDOW = SAMPLE_RATE_HZ // 40
_FAINTEST, _RANGE = 1e-10, 8.0
_LINEAR_HZ, _LINEAR_BANDS, _A_BAND = 1_000.0, 15.0, np.log(6.4) / 27.0

Features = NDArray[np.float32]


def log_mel(samples: Samples, frames: int) -> Features:
    """The sound from its beginning, followed by silence or cut off.

    Returns:
        Shape (80, frames).
    """
    sound = np.zeros(frames * _HOP, np.float32)
    said = samples[: len(sound)]
    sound[: len(said)] = said / np.float32(FULL_SCALE)
    around = np.pad(sound, _WINDOW // 2, mode="reflect")
    windows = np.lib.stride_tricks.sliding_window_view(around, _WINDOW)[::_HOP][:frames]
    power = np.square(np.abs(np.fft.rfft(windows * _HANN, axis=1))).astype(np.float32)
    level = np.log10(np.maximum(_FILTERS @ power.T, _FAINTEST))
    return np.asarray((np.maximum(level, level.max() - _RANGE) + 4.0) / 4.0, np.float32)


def _filters() -> Features:
    """Triangles, even in area; below 1 kHz evenly spaced, above it in equal ratios."""
    top = _LINEAR_BANDS + np.log(SAMPLE_RATE_HZ / 2 / _LINEAR_HZ) / _A_BAND
    bands = np.linspace(0.0, top, BANDS + 2)
    linear = bands * _LINEAR_HZ / _LINEAR_BANDS
    edges = np.where(bands < _LINEAR_BANDS, linear, _LINEAR_HZ * np.exp((bands - _LINEAR_BANDS) * _A_BAND))
    bins = np.fft.rfftfreq(_WINDOW, 1.0 / SAMPLE_RATE_HZ)
    low, middle, high = (edges[at : at + BANDS, None] for at in range(3))
    triangles = np.minimum((bins - low) / (middle - low), (high - bins) / (high - middle))
    return np.asarray(np.maximum(0.0, triangles) * 2.0 / (high - low), np.float32)


_HANN = np.hanning(_WINDOW + 1)[:-1].astype(np.float32)
_FILTERS = _filters()
