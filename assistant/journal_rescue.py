"""A new journal from what can still be read of a damaged one."""

from pathlib import Path
from typing import NamedTuple

from assistant.journal import FIRST_PAIR, Entry, Journal, standing_of
from assistant.journal_events import EVENTS, JournalEvent
from assistant.journal_salvage import Line, Salvage, salvage


class Rescued(NamedTuple):
    """How many events came over, and how many of those that were readable could not (their plan was lost)."""

    events: int
    lost: int


def rescue(damaged: Path, into: Path) -> Rescued:
    """Write what can be read of a damaged journal into a new one; the damaged file is not touched.

    Raises:
        JournalError: the new file cannot be made.
        FileExistsError: there is already a file of that name.
    """
    if into.exists():
        raise FileExistsError(into)
    found = salvage(damaged)
    entries = _entries(found)
    with Journal.open(into) as journal:
        for plan, text in found.plans.items():
            journal.keep_plan(plan, text)
        journal.restore(entries, after=0)
    return Rescued(len(entries), len(found.lines) - len(entries))


def readable(damaged: Path) -> tuple[Entry, ...]:
    """The entries that a rescue would save, with the numbers they have; there may be gaps."""
    return _entries(salvage(damaged))


def _entries(found: Salvage) -> tuple[Entry, ...]:
    read = [(line, event) for line in found.lines if (event := _event(line)) is not None]
    return tuple(_entry(line, event, found.pairs) for line, event in read if _stands(event, found.plans))


def _event(line: Line) -> JournalEvent | None:
    try:
        return EVENTS.validate_json(line.body)
    except ValueError:
        return None


def _stands(event: JournalEvent, plans: dict[str, str]) -> bool:
    standing = standing_of(event)
    return standing is None or standing.plan in plans


def _entry(line: Line, event: JournalEvent, pairs: dict[int, str]) -> Entry:
    name = pairs.get(line.pair, FIRST_PAIR)
    return Entry(line.seq, name, line.at_ms, line.stream_ms, event, line.heard, line.said)
