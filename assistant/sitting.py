"""What a session works on, and writing down what happens to it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from assistant.journal import Entry, Journal, is_knitting
from assistant.journal_events import JournalEvent
from assistant.journal_plans import kept_plan
from assistant.outlook import Outlook
from assistant.ports import Clock
from plans.conversation import Event, Progress, Reply
from plans.engine import evolve
from plans.pattern import Plan


@dataclass(slots=True)
class Sitting:
    """The pair, its plan, where it stands, and the journal's last number."""

    pair: str
    plan: Plan
    progress: Progress
    journal: Journal
    seq: int

    def after(self, events: Iterable[Event]) -> Progress:
        """Where it would stand after these."""
        progress = self.progress
        for event in events:
            progress = evolve(progress, event)
        return progress


@dataclass(frozen=True, slots=True)
class Choice:
    """What an answer comes to: events to be written down, and what is said."""

    events: tuple[JournalEvent, ...]
    sayings: tuple[Reply, ...]


@dataclass(frozen=True, slots=True)
class Question:
    """A question of the surroundings; any command but yes and no leaves everything as it is."""

    yes: Choice
    no: Choice


class Book:
    """Keeps a sitting in step with its journal: written down first, then so.

    Args:
        sitting: the pair.
        clock: wall and stream time.
    """

    def __init__(self, sitting: Sitting, clock: Clock) -> None:
        self._sitting = sitting
        self._clock = clock
        self.outlook = self._looked_out()

    def _looked_out(self) -> Outlook:
        sitting = self._sitting
        entries = sitting.journal.entries(sitting.pair) if sitting.pair in sitting.journal.pairs() else ()
        self._plan_id = sitting.progress.now.plan
        return Outlook(sitting.plan, self._plan_id, entries)

    def write(self, events: Sequence[JournalEvent], heard: str | None, said: str | None) -> bool:
        """Write events down; whether another plan is used from now on.

        Raises:
            JournalError: nothing was written, and the sitting is as it was.
        """
        sitting, at_ms, stream_ms = self._sitting, self._clock.now_ms(), self._clock.stream_ms()
        first = sitting.seq + 1
        sitting.seq = sitting.journal.append(
            events, after=sitting.seq, at_ms=at_ms, stream_ms=stream_ms, heard=heard, said=said, pair=sitting.pair
        )
        sitting.progress = sitting.after([event for event in events if is_knitting(event)])
        for seq, event in enumerate(events, start=first):
            self.outlook.note(Entry(seq, sitting.pair, at_ms, stream_ms, event, heard, said))
        if sitting.progress.now.plan == self._plan_id:
            return False
        sitting.plan = kept_plan(sitting.journal, sitting.progress.now.plan) or sitting.plan
        self.outlook = self._looked_out()
        return True
