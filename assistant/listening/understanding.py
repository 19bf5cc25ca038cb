"""From what was heard to what is wanted: a command to act on, a near miss to ask back, or nothing.

A command counts only when it was said alone: words before or after it, known or not, make it talk. Numbers
are looked up whole, so that a number that nobody says is never heard.
"""

from collections.abc import Callable, Collection
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Literal

from assistant.languages import Language
from assistant.languages.numbers import plain
from assistant.languages.phrases import NUMBER, Match
from assistant.listening.commands import command_of, number_of
from assistant.session_commands import AnyCommand, Attend
from models.recognising import UNKNOWN_WORD, Heard
from plans.conversation import Reply

Outcome = Literal["act", "ask", "ignore"]

YES_AND_NO = frozenset({"yes", "no"})


class Attention(StrEnum):
    """Whether a command must follow the attention word; OPEN: that was just said, a command may follow."""

    OFF = "off"
    ON = "on"
    OPEN = "open"


@dataclass(frozen=True, slots=True)
class Sureness:
    """Where to act, where to ask back.

    Attributes:
        act: at this confidence and above a command is acted on.
        ask: from here up to `act` it is asked back; below it is ignored.
        margin: another command's reading as likely as this, less so much, is asked back.
        number: below this confidence a number that is easily taken for another is asked back.
    """

    act: float = 0.6
    ask: float = 0.4
    margin: float = 0.1
    number: float = 0.9


@dataclass(frozen=True, slots=True)
class Expecting:
    """What may be said at this moment.

    Attributes:
        attention: whether commands must follow the attention word; answers to a question need not.
        names: commands and answers that may be said; all commands where left out.
        possible: whether a number can be meant here; settles thirteen or thirty.
        between: the two commands last asked about ("one three or three nought?"): the number alone answers.
    """

    attention: Attention = Attention.OFF
    names: Collection[str] | None = None
    possible: Callable[[int], bool] | None = None
    between: tuple[AnyCommand, AnyCommand] | None = None


ANYTHING = Expecting()
USUAL = Sureness()


@dataclass(frozen=True, slots=True)
class Understood:
    """What an utterance comes to.

    Attributes:
        outcome: act on the command, ask it back, or ignore what was heard.
        command: what was understood, also where it is only asked back or ignored; None where nothing was.
        number: the number in it, if any.
        why: in a few words, for the log.
        name: the command's name, as in the phrases.
        other: where two numbers are in question, the command with the other one.
        question: what to ask back.
    """

    outcome: Outcome
    command: AnyCommand | None
    number: int | Fraction | None
    why: str
    name: str | None = None
    other: AnyCommand | None = None
    question: Reply | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """Words that are a command: which, as what record, with which number."""

    name: str
    command: AnyCommand
    number: int | Fraction | None
    words: str
    slots: tuple[tuple[str, int | str], ...]


def understand(
    heard: Heard,
    language: Language,
    *,
    asked: bool,
    expecting: Expecting = ANYTHING,
    sureness: Sureness = USUAL,
) -> Understood:
    """What an utterance means.

    Args:
        heard: the utterance.
        language: its phrases.
        asked: whether a question is open; without one "yes" and "no" are ignored.
        expecting: what may be said at this moment.
        sureness: thresholds.
    """
    words = plain(heard.words)
    if not words:
        return _ignored("nothing was said")
    if UNKNOWN_WORD in words.split():
        return _ignored("not a command, or one among other words")
    if expecting.between is not None and (chosen := _chosen(words, language, expecting.between)) is not None:
        return chosen
    attention = expecting.attention
    if attention is not Attention.OFF and words in language.phrases.attention:
        return Understood("act", Attend(), None, "the attention word alone", "attend")
    bare = _after_attention(words, language)
    reading = _read(words, language, expecting.names)
    if reading is None:
        return _ignored("not a command said alone")
    answers = asked and reading.name in YES_AND_NO
    if attention is Attention.ON and bare is None and not answers:
        return _ignored("said without the attention word", reading)
    if reading.name in YES_AND_NO and not asked:
        return _ignored("no question is open", reading)
    return _weighed(_Case(reading, heard, language, expecting, sureness))


@dataclass(frozen=True, slots=True)
class _Case:
    """A reading, and all that it is weighed by."""

    reading: Reading
    heard: Heard
    language: Language
    expecting: Expecting
    limits: Sureness

    def fits(self, number: int) -> bool:
        """Whether the number can be meant here, as far as anyone can tell."""
        possible = self.expecting.possible
        return possible is None or possible(number)

    def rivals(self) -> tuple[Reading, ...]:
        """Other commands nearly as likely."""
        likely = self.heard.confidence - self.limits.margin
        words = (plain(other.words) for other in self.heard.alternatives if other.confidence >= likely)
        readings = (_read(other, self.language, self.expecting.names) for other in words)
        return tuple(found for found in readings if found and found.command != self.reading.command)

    def twin(self) -> Reading | None:
        """The same command with the number that this one's is easily taken for."""
        number = dict(self.reading.slots).get(NUMBER)
        other = self.language.numbers.twin(number) if isinstance(number, int) else None
        if other is None:
            return None
        slots = {**dict(self.reading.slots), NUMBER: other}
        return _reading(Match(self.reading.name, slots), self.reading.words)


def _weighed(case: _Case) -> Understood:
    reading, confidence = case.reading, case.heard.confidence
    if confidence < case.limits.ask:
        return _ignored("too unsure", reading)
    rivals, twin = case.rivals(), case.twin()
    if twin is not None:
        is_rival = any(rival.command == twin.command for rival in rivals)
        if is_rival or confidence < case.limits.number:
            return _settled(case, twin)
    if rivals:
        return _asked(reading, f"“{rivals[0].words}” is nearly as likely")
    if confidence < case.limits.act:
        return _asked(reading, "unsure")
    return _acted(reading, "said alone")


def _settled(case: _Case, twin: Reading) -> Understood:
    """One of two numbers that sound alike: the possible one; else both are asked back."""
    first, second = (_plain_number(reading) for reading in (case.reading, twin))
    fit = [reading for reading, number in ((case.reading, first), (twin, second)) if case.fits(number)]
    if len(fit) == 1 and case.heard.confidence >= case.limits.act:
        return _acted(fit[0], "the only number possible of two that sound alike")
    question = Reply.of("which-number", first=first, second=second)
    reading = case.reading
    why = "two numbers that sound alike"
    return Understood("ask", reading.command, reading.number, why, reading.name, twin.command, question)


def _chosen(words: str, language: Language, between: tuple[AnyCommand, AnyCommand]) -> Understood | None:
    """The answer to "one three or three nought?": a number alone, said whole or digit by digit."""
    said = language.numbers.understood(words)
    if said is None:
        said = language.numbers.spelled.get(words)
    for command in between:
        number = number_of(command)
        if said is not None and number is not None and int(number) == said:
            return Understood("act", command, number, "chosen of two", command.kind)
    return None


def _after_attention(words: str, language: Language) -> str | None:
    for word in language.phrases.attention:
        if words.startswith(f"{word} "):
            return words.removeprefix(f"{word} ")
    return None


def _read(words: str, language: Language, names: Collection[str] | None) -> Reading | None:
    """The words as a command, with or without the attention word before them."""
    bare = _after_attention(words, language)
    found = language.phrases.match(words if bare is None else bare, names)
    return None if found is None else _reading(found, words)


def _reading(found: Match, words: str) -> Reading:
    command = command_of(found)
    return Reading(found.name, command, number_of(command), words, tuple(found.slots.items()))


def _plain_number(reading: Reading) -> int:
    return int(dict(reading.slots)[NUMBER])


def _ignored(why: str, reading: Reading | None = None) -> Understood:
    if reading is None:
        return Understood("ignore", None, None, why)
    return Understood("ignore", reading.command, reading.number, why, reading.name)


def _asked(reading: Reading, why: str) -> Understood:
    question = Reply.of("did-you-mean", said=reading.words)
    return Understood("ask", reading.command, reading.number, why, reading.name, question=question)


def _acted(reading: Reading, why: str) -> Understood:
    return Understood("act", reading.command, reading.number, why, reading.name)
