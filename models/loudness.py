"""How loud sound is, in dB of full scale: a frame, a room over seconds, a voice at a sound check."""

from collections import deque
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from models.recognising import SAMPLE_RATE_HZ, Block, Samples

SILENCE_DBFS = -100.0
"""The level of no sound at all; also the lowest that is ever given."""
FULL_SCALE = 32_768.0

_VOICE_HZ = (150, 7_000)
"""Below lie hum and rumble, which say nothing about a voice."""


def dbfs(power: float) -> float:
    """A mean square, full scale being 1, in dB; so a full-scale sine has -3 dB."""
    return float(10.0 * np.log10(max(power, 10.0 ** (SILENCE_DBFS / 10.0))))


def voice_level(samples: Samples) -> float:
    """Level of the voice band of some samples, in dBFS.

    Steady noise of equal power at all frequencies has 0.6 dB less than by its plain mean square.
    """
    spectrum = np.fft.rfft(samples * (np.hanning(len(samples)) / FULL_SCALE))
    low, high = (round(hz * len(samples) / SAMPLE_RATE_HZ) for hz in _VOICE_HZ)
    band = spectrum[low : high + 1]
    power = float(np.vdot(band, band).real)
    return dbfs(2.0 * power / (0.375 * len(samples) ** 2))


class NoiseFloor:
    """The room's own level: the quietest frame of the last seconds, as speech always has gaps.

    Follows minimum statistics (R. Martin, "Noise power spectral density estimation based on optimal smoothing
    and minimum statistics", 2001), on one level instead of a spectrum: falls at once, rises after 4 s. During
    the first second, which may begin inside a word, a quiet room is assumed.

    Args:
        frame_samples: length of the frames whose levels come.
    """

    _PIECES = 8
    _PIECE_S = 0.5
    _ASSUMED_PIECES = 2
    _ASSUMED_DBFS = -58.0
    _LOWEST_DBFS = -75.0

    def __init__(self, frame_samples: int) -> None:
        self._frames_a_piece = round(self._PIECE_S * SAMPLE_RATE_HZ / frame_samples)
        self._minima: deque[float] = deque(maxlen=self._PIECES)
        self._assumed_pieces = self._ASSUMED_PIECES
        self._lowest = 0.0
        self._frames = 0

    @property
    def dbfs(self) -> float:
        """The floor as it is known now; a quiet room is assumed at first."""
        assumed = self._ASSUMED_DBFS if self._assumed_pieces else 0.0
        return max(self._LOWEST_DBFS, min(assumed, self._lowest, *self._minima))

    def accept(self, level: float) -> None:
        """Take the next frame's level."""
        self._lowest = min(self._lowest, level)
        self._frames += 1
        if self._frames == self._frames_a_piece:
            self._minima.append(self._lowest)
            self._lowest, self._frames = 0.0, 0
            self._assumed_pieces = max(0, self._assumed_pieces - 1)


class Verdict(StrEnum):
    """What a sound check says."""

    NOTHING = "nothing"
    """No speech was heard."""
    TOO_QUIET = "too-quiet"
    TOO_NOISY = "too-noisy"
    FINE = "fine"
    TOO_LOUD = "too-loud"


@dataclass(frozen=True, slots=True)
class Levels:
    """What was measured.

    Attributes:
        speech_dbfs: mean level while somebody spoke; None where nobody did.
        room_dbfs: mean level otherwise; None where somebody spoke all the time.
        peak_dbfs: the largest sample.
        clipped: share of the samples at full scale, 0 to 1.
    """

    speech_dbfs: float | None
    room_dbfs: float | None
    peak_dbfs: float
    clipped: float

    @property
    def verdict(self) -> Verdict:
        """Whether a recogniser can work with this; the limits are ours."""
        if self.speech_dbfs is None:
            return Verdict.NOTHING
        if self.clipped > Meter.MOST_CLIPPED or self.speech_dbfs > Meter.LOUDEST_SPEECH_DBFS:
            return Verdict.TOO_LOUD
        if self.speech_dbfs < Meter.QUIETEST_SPEECH_DBFS:
            return Verdict.TOO_QUIET
        if self.room_dbfs is not None and self.speech_dbfs - self.room_dbfs < Meter.LEAST_DISTANCE_DB:
            return Verdict.TOO_NOISY
        return Verdict.FINE


class Meter:
    """Adds up the levels of marked blocks during a sound check."""

    QUIETEST_SPEECH_DBFS = -45.0
    LOUDEST_SPEECH_DBFS = -8.0
    LEAST_DISTANCE_DB = 10.0
    MOST_CLIPPED = 0.0005

    def __init__(self) -> None:
        self._power = {True: 0.0, False: 0.0}
        self._samples = {True: 0, False: 0}
        self._peak = 0
        self._clipped = 0

    def accept(self, block: Block) -> None:
        """Take a block that voice activity has marked; an unmarked one counts as speech."""
        wide = block.samples.astype(np.int32)
        speech = block.speech is not False
        self._power[speech] += float(np.square(wide, dtype=np.float64).sum()) / FULL_SCALE**2
        self._samples[speech] += len(wide)
        loudest = np.abs(wide)
        self._peak = max(self._peak, int(loudest.max(initial=0)))
        self._clipped += int(np.count_nonzero(loudest >= FULL_SCALE - 1))

    @property
    def levels(self) -> Levels:
        """What was measured so far."""
        return Levels(
            speech_dbfs=self._mean(speech=True),
            room_dbfs=self._mean(speech=False),
            peak_dbfs=dbfs((self._peak / FULL_SCALE) ** 2),
            clipped=self._clipped / max(1, sum(self._samples.values())),
        )

    def _mean(self, *, speech: bool) -> float | None:
        samples = self._samples[speech]
        return dbfs(self._power[speech] / samples) if samples else None
