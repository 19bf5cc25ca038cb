"""The first minutes: is the sound all right, which pair, and a new one asked question by question."""

from collections.abc import Callable, Collection, Sequence
from pathlib import Path

from assistant.dialogue import Dialogue
from assistant.interview import Answered, Interview, answer
from assistant.journal import Journal
from assistant.listening.ears import Ears
from assistant.name_matching import fitting
from assistant.session_commands import CountGiven, Skip
from assistant.summing_up import summary
from assistant.writing import write_whole
from models.loudness import Meter, Verdict
from plans.conversation import Problem, Reply
from plans.files import write_wishes
from plans.making import Made, make_plan
from plans.wishes import Wishes

TRIES = 3
PATIENCE_TICKS = 3

_FIELDS_OF_PROBLEMS = (
    "foot_length", "ball", "ankle", "heel_diagonal", "calf", "leg", "cuff", "swatch.stitches", "swatch.rounds", "skein",
    "skein_length", "skeins",
)  # fmt: skip


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


def wanted_pair(dialogue: Dialogue, journal: Journal) -> str | None:
    """The name of the pair to be gone on with: the one knitted last, or another; None for a new one."""
    if journal.last_pair is None:
        return None
    last, *others = journal.pairs()
    if dialogue.yes(Reply.of("resume-or-another" if others else "resume-or-new", name=last)):
        return last
    return _of_the_others(dialogue, others)


def _of_the_others(dialogue: Dialogue, names: Sequence[str]) -> str | None:
    """One of them by its number, or typed by its name; None for none of them, or where no answer comes."""
    choices = (Reply.of("pair-choice", number=number, name=name) for number, name in enumerate(names, start=1))
    question = Reply.of("which-pair", pairs=tuple(choices))
    while names and (given := dialogue.ask(question, ("count_given", "skip"))) is not None:
        match given.understood.command:
            case Skip():
                return None
            case CountGiven(number=number) if number in range(1, len(names) + 1):
                return names[int(number) - 1]
        meant = fitting(given.words, names) if given.is_typed else ()
        if len(meant) == 1:
            return names[meant[0]]
    return None


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
            dialogue.say(Reply.of("ask-all-again"))
            interview = interview.without(*interview.answers)
        else:
            dialogue.say(*made)
            interview = interview.without(*_FIELDS_OF_PROBLEMS)
    return None


def _interviewed(dialogue: Dialogue, interview: Interview) -> Interview | None:
    """All questions answered; None where the answers ended."""
    while (question := interview.question) is not None:
        given = dialogue.ask(*interview.asking(question))
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

