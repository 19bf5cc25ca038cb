"""How alike two utterances are: cepstra of both, laid on each other by dynamic time warping.

Cepstra: S. Davis and P. Mermelstein, "Comparison of parametric representations for monosyllabic word recognition",
1980; mel scale: D. O'Shaughnessy, "Speech Communication", 1987. Warping with slopes of a half to two: H. Sakoe and
S. Chiba, "Dynamic programming algorithm optimization for spoken word recognition", 1978.
"""

import math

import numpy as np
from numpy.typing import NDArray

RATE_HZ = 16_000
_HOP, _WINDOW, _SIZE, _BANDS, _CEPSTRA = 200, 400, 512, 26, 12
FRAMES_A_SECOND = RATE_HZ // _HOP
_LOW_HZ, _HIGH_HZ = 100, 7_000
_AUDIBLE = 1e-4
"""Of the loudest frame's power."""
_TONAL = 0.97
UNLIKE = float("inf")

Features = NDArray[np.float64]


def _filters() -> Features:
    def mel(hz: int) -> float:
        return 2595 * math.log10(1 + hz / 700)

    edges = 700 * (10 ** (np.linspace(mel(_LOW_HZ), mel(_HIGH_HZ), _BANDS + 2) / 2595) - 1)
    low, middle, high = (edges[at : at + _BANDS, None] * _SIZE / RATE_HZ for at in range(3))
    bins = np.arange(_SIZE // 2 + 1)
    return np.maximum(0.0, np.minimum((bins - low) / (middle - low), (high - bins) / (high - middle)))


_MEL = _filters()
_COSINES = np.cos(np.pi * np.arange(1, _CEPSTRA + 1)[:, None] * (np.arange(_BANDS) + 0.5) / _BANDS)
_LIFTER = 1 + 11 * np.sin(np.pi * np.arange(1, _CEPSTRA + 1) / 22)


def _spectra(samples: NDArray[np.int16]) -> Features:
    sound = samples.astype(float)
    sound = np.append(sound[:1], sound[1:] - 0.97 * sound[:-1])
    frames = np.lib.stride_tricks.sliding_window_view(sound, _WINDOW)[::_HOP]
    return np.asarray(np.square(np.abs(np.fft.rfft(frames * np.hamming(_WINDOW), _SIZE))))


def _is_tone(spectra: Features) -> NDArray[np.bool_]:
    """Whether nearly all of a frame's power lies at one frequency and its octave, as a tone's does."""
    sums = np.cumsum(np.pad(spectra, ((0, 0), (4, 2 * _SIZE))), axis=1)
    peaks = spectra.argmax(axis=1)
    rows = np.arange(len(spectra))
    near = [sums[rows, at + 7] - sums[rows, at] for at in (peaks, 2 * peaks)]
    return np.asarray(sum(near) > _TONAL * spectra.sum(axis=1))


def features(samples: NDArray[np.int16]) -> Features:
    """Cepstra, how they change, and the loudness, 80 a second, from the first speech to the last, tones left out.

    Args:
        samples: at 16 kHz.

    Returns:
        Shape (frames, 25); no frames where nothing is said.
    """
    if len(samples) < _WINDOW:
        return np.zeros((0, 2 * _CEPSTRA + 1))
    spectra = _spectra(samples)
    power = spectra.sum(axis=1)
    said = (power > power.max() * _AUDIBLE) & ~_is_tone(spectra) & (power > 0)
    if not said.any():
        return np.zeros((0, 2 * _CEPSTRA + 1))
    first, last = np.flatnonzero(said)[[0, -1]]
    spectra, power, said = (part[first : last + 1] for part in (spectra, power, said))
    top = power.max()
    cepstra = np.log(spectra @ _MEL.T + 1e-9 * top) @ _COSINES.T * _LIFTER
    cepstra = (cepstra - cepstra[said].mean(axis=0)) / (cepstra[said].std(axis=0) + 1e-6)
    change = np.gradient(cepstra, axis=0) if len(cepstra) > 1 else np.zeros_like(cepstra)
    loudness = np.log(power + top * 1e-6)
    return np.column_stack((cepstra, 2 * change, (loudness - loudness.max()) / 4))


def distance(one: Features, other: Features) -> float:
    """Mean distance of frames laid on each other; `UNLIKE` where one is more than twice as long."""
    if not len(one) or not 0.5 < len(other) / len(one) < 2:
        return UNLIKE
    squares = (one**2).sum(axis=1)[:, None] + (other**2).sum(axis=1) - 2 * one @ other.T
    local = np.sqrt(np.maximum(0.0, squares))
    best = np.full(len(other) + 2, np.inf)
    best[2] = local[0, 0]
    for row in local[1:]:
        following = np.full_like(best, np.inf)
        following[2:] = row + np.minimum(np.minimum(best[2:] + row / 2, best[1:-1]), best[:-2])
        best = following
    return float(best[-1]) / len(one)
