"""Marks the speech in a stream, frame by frame, and cuts nothing: recognisers decide what an utterance is.

A cheap gate on the level stands in front, so that a silent room costs next to nothing; behind it a small
network decides. Speech begins where the network is sure; it ends where the network no longer is, or sooner, where
the level falls to the room's.
"""

from collections import deque
from dataclasses import dataclass

import numpy as np

from models.loudness import NoiseFloor, voice_level
from models.recognising import Block, Samples
from models.speech_model import FRAME_SAMPLES, Judge, SpeechModel


@dataclass(frozen=True, slots=True)
class Thresholds:
    """When speech begins and ends.

    Attributes:
        begin: the probability from which silence becomes speech.
        end: the probability below which speech becomes silence.
        gate_db: so much above the room's level a frame wakes the network.
        still_db: what is less above the room's level is silence, whatever the network says.
        listen_on_frames: for so long after the last louder frame the network goes on listening.
        history_frames: so many frames before the one that opened the gate the network hears too.
        least_room_dbfs: in a quieter room than this the network hears everything louder, as if it were so loud:
            it is less sure of faint voices.
        most_gain_db: but no louder than this.
    """

    begin: float = 0.4
    end: float = 0.2
    gate_db: float = 6.0
    still_db: float = 4.0
    listen_on_frames: int = 16
    history_frames: int = 8
    least_room_dbfs: float = -55.0
    most_gain_db: float = 20.0


class VoiceActivity:
    """Gives back the stream in frames of 32 ms, each marked as speech or not.

    Frames count from the first sample, and again after each gap in the stream, so the marks do not depend on
    how the stream is cut into blocks.

    Args:
        model: what judges a frame; the shipped network where none is given.
        thresholds: when speech begins and ends.

    Raises:
        ModelMissing, ModelBroken: as `SpeechModel`.
    """

    def __init__(self, model: Judge | None = None, thresholds: Thresholds | None = None) -> None:
        self._model: Judge = SpeechModel() if model is None else model
        self._thresholds = Thresholds() if thresholds is None else thresholds
        self._floor = NoiseFloor(FRAME_SAMPLES)
        self._held: Samples = np.zeros(0, np.int16)
        self._next_sample = 0
        self.reset()

    @property
    def room_dbfs(self) -> float:
        """The level of the room without speech, as it is known now."""
        return self._floor.dbfs

    def reset(self) -> None:
        """Forget speech that has begun, as after the assistant's own voice; the room's level is kept."""
        self._speech = False
        self._listen_on = 0
        self._history: deque[Samples] = deque(maxlen=self._thresholds.history_frames)

    def mark(self, block: Block) -> tuple[Block, ...]:
        """The frames that the next block completes; the rest waits for more."""
        done: tuple[Block, ...] = ()
        if block.first_sample != self._next_sample:
            done = self.finish()
            self._next_sample = block.first_sample
        begin = block.first_sample - len(self._held)
        samples = np.concatenate((self._held, block.samples))
        self._next_sample = block.end_sample
        whole = len(samples) - len(samples) % FRAME_SAMPLES
        self._held = samples[whole:]
        return done + tuple(
            self._mark_frame(begin + at, samples[at : at + FRAME_SAMPLES])
            for at in range(0, whole, FRAME_SAMPLES)
        )

    def finish(self) -> tuple[Block, ...]:
        """The end of the stream, or a gap in it: the frame that was not full; then as after `reset`."""
        rest, self._held = self._held, np.zeros(0, np.int16)
        done: tuple[Block, ...] = ()
        if len(rest):
            frame = np.concatenate((rest, np.zeros(FRAME_SAMPLES - len(rest), np.int16)))
            done = (Block(self._next_sample - len(rest), rest, self._is_speech(frame)),)
        self.reset()
        return done

    def _mark_frame(self, first_sample: int, frame: Samples) -> Block:
        return Block(first_sample, frame, self._is_speech(frame))

    def _is_speech(self, frame: Samples) -> bool:
        level = voice_level(frame)
        self._floor.accept(level)
        above = level - self._floor.dbfs
        limits = self._thresholds
        if above < limits.gate_db and self._listen_on == 0:
            self._history.append(frame)
            return False
        if self._listen_on == 0:
            self._open()
        self._listen_on = limits.listen_on_frames if above >= limits.gate_db else self._listen_on - 1
        likely = self._judge(frame) >= (limits.end if self._speech else limits.begin)
        self._speech = likely and above >= limits.still_db
        return self._speech

    def _open(self) -> None:
        """Let the network hear what came before the gate opened."""
        self._model.restart()
        for frame in self._history:
            self._judge(frame)
        self._history.clear()

    def _judge(self, frame: Samples) -> float:
        wanted_db = self._thresholds.least_room_dbfs - self._floor.dbfs
        gain_db = min(max(0.0, wanted_db), self._thresholds.most_gain_db)
        return self._model.judge(frame, 10.0 ** (gain_db / 20.0))
