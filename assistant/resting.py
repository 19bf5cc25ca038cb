"""When to offer the hands a rest. An offer only: nothing is treated, and it can be put off or switched off.

What hurts after a rest is for a doctor or physiotherapist: a language's sentence "hand-care" says so.

A break in which the hands do the like is none, so only time without knitting counts as one. It is offered
where both yarns hang at their resting places: at the end of a round, and so never within a heel.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from assistant.journal import Entry
from assistant.journal_events import Rested, RestEnded, RestSnoozed, RestsSet, RestSuggested
from assistant.pace import DEFAULT_PACE
from assistant.rest_times import REPEAT_MINUTES, REST_MINUTES, WORK_MINUTES
from assistant.work import Worked
from plans.conversation import Reply, Standing
from plans.engine.courses import course
from plans.engine.places import in_hand
from plans.pattern import Half, Plan, StageName

_MINUTE_MS = 60_000


@dataclass(frozen=True, slots=True)
class Rests:
    """What was said about rests so far.

    Attributes:
        on: whether they are offered.
        quiet_until_ms: wall time before which none is offered.
        rested_ms: wall time of her last rest that she told of: its end, once she told of that too.
        resting: whether it goes on.
    """

    on: bool = True
    quiet_until_ms: int | None = None
    rested_ms: int | None = None
    resting: bool = False


def rests_after(entries: Iterable[Entry], start: Rests = Rests()) -> Rests:
    """Fold the journal's entries about rests."""
    for entry in entries:
        match entry.event:
            case RestsSet(on=on):
                start = replace(start, on=on, quiet_until_ms=None if on else start.quiet_until_ms)
            case RestSuggested():
                start = replace(start, quiet_until_ms=entry.at_ms + REPEAT_MINUTES * _MINUTE_MS)
            case RestSnoozed(minutes=minutes):
                start = replace(start, quiet_until_ms=entry.at_ms + minutes * _MINUTE_MS)
            case Rested():
                start = replace(start, rested_ms=entry.at_ms, quiet_until_ms=None, resting=True)
            case RestEnded():
                start = replace(start, rested_ms=entry.at_ms, resting=False)
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


def rest_due(  # noqa: PLR0913 (what was knitted, what was said, and what is wanted)
    plan: Plan, standing: Standing, stretches: Sequence[Worked], rests: Rests, now_ms: int,
    *, work_minutes: int = WORK_MINUTES,
) -> Reply | None:
    """The offer of a rest, where one is due here and now, after so much work; None otherwise."""
    if not rests.on or (rests.quiet_until_ms is not None and now_ms < rests.quiet_until_ms):
        return None
    since = working_since(stretches, rests)
    if since is None or now_ms - since < work_minutes * _MINUTE_MS or not is_good_place(plan, standing):
        return None
    return Reply.of("rest-due", minutes=(now_ms - since) // _MINUTE_MS)
