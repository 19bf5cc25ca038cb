"""Questions and answers before the knitting: every line said at once, every answer heard, typed, or both."""

import os
import select
import sys
import threading
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass

from assistant.inputs import Failed, Input, Tick
from assistant.languages import Language
from assistant.listening.ears import Ears
from assistant.listening.understanding import Expecting, Understood, understand
from assistant.speaking.wording import word
from assistant.voice import Voice
from models.recognising import Heard
from plans.conversation import Problem, Reply


@dataclass(frozen=True, slots=True)
class Given:
    """An answer: what was understood, the words, and whether they were typed."""

    understood: Understood
    words: str
    is_typed: bool


class Dialogue:
    """Says and asks, in one language, until the inputs end.

    Args:
        inputs: utterances, heard or typed; a typed one has the confidence 1 and no time.
        voice: says every line.
        language: its phrases and sentences.
        ears: told what may be said; None where only typed lines come.
    """

    def __init__(self, inputs: Iterable[Input], voice: Voice, language: Language, ears: Ears | None) -> None:
        self._inputs = iter(inputs)
        self._voice = voice
        self._language = language
        self._ears = ears

    @property
    def hears(self) -> bool:
        """Whether there are ears at all."""
        return self._ears is not None

    def hear_with(self, ears: Ears) -> None:
        """From now on hear with these."""
        self._ears = ears

    def say(self, *sayings: Reply | Problem) -> None:
        """Say each, a line each."""
        for saying in sayings:
            self._voice.say(word(saying, self._language))

    def ask(self, question: Reply, names: Collection[str], *, ticks: int | None = None) -> Given | None:
        """Say the question and wait for an answer.

        Args:
            question: what is asked.
            names: commands and answers that may be said; a typed line may be anything.
            ticks: give up after so many quiet spells of some seconds; None to wait as long as it takes.

        Returns:
            The answer; None where nothing came, or no more will come.
        """
        if self._ears is not None:
            self._ears.expect(self._language.vocabulary(names))
        self.say(question)
        return self._answer(names, ticks)

    def _answer(self, names: Collection[str], ticks: int | None) -> Given | None:
        for thing in self._inputs:
            match thing:
                case Heard():
                    understood = understand(thing, self._language, asked=True, expecting=Expecting(names=names))
                    is_typed = thing.ended == 0
                    if understood.outcome != "ignore" or is_typed:
                        return Given(understood, thing.words, is_typed)
                case Failed(problem=problem):
                    self.say(problem)
                case Tick() if ticks is not None:
                    ticks -= 1
                    if ticks <= 0:
                        return None
                case _:
                    pass
        return None

    def yes(self, question: Reply) -> bool:
        """Whether the answer is yes; no where no answer comes."""
        while (given := self.ask(question, ("yes", "no"))) is not None:
            if given.understood.name in ("yes", "no"):
                return given.understood.name == "yes"
            self.say(Reply.of("not-yes-or-no"))
        return False


class Lines:
    """Lines typed on a terminal, taken as utterances until `close`, so that what is typed later is left to others.

    Args:
        number: file descriptor; standard input where left out, which may be closed.
    """

    def __init__(self, number: int | None = None) -> None:
        self._number = sys.stdin.fileno() if number is None and sys.stdin is not None else number
        self._closed = threading.Event()
        self._came = b""

    def __iter__(self) -> Iterator[Heard]:
        """Each line but blank ones; iterating again goes on where it was left."""
        while not self._closed.is_set() and (line := self._line()) is not None:
            words = line.decode("utf-8", "replace").strip()
            if words:
                yield Heard(words=words, confidence=1.0, began=0, ended=0)

    def _line(self) -> bytes | None:
        """The next line; None at the end, or when closed meanwhile."""
        while b"\n" not in self._came:
            if self._closed.is_set() or self._number is None:
                return None
            if not _is_ready(self._number):
                continue
            data = os.read(self._number, 4096)
            if not data:
                line, self._came = self._came, b""
                return line or None
            self._came += data
        line, _, self._came = self._came.partition(b"\n")
        return line

    def close(self) -> None:
        """Take no more lines."""
        self._closed.set()


def _is_ready(number: int, wait_s: float = 0.2) -> bool:
    """Whether a line waits; where the system cannot tell, reading blocks."""
    if os.name == "nt":
        return True
    return bool(select.select([number], [], [], wait_s)[0])
