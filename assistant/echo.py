"""Takes what the speaker plays out of what the microphone hears, by the echo canceller of WebRTC.

The canceller finds by itself how late, and through which room, the sound comes back; it must only be given what is
played no later than it is heard.
"""

import threading
from collections import deque
from collections.abc import Iterator
from typing import Protocol

import numpy as np

from assistant.device_errors import EchoCancellerMissing
from assistant.ports import AudioSource
from models.recognising import SAMPLE_RATE_HZ, Block, Samples

FRAME_SAMPLES = SAMPLE_RATE_HZ // 100
"""The canceller works on whole frames of 10 ms."""
_ECHO_SAMPLES = SAMPLE_RATE_HZ
"""An echo comes back within a second: of the devices' latencies and of the room."""
_KEPT_S = 60


class Canceller(Protocol):
    """Takes the echo out of sound; frame after frame, as one stream."""

    def process(self, near: Samples, far: Samples) -> Samples:
        """What was heard without what was played; all three of shape (n,), n whole frames, 16 kHz."""
        ...


class Playback:
    """What is played and when, in the ears' stream; told by whoever plays, read by whoever hears."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._played: deque[Block] = deque()

    def begin(self, first_sample: int, samples: Samples) -> None:
        """From here on this is played, at 16 kHz, and nothing that was to be played still."""
        with self._lock:
            self._end_at(first_sample)
            self._played.append(Block(first_sample, samples))
            while self._played[0].end_sample < first_sample - _KEPT_S * SAMPLE_RATE_HZ:
                self._played.popleft()

    def stop(self, sample: int) -> None:
        """Nothing is played from here on."""
        with self._lock:
            self._end_at(sample)

    def between(self, first_sample: int, end_sample: int) -> Samples:
        """What was played in that stretch; silence where nothing was."""
        out = np.zeros(end_sample - first_sample, np.int16)
        with self._lock:
            for block in self._played:
                begin, end = max(first_sample, block.first_sample), min(end_sample, block.end_sample)
                if begin < end:
                    out[begin - first_sample : end - first_sample] = block.samples[
                        begin - block.first_sample : end - block.first_sample
                    ]
        return out

    def _end_at(self, sample: int) -> None:
        if self._played and self._played[-1].end_sample > sample:
            last = self._played.pop()
            self._played.append(Block(last.first_sample, last.samples[: max(0, sample - last.first_sample)]))


class WithoutEcho:
    """A source of sound without what was played meanwhile.

    Args:
        source: what is heard.
        playback: what is played.
        canceller: takes the one out of the other.
    """

    def __init__(self, source: AudioSource, playback: Playback, canceller: Canceller) -> None:
        self._source = source
        self._playback = playback
        self._canceller = canceller

    def blocks(self) -> Iterator[Block]:
        """The stream in blocks of whole frames; what is left over at a gap or at the end is dropped."""
        held = Block(0, np.zeros(0, np.int16))
        for block in self._source.blocks():
            joined = np.concatenate((held.samples, block.samples)) if held.end_sample == block.first_sample else None
            first = block.first_sample if joined is None else held.first_sample
            samples = block.samples if joined is None else joined
            whole = len(samples) - len(samples) % FRAME_SAMPLES
            held = Block(first + whole, samples[whole:])
            if whole:
                yield Block(first, self._clean(first, samples[:whole]))

    def _clean(self, first: int, samples: Samples) -> Samples:
        """The canceller changes speech a little, so it hears only what can hold an echo."""
        played = self._playback.between(first - _ECHO_SAMPLES, first + len(samples))
        return self._canceller.process(samples, played[_ECHO_SAMPLES:]) if played.any() else samples

    def pause(self) -> None:
        """Hear nothing until `resume`."""
        self._source.pause()

    def resume(self) -> None:
        """Hear again."""
        self._source.resume()

    def close(self) -> None:
        """Let the source go."""
        self._source.close()


def make_canceller() -> Canceller:
    """WebRTC's canceller.

    Raises:
        EchoCancellerMissing: it is not installed.
    """
    try:
        from pywebrtc_audio import AudioProcessor  # noqa: PLC0415 (an extra)
    except ImportError as missing:
        raise EchoCancellerMissing from missing
    canceller: Canceller = AudioProcessor(sample_rate=SAMPLE_RATE_HZ, echo_cancellation=True)
    return canceller
