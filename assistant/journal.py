"""The journal: what happened, in order, on the disk before it is spoken; only ever added to."""

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType
from typing import Any, Self, TypeGuard, get_args

from assistant.journal_errors import (
    JOURNAL_ERRORS,
    JournalDamaged,
    JournalError,
    JournalForeign,
    JournalMoved,
    PairUnknown,
)  # fmt: skip
from assistant.journal_events import EVENTS, JournalEvent
from assistant.journal_file import Owner, is_database, open_to_read, open_to_write, transaction, translated
from assistant.journal_salvage import salvage
from plans.conversation import Event, PlanId, Standing

__all__ = ["FIRST_PAIR", "JOURNAL_ERRORS", "Entry", "Journal", "JournalError", "is_knitting", "standing_of"]

FIRST_PAIR = "socks"
"""Name of the pair where none is given and the journal is empty."""

_KNITTING: tuple[type, ...] = get_args(get_args(Event)[0])


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the journal.

    Attributes:
        seq: its number, from 1, without a gap over all pairs of the journal.
        pair: name of the pair.
        at_ms: wall time, milliseconds since the epoch.
        stream_ms: milliseconds of the ears' stream; None where there is no stream.
        heard: the words it came from.
        said: the sentence that was spoken next, written down before it was spoken.
    """

    seq: int
    pair: str
    at_ms: int
    stream_ms: int | None
    event: JournalEvent
    heard: str | None
    said: str | None


def is_knitting(event: JournalEvent) -> TypeGuard[Event]:
    """Whether it is one of the engine's events, which progress is folded from."""
    return isinstance(event, _KNITTING)


def standing_of(event: JournalEvent) -> Standing | None:
    """The standing an event carries: the one arrived at, or the one marked."""
    return getattr(event, "now", None) or getattr(event, "at", None)


class Journal:
    """Several pairs in one file, told apart by name. For one thread; `with` closes it.

    Whatever touches the disk may raise a JournalError; after DiskFull or JournalMoved it stays usable.
    """

    def __init__(self, file: Path, connection: sqlite3.Connection, owner: Owner | None) -> None:
        """Use `Journal.open` or `Journal.read`."""
        self.file = file
        self._connection = connection
        self._owner = owner

    @classmethod
    def open(cls, path: Path) -> Self:
        """Open for writing, for this program alone; make it, and its folder, where there is none.

        Raises:
            JournalInUse: another program has it.
            JournalNewer: a later version wrote it.
            JournalForeign: a file of another kind.
            JournalDamaged: not whole; `readable` tells how many events a rescue can save.
            JournalUnwritable: the file or its folder may not be written.
            DiskFull: no room for a new file.
        """
        file = path.resolve()
        with translated(file):
            file.parent.mkdir(parents=True, exist_ok=True)
        owner = Owner(file)
        try:
            with _counting(file):
                return cls(file, open_to_write(file), owner)
        except BaseException:
            owner.let_go()
            raise

    @classmethod
    def read(cls, path: Path) -> Self:
        """Open an existing journal to look only, also while a program writes it.

        Raises:
            JournalMissing: there is none.
            JournalError: as `open`, but never JournalInUse.
        """
        file = path.resolve()
        with _counting(file):
            return cls(file, open_to_read(file), None)

    def close(self) -> None:
        """Let the file go."""
        self._connection.close()
        if self._owner is not None:
            self._owner.let_go()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None
    ) -> None:
        self.close()

    # --- writing ---

    def keep_plan(self, plan: PlanId, text: str) -> None:
        """Keep a plan's full text under its hash; before the first event that stands in it. Twice is once.

        Raises:
            JournalError: nothing was written.
        """
        with translated(self.file), transaction(self._connection):
            self._connection.execute("INSERT INTO plan VALUES (?, ?) ON CONFLICT DO NOTHING", (plan, text))

    def append(  # noqa: PLR0913 (each is a column)
        self,
        events: Sequence[JournalEvent],
        *,
        after: int,
        at_ms: int,
        stream_ms: int | None = None,
        heard: str | None = None,
        said: str | None = None,
        pair: str | None = None,
    ) -> int:
        """Write events down, all or none; when this returns they are on the disk.

        Args:
            events: what one command came to.
            after: number of the last event that the caller knows (0 in an empty journal).
            at_ms: wall time.
            stream_ms: time of the ears' stream.
            heard: the words it came from; stands beside the last of the engine's events, else the last.
            said: the sentence that will be spoken next; stands beside the same event.
            pair: name of the pair; None for the one worked last.

        Returns:
            The number of the last event in the journal now.

        Raises:
            JournalMoved: someone else wrote after `after`; nothing was written.
            DiskFull: no room; nothing was written, and the same call may be tried again.
            ValueError: an event stands in a plan that was not kept.
        """
        name = pair or self.last_pair or FIRST_PAIR
        knitted = [number for number, event in enumerate(events) if is_knitting(event)]
        spoken_of = knitted[-1] if knitted else len(events) - 1
        entries = tuple(
            Entry(after + 1 + number, name, at_ms, stream_ms, event, *spoken)
            for number, event in enumerate(events)
            for spoken in [(heard, said) if number == spoken_of else (None, None)]
        )
        return self.restore(entries, after=after)

    def restore(self, entries: Sequence[Entry], *, after: int) -> int:
        """Write entries as they stood, all or none, numbered on from `after`; otherwise as `append`."""
        try:
            with translated(self.file), transaction(self._connection):
                found = self.last_seq
                if found != after:
                    raise JournalMoved(self.file, expected=after, found=found)
                for seq, entry in enumerate(entries, start=after + 1):
                    self._insert(seq, entry)
        except sqlite3.IntegrityError as error:
            raise ValueError(f"an event stands in a plan that was not kept: {error}") from error
        return after + len(entries)

    def _insert(self, seq: int, entry: Entry) -> None:
        self._connection.execute("INSERT INTO pair (name) VALUES (?) ON CONFLICT DO NOTHING", (entry.pair,))
        standing = standing_of(entry.event)
        self._connection.execute(
            "INSERT INTO event SELECT ?, id, ?, ?, ?, ?, ?, ?, ? FROM pair WHERE name = ?",
            (seq, standing.plan if standing else None, entry.at_ms, entry.stream_ms, entry.event.kind,
             EVENTS.dump_json(entry.event).decode(), entry.heard, entry.said, entry.pair),
        )  # fmt: skip

    # --- reading ---

    @property
    def last_seq(self) -> int:
        """Number of the last event; 0 in an empty journal."""
        return int(self._rows("SELECT coalesce(max(seq), 0) FROM event")[0][0])

    @property
    def last_pair(self) -> str | None:
        """Name of the pair worked last; None in an empty journal."""
        return next(iter(self.pairs()), None)

    def pairs(self) -> tuple[str, ...]:
        """Names of the pairs, the one worked last first."""
        rows = self._rows(
            "SELECT name, (SELECT max(seq) FROM event WHERE event.pair = pair.id) AS last"
            " FROM pair ORDER BY last DESC"
        )
        return tuple(name for name, _ in rows)

    def entries(self, pair: str | None = None) -> tuple[Entry, ...]:
        """The lines of one pair, or of all, in order.

        Raises:
            PairUnknown: no pair of that name.
            JournalDamaged: a line cannot be read.
        """
        if pair is not None and pair not in self.pairs():
            raise PairUnknown(self.file, name=pair)
        rows = self._rows(
            "SELECT seq, pair.name, at_ms, stream_ms, body, heard, said"
            " FROM event JOIN pair ON pair.id = event.pair"
            " WHERE ?1 IS NULL OR pair.name = ?1 ORDER BY seq",
            pair,
        )
        return tuple(
            Entry(seq, name, at_ms, stream_ms, self._event(seq, body), heard, said)
            for seq, name, at_ms, stream_ms, body, heard, said in rows
        )

    def events(self, pair: str | None = None) -> tuple[Event, ...]:
        """The engine's events of a pair (None for the one worked last), to fold progress from.

        Raises:
            PairUnknown: no pair of that name.
            JournalDamaged: a line cannot be read.
        """
        name = pair or self.last_pair
        found = self.entries(name) if name is not None else ()
        return tuple(entry.event for entry in found if is_knitting(entry.event))

    def plans(self) -> dict[PlanId, str]:
        """Every plan's full text by its hash."""
        return dict(self._rows("SELECT id, body FROM plan"))

    def plan_text(self, plan: PlanId) -> str | None:
        """One plan's full text; None where it was not kept."""
        found = next(iter(self._rows("SELECT body FROM plan WHERE id = ?", plan)), None)
        return None if found is None else str(found[0])

    def _event(self, seq: int, body: str) -> JournalEvent:
        try:
            return EVENTS.validate_json(body)
        except ValueError as error:
            raise JournalDamaged(self.file, readable=seq - 1) from error

    def _rows(self, query: str, *values: object) -> list[tuple[Any, ...]]:
        with translated(self.file):
            return self._connection.execute(query, values).fetchall()


@contextmanager
def _counting(file: Path) -> Iterator[None]:
    """Where the file is damaged, say how much of it can be read; where it is no database at all, say that."""
    try:
        yield
    except JournalDamaged as error:
        readable = len(salvage(file).lines)
        if not readable and not is_database(file):
            raise JournalForeign(file) from error
        raise JournalDamaged(file, readable=readable) from error
