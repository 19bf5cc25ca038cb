"""Sound of any rate, channel count and sample format becomes 16 kHz mono int16.

A polyphase windowed sinc of our own: the sums run over whole numbers below 2**53, so they are exact in any
order, and how the stream is cut into blocks never changes a sample. (The small library tried, soxr 1.1, gave
other values for 44 % of the samples when the same stream came in other blocks.)
"""

from fractions import Fraction
from math import ceil

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from models.errors import RateUnusable
from models.recognising import SAMPLE_RATE_HZ, Samples

LOWEST_HZ = 4_000
HIGHEST_HZ = 192_000

_FULL_SCALE = 2.0**23
"""Inside, samples are whole numbers of 24 bits."""
_UNITY = 2.0**22
"""A filter's coefficients are whole numbers with this sum."""
_ZERO_CROSSINGS = 32
_KAISER_BETA = 7.86
_OUTPUTS_AT_ONCE = 2_048

Whole = NDArray[np.float64]


def to_whole(samples: NDArray[np.generic]) -> Whole:
    """Samples as whole numbers of 24 bits, shape kept.

    Args:
        samples: uint8 (silence at 128), int16, int32, or float with full scale at 1; nan counts as silence.

    Raises:
        TypeError: for any other type.
    """
    if samples.dtype == np.uint8:
        return (samples.astype(np.float64) - 128.0) * 2.0**16
    if samples.dtype == np.int16:
        return samples.astype(np.float64) * 2.0**8
    if samples.dtype == np.int32:
        return np.floor(samples.astype(np.float64) / 2.0**8)
    if samples.dtype.kind == "f":
        whole = np.rint(np.nan_to_num(samples.astype(np.float64), posinf=1.0, neginf=-1.0) * _FULL_SCALE)
        return np.clip(whole, -_FULL_SCALE, _FULL_SCALE - 1.0)
    raise TypeError(samples.dtype)


def unpack(data: bytes, width_bytes: int) -> NDArray[np.generic]:
    """Samples from little-endian PCM as a WAV file has it: 1 byte unsigned, 2, 3 or 4 bytes signed.

    A sample cut off at the end is dropped.

    Raises:
        ValueError: for another width.
    """
    data = data[: len(data) - len(data) % width_bytes] if width_bytes in {1, 2, 3, 4} else b""
    match width_bytes:
        case 1:
            return np.frombuffer(data, np.uint8)
        case 2:
            return np.frombuffer(data, "<i2").astype(np.int16)
        case 3:
            padded = np.zeros((len(data) // 3, 4), np.uint8)
            padded[:, 1:] = np.frombuffer(data, np.uint8).reshape(-1, 3)
            return padded.view("<i4").ravel().astype(np.int32)
        case 4:
            return np.frombuffer(data, "<i4").astype(np.int32)
        case _:
            raise ValueError(width_bytes)


def to_int16(whole: Whole) -> Samples:
    """Whole numbers of 24 bits rounded to int16, the halves upwards, and clipped."""
    return np.clip(np.floor(whole / 2.0**8 + 0.5), -32_768, 32_767).astype(np.int16)


def mix(samples: NDArray[np.generic], channels: int) -> Whole:
    """The mean of all channels.

    Args:
        samples: shape (n, channels), or interleaved, shape (n · channels,).
        channels: how many there are.
    """
    mean: Whole = to_whole(samples).reshape(-1, channels).mean(axis=1)
    return np.floor(mean + 0.5)


class Resampler:
    """Turns one stream into 16 kHz mono int16, block by block.

    Sample k of the result lies at the time k / 16000 of the stream; n samples give ceil(n · 16000 / rate).
    Passes up to 0.42 of the lower rate within 0.1 dB, stops half of the lower rate by 75 dB. Holds back 2 ms.

    Args:
        rate_hz: samples a second and channel of what comes in, `LOWEST_HZ` to `HIGHEST_HZ`.
        channels: how many channels are interleaved.

    Raises:
        RateUnusable: for a rate out of that range.
    """

    def __init__(self, rate_hz: int, channels: int = 1) -> None:
        if not LOWEST_HZ <= rate_hz <= HIGHEST_HZ:
            raise RateUnusable(rate_hz=str(rate_hz), lowest_hz=str(LOWEST_HZ), highest_hz=str(HIGHEST_HZ))
        self._channels = channels
        ratio = Fraction(SAMPLE_RATE_HZ, rate_hz)
        self._up, self._down = ratio.numerator, ratio.denominator
        self._table = _filters(self._up, self._down)
        self._half: int = self._table.shape[1] // 2
        self._held: Whole = np.zeros(self._half - 1)
        self._dropped = -(self._half - 1)
        self._received = 0
        self._given = 0

    def accept(self, samples: NDArray[np.generic]) -> Samples:
        """What the next samples make ready, shape (m,).

        Args:
            samples: shape (n, channels) or interleaved; a type that `to_whole` takes.
        """
        mono = mix(samples, self._channels)
        self._received += len(mono)
        if self._up == self._down:
            return to_int16(mono)
        self._held = np.concatenate((self._held, mono))
        return self._make(self._ready())

    def finish(self) -> Samples:
        """The end of the stream: what was held back."""
        if self._up == self._down:
            return np.zeros(0, np.int16)
        self._held = np.concatenate((self._held, np.zeros(self._half)))
        return self._make(-(-self._received * self._up // self._down))

    def _ready(self) -> int:
        """How many samples can be made of what has come: those whose whole filter has input."""
        return max(self._given, ((self._received - self._half) * self._up - 1) // self._down + 1)

    def _make(self, end: int) -> Samples:
        """Make the samples up to number `end` and let go of input that no later one needs."""
        parts = [
            self._stretch(begin, min(begin + _OUTPUTS_AT_ONCE, end))
            for begin in range(self._given, end, _OUTPUTS_AT_ONCE)
        ]
        self._given = max(self._given, end)
        unneeded = self._given * self._down // self._up - self._half + 1 - self._dropped
        self._held = self._held[unneeded:]
        self._dropped += unneeded
        return np.concatenate(parts) if parts else np.zeros(0, np.int16)

    def _stretch(self, begin: int, end: int) -> Samples:
        centres, phases = np.divmod(np.arange(begin, end, dtype=np.int64) * self._down, self._up)
        starts = centres - self._half + 1 - self._dropped
        windows = sliding_window_view(self._held, 2 * self._half)
        if self._up == 1:
            sums = windows[starts[0] : starts[-1] + 1 : self._down] @ self._table[0]
        else:
            sums = np.einsum("ij,ij->i", windows[starts], self._table[phases])
        return to_int16(sums / _UNITY)


def _filters(up: int, down: int) -> Whole:
    """One filter a phase, shape (up, taps), taps even; a row's whole coefficients sum to `_UNITY` exactly.

    Coefficient j of phase p weighs the sample j - taps / 2 + 1 - p / up input samples from the output's time.
    A sinc under a Kaiser window of beta 7.86 (80 dB: J. F. Kaiser, "Nonrecursive digital filter design using
    the I0-sinh window function", 1974), its cut-off half a transition below half of the lower rate.
    """
    low = min(1.0, up / down)
    half = ceil(_ZERO_CROSSINGS / low)
    offsets = np.arange(2 * half) - half + 1 - np.arange(up)[:, None] / up
    transition = 72.0 / 14.36 / (2 * _ZERO_CROSSINGS)
    cut = low * (1.0 - transition)
    window = np.i0(_KAISER_BETA * np.sqrt(np.clip(1.0 - (offsets / half) ** 2, 0.0, 1.0)))
    ideal = np.sinc(cut * offsets) * window
    table: Whole = np.rint(ideal / ideal.sum(axis=1, keepdims=True) * _UNITY)
    table[:, half - 1] += _UNITY - table.sum(axis=1)
    return table
