"""Hearing while the voice speaks: a command that is let through cuts the voice short."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from typing import Protocol

from assistant.clocks import StreamClock
from assistant.languages import Language
from assistant.listening.ears import Ears
from assistant.listening.understanding import Understood
from assistant.voice import Voice, WhileSpeaking
from models.recognising import Heard, Vocabulary

FALL_SILENT = "fall_silent"
"""The name of what only makes the voice fall silent."""


@dataclass(frozen=True, slots=True)
class LetThrough:
    """What may cut the voice short: names of commands and answers, and their phrases."""

    names: frozenset[str]
    phrases: tuple[str, ...]


class Listener(Protocol):
    """Who obeys, and knows what may be said now; asked from the thread of the ears."""

    def understood(self, heard: Heard, names: Collection[str] | None = None) -> Understood:
        """What an utterance would mean now, as one of these commands and answers."""
        ...

    def vocabulary(self, phrases: tuple[str, ...]) -> Vocabulary:
        """These phrases as they may be said now."""
        ...


def let_through(while_speaking: WhileSpeaking, language: Language) -> LetThrough | None:
    """What may cut the voice short; None where commands wait until it has spoken."""
    known = language.phrases
    names = (*known.names(), FALL_SILENT)
    match while_speaking:
        case WhileSpeaking.WAIT:
            return None
        case WhileSpeaking.HEADPHONES:
            return LetThrough(frozenset(names), language.vocabulary(names).phrases)
        case WhileSpeaking.LOUDSPEAKER:
            found = (known.match(phrase, names) for phrase in known.against_loudspeaker)
            return LetThrough(frozenset(match.name for match in found if match), known.against_loudspeaker)


class OverTheVoice:
    """Ears that stay open while the voice speaks.

    Args:
        ears: they hear all the time; through an echo canceller, where the voice comes from a loudspeaker.
        voice: is cut short by what is let through.
        clock: the ears' stream.
        through: what may cut the voice short.
    """

    def __init__(self, ears: Ears, voice: Voice, clock: StreamClock, through: LetThrough) -> None:
        self._ears = ears
        self._voice = voice
        self._clock = clock
        self._through = through
        self._listener: Listener | None = None
        self._otherwise: Vocabulary | None = None
        self._is_speaking = False
        self._silent_from = 0
        voice.before, voice.after = self._begin, self._end

    def expect(self, vocabulary: Vocabulary) -> None:
        """What may be said while the voice is silent."""
        self._otherwise = vocabulary
        if not self._is_speaking:
            self._ears.expect(vocabulary)

    def _begin(self) -> None:
        self._is_speaking = True
        if self._listener is not None:
            self._ears.expect(self._listener.vocabulary(self._through.phrases))

    def _end(self) -> None:
        self._silent_from = self._clock.now()
        self._is_speaking = False
        if self._otherwise is not None:
            self._ears.expect(self._otherwise)

    def heard_by(self, listener: Listener) -> Iterator[Heard]:
        """What is heard while the voice is silent, and what is let through while it speaks."""
        self._listener = listener
        return self._heard_by(listener)

    def _heard_by(self, listener: Listener) -> Iterator[Heard]:
        for heard in self._ears:
            is_under_voice = self._is_speaking or heard.began < self._silent_from
            if not is_under_voice or self._cuts_short(heard, listener):
                yield heard

    def _cuts_short(self, heard: Heard, listener: Listener) -> bool:
        """Whether it is a command; then the voice is silent by now."""
        understood = listener.understood(heard, self._through.names)
        if understood.outcome != "act":
            return False
        self._voice.cut()
        return understood.name != FALL_SILENT
