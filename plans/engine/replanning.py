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
from plans.engine.wished import wishes_of
from plans.making import Made, make_plan
from plans.pattern import Plan
from plans.wishes import Wishes

_SWATCH = {"swatch", "counts"}
_WORKED_OUT = (
    ({"foot_length", "shoe"}, {"foot_rounds"}),
    ({"leg", "leg_height", "cuff"}, {"leg", "leg_rounds", "cuff_rounds", "calf_shape"}),
)
"""Lengths, and what the tape works out anew to come to them."""


def take_over(old: Plan, new: Plan, progress: Progress, *, written: PlanId | None = None) -> Decision | None:
    """Go on in the new plan at the very same steps; None where what is knitted already would differ.

    `written` is the plan of the edited file, where the new one has the measured rounds besides.

    Every row up to the further of both socks' places must be the same in both, and the pair must lie on the needle
    alike: then loops, wraps and yarns are as the new plan takes them to be. Undo goes back to the old plan.
    """
    places = (progress.now.first, progress.now.second)[: len(old.socks)]
    done = max(place.row_index for place in places)
    alike = old.around == new.around and _lies(old) == _lies(new)
    if not alike or done >= len(new.rows) or old.rows[: done + 1] != new.rows[: done + 1]:
        return None
    event = Replanned(now=progress.now.model_copy(update={"plan": identity(new)}), written=written)
    return Decision(events=(event,), reply=resume(new, evolve(progress, event)))


def written_plan(events: Iterable[Event], now: PlanId) -> PlanId:
    """The plan of the plan file from which the plan `now` comes: itself, unless the tape measure made it anew."""
    written: dict[PlanId, PlanId] = {}
    before = now
    for event in events:
        if isinstance(event, Replanned):
            edited = event.written or event.now.plan
            written[event.now.plan] = written.get(before, before) if event.why == "measured" else edited
        if isinstance(event, Begun | Advanced | PlaceSet | Replanned | Undone | Redone):
            before = event.now.plan
    return written.get(now, now)


def measured_too(written: Plan, edited: Plan, measured: Plan) -> Plan | None:
    """The edited plan file's plan in the rounds that the tape measure told; None where it makes none.

    Whatever was edited goes before what the tape made of it: where a length was, its rounds are worked out anew. With
    another swatch what was measured is given up.

    Args:
        written: the file's plan before.
        edited: its plan now.
        measured: what the tape made of the first.
    """
    before, after, made_anew = (wishes_of(plan) for plan in (written, edited, measured))
    if before is None or after is None or made_anew is None:
        return None
    changed = {name for name in Wishes.model_fields if getattr(before, name) != getattr(after, name)}
    if changed & _SWATCH:
        return None
    for lengths, rounds in _WORKED_OUT:
        changed |= rounds if changed & lengths else set()
    made = make_plan(made_anew.model_copy(update={name: getattr(after, name) for name in changed}))
    return made.plan if isinstance(made, Made) else None


def _lies(plan: Plan) -> tuple[object, ...]:
    how = plan.construction
    return how.direction, how.needles, how.pairing
