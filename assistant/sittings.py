"""Taking a pair up: begin it, resume it, or notice that its plan was edited since."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

from assistant.failing import Surroundings, refuse
from assistant.journal import Journal
from assistant.journal_events import JournalEvent
from assistant.journal_plans import keep, kept_plan
from assistant.sitting import Choice, Question, Sitting
from plans.conversation import Decision, Event, PlanId, Problem, Progress, Reply
from plans.engine import begin, replay
from plans.engine.replanning import measured_too, take_over, written_plan
from plans.engine.resuming import resume
from plans.json_form import plan_id
from plans.making import Made
from plans.pattern import Plan


@dataclass(frozen=True, slots=True)
class Opening:
    """A pair taken up, not yet written down.

    Attributes:
        sitting: the pair and the plan it will be knitted by; its progress as it is before `events` are written (where
            they begin it, as after them, which comes to the same).
        events: what begins it.
        sayings: what is said first, a line each.
        question: where the last of them asks something, what the answers come to.
    """

    sitting: Sitting
    events: tuple[JournalEvent, ...]
    sayings: tuple[Reply | Problem, ...]
    question: Question | None = None


def open_pair(journal: Journal, made: Made | None, *, pair: str | None = None, takes_edited: bool = False) -> Opening:
    """Take a pair up.

    Args:
        journal: where it is or will be kept.
        made: a plan file's plan; None for the pair of that name, or the one knitted last.
        pair: its name; the plan's own where left out.
        takes_edited: where the plan file was edited since and its rows so far are the same, go on with it.

    Raises:
        Refused: there is nothing to resume, or no pair of that name.
    """
    if made is None:
        return _resumed(journal, _known(journal, pair))
    name = pair or made.plan.name
    if name not in journal.pairs():
        return _begun(journal, name, made)
    events = journal.events(name)
    plan, progress = _recorded(journal, name, events)
    written = written_plan(events, progress.now.plan)
    if plan_id(made.plan) in (progress.now.plan, written):
        return _taken_up(journal, name, plan, progress)
    sitting = Sitting(name, plan, progress, journal, journal.last_seq)
    found = _edited(journal, sitting, made.plan, written)
    if found is None:
        return Opening(sitting, (), (Reply.of("plan-edited", name=name), resume(plan, progress)))
    keep(journal, made.plan)
    keep(journal, found.plan)
    taken = (Reply.of(f"plan-taken{found.kind}", name=name), found.decision.reply)
    if takes_edited:
        return Opening(sitting, found.decision.events, taken)
    stays = Choice((), (Reply.of("plan-stays"), resume(plan, progress)))
    question = Question(yes=stays, no=Choice(found.decision.events, taken))
    return Opening(sitting, (), (Reply.of(f"plan-edited-ask{found.kind}", name=name),), question)


class _Edited(NamedTuple):
    """The plan that can take over, and what becomes of what the tape measure said, as the sayings' keys end."""

    plan: Plan
    decision: Decision
    kind: str


def _edited(journal: Journal, sitting: Sitting, edited: Plan, written: PlanId) -> _Edited | None:
    """The edited file's plan, in her measured rounds where there are such and it comes out so."""
    plan, progress = sitting.plan, sitting.progress
    before = kept_plan(journal, written) if written != progress.now.plan else None
    anew = measured_too(before, edited, plan) if before else None
    if anew is not None and (decision := take_over(plan, anew, progress, written=plan_id(edited))):
        return _Edited(anew, decision, "-measured")
    decision = take_over(plan, edited, progress)
    return _Edited(edited, decision, "-unmeasured" if before else "") if decision else None


def _known(journal: Journal, pair: str | None) -> str:
    name = pair or journal.last_pair
    if name is None:
        raise refuse("nothing-to-resume")
    if name not in journal.pairs():
        raise refuse("no-pair-named", name=name, names=", ".join(journal.pairs()))
    return name


def _begun(journal: Journal, name: str, made: Made) -> Opening:
    keep(journal, made.plan)
    decision = begin(made.plan)
    sitting = Sitting(name, made.plan, replay(decision.events), journal, journal.last_seq)
    sayings = (Reply.of("pair-begins", name=name), Reply.of("hand-care"), *made.notes, decision.reply)
    return Opening(sitting, decision.events, sayings)


def _resumed(journal: Journal, name: str) -> Opening:
    return _taken_up(journal, name, *_recorded(journal, name, journal.events(name)))


def _taken_up(journal: Journal, name: str, plan: Plan, progress: Progress) -> Opening:
    sitting = Sitting(name, plan, progress, journal, journal.last_seq)
    return Opening(sitting, (), (resume(plan, progress),))


def _recorded(journal: Journal, name: str, events: Iterable[Event]) -> tuple[Plan, Progress]:
    progress = replay(events)
    plan = kept_plan(journal, progress.now.plan)
    if plan is None:
        raise Surroundings(Problem.of("plan-lost", name=name))
    return plan, progress
