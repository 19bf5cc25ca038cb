"""What can still be read of a damaged journal."""

import sqlite3
from collections.abc import Iterator
from contextlib import ExitStack, closing, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any


@dataclass(frozen=True, slots=True)
class Line:
    """A journal's line as it stands in the file, its body not yet read.

    Attributes:
        pair: number of the pair.
    """

    seq: int
    pair: int
    at_ms: int
    stream_ms: int | None
    kind: str
    body: str
    heard: str | None
    said: str | None


@dataclass(frozen=True, slots=True)
class Salvage:
    """What was readable: lines in order (gaps where pages are lost), names by pair number, texts by hash."""

    lines: tuple[Line, ...]
    pairs: dict[int, str]
    plans: dict[str, str]


def salvage(file: Path) -> Salvage:
    """Read from both ends of each table up to the damage; never raises for what the file holds."""
    connection = _connection(file)
    if connection is None:
        return Salvage((), {}, {})
    with closing(connection):
        rows = _from_both_ends(
            connection, "SELECT seq, pair, at_ms, stream_ms, kind, body, heard, said FROM event ORDER BY seq"
        )
        lines = {row[0]: Line(*row) for row in rows if isinstance(row[5], str)}
        return Salvage(
            tuple(lines[seq] for seq in sorted(lines)),
            dict(_from_both_ends(connection, "SELECT id, name FROM pair ORDER BY id")),
            dict(_from_both_ends(connection, "SELECT id, body FROM plan ORDER BY rowid")),
        )


def _connection(file: Path) -> sqlite3.Connection | None:
    """One that can read the schema at least; on a disk that may only be read it takes the file as it is."""
    for way in ("mode=ro", "mode=ro&immutable=1"):
        with suppress(sqlite3.Error), ExitStack() as unless_it_reads:
            connection = sqlite3.connect(f"{file.absolute().as_uri()}?{way}", uri=True)
            unless_it_reads.callback(connection.close)
            connection.execute("SELECT count(*) FROM sqlite_master")
            unless_it_reads.pop_all()
            return connection
    return None


def _from_both_ends(connection: sqlite3.Connection, query: str) -> Iterator[tuple[Any, ...]]:
    for order in ("ASC", "DESC"):
        whole = True
        try:
            yield from connection.execute(f"{query} {order}")
        except sqlite3.Error:
            whole = False
        if whole:
            return
