"""When to offer the hands a rest. An offer only: nothing is treated, and it can be put off or switched off.

What hurts after a rest is for a doctor or physiotherapist: a language's sentence "hand-care" says so.

Nothing is published for knitting; the figures are from keyboard work:
- 5 to 10 minutes after 50 to 60 minutes of work, short and often rather than long and rarely (UK Health and
  Safety Executive, L26, on display screen work);
- 5 minutes more in every hour made hands and forearms less sore without loss of output (Galinsky and
  others 2000, Ergonomics 43:622-638, n = 42; again in 2007, n = 51);
- of the breaks tried, one every 20 minutes did best (McLean and others 2001, Applied Ergonomics 32:225-237):
  so an offer that is passed over comes again after 20 minutes, not before.
A break in which the hands do the like is none, so only time without knitting counts as one. It is offered
where both yarns hang at their resting places: at the end of a round, and so never within a heel.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from assistant.journal import Entry
from assistant.journal_events import Rested, RestSnoozed, RestsSet, RestSuggested
from assistant.pace import DEFAULT_PACE
from assistant.work import Worked
from plans.conversation import Reply, Standing
from plans.engine.courses import course
from plans.engine.places import in_hand
from plans.pattern import Half, Plan, StageName

WORK_MINUTES = 50
REST_MINUTES = 5
REPEAT_MINUTES = 20

_MINUTE_MS = 60_000


@dataclass(frozen=True, slots=True)
class Rests:
    """What was said about rests so far.

    Attributes:
        on: whether they are offered.
        quiet_until_ms: wall time before which none is offered.
        rested_ms: wall time at which she said that she had rested.
    """

    on: bool = True
    quiet_until_ms: int | None = None
    rested_ms: int | None = None


def rests_after(entries: Iterable[Entry], start: Rests = Rests()) -> Rests:
    """Fold the journal's entries about rests."""
    for entry in entries:
        match entry.event:
            case RestsSet(on=on):
                start = replace(start, on=on)
            case RestSuggested():
                start = replace(start, quiet_until_ms=entry.at_ms + REPEAT_MINUTES * _MINUTE_MS)
            case RestSnoozed(minutes=minutes):
                start = replace(start, quiet_until_ms=entry.at_ms + minutes * _MINUTE_MS)
            case Rested():
                start = replace(start, rested_ms=entry.at_ms, quiet_until_ms=None)
            case _:
                pass
    return start


def is_good_place(plan: Plan, standing: Standing) -> bool:
    """Whether a round of the pair has just ended: the front of the first sock, which begins one, is next."""
    the_course = course(plan)
    at = in_hand(the_course, standing)
    if at >= the_course.end:
        return False
    row = the_course.row(at)
    begins_round = at == the_course.starts[row.index] and row.sock == 1 and row.half is Half.FRONT
    return begins_round and row.stage is not StageName.CAST_ON


def working_since(stretches: Sequence[Worked], rests: Rests) -> int | None:
    """Wall time since when she has knitted without a rest of five minutes; None where nothing was worked."""
    since: int | None = None
    rested = rests.rested_ms
    for stretch in reversed(stretches):
        if rested is not None and stretch.began_ms < rested:
            return since if stretch.ended_ms <= rested else rested
        if _rested_within(stretch):
            return stretch.ended_ms - _work_ms(stretch)
        since = stretch.began_ms
    return since


def _work_ms(stretch: Worked) -> int:
    return round(stretch.loops / DEFAULT_PACE.slow * _MINUTE_MS)


def _rested_within(stretch: Worked) -> bool:
    return stretch.ended_ms - stretch.began_ms - _work_ms(stretch) >= REST_MINUTES * _MINUTE_MS


def rest_due(
    plan: Plan, standing: Standing, stretches: Sequence[Worked], rests: Rests, now_ms: int
) -> Reply | None:
    """The offer of a rest, where one is due here and now; None otherwise."""
    if not rests.on or (rests.quiet_until_ms is not None and now_ms < rests.quiet_until_ms):
        return None
    since = working_since(stretches, rests)
    if since is None or now_ms - since < WORK_MINUTES * _MINUTE_MS or not is_good_place(plan, standing):
        return None
    return Reply.of("rest-due", minutes=(now_ms - since) // _MINUTE_MS)
