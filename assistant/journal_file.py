"""The journal's file: who owns it, how it is opened, how older files are brought up to date."""

import shutil
import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from pathlib import Path
from typing import NamedTuple

from assistant.journal_errors import (
    DiskFailed,
    DiskFull,
    JournalDamaged,
    JournalError,
    JournalForeign,
    JournalInUse,
    JournalMissing,
    JournalNewer,
    JournalUnwritable,
)

APPLICATION_ID = 0x70616972
"""Marks an SQLite file as a journal of this program ("pair" in ASCII)."""

WAIT_S = 2.0
"""How long another connection's short write is waited for."""


class Migration(NamedTuple):
    """A step from one schema version to the next: a name for people, and statements for one transaction."""

    name: str
    statements: tuple[str, ...]


def _append_only(table: str) -> tuple[str, ...]:
    return tuple(
        f"CREATE TRIGGER {table}_no_{verb.lower()} BEFORE {verb} ON {table} "
        f"BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END"
        for verb in ("UPDATE", "DELETE")
    )


MIGRATIONS: tuple[Migration, ...] = (
    Migration(
        "pairs, plans and events",
        (
            "CREATE TABLE pair (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE) STRICT",
            "CREATE TABLE plan (id TEXT PRIMARY KEY CHECK (length(id) = 64), body TEXT NOT NULL) STRICT",
            """CREATE TABLE event (
                seq INTEGER PRIMARY KEY,
                pair INTEGER NOT NULL REFERENCES pair(id),
                plan TEXT REFERENCES plan(id),
                at_ms INTEGER NOT NULL,
                stream_ms INTEGER,
                kind TEXT NOT NULL,
                body TEXT NOT NULL CHECK (json_valid(body)),
                heard TEXT,
                said TEXT) STRICT""",
            "CREATE INDEX event_of_pair ON event (pair, seq)",
            # Also stops INSERT OR REPLACE, which fires no DELETE trigger.
            """CREATE TRIGGER event_in_order BEFORE INSERT ON event
                WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM event)
                BEGIN SELECT RAISE(ABORT, 'events are numbered without a gap'); END""",
            *_append_only("event"),
            *_append_only("plan"),
            *_append_only("pair"),
        ),
    ),
)


@contextmanager
def translated(file: Path) -> Iterator[None]:
    """Turn SQLite's errors and the disk's into the journal's.

    Raises:
        JournalError: the kind that fits.
    """
    try:
        yield
    except sqlite3.IntegrityError:
        raise
    except sqlite3.DatabaseError as error:
        raise _meaning(error, file) from error
    except OSError as error:
        full = error.errno is not None and error.errno in _FULL_ERRNOS
        raise (DiskFull if full else JournalUnwritable)(file) from error


_FULL_ERRNOS = {28, 122}  # ENOSPC, EDQUOT
_BY_CODE: dict[int, type[JournalError]] = {
    sqlite3.SQLITE_FULL: DiskFull,
    sqlite3.SQLITE_BUSY: JournalInUse,
    sqlite3.SQLITE_LOCKED: JournalInUse,
    sqlite3.SQLITE_READONLY: JournalUnwritable,
    sqlite3.SQLITE_CANTOPEN: JournalUnwritable,
    sqlite3.SQLITE_PERM: JournalUnwritable,
    sqlite3.SQLITE_AUTH: JournalUnwritable,
    sqlite3.SQLITE_IOERR: DiskFailed,
}


def _meaning(error: sqlite3.DatabaseError, file: Path) -> JournalError:
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_CORRUPT) & 0xFF
    kind = _BY_CODE.get(code)
    return JournalDamaged(file, readable=0) if kind is None else kind(file)


class Owner:
    """Holds a journal for one program.

    The lock is the operating system's, so it ends with the process, however that ends; the empty file that it
    lies on, beside the journal, stays.
    """

    def __init__(self, file: Path) -> None:
        """Take the lock.

        Raises:
            JournalInUse: another program, or another part of this one, has it.
            JournalUnwritable: the folder may not be written.
        """
        with translated(file):
            self._lock = sqlite3.connect(f"{file}-owner", isolation_level=None, timeout=0)
            try:
                self._lock.execute("BEGIN EXCLUSIVE")
            except BaseException:
                self._lock.close()
                raise

    def let_go(self) -> None:
        """Give the lock back."""
        self._lock.close()


def open_to_write(file: Path, migrations: Sequence[Migration] = MIGRATIONS) -> sqlite3.Connection:
    """Open a journal, or make an empty one; bring an older one up to date, with a copy of it kept beside it.

    Raises:
        JournalError: of any kind but JournalMissing.
    """
    with translated(file):
        connection = sqlite3.connect(file, isolation_level=None, timeout=WAIT_S)
        try:
            _recognise(connection, file, len(migrations))
            connection.execute("PRAGMA journal_mode = WAL")
            connection.execute("PRAGMA synchronous = FULL")
            connection.execute("PRAGMA foreign_keys = ON")
            _migrate(connection, file, migrations)
        except BaseException:
            connection.close()
            raise
    return connection


def open_to_read(file: Path, migrations: Sequence[Migration] = MIGRATIONS) -> sqlite3.Connection:
    """Open an existing journal without changing it, also while another program writes it.

    Raises:
        JournalError: JournalMissing, JournalForeign, JournalNewer, JournalDamaged or JournalUnwritable.
    """
    if not file.is_file():
        raise JournalMissing(file)
    uri = file.absolute().as_uri()
    try:
        return _opened(f"{uri}?mode=ro", file, len(migrations))
    except JournalUnwritable:
        if Path(f"{file}-wal").exists():
            raise
        # A folder that may not be written, as on a read-only disk: nothing can be writing the file either.
        return _opened(f"{uri}?mode=ro&immutable=1", file, len(migrations))


def _opened(uri: str, file: Path, known: int) -> sqlite3.Connection:
    with translated(file):
        connection = sqlite3.connect(uri, uri=True, isolation_level=None, timeout=WAIT_S)
        try:
            _recognise(connection, file, known)
        except BaseException:
            connection.close()
            raise
    return connection


def is_database(file: Path) -> bool:
    """Whether the file begins as every SQLite database does."""
    with translated(file), file.open("rb") as opened:
        return opened.read(16) == b"SQLite format 3\0"


def _number(connection: sqlite3.Connection, pragma: str) -> int:
    return int(connection.execute(f"PRAGMA {pragma}").fetchone()[0])


def _recognise(connection: sqlite3.Connection, file: Path, known: int) -> None:
    empty = _number(connection, "schema_version") == 0
    if not empty and _number(connection, "application_id") != APPLICATION_ID:
        raise JournalForeign(file)
    version = _number(connection, "user_version")
    if version > known:
        raise JournalNewer(file, version=version, known=known)
    whole = connection.execute("PRAGMA quick_check(1)").fetchone()[0] == "ok"
    if not whole:
        raise JournalDamaged(file, readable=0)


def _migrate(connection: sqlite3.Connection, file: Path, migrations: Sequence[Migration]) -> None:
    version = _number(connection, "user_version")
    if 0 < version < len(migrations):
        _copy(connection, Path(f"{file}.version-{version}"))
    for number, migration in enumerate(migrations[version:], start=version + 1):
        with transaction(connection):
            for statement in migration.statements:
                connection.execute(statement)
            connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            connection.execute(f"PRAGMA user_version = {number}")


def _copy(connection: sqlite3.Connection, to: Path) -> None:
    """Copy the whole database, what still stands in the write-ahead log included."""
    half = Path(f"{to}.part")
    half.unlink(missing_ok=True)
    with closing(sqlite3.connect(half)) as copy:
        connection.backup(copy)
    shutil.move(half, to)


@contextmanager
def transaction(connection: sqlite3.Connection) -> Iterator[None]:
    """All or nothing, written to the disk when it ends; no one else can write in between."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        yield
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise
