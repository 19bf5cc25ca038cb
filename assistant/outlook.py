"""What the journal so far tells about the time ahead: pace, rests, and what can be true here."""

from collections.abc import Iterable

from assistant.journal import Entry
from assistant.pace import DEFAULT_PACE, Pace, learn, time_to_go
from assistant.rest_times import WORK_MINUTES
from assistant.resting import is_good_place, rest_due, rests_after
from assistant.work import Loops, worked
from plans.conversation import Advanced, PlanId, Reply, Standing
from plans.pattern import Plan


class Outlook:
    """Follows one pair's entries.

    Args:
        plan: the plan being knitted.
        plan_id: its hash.
        entries: what the journal holds of the pair.
    """

    def __init__(self, plan: Plan, plan_id: PlanId, entries: Iterable[Entry]) -> None:
        self._plan = plan
        self._loops = {plan_id: Loops(plan)}
        self._plan_id = plan_id
        self._entries = list(entries)
        self._rests = rests_after(self._entries)

    def note(self, entry: Entry) -> None:
        """One more entry was written."""
        self._entries.append(entry)
        self._rests = rests_after((entry,), self._rests)

    def pace(self) -> Pace:
        """Hers, or the default until enough was timed."""
        return learn(worked(self._entries, self._loops)) if self._entries else DEFAULT_PACE

    def time_to_go(self, standing: Standing) -> Reply:
        """How long stage and pair will still take."""
        return time_to_go(self._loops[self._plan_id], standing, self.pace())

    def rested_ms(self, now_ms: int) -> int | None:
        """How long she has rested, where she told that she rests and not that it is over; None otherwise."""
        began_ms = self._rests.rested_ms if self._rests.resting else None
        return None if began_ms is None else max(0, now_ms - began_ms)

    def rest_due(self, standing: Standing, now_ms: int, work_minutes: int = WORK_MINUTES) -> Reply | None:
        """The offer of a rest, where one is due; `standing` was arrived at just now and is not noted yet."""
        if not is_good_place(self._plan, standing):
            return None
        arrived = Entry(0, "", now_ms, None, Advanced(now=standing), None, None)
        stretches = worked((*self._entries, arrived), self._loops)
        return rest_due(self._plan, standing, stretches, self._rests, now_ms, work_minutes=work_minutes)
