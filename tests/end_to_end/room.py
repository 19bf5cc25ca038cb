"""A room between loudspeaker and microphone: raw sound in on standard input, what comes back on standard output.

Run as `python -m tests.end_to_end.room GAIN_DB`; int16, mono, `RATE_HZ`.
"""

import sys

import numpy as np

RATE_HZ = 16_000
STEP = 160
DIRECT = 40
"""Samples until the direct sound: 2.5 ms, some 90 cm."""
REVERBERATION_S = 0.3
"""Until the sound has died down by 60 dB: a furnished living room (common practice)."""


def response(gain_db: float, seed: int = 3) -> np.ndarray:
    """What a click becomes: the direct sound, then noise that dies away; its energy is the gain."""
    count = int(REVERBERATION_S * RATE_HZ)
    tail = np.random.default_rng(seed).normal(size=count) * np.exp(-6.9 * np.arange(count) / count) * 0.15
    tail[: DIRECT + 1] = 0.0
    tail[DIRECT] = 1.0
    return tail / np.sqrt(np.square(tail).sum()) * 10.0 ** (gain_db / 20.0)


class Room:
    """Sound through a response, step by step as it comes."""

    def __init__(self, click: np.ndarray) -> None:
        self._size = 1 << int(np.ceil(np.log2(len(click) + STEP)))
        self._spectrum = np.fft.rfft(click, self._size)
        self._to_come = np.zeros(self._size)

    def pass_on(self, samples: np.ndarray) -> np.ndarray:
        """What is heard during this step, shape (STEP,)."""
        self._to_come += np.fft.irfft(np.fft.rfft(samples, self._size) * self._spectrum, self._size)
        out, rest = self._to_come[:STEP], self._to_come[STEP:]
        self._to_come = np.concatenate((rest, np.zeros(STEP)))
        return np.clip(np.rint(out), -32_768, 32_767).astype("<i2")


def main(gain_db: str) -> None:
    room = Room(response(float(gain_db)))
    while len(data := sys.stdin.buffer.read(2 * STEP)) == 2 * STEP:
        sys.stdout.buffer.write(room.pass_on(np.frombuffer(data, "<i2")).tobytes())
        sys.stdout.buffer.flush()


if __name__ == "__main__":
    main(sys.argv[1])
