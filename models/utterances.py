"""Where an utterance begins, pauses and ends, in a stream that is marked but not cut.

Works on frames of 10 ms counted from the last gap in the stream, so how the stream is cut into blocks changes
nothing. Where nobody has marked speech, the level decides.
"""

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from models.loudness import NoiseFloor, voice_level
from models.recognising import SAMPLE_RATE_HZ, Block, Samples

FRAME_SAMPLES = SAMPLE_RATE_HZ // 100
_NOBODY_LOOKED = -1


@dataclass(frozen=True, slots=True)
class Pauses:
    """How long silences are, in frames of 10 ms.

    Attributes:
        lead: so much before the first speech belongs to an utterance (a soft first sound is marked late).
        look: after so much silence it is worth looking at what was said.
        short: so much silence ends what `Utterances.settle` called complete.
        long: so much silence ends anything.
        longest: what goes on longer than this is talk, not a command.
        above_floor_db: speech is so much louder than the room where nobody has marked it.
    """

    lead: int = 30
    look: int = 10
    short: int = 20
    long: int = 60
    longest: int = 700
    above_floor_db: float = 10.0


@dataclass(frozen=True, slots=True)
class Opened:
    """Speech has begun.

    Attributes:
        began: its first sample in the stream.
        samples: the sound from `Pauses.lead` before it.
    """

    began: int
    samples: Samples


@dataclass(frozen=True, slots=True)
class Went:
    """The utterance went on, by 10 ms."""

    samples: Samples


@dataclass(frozen=True, slots=True)
class Paused:
    """A pause has lasted for `Pauses.look`; whoever listens may now call `Utterances.settle`."""

    ended: int


@dataclass(frozen=True, slots=True)
class Closed:
    """The utterance is over.

    Attributes:
        ended: first sample after its last speech.
        talk: it became too long for a command, and was not followed to its end.
    """

    ended: int
    talk: bool = False


Happening = Opened | Went | Paused | Closed


class Utterances:
    """Follows a stream and says what happens in it."""

    def __init__(self, pauses: Pauses | None = None) -> None:
        self._pauses = Pauses() if pauses is None else pauses
        self._floor = NoiseFloor(FRAME_SAMPLES)
        self._next_sample = 0
        self.reset()

    def reset(self) -> None:
        """Forget an utterance that has begun, and what was heard just before."""
        self._held: Samples = np.zeros(0, np.int16)
        self._held_marks: NDArray[np.int8] = np.zeros(0, np.int8)
        self._lead: deque[Samples] = deque(maxlen=self._pauses.lead)
        self._frames = 0
        self._silent = 0
        self._ended = 0
        self._open = self._settled = False

    def settle(self) -> None:
        """What was said so far is complete: a short pause ends it. Forgotten as soon as speech goes on."""
        self._settled = True

    def accept(self, block: Block) -> Iterator[Happening]:
        """Take the next block of the stream; to be read to its end before the next one."""
        if block.first_sample != self._next_sample:
            yield from self.finish()
        self._next_sample = block.end_sample
        begin = block.end_sample - len(self._held) - len(block.samples)
        self._held = np.concatenate((self._held, block.samples))
        mark = _NOBODY_LOOKED if block.speech is None else int(block.speech)
        self._held_marks = np.concatenate((self._held_marks, np.full(len(block.samples), mark, np.int8)))
        whole = len(self._held) - len(self._held) % FRAME_SAMPLES
        frames, self._held = self._held[:whole], self._held[whole:]
        marks, self._held_marks = self._held_marks[:whole], self._held_marks[whole:]
        for at in range(0, whole, FRAME_SAMPLES):
            frame = slice(at, at + FRAME_SAMPLES)
            speech = self._is_speech(frames[frame], marks[frame])
            yield from self._frame(begin + at, frames[frame], speech=speech)

    def finish(self) -> Iterator[Happening]:
        """The stream ends, or has a gap here: what was open is over."""
        if self._open:
            yield from self._close()
        self.reset()

    def _frame(self, first_sample: int, samples: Samples, *, speech: bool) -> Iterator[Happening]:
        end = first_sample + FRAME_SAMPLES
        if not self._open:
            self._lead.append(samples)
            if speech:
                yield from self._begin(first_sample, end)
            return
        self._frames += 1
        if self._frames <= self._pauses.longest:
            yield Went(samples)
        if speech:
            self._silent, self._ended, self._settled = 0, end, False
        else:
            yield from self._silence()

    def _begin(self, first_sample: int, end: int) -> Iterator[Happening]:
        self._open, self._settled = True, False
        self._frames, self._silent, self._ended = len(self._lead), 0, end
        samples = np.concatenate(self._lead)
        self._lead.clear()
        yield Opened(first_sample, samples)

    def _silence(self) -> Iterator[Happening]:
        self._silent += 1
        talk = self._frames > self._pauses.longest
        if self._silent == self._pauses.look and not talk:
            yield Paused(self._ended)
        if self._silent >= (self._pauses.short if self._settled else self._pauses.long):
            yield from self._close()

    def _close(self) -> Iterator[Happening]:
        talk = self._frames > self._pauses.longest
        self._open = self._settled = False
        yield Closed(self._ended, talk)

    def _is_speech(self, samples: Samples, marks: NDArray[np.int8]) -> bool:
        """Whether any part of the frame was marked; the level decides where nobody looked."""
        if marks.min() > _NOBODY_LOOKED:
            return bool(marks.max())
        level = voice_level(samples)
        self._floor.accept(level)
        return level >= self._floor.dbfs + self._pauses.above_floor_db
