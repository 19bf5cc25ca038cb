"""A practice pair taken up in a journal, and a session on it whose lines can be read."""

import io
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

from assistant.journal import Journal
from assistant.languages import load
from assistant.manners import Manners
from assistant.session import Habits, Session
from assistant.sittings import open_pair
from assistant.voice import Voice
from models.recognising import Heard, Vocabulary
from plans.conversation import Problem
from plans.making import Made, make_plan
from plans.wishes import Swatch, Wishes
from tests.fakes import RememberingSink, StillClock

PRACTICE = Wishes(name="practice", practice=True, swatch=Swatch(stitches=Fraction(22), rounds=Fraction(30)))


def practice(**changes: object) -> Made:
    made = make_plan(Wishes.model_validate({**dict(PRACTICE), **changes}))
    assert isinstance(made, Made)
    return made


def said(words: str, confidence: float = 1.0) -> Heard:
    return Heard(words=words, confidence=confidence, began=0, ended=0)


@dataclass
class Table:
    """A session and everything around it."""

    session: Session
    journal: Journal
    clock: StillClock
    lines: io.StringIO
    expected: list[Vocabulary] = field(default_factory=list)

    def hear(self, *utterances: str) -> list[str]:
        """What is said to these words."""
        before = len(self.spoken)
        for words in utterances:
            self.session.take(said(words))
        return self.spoken[before:]

    @property
    def spoken(self) -> list[str]:
        return self.lines.getvalue().splitlines()


@contextmanager
def sitting_down(
    file: Path, *, made: Made | None = None, habits: Habits = Habits(),  # noqa: B008
    lines: io.StringIO | None = None, remember: Callable[..., Problem | None] = lambda **_: None,
) -> Iterator[Table]:
    with Journal.open(file) as journal:
        opening = open_pair(journal, made or practice(), takes_edited=habits.answers_yes)
        clock, written = StillClock(), lines or io.StringIO()
        expected: list[Vocabulary] = []
        session = Session(
            opening.sitting, load(), Voice(None, RememberingSink(), lines=written), clock, manners=Manners(),
            habits=habits, expect=expected.append, remember=remember,
        )  # fmt: skip
        session.greet(*opening.sayings, events=opening.events)
        session.question = opening.question
        yield Table(session, journal, clock, written, expected)
