"""Where an utterance begins, pauses and ends, in a stream that is marked but not cut.

Works on frames of 10 ms counted from the last gap in the stream, so how the stream is cut into blocks changes
nothing. Where nobody has marked speech, the level decides.
"""

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from models.loudness import SILENCE_DBFS, NoiseFloor, voice_level
from models.recognising import SAMPLE_RATE_HZ, Block, Samples

FRAME_SAMPLES = SAMPLE_RATE_HZ // 100
_NOBODY_LOOKED = -1


@dataclass(frozen=True, slots=True)
class Pauses:
    """How long silences are, in frames of 10 ms.

    Attributes:
        lead: so much before the first speech belongs to an utterance (a soft first sound is marked late).
        look: after so much silence it is worth looking at what was said.
        brief: after so much silence it must be known what was said.
        short: so much silence ends what may go on, or must not be taken wrongly, once it is complete.
        held: the same where talk often begins with it.
        long: so much silence ends anything.
        longest: what goes on longer than this is talk, not a command.
        above_floor_db: speech is so much louder than the room where nobody has marked it.
        below_peak_db: what is so much softer than the loudest of the utterance is silence though it was marked:
            marks last a little longer than speech does.
        again_db: after such silence speech goes on where it is so much louder than that again.
    """

    lead: int = 30
    look: int = 5
    brief: int = 12
    short: int = 18
    held: int = 32
    long: int = 60
    longest: int = 700
    above_floor_db: float = 10.0
    below_peak_db: float = 40.0
    again_db: float = 6.0


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
    """A pause has lasted for `Pauses.look`: time to begin to find out what was said.

    Attributes:
        ended: first sample after the last speech.
    """

    ended: int


@dataclass(frozen=True, slots=True)
class Lasted:
    """The pause has lasted for `Pauses.brief`; whoever listens may now call `Utterances.settle`.

    Attributes:
        ended: first sample after the last speech.
    """

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


Happening = Opened | Went | Paused | Lasted | Closed


class Wait(Enum):
    """How much silence ends what was said so far, see `Pauses`."""

    BRIEF = "brief"
    SHORT = "short"
    HELD = "held"
    LONG = "long"


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
        self._frames = self._lead_frames = 0
        self._silent = 0
        self._ended = 0
        self._open = False
        self._enough = self._pauses.long
        self._peak = SILENCE_DBFS

    def settle(self, wait: Wait) -> None:
        """So much silence is enough after what was said so far. Forgotten as soon as speech goes on."""
        lasting = {Wait.BRIEF: self._pauses.brief, Wait.SHORT: self._pauses.short, Wait.HELD: self._pauses.held}
        self._enough = lasting.get(wait, self._pauses.long)

    @property
    def is_open(self) -> bool:
        """Whether an utterance has begun and is not over."""
        return self._open

    @property
    def lead_samples(self) -> int:
        """How much of the utterance lies before its speech."""
        return self._lead_frames * FRAME_SAMPLES

    @property
    def pause_samples(self) -> int:
        """How long the pause is that the utterance is in, or ended with."""
        return self._silent * FRAME_SAMPLES

    @property
    def quiet_samples(self) -> int:
        """How much of the utterance is not speech: what lies before it, and the pause that it is in."""
        return self.lead_samples + self.pause_samples

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
            self._silent, self._ended, self._enough = 0, end, self._pauses.long
        else:
            yield from self._silence()

    def _begin(self, first_sample: int, end: int) -> Iterator[Happening]:
        self._open, self._enough = True, self._pauses.long
        self._frames, self._silent, self._ended = len(self._lead), 0, end
        self._lead_frames = len(self._lead) - 1
        samples = np.concatenate(self._lead)
        self._lead.clear()
        yield Opened(first_sample, samples)

    def _silence(self) -> Iterator[Happening]:
        self._silent += 1
        talk = self._frames > self._pauses.longest
        if self._silent == self._pauses.look and not talk:
            yield Paused(self._ended)
        if self._silent == self._pauses.brief and not talk:
            yield Lasted(self._ended)
        if self._silent >= self._enough:
            yield from self._close()

    def _close(self) -> Iterator[Happening]:
        talk = self._frames > self._pauses.longest
        self._open = False
        yield Closed(self._ended, talk)

    def _is_speech(self, samples: Samples, marks: NDArray[np.int8]) -> bool:
        """Whether any part of the frame was marked and loud enough; the level decides where nobody looked."""
        if marks.min() > _NOBODY_LOOKED:
            return self._is_loud(samples) if marks.max() else self._is_unmarked()
        level = voice_level(samples)
        self._floor.accept(level)
        return level >= self._floor.dbfs + self._pauses.above_floor_db

    def _is_loud(self, samples: Samples) -> bool:
        level = voice_level(samples)
        self._peak = max(self._peak, level)
        was_silent = self._silent > 0 or not self._open
        return level >= self._peak - self._pauses.below_peak_db + (self._pauses.again_db if was_silent else 0.0)

    def _is_unmarked(self) -> bool:
        """It is silence; what is marked after it may be of another loudness, but for a pause inside an utterance."""
        if not self._open:
            self._peak = SILENCE_DBFS
        return False
