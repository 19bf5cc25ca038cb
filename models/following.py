"""What all recognisers have in common: they follow a stream from utterance to utterance.

When a pause begins a recogniser starts to find out what was said; when it has lasted for a while it must know, and
what is complete by then is not waited for any longer. A text that comes right after talk belongs to the talk.
"""

from abc import ABC, abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from models.expecting import Expectation, Expectations
from models.likeness import Features, features
from models.recognising import (
    SAMPLE_RATE_HZ,
    UNKNOWN_WORD,
    Alternative,
    Block,
    Heard,
    Partial,
    Readings,
    Samples,
    Vocabulary,
)
from models.taught import Taught, fused
from models.utterances import Closed, Happening, Lasted, Opened, Paused, Pauses, Utterances, Went

if TYPE_CHECKING:
    from models.second_opinion import SecondOpinion

NOTHING_KNOWN = Alternative(UNKNOWN_WORD, 1.0)
"""Words outside the vocabulary, for certain."""


@dataclass(frozen=True, slots=True)
class Weighed:
    """What the confidence in a text was reckoned from; for fitting the weights, see `models.fitting`.

    Attributes:
        words: the text.
        features: what was weighed.
        by_both: whether it is what a second opinion weighs.
    """

    words: str
    features: tuple[float, ...]
    by_both: bool = False


@dataclass(frozen=True, slots=True)
class Caution:
    """When what was heard is trusted.

    Attributes:
        sure: at this confidence and above a text is complete after a short pause.
        after_talk_s: a text counts only so long after talk, or it may belong to it.
        talk_s: unknown words are talk if they last so long; shorter is a cough or a command not understood.
        letters_a_second: hardly anybody speaks faster, spaces left out; what would have to be said faster is not
            complete after a short pause, as it is likely the beginning of something else.
    """

    sure: float = 0.6
    after_talk_s: float = 1.0
    talk_s: float = 0.5
    letters_a_second: float = 22.0


class Following(ABC):
    """A recogniser without its search: that is each one's own.

    Args:
        pauses: how long silences are.
        caution: when what was heard is trusted.

    Attributes:
        name: as in `--recogniser NAME`.
        weighed: the last utterance's best text that may be said, if there was one.
        taught: what its user has taught it; None for nothing.
        second: who is asked where it is unsure; None for nobody.
    """

    name: str

    def __init__(self, pauses: Pauses | None = None, caution: Caution | None = None) -> None:
        self._caution = Caution() if caution is None else caution
        self._utterances = Utterances(pauses)
        self._expectations = Expectations()
        self._expected: Expectation = self._expectations.of(Vocabulary(()))
        self._expected_next: Expectation | None = None
        self._talk_ended: int | None = None
        self.weighed: Weighed | None = None
        self.taught: Taught | None = None
        self.second: SecondOpinion | None = None
        self._sound: list[Samples] = []
        self._forget()

    @abstractmethod
    def _take_up(self, expected: Expectation) -> None:
        """From the next utterance on this may be said."""

    @abstractmethod
    def _feed(self, samples: Samples) -> None:
        """The utterance's next sound; its first comes after `_drop`."""

    @abstractmethod
    def _begin_reading(self) -> None:
        """Start to find out what was said, if that takes time; the answer may never be wanted."""

    @abstractmethod
    def _so_far(self) -> Alternative:
        """What was said up to this pause."""

    @abstractmethod
    def _to_end(self) -> Readings:
        """What was said in the whole utterance; `_was_asked` tells whether `_so_far` gave it already."""

    def _guess(self) -> Alternative | None:
        """The text that it finds likeliest by now, be it ever so implausible; None where it cannot tell."""
        return None

    def _other_guesses(self) -> tuple[str, ...]:
        """What it finds likely after that, as far as it can tell; some of it may be no text that may be said."""
        return ()

    @abstractmethod
    def _drop(self) -> None:
        """Forget the sound of the utterance."""

    def expect(self, vocabulary: Vocabulary) -> None:
        """Take what may be said from the next utterance on.

        Raises:
            WordsUnknown: words that the recogniser needs a pronunciation for and has none.
            SlotUnknown: a phrase names a slot without texts.
        """
        expected = self._expectations.of(vocabulary)
        if self._utterances.is_open:
            self._expected_next = expected
            return
        self._take_up(expected)
        self._expected, self._expected_next = expected, None

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
        self._end()

    def _end(self) -> None:
        """The utterance is over; what is expected after it counts."""
        self._forget()
        self._drop()
        self._sound = []
        if self._expected_next is not None:
            self._take_up(self._expected_next)
            self._expected, self._expected_next = self._expected_next, None

    def _forget(self) -> None:
        self._began = 0
        self._known_to = -1
        self._own: Alternative | None = None
        self._again: Readings | None = None
        self._was_asked = False

    def _follow(self, happening: Happening) -> Iterator[Partial | Heard]:
        match happening:
            case Opened(began, samples):
                self._forget()
                self.weighed = None
                self._began = began
                self._drop()
                self._sound = [samples]
                self._feed(samples)
            case Went(samples):
                self._sound.append(samples)
                self._feed(samples)
            case Paused():
                self._begin_reading()
            case Lasted(ended):
                yield self._partial(ended)
            case Closed(ended, talk):
                yield self._heard(ended, talk=talk)
                self._end()

    def _partial(self, ended: int) -> Partial:
        first, self._known_to = self._so_far(), ended
        self._again = self._second_opinion()
        self._own = self._like_taught()
        best = fused(self._again or (first,), self._own, self._caution.sure)[0]
        is_sure = best.confidence >= self._caution.sure
        if is_sure and not self._follows_talk() and not self._is_too_fast(best.words, ended):
            self._utterances.settle(self._expected.wait(best.words))
        return Partial(best.words, self._began)

    def _heard(self, ended: int, *, talk: bool) -> Heard:
        self._was_asked = self._known_to == ended
        own = self._own if self._was_asked else self._like_taught()
        first = self._to_end()
        again = self._again if self._was_asked or talk else None
        again = again if again or talk else self._second_opinion()
        readings = fused(again or first, own, self._caution.sure)
        if talk or self._follows_talk():
            readings = (NOTHING_KNOWN,)
        best = readings[0]
        if best.words == UNKNOWN_WORD and ended - self._began >= self._caution.talk_s * SAMPLE_RATE_HZ:
            self._talk_ended = ended
        return Heard(best.words, best.confidence, self._began, ended, readings)

    def _like_taught(self) -> Alternative | None:
        if self.taught is None:
            return None
        return self.taught.like(self.spoken(), self._expected.grammar.accepts)

    def _second_opinion(self) -> Readings | None:
        """What both come to where it is unsure; None where it is sure, or nobody else is asked."""
        if self.second is None or self._follows_talk():
            return None
        guess = self._guess()
        if guess is None or not self.second.is_wanted(guess):
            return None
        sound, others = np.concatenate(self._sound), self._other_guesses()
        opinion = self.second.on(sound, guess, others, self._expected.grammar.accepts)
        self.weighed = Weighed(opinion.words, opinion.features, by_both=True)
        return opinion.readings

    def spoken(self) -> Features:
        """Cepstra of the utterance so far, from its first speech to its last."""
        sound = np.concatenate(self._sound) if self._sound else np.zeros(0, np.int16)
        end = max(0, len(sound) - self._utterances.pause_samples)
        return features(sound[self._utterances.lead_samples : end])

    def _is_too_fast(self, words: str, ended: int) -> bool:
        seconds = (ended - self._began) / SAMPLE_RATE_HZ
        return len(words.replace(" ", "")) > self._caution.letters_a_second * seconds

    def _follows_talk(self) -> bool:
        if self._talk_ended is None:
            return False
        return 0 <= self._began - self._talk_ended < self._caution.after_talk_s * SAMPLE_RATE_HZ
