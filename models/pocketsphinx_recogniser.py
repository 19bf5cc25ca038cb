"""Hears commands with PocketSphinx and the acoustic model that its wheel carries: no download.

A grammar alone takes anything for a command. So a second decoder explains the same sound by any string of
English phones, and a command counts only where it explains the sound nearly as well: see `models.judging`.
An utterance is decoded as a whole as soon as a pause begins, while the pause is still waited for. What comes
before an utterance changes nothing, unless it is talk that has just ended.
"""

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from models.grammar import Grammar, make_grammar
from models.judging import Weights, confidence, weigh
from models.pocketsphinx_decoding import NAME, CommandDecoder, PhoneDecoder
from models.recognising import (
    SAMPLE_RATE_HZ,
    UNKNOWN_WORD,
    Alternative,
    Block,
    Heard,
    Partial,
    Samples,
    Vocabulary,
)
from models.room_tone import with_room_tone
from models.utterances import Closed, Opened, Paused, Pauses, Utterances, Went


@dataclass(frozen=True, slots=True)
class Tuning:
    """What was settled by measurement, see `tests/models/rejection.py`.

    The weights were fitted on 550 commands and 450 sentences in 15 synthetic voices, and on 835 recordings
    of 280 real speakers (CMU AN4, Speech Commands, speechocean762, LibriTTS, VCTK and others), none of
    which is kept here; they are set so that of all those that were no command 1.8 % were acted on at 0.6.

    Attributes:
        weights: of the evidence, for `models.judging.confidence`.
        sure: at this confidence and above a command is complete after a short pause.
        after_talk_s: a command counts only so long after talk, or it may belong to it.
        talk_s: unknown words are talk if they last so long; shorter is a cough or a command not understood.
        plausible: below this confidence nothing but unknown words was heard.
    """

    weights: Weights = (2.32, 14.51, 1.6, 3.06, 1.45, -10.11, 2.35, -0.14, -3.67, -2.87)
    sure: float = 0.6
    plausible: float = 0.3
    after_talk_s: float = 1.0
    talk_s: float = 0.5


class PocketSphinxRecogniser:
    """Sound in, words out.

    Args:
        pauses: how long silences are.
        tuning: what was settled by measurement.

    Raises:
        RecogniserUnavailable: the library is not installed.
        ModelMissing, ModelBroken: its model is not there or cannot be loaded.
    """

    name = NAME

    def __init__(self, pauses: Pauses | None = None, tuning: Tuning | None = None) -> None:
        self._tuning = Tuning() if tuning is None else tuning
        self._utterances = Utterances(pauses)
        self._grammars: deque[tuple[Vocabulary, Grammar]] = deque(maxlen=8)
        self._commands = CommandDecoder(beam=1e-64, wbeam=1e-40, pbeam=1e-64)
        self._phones = PhoneDecoder(lw=2.0, beam=1e-20, pbeam=1e-20)
        self._talk_ended: int | None = None
        self._forget()

    def expect(self, vocabulary: Vocabulary) -> None:
        """Take what may be said from now on; between utterances only.

        Raises:
            WordsUnknown: words that stand neither in the dictionary nor in `vocabulary.pronounced`.
            SlotUnknown: a phrase names a slot without texts.
        """
        self._commands.expect(self._grammar_of(vocabulary), vocabulary.pronounced)

    def _grammar_of(self, vocabulary: Vocabulary) -> Grammar:
        """As made before, where the same few vocabularies come again and again."""
        for known, grammar in self._grammars:
            if known == vocabulary:
                return grammar
        grammar = make_grammar(vocabulary)
        self._grammars.append((vocabulary, grammar))
        return grammar

    def accept(self, block: Block) -> tuple[Partial | Heard, ...]:
        """Take the next block of the stream; a gap before it ends an utterance."""
        return tuple(said for happening in self._utterances.accept(block) for said in self._follow(happening))

    def finish(self) -> tuple[Heard, ...]:
        """End of the stream: what was still open."""
        said = [said for happening in self._utterances.finish() for said in self._follow(happening)]
        return tuple(heard for heard in said if isinstance(heard, Heard))

    def reset(self) -> None:
        """Forget an utterance that has begun."""
        self._utterances.reset()
        self._talk_ended = None
        self._forget()

    def _forget(self) -> None:
        self._sound: list[Samples] = []
        self._began = 0
        self._reading: Alternative | None = None

    def _follow(self, happening: Opened | Went | Paused | Closed) -> Iterator[Partial | Heard]:
        match happening:
            case Opened(began, samples):
                self._sound, self._began, self._reading = [samples], began, None
            case Went(samples):
                self._sound.append(samples)
            case Paused():
                self._reading = self._read()
                if self._reading.confidence >= self._tuning.sure and self._reading.words != UNKNOWN_WORD:
                    self._utterances.settle()
                yield Partial(self._reading.words, self._began)
            case Closed(ended, talk):
                yield self._heard(ended, talk=talk)
                self._forget()

    def _heard(self, ended: int, *, talk: bool) -> Heard:
        reading = self._reading
        if talk:
            reading = Alternative(UNKNOWN_WORD, 1.0)
        elif reading is None:
            reading = self._read()
        if self._follows_talk():
            reading = Alternative(UNKNOWN_WORD, 1.0)
        if reading.words == UNKNOWN_WORD and ended - self._began >= self._tuning.talk_s * SAMPLE_RATE_HZ:
            self._talk_ended = ended
        return Heard(reading.words, reading.confidence, self._began, ended, (reading,))

    def _follows_talk(self) -> bool:
        if self._talk_ended is None:
            return False
        return 0 <= self._began - self._talk_ended < self._tuning.after_talk_s * SAMPLE_RATE_HZ

    def _read(self) -> Alternative:
        sound = with_room_tone(np.concatenate(self._sound))
        command = self._commands.decode(sound)
        phones = self._phones.decode(sound) if command is not None else None
        if command is None or phones is None or not command.text:
            return Alternative(UNKNOWN_WORD, 1.0)
        expected = [phone for word in command.words for phone in self._commands.phones(word)]
        sure = confidence(weigh(command, expected, phones), self._tuning.weights)
        if sure < self._tuning.plausible:
            return Alternative(UNKNOWN_WORD, 1.0 - sure)
        return Alternative(command.text, sure)
