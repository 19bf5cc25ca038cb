"""Where in a TOML text each key stands, for problems that name line and column."""

import re
import tomllib
from collections.abc import Iterator
from typing import NamedTuple

_NAME = r"""(?:[A-Za-z0-9_-]+|"[^"]*"|'[^']*')"""
_ASSIGNMENT = re.compile(rf"\s*(?P<key>{_NAME}(?:\s*\.\s*{_NAME})*)\s*=\s*")
_MESSAGE = re.compile(r"line (?P<line>\d+), column (?P<column>\d+)")


class Position(NamedTuple):
    """A place in a text, both counted from 1."""

    line: int
    column: int

    def __str__(self) -> str:
        return f"line {self.line}, column {self.column}"


class Spot(NamedTuple):
    """Where a key and its value begin."""

    key: Position
    value: Position


class _Statement(NamedTuple):
    text: str
    line: int
    holds: dict[str, object]


def position_of(error: Exception, text: str) -> Position:
    """Where reading stopped; the end of the text where the message tells none."""
    found = _MESSAGE.search(str(error))
    return Position(int(found["line"]), int(found["column"])) if found else end_of(text)


def end_of(text: str) -> Position:
    """One past the last character."""
    lines = text.split("\n")
    return Position(len(lines), len(lines[-1]) + 1)


def spots(text: str) -> dict[str, Spot]:
    """Every key of a TOML text that reads without error, by its dotted name, and where it stands."""
    found: dict[str, Spot] = {}
    table = ""
    for statement in _statements(text):
        if statement.text.lstrip().startswith("["):
            header = Position(statement.line, statement.text.index("[") + 1)
            for table in _paths(statement.holds, ""):
                found.setdefault(table, Spot(header, header))
        else:
            found.update(_assigned(statement, table))
    return found


def _statements(text: str) -> Iterator[_Statement]:
    """Runs of lines that read as TOML by themselves: a statement each, or blanks and comments (left out)."""
    pending, began = "", 1
    for number, line in enumerate(text.split("\n"), 1):
        pending += line + "\n"
        try:
            holds = tomllib.loads(pending)
        except ValueError:
            continue
        if holds:
            yield _Statement(pending, began, holds)
        pending, began = "", number + 1


def _assigned(statement: _Statement, table: str) -> Iterator[tuple[str, Spot]]:
    found = _ASSIGNMENT.match(statement.text)
    key = Position(statement.line, found.start("key") + 1 if found else 1)
    whole = Spot(key, Position(statement.line, found.end() + 1) if found else key)
    for path in _paths(statement.holds, f"{table}." if table else ""):
        inner = _inside(statement, path, found.end() if found else 0)
        yield path, inner or whole


def _inside(statement: _Statement, path: str, start: int) -> Spot | None:
    """The place of a key within an inline table."""
    key = re.escape(path.rpartition(".")[2])
    found = re.compile(rf"[{{,]\s*(?P<key>[\"']?{key}[\"']?)\s*=\s*").search(statement.text, start)
    return found and Spot(_at(statement, found.start("key")), _at(statement, found.end()))


def _at(statement: _Statement, offset: int) -> Position:
    before = statement.text[:offset].split("\n")
    return Position(statement.line + len(before) - 1, len(before[-1]) + 1)


def _paths(holds: dict[str, object], above: str) -> Iterator[str]:
    for name, value in holds.items():
        yield above + name
        inner = value[0] if isinstance(value, list) and value else value
        if isinstance(inner, dict):
            yield from _paths(inner, f"{above}{name}.")
