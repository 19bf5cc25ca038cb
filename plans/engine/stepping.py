"""On by a step, and back and forth over what was commanded."""

from plans.conversation import Advanced, Decision, Progress, Redone, Reply, Undone
from plans.engine.calling import call
from plans.engine.naming import said
from plans.engine.places import after, is_finished
from plans.pattern import Plan


def next_step(plan: Plan, progress: Progress) -> Decision:
    """What was called is done; call the following. At the end nothing changes."""
    if is_finished(plan, progress.now):
        return Decision(events=(), reply=Reply.of(said(plan, "finished-already")))
    now = after(plan, progress.now, progress.grain)
    return Decision(events=(Advanced(now=now),), reply=call(plan, now, progress.grain))


def undo(plan: Plan, progress: Progress) -> Decision:
    """Take the last command that moved back; the stitches stay."""
    if not progress.past:
        return Decision(events=(), reply=Reply.of("nothing-to-undo"))
    now = progress.past[-1]
    if now.plan != progress.now.plan:
        return Decision(events=(Undone(now=now),), reply=Reply.of("undone-other-plan"))
    reply = Reply.of("undone", call=call(plan, now, progress.grain))
    return Decision(events=(Undone(now=now),), reply=reply)


def redo(plan: Plan, progress: Progress) -> Decision:
    """Take the last undo back."""
    if not progress.undone:
        return Decision(events=(), reply=Reply.of("nothing-to-redo"))
    now = progress.undone[-1]
    if now.plan != progress.now.plan:
        return Decision(events=(Redone(now=now),), reply=Reply.of("redone-other-plan"))
    reply = Reply.of("redone", call=call(plan, now, progress.grain))
    return Decision(events=(Redone(now=now),), reply=reply)
