"""Smaller and larger steps."""

from plans.conversation import Decision, Grain, GrainSet, Progress, Reply
from plans.engine.calling import call
from plans.engine.courses import course
from plans.engine.naming import grain_name
from plans.engine.places import GRAINS, effective, in_hand
from plans.pattern import Plan


def finer(plan: Plan, progress: Progress) -> Decision:
    """One grain finer than what is called now."""
    number = GRAINS.index(effective(course(plan), in_hand(course(plan), progress.now), progress.grain))
    if number == 0:
        return Decision(events=(), reply=Reply.of("grain-finest"))
    return _set(plan, progress, GRAINS[number - 1])


def coarser(plan: Plan, progress: Progress) -> Decision:
    """One grain coarser than what was chosen; above whole rounds the steps follow the work again."""
    if progress.grain == "follow":
        number = GRAINS.index(effective(course(plan), in_hand(course(plan), progress.now), "follow"))
        if number == len(GRAINS) - 1:
            return Decision(events=(), reply=Reply.of("grain-coarsest"))
        return _set(plan, progress, GRAINS[number + 1])
    number = GRAINS.index(progress.grain) + 1
    return _set(plan, progress, "follow" if number == len(GRAINS) else GRAINS[number])


def _set(plan: Plan, progress: Progress, grain: Grain) -> Decision:
    reply = Reply.of(
        "grain-set", grain=grain_name(plan, grain), call=call(plan, progress.now, grain)
    )
    return Decision(events=(GrainSet(grain=grain),), reply=reply)
