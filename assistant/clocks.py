"""The time of the wall, and of the ears' stream."""

import threading
import time
from collections.abc import Callable

from models.recognising import SAMPLE_RATE_HZ

_DRIFT_SAMPLES = SAMPLE_RATE_HZ // 5


class StreamClock:
    """Where the stream of the ears is, in samples at 16 kHz: moved on by the source, read by the sink.

    Args:
        live: whether the stream runs in real time, as a microphone's does, or waits while something plays,
            as a file's does; then whoever plays moves it on by `wait`.
        monotonic: seconds from any start.
    """

    def __init__(self, *, live: bool, monotonic: Callable[[], float] = time.monotonic) -> None:
        self.live = live
        self._monotonic = monotonic
        self._lock = threading.Lock()
        self._sample = 0
        self._at_s = monotonic()
        self._told = 0

    def now(self) -> int:
        """The sample that is heard now; it never goes back."""
        with self._lock:
            self._told = max(self._told, self._reckoned())
            return self._told

    def hear(self, end_sample: int) -> None:
        """The source has handed out all samples before this one.

        Blocks come a little late, each by another amount, so the earliest one sets a live clock.
        """
        with self._lock:
            ahead = self._reckoned() - end_sample
            if ahead < 0 or (self.live and ahead > _DRIFT_SAMPLES):
                self._set(end_sample)

    def wait(self, samples: int) -> None:
        """Something was played for so long; only a stream that is not live was waiting."""
        with self._lock:
            if not self.live:
                self._set(self._sample + samples)

    def _reckoned(self) -> int:
        if not self.live:
            return self._sample
        return self._sample + round((self._monotonic() - self._at_s) * SAMPLE_RATE_HZ)

    def _set(self, sample: int) -> None:
        self._sample = sample
        self._at_s = self._monotonic()


class SystemClock:
    """Wall time, and the time of the ears' stream.

    Args:
        stream: where the stream is.
        wall: seconds since the epoch.
    """

    def __init__(self, stream: StreamClock, wall: Callable[[], float] = time.time) -> None:
        self._stream = stream
        self._wall = wall

    def now_ms(self) -> int:
        """Milliseconds since the epoch."""
        return round(self._wall() * 1000)

    def stream_ms(self) -> int:
        """Milliseconds of the ears' stream so far: samples / rate."""
        return self._stream.now() * 1000 // SAMPLE_RATE_HZ
