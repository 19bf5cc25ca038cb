"""Hears commands with PocketSphinx and the acoustic model that its wheel carries: no download.

A grammar alone takes anything for a command. So a second decoder explains the same sound by any string of
English phones, and a command counts only where it explains the sound nearly as well: see `models.judging`.
An utterance is decoded as a whole, by both decoders at once, as soon as a pause begins, while the pause is still
waited for. What comes before an utterance changes nothing, unless it is talk that has just ended.
"""

from dataclasses import dataclass

import numpy as np

from models.expecting import Expectation
from models.following import NOTHING_KNOWN, Caution, Following, Weighed
from models.judging import Weights, confidence, features, weigh
from models.pocketsphinx_apart import PhonesApart
from models.pocketsphinx_decoding import NAME, CommandDecoder, Decoding
from models.recognising import SAMPLE_RATE_HZ, UNKNOWN_WORD, Alternative, Readings, Samples
from models.room_tone import with_room_tone
from models.utterances import Pauses

_GUESSES = 8


@dataclass(frozen=True, slots=True)
class Tuning:
    """What was settled by measurement, see `tests/models/rejection.py`.

    The weights were fitted on 550 commands and 450 sentences in 15 synthetic voices, and on 835 recordings
    of 280 real speakers (CMU AN4, Speech Commands, speechocean762, LibriTTS, VCTK and others), none of
    which is kept here; they are set so that of all those that were no command 1.8 % were acted on at 0.6.

    Attributes:
        weights: of the evidence, for `models.judging.confidence`.
        plausible: below this confidence nothing but unknown words was heard.
        read_again_s: what is shorter and not surely known is read again with a little more silence after it.
    """

    weights: Weights = (2.32, 14.51, 1.6, 3.06, 1.45, -10.11, 2.35, -0.14, -3.67, -2.87)
    plausible: float = 0.3
    read_again_s: float = 2.0


class PocketSphinxRecogniser(Following):
    """Sound in, words out.

    Args:
        pauses: how long silences are.
        tuning: what was settled by measurement.
        caution: when what was heard is trusted.

    Raises:
        RecogniserUnavailable: the library is not installed.
        ModelMissing, ModelBroken: its model is not there or cannot be loaded.
    """

    name = NAME

    def __init__(
        self, pauses: Pauses | None = None, tuning: Tuning | None = None, caution: Caution | None = None
    ) -> None:
        self._tuning = Tuning() if tuning is None else tuning
        self._phones = PhonesApart()
        self._commands = CommandDecoder(beam=1e-64, wbeam=1e-40, pbeam=1e-64)
        self._command: Decoding | None = None
        self._has_begun = False
        self._reading = NOTHING_KNOWN
        self._guessed: Alternative | None = None
        super().__init__(pauses, caution)

    def _take_up(self, expected: Expectation) -> None:
        self._commands.expect(expected.grammar, expected.vocabulary.pronounced)

    def _feed(self, samples: Samples) -> None:
        """It reads what was kept, as a whole."""

    def _drop(self) -> None:
        self._command = None
        self._has_begun = False
        self._reading = NOTHING_KNOWN
        self._guessed = None

    def _begin_reading(self) -> None:
        sound = with_room_tone(np.concatenate(self._sound))
        self._phones.begin(sound)
        self._command = self._commands.decode(sound)
        self._has_begun = True

    def _so_far(self) -> Alternative:
        if self._has_begun:
            self._reading = self._judged(self._command, self._phones.result())
        if not self._has_begun or not (self._is_sure() or self._is_long()):
            self._read_again()
        return self._reading

    def _to_end(self) -> Readings:
        if not self._was_asked:
            self._read_again()
        return (self._reading,)

    def _guess(self) -> Alternative | None:
        return self._guessed

    def _other_guesses(self) -> tuple[str, ...]:
        return self._commands.likely(_GUESSES)

    def _is_sure(self) -> bool:
        return self._reading.words != UNKNOWN_WORD and self._reading.confidence >= self._caution.sure

    def _is_long(self) -> bool:
        return sum(map(len, self._sound)) > self._tuning.read_again_s * SAMPLE_RATE_HZ

    def _read_again(self) -> None:
        """With all that came since: the release of a last stop can be soft, and late."""
        self._begin_reading()
        self._reading = self._judged(self._command, self._phones.result())

    def _judged(self, command: Decoding | None, phones: Decoding | None) -> Alternative:
        self._guessed = None
        if command is None or phones is None or not command.text:
            return NOTHING_KNOWN
        expected = [phone for word in command.words for phone in self._commands.phones(word)]
        evidence = weigh(command, expected, phones)
        self.weighed = Weighed(command.text, features(evidence))
        sure = confidence(evidence, self._tuning.weights)
        self._guessed = Alternative(command.text, sure)
        if sure < self._tuning.plausible:
            return Alternative(UNKNOWN_WORD, 1.0 - sure)
        return Alternative(command.text, sure)
