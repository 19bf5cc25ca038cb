"""A new pair, question by question: the answers so far and the next answer in; the next question or the wishes out."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any, Literal

from assistant.session_commands import AnyCommand, CountGiven, Help, LengthGiven, Skip
from plans.amounts import Thread, Weight
from plans.conversation import Again, Next, No, Problem, Reply, Undo, Yes
from plans.files.fields import read_answer
from plans.quantities import Length, exact_number
from plans.sizing.calves import CALF_BEGINS
from plans.sizing.measures import measure
from plans.wishes import Swatch, Wishes

Kind = Literal["yes_no", "length", "count"]


@dataclass(frozen=True, slots=True)
class Question:
    """One question.

    Attributes:
        name: the field of the wishes it fills; the swatch's begin with "swatch.".
        key: of its sentence.
        kind: what answers it.
        needed: it cannot be skipped.
    """

    name: str
    key: str
    kind: Kind
    needed: bool = False

    @property
    def answers(self) -> tuple[str, ...]:
        """Names of what answers it."""
        given = {"yes_no": ("yes", "no"), "length": ("length_given",), "count": ("count_given",)}[self.kind]
        return given if self.needed else (*given, "skip")

    @property
    def help(self) -> Reply:
        """How to come to an answer, and what else may be said."""
        return Reply.of("interview-help", answer=Reply.of(f"help-{self.key.removeprefix('ask-')}"))


_PRACTICE = Question("practice", "ask-practice", "yes_no", needed=True)
_FOOT = (
    Question("foot_length", "ask-foot-length", "length", needed=True),
    Question("ball", "ask-ball", "length"),
    Question("ankle", "ask-ankle", "length"),
    Question("leg", "ask-leg", "length"),
    Question("cuff", "ask-cuff", "length"),
)
_SWATCH = (
    Question("swatch.stitches", "ask-stitches", "count", needed=True),
    Question("swatch.rounds", "ask-rounds", "count", needed=True),
)
_HEEL = Question("heel_diagonal", "ask-heel-diagonal", "length")
_CALF = Question("calf", "ask-calf", "length")
_YARN = (
    Question("skein", "ask-skein", "count"),
    Question("skein_length", "ask-skein-length", "count"),
    Question("skeins", "ask-skeins", "count"),
)
_AMOUNTS: dict[str, Callable[[Fraction], Any]] = {"skein": Weight, "skein_length": Thread, "skeins": round}
"""What a plain number comes to: grams, metres, balls."""


@dataclass(frozen=True, slots=True)
class Interview:
    """The answers so far, by field; a skipped one is None.

    Attributes:
        answers: in the order in which they were given.
        earlier: answers to questions that were opened again.
    """

    answers: dict[str, Any] = field(default_factory=dict)
    earlier: dict[str, Any] = field(default_factory=dict)

    @property
    def question(self) -> Question | None:
        """The next one; None when all are answered."""
        return next((question for question in self._asked() if question.name not in self.answers), None)

    def _asked(self) -> Iterator[Question]:
        """What must be known first; then what makes the fit check and the yarn surer, where it is of use."""
        yield _PRACTICE
        if self.answers.get("practice"):
            yield from _SWATCH
            return
        yield from (*_FOOT, *_SWATCH, _HEEL)
        leg = self.answers.get("leg")
        if leg is not None and leg > CALF_BEGINS:
            yield _CALF
        yield from _YARN[:1] if self.answers.get("skein", True) is None else _YARN

    def wishes(self, name: str) -> Wishes:
        """What the answers come to."""
        given = {key: value for key, value in self.answers.items() if value is not None}
        swatch = {key.removeprefix("swatch."): given.pop(key) for key in list(given) if key.startswith("swatch.")}
        return Wishes(name=name, swatch=Swatch(**swatch), **given)

    def without(self, *names: str) -> "Interview":
        """The same with some questions to be asked again, whose answers can be left as they were."""
        kept = {name: value for name, value in self.answers.items() if name not in names}
        opened = {name: value for name, value in self.answers.items() if name in names}
        return Interview(kept, {**self.earlier, **opened})

    def was_answered(self, question: Question) -> bool:
        """Whether an earlier answer can be left as it was; a yes or no is as soon said again."""
        return question.kind != "yes_no" and question.name in self.earlier

    def asking(self, question: Question) -> tuple[Reply, tuple[str, ...]]:
        """A question as it is asked, with its earlier answer if there is one; and names of what may be said to it."""
        names = (*question.answers, "again", "help", "undo")
        asked = Reply.of(question.key)
        if not self.was_answered(question):
            return asked, names
        return Reply.of("ask-earlier", question=asked, answer=_told(self.earlier[question.name])), (*names, "next")


@dataclass(frozen=True, slots=True)
class Answered:
    """The interview after an answer, and what is said back; the same interview where the answer does not fit."""

    interview: Interview
    reply: Reply | Problem | None


def answer(interview: Interview, question: Question, given: AnyCommand | None, words: str) -> Answered:
    """Take an answer.

    Args:
        interview: so far.
        question: the one that is open.
        given: what was understood; None where the words are no answer that can be spoken.
        words: as heard or typed, such as "24.5cm", which nobody would say.
    """
    match given:
        case Again():
            return Answered(interview, None)
        case Help():
            return Answered(interview, question.help)
        case Undo():
            return _undone(interview)
        case _:
            return _filled(interview, question, given, words)


def _filled(interview: Interview, question: Question, given: AnyCommand | None, words: str) -> Answered:
    match given:
        case Next() if interview.was_answered(question):
            return Answered(_with(interview, question, interview.earlier[question.name]), None)
        case Skip():
            if question.needed:
                return Answered(interview, Reply.of("answer-needed"))
            return Answered(_with(interview, question, None), Reply.of("answer-skipped"))
        case Yes() | No() if question.kind == "yes_no":
            return Answered(_with(interview, question, isinstance(given, Yes)), None)
        case LengthGiven(number=number, unit=unit) if question.kind == "length":
            if unit is None:
                return Answered(interview, Reply.of("ask-unit", number=words))
            return _length(interview, question, Length.parse(f"{number}{unit}"))
        case CountGiven(number=number) if question.kind == "count":
            amount = _AMOUNTS.get(question.name)
            value = number if amount is None else amount(number)
            return Answered(_with(interview, question, value), Reply.of("answer-count", number=words))
        case _:
            return _typed(interview, question, words)


def _undone(interview: Interview) -> Answered:
    if not interview.answers:
        return Answered(interview, Reply.of("nothing-to-undo"))
    return Answered(interview.without(list(interview.answers)[-1]), None)


def _told(value: Any) -> Reply:  # noqa: ANN401 (a type a field)
    """An answer as it is told again."""
    match value:
        case None:
            return Reply.of("told-skipped")
        case Length():
            return Reply.of("told-length", length=measure(value))
        case Weight() | Thread():
            return Reply.of("told-count", number=exact_number(value.value))
        case _:
            return Reply.of("told-count", number=exact_number(Fraction(value)))


def _typed(interview: Interview, question: Question, words: str) -> Answered:
    if question.kind == "yes_no":
        return Answered(interview, Reply.of("not-yes-or-no"))
    value = read_answer(question.name, words, "")
    if isinstance(value, Problem):
        return Answered(interview, value)
    if isinstance(value, Length):
        return _length(interview, question, value)
    return Answered(_with(interview, question, value), Reply.of("answer-count", number=words))


def _length(interview: Interview, question: Question, length: Length) -> Answered:
    return Answered(_with(interview, question, length), Reply.of("answer-length", length=measure(length)))


def _with(interview: Interview, question: Question, value: Any) -> Interview:  # noqa: ANN401 (a type a field)
    return Interview({**interview.answers, question.name: value}, interview.earlier)
