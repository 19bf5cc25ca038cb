"""The first minutes: is the sound all right, which pair, and a new one asked question by question."""

from collections.abc import Callable, Collection
from pathlib import Path

from assistant.dialogue import Dialogue
from assistant.interview import Answered, Interview, answer
from assistant.journal import Journal
from assistant.listening.ears import Ears
from assistant.summing_up import summary
from assistant.writing import write_whole
from models.loudness import Meter, Verdict
from plans.conversation import Problem, Reply
from plans.files import write_wishes
from plans.making import Made, make_plan
from plans.wishes import Wishes

TRIES = 3
PATIENCE_TICKS = 3

_FIELDS_OF_PROBLEMS = ("foot_length", "ball", "ankle", "leg", "cuff", "swatch.stitches", "swatch.rounds")


Another = Callable[[Ears], tuple[str, Ears] | None]
"""Takes the ears in use away; gives the next microphone's name and ears, or None where there is none."""


def check_sound(dialogue: Dialogue, ears: Ears, another: Another | None = None) -> bool:
    """Ask for "next" until it is heard at a good level; whether it was.

    Args:
        dialogue: asks.
        ears: hear the answer.
        another: what hears nothing at all is given up for; None to stay with this microphone.
    """
    tries = TRIES
    while tries:
        tries -= 1
        verdict = _one_check(dialogue, ears)
        if verdict is None:
            return True
        dialogue.say(verdict)
        if verdict.key == "heard-nothing" and another is not None and (found := another(ears)) is not None:
            name, ears = found
            dialogue.hear_with(ears)
            dialogue.say(Reply.of("microphone-tried", name=name))
            tries = TRIES
    return False


def _one_check(dialogue: Dialogue, ears: Ears) -> Reply | None:
    """What is wrong with the sound; None where it is fine, or not to be checked."""
    meter = Meter()
    ears.watch = meter.accept
    given = dialogue.ask(Reply.of("say-next"), ("next", "skip"), ticks=PATIENCE_TICKS)
    name = given.understood.name if given else None
    if name == "skip":
        dialogue.say(Reply.of("sound-check-skipped"))
        return None
    verdict = meter.levels.verdict
    if name == "next" and (verdict is Verdict.FINE or (given is not None and given.is_typed)):
        dialogue.say(Reply.of("sound-fine"))
        return None
    return _verdict(verdict, given.words if given else None)


def _verdict(verdict: Verdict, words: str | None) -> Reply:
    if verdict is Verdict.NOTHING:
        return Reply.of("heard-nothing")
    if verdict is Verdict.FINE:
        return Reply.of("heard-otherwise", said=words) if words else Reply.of("heard-nothing")
    return Reply.of(verdict.value)


def wants_last(dialogue: Dialogue, journal: Journal) -> bool:
    """Whether the pair knitted last is to be gone on with; no where there is none."""
    last = journal.last_pair
    return last is not None and dialogue.yes(Reply.of("resume-or-new", name=last))


def new_pair(dialogue: Dialogue, folder: Path, taken: tuple[str, ...]) -> Made | None:
    """Ask for a pair, prove it, keep its plan file; None where the answers ended before that.

    Args:
        dialogue: says and asks.
        folder: where the plan file is written.
        taken: names of pairs that there are already.
    """
    dialogue.say(Reply.of("new-pair"))
    interview = Interview()
    while (answered := _interviewed(dialogue, interview)) is not None:
        interview = answered
        wishes = interview.wishes(_free_name({*taken, *(file.stem for file in folder.glob("*.toml"))}))
        made = make_plan(wishes)
        if isinstance(made, Made):
            if _is_kept(dialogue, made):
                _keep(dialogue, folder, wishes)
                return made
            interview = Interview()
        else:
            dialogue.say(*made)
            interview = interview.without(*_FIELDS_OF_PROBLEMS)
    return None


def _interviewed(dialogue: Dialogue, interview: Interview) -> Interview | None:
    """All questions answered; None where the answers ended."""
    while (question := interview.question) is not None:
        given = dialogue.ask(Reply.of(question.key), question.answers)
        if given is None:
            return None
        taken: Answered = answer(interview, question, given.understood.command, given.words)
        interview = taken.interview
        if taken.reply is not None:
            dialogue.say(taken.reply)
    return interview


def _is_kept(dialogue: Dialogue, made: Made) -> bool:
    dialogue.say(summary(made.plan), *made.notes)
    return dialogue.yes(Reply.of("keep-this"))


def _keep(dialogue: Dialogue, folder: Path, wishes: Wishes) -> None:
    path = folder / f"{wishes.name}.toml"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        write_whole(path, write_wishes(wishes))
    except OSError as error:
        dialogue.say(Problem.of("path-unwritable", file=str(path), reason=error.strerror or ""))
        return
    dialogue.say(Reply.of("plan-written", path=str(path)))


def _free_name(taken: Collection[str]) -> str:
    """One that neither a pair of the journal nor a plan file has."""
    names = ("socks", *(f"socks {number}" for number in range(2, len(taken) + 3)))
    return next(name for name in names if name not in taken)

