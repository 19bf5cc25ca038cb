"""The words that a person teaches in her own voice: asked for one after the other, kept for each language."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from assistant.writing import write_bytes_whole
from models.likeness import FRAMES_A_SECOND, Features
from models.recognising import Heard
from models.sayable import Sayable
from models.taking import Taker
from models.taught import TAKES, Taught, as_archive, read_taught
from plans.conversation import Problem, Reply

TEACHING_SAYINGS: dict[str, frozenset[str]] = {
    "teach-begin": frozenset({"words"}),            # what is going to be asked for
    "teach-say": frozenset({"text"}),               # the first take of a word
    "teach-again": frozenset({"text", "left"}),     # another take; how many more after it
    "teach-unclear": frozenset({"text"}),           # too short or too long for a word
    "teach-unlike": frozenset({"text"}),            # more like another word than like the takes before
    "teach-anew": frozenset({"text"}),              # two in a row unlike: its takes are forgotten
    "teach-done": frozenset({"words", "path"}),     # so many words are known by her voice
    "teach-nothing": frozenset(),                   # no word was taught to its end
    "teach-forgotten": frozenset({"path"}),         # what was taught is deleted
    "teach-none": frozenset(),                      # there was nothing to forget
    "taught-unreadable": frozenset({"file"}),       # listens without it
    "taught-unwritable": frozenset({"file"}),       # what was taught is lost
}  # fmt: skip
"""Every key that can be said about teaching, with the names of its values."""

_SHORTEST_S, _LONGEST_S = 0.2, 2.5
_UNLIKE_MOST = 2


class TaughtUnwritable(Sayable):
    """What was taught cannot be kept; what was kept before stands."""

    key = "taught-unwritable"
    names = frozenset({"file"})


@dataclass(frozen=True)
class Lesson:
    """How far the teaching has come.

    Attributes:
        texts: to be taught, in this order.
        taught: the takes so far.
        unlike: how many in a row were unlike the takes before.
    """

    texts: tuple[str, ...]
    taught: Taught = Taught({})  # noqa: RUF009 (frozen)
    unlike: int = 0

    @property
    def wanted(self) -> str | None:
        """The text to be said next; None when all are taught."""
        return next((text for text in self.texts if self._takes(text) < TAKES), None)

    @property
    def question(self) -> Reply | None:
        """What to say to her next; None when all are taught."""
        text = self.wanted
        if text is None:
            return None
        done = self._takes(text)
        return Reply.of("teach-again", text=text, left=TAKES - done - 1) if done else Reply.of("teach-say", text=text)

    @property
    def whole(self) -> Taught:
        """Only those texts that have all their takes."""
        return Taught({text: takes for text, takes in self.taught.takes.items() if len(takes) >= TAKES})

    def outcome(self, file: Path) -> Reply:
        """What to say at the end; `file` is where it was kept."""
        words = len(self.whole.takes)
        return Reply.of("teach-done", words=words, path=str(file)) if words else Reply.of("teach-nothing")

    def given(self, said: Features) -> tuple["Lesson", Reply | None]:
        """After something was said; and what was wrong with it."""
        text = self.wanted
        if text is None:
            return self, None
        if not _SHORTEST_S <= len(said) / FRAMES_A_SECOND <= _LONGEST_S:
            return self, Reply.of("teach-unclear", text=text)
        if self.taught.fits(text, said):
            return replace(self, taught=self.taught.with_take(text, said), unlike=0), None
        if self.unlike + 1 < _UNLIKE_MOST:
            return replace(self, unlike=self.unlike + 1), Reply.of("teach-unlike", text=text)
        return replace(self, taught=self.taught.without(text), unlike=0), Reply.of("teach-anew", text=text)

    def _takes(self, text: str) -> int:
        return len(self.taught.takes.get(text, ()))


@dataclass(frozen=True)
class Teacher:
    """Asks, and keeps what is taught.

    Attributes:
        say: says a reply to its end.
        keep: is given every text that is taught whole, as soon as it is.
    """

    say: Callable[[Reply], object]
    keep: Callable[[Taught], None]

    def teach(self, texts: tuple[str, ...], ears: Iterable[Heard], taker: Taker) -> Lesson:
        """Ask for one text after the other, until all are taught or nothing more is heard.

        Args:
            texts: to be taught.
            ears: utterances as they are heard.
            taker: has taken down what the last of them was like.
        """
        lesson = Lesson(texts)
        self.say(Reply.of("teach-begin", words=len(texts)))
        if lesson.question is not None:
            self.say(lesson.question)
        for _ in ears:
            known = len(lesson.whole.takes)
            lesson, wrong = lesson.given(taker.taken)
            if len(lesson.whole.takes) > known:
                self.keep(lesson.whole)
            if lesson.question is None:
                break
            self.say(wrong or lesson.question)
        return lesson


def taught_file(folder: Path, language: str) -> Path:
    """Where what was taught in a language stands, in the folder of the program's data."""
    return folder / "taught" / f"{language}.npz"


def load_taught(file: Path) -> tuple[Taught | None, Problem | None]:
    """What was taught, None where nothing was; and what is wrong with the file where it cannot be read."""
    try:
        taught = read_taught(file)
    except (OSError, ValueError):
        return None, Problem.of("taught-unreadable", where=str(file), file=str(file))
    return (taught if taught.takes else None), None


def forget_taught(file: Path) -> Reply:
    """Delete it; what to say about it.

    Raises:
        TaughtUnwritable: no right to delete it.
    """
    try:
        file.unlink()
    except FileNotFoundError:
        return Reply.of("teach-none")
    except OSError as error:
        raise TaughtUnwritable(file=str(file)) from error
    return Reply.of("teach-forgotten", path=str(file))


def keep_taught(file: Path, taught: Taught) -> None:
    """Write it, whole or not at all, beside what was taught before; a word taught anew takes the place of the old one.

    Raises:
        TaughtUnwritable: no room, or no right to write there.
    """
    before, _ = load_taught(file)
    together = Taught({**(before.takes if before else {}), **taught.takes})
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        write_bytes_whole(file, as_archive(together))
    except OSError as error:
        raise TaughtUnwritable(file=str(file)) from error
