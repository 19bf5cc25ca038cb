"""Clocks, and how fast knitting can be at all."""

import time

from models.recognising import SAMPLE_RATE_HZ

RECORD_LOOPS_A_MINUTE = 118
"""Most stitches knitted by hand in one minute: a record of 2006, reported by two blogs of 2009 and 2013."""


class SystemClock:
    """Wall time, and the time since the clock was made; the latter never goes back."""

    def __init__(self) -> None:
        """Start the stream now."""
        self._began_ns = time.monotonic_ns()

    def now_ms(self) -> int:
        """Milliseconds since the epoch."""
        return time.time_ns() // 1_000_000

    def stream_ms(self) -> int:
        """Milliseconds since the clock was made."""
        return (time.monotonic_ns() - self._began_ns) // 1_000_000


class StreamClock:
    """Time that follows the ears' samples, so that a recording gives the same times at any speed."""

    def __init__(self, began_ms: int, rate_hz: int = SAMPLE_RATE_HZ) -> None:
        """Take the wall time at the stream's first sample, milliseconds since the epoch."""
        self._began_ms = began_ms
        self._rate_hz = rate_hz
        self._sample = 0

    def advance(self, sample: int) -> None:
        """Take the number of a sample that was reached; an earlier one is passed over."""
        self._sample = max(self._sample, sample)

    def now_ms(self) -> int:
        """Milliseconds since the epoch, as if the stream ran in real time."""
        return self._began_ms + self.stream_ms()

    def stream_ms(self) -> int:
        """Milliseconds of the stream so far."""
        return self._sample * 1000 // self._rate_hz


def least_plausible_ms(loops: int) -> int:
    """The least time for so many loops, at twice the record's speed, so that nobody is doubted wrongly."""
    return -(-loops * 60_000 // (2 * RECORD_LOOPS_A_MINUTE))


def is_too_soon(loops: int, elapsed_ms: int) -> bool:
    """Whether a step of so many loops cannot be done yet, so that a second "next" is to be asked back."""
    return 0 <= elapsed_ms < least_plausible_ms(loops)
