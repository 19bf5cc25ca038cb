"""The engine: a plan, the progress so far and a command in; what happened and what is said out.

`decide` may refuse and changes nothing; `evolve` takes what has happened and never refuses. Progress is the
fold of `evolve` over the events, so the events are all that has to be kept.
"""

from collections.abc import Iterable

from plans.conversation import (
    Advanced,
    Again,
    Answered,
    Asked,
    AtRound,
    Back,
    BallBegun,
    Begun,
    Coarser,
    Command,
    Counted,
    Decision,
    Event,
    Explain,
    Finer,
    Forward,
    GrainSet,
    HowFar,
    HowMany,
    IHave,
    Mark,
    Marked,
    Marks,
    NewBall,
    Next,
    No,
    PlaceSet,
    Progress,
    Redo,
    Redone,
    Replanned,
    Reply,
    RippedBack,
    Standing,
    Stop,
    Stopped,
    TapeSays,
    Undo,
    Undone,
    Weighed,
    WhatNext,
    WhereAmI,
    YarnLeft,
    Yes,
)
from plans.engine.answers import how_far, how_many, marks, what_next, where_am_i
from plans.engine.asking import answer_yes, ask_next, ask_stop, drop
from plans.engine.calling import call
from plans.engine.counting import i_have
from plans.engine.courses import course, identity
from plans.engine.explaining import explain
from plans.engine.grains import coarser, finer
from plans.engine.moving import ask_to_set, shift
from plans.engine.places import standing_at
from plans.engine.stepping import next_step, redo, undo
from plans.engine.taping import tape_says
from plans.engine.yarn_left import new_ball, yarn_left
from plans.pattern import Plan

__all__ = ["ask_next", "begin", "decide", "evolve", "replay"]


def begin(plan: Plan) -> Decision:
    """Begin a pair: its first event, and the first step called."""
    now = standing_at(course(plan), identity(plan), 0)
    return Decision(events=(Begun(now=now),), reply=call(plan, now, "follow"))


def decide(plan: Plan, progress: Progress, command: Command) -> Decision:
    """What a command comes to.

    An open question is dropped by any command but yes, no and again; only a no is told what was dropped.

    Args:
        plan: the plan of `progress.now`.
        progress: where she is.
        command: what she wishes.

    Raises:
        ValueError: the progress was made in another plan.
    """
    if progress.now.plan != identity(plan):
        raise ValueError("these places belong to another plan: load the plan that the progress names")
    decision = _decide(plan, progress, command)
    if progress.question is None or isinstance(command, Yes | No | Again):
        return decision
    return decision.model_copy(update={"events": (Answered(yes=False), *decision.events)})


def _decide(plan: Plan, progress: Progress, command: Command) -> Decision:  # noqa: C901, PLR0912 (one case a command)
    match command:
        case Next():
            return next_step(plan, progress)
        case Back() | Forward():
            return shift(plan, progress, command)
        case AtRound() | RippedBack():
            return ask_to_set(plan, progress, command)
        case Undo():
            return undo(plan, progress)
        case Redo():
            return redo(plan, progress)
        case Finer():
            return finer(plan, progress)
        case Coarser():
            return coarser(plan, progress)
        case Mark():
            reply = Reply.of("marked", number=len(progress.marks) + 1)
            return Decision(events=(Marked(at=progress.now),), reply=reply)
        case IHave():
            return i_have(plan, progress, command)
        case TapeSays():
            return tape_says(plan, progress, command)
        case YarnLeft():
            return yarn_left(plan, progress, command)
        case NewBall():
            return new_ball(plan, progress, command)
        case Yes():
            return answer_yes(plan, progress)
        case No():
            return drop(plan, progress)
        case Stop():
            return ask_stop(plan, progress)
        case WhereAmI() | HowMany() | HowFar() | WhatNext() | Explain() | Marks() | Again():
            return Decision(events=(), reply=_answer(plan, progress, command))


def _answer(
    plan: Plan, progress: Progress, command: WhereAmI | HowMany | HowFar | WhatNext | Explain | Marks | Again
) -> Reply:
    match command:
        case WhereAmI():
            return where_am_i(plan, progress)
        case HowMany():
            return how_many(plan, progress)
        case HowFar():
            return how_far(plan, progress)
        case WhatNext():
            return what_next(plan, progress)
        case Explain():
            return explain(plan, progress)
        case Marks():
            return marks(plan, progress)
        case Again():
            return Reply.of("again")


def evolve(progress: Progress, event: Event) -> Progress:  # noqa: C901 (one case an event)
    """What is so after an event; refuses nothing. The records inside were checked when the event was made."""
    match event:
        case Begun():
            return Progress(now=event.now)
        case Advanced() | PlaceSet() | Replanned():
            return _moved(progress, event.now, (*progress.past, progress.now), ())
        case Undone():
            return _moved(progress, event.now, progress.past[:-1], (*progress.undone, progress.now))
        case Redone():
            return _moved(progress, event.now, (*progress.past, progress.now), progress.undone[:-1])
        case Marked():
            return progress.model_copy(update={"marks": (*progress.marks, event.at)})
        case BallBegun():
            return progress.model_copy(update={"balls": (*progress.balls, event)})
        case GrainSet():
            return progress.model_copy(update={"grain": event.grain})
        case Asked():
            return progress.model_copy(update={"question": event.wish})
        case Answered():
            return progress.model_copy(update={"question": None})
        case Counted() | Weighed() | Stopped():
            return progress


def _moved(
    progress: Progress, now: Standing, past: tuple[Standing, ...], undone: tuple[Standing, ...]
) -> Progress:
    return progress.model_copy(update={"now": now, "past": past, "undone": undone})


def replay(events: Iterable[Event]) -> Progress:
    """The progress that events come to.

    Raises:
        ValueError: the first of them does not begin a pair.
    """
    progress: Progress | None = None
    for event in events:
        if progress is None and not isinstance(event, Begun):
            raise ValueError(f"the events start with “{event.kind}”: a pair must be begun first")
        progress = Progress(now=event.now) if isinstance(event, Begun) else evolve(_some(progress), event)
    return _some(progress)


def _some(progress: Progress | None) -> Progress:
    if progress is None:
        raise ValueError("there are no events: a pair must be begun first")
    return progress
