"""A plan that was edited takes over from the one before."""

from collections.abc import Iterable

from plans.conversation import (
    Advanced,
    Begun,
    Decision,
    Event,
    PlaceSet,
    PlanId,
    Progress,
    Redone,
    Replanned,
    Undone,
)
from plans.engine import evolve
from plans.engine.courses import identity
from plans.engine.resuming import resume
from plans.pattern import Plan


def take_over(old: Plan, new: Plan, progress: Progress) -> Decision | None:
    """Go on in the new plan at the very same steps; None where what is knitted already would differ.

    Every row up to the further of both socks' places must be the same in both, and the pair must lie on the needle
    alike: then loops, wraps and yarns are as the new plan takes them to be. Undo goes back to the old plan.
    """
    places = (progress.now.first, progress.now.second)[: len(old.socks)]
    done = max(place.row_index for place in places)
    alike = old.around == new.around and _lies(old) == _lies(new)
    if not alike or done >= len(new.rows) or old.rows[: done + 1] != new.rows[: done + 1]:
        return None
    event = Replanned(now=progress.now.model_copy(update={"plan": identity(new)}))
    return Decision(events=(event,), reply=resume(new, evolve(progress, event)))


def written_plan(events: Iterable[Event], now: PlanId) -> PlanId:
    """The plan of the plan file from which the plan `now` comes: itself, unless the tape measure made it anew."""
    written: dict[PlanId, PlanId] = {}
    before = now
    for event in events:
        if isinstance(event, Replanned):
            written[event.now.plan] = written.get(before, before) if event.why == "measured" else event.now.plan
        if isinstance(event, Begun | Advanced | PlaceSet | Replanned | Undone | Redone):
            before = event.now.plan
    return written.get(now, now)


def _lies(plan: Plan) -> tuple[object, ...]:
    how = plan.construction
    return how.direction, how.needles, how.pairing
