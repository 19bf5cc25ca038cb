"""The plan file: the wishes as TOML, for a person to read and edit. Text in, text out; no disk."""

import tomllib
from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Any

from plans.conversation import Problem
from plans.files.comments import COMMENTS, EXAMPLES
from plans.files.fields import READERS, quoted, read_field
from plans.files.lines import Position, Spot, end_of, position_of, spots
from plans.files.toml_values import toml_value
from plans.pattern import SCHEMA_VERSION
from plans.sizing.measures import field
from plans.wishes import Swatch, Wishes

LONGEST_FILE = 65_536
"""Characters; a plan file has about two thousand."""
_NEEDED = ("swatch.stitches", "swatch.rounds")


def read_wishes(text: str) -> Wishes | tuple[Problem, ...]:
    """Read a plan file, or say everything that is wrong in it, in the order of its lines.

    Each problem's `where` is "line 3, column 8", at the value that is wrong or the field that is unknown.
    """
    text = text.removeprefix("\N{BYTE ORDER MARK}").replace("\r\n", "\n")
    if len(text) > LONGEST_FILE:
        return (Problem.of("file-too-long", "line 1, column 1", most=LONGEST_FILE),)
    try:
        holds = tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        return (unreadable(error, text),)
    return _Reading(text, holds).wishes()


def unreadable(error: Exception, text: str) -> Problem:
    """Where a text stops being TOML."""
    place = position_of(error, text)
    line = text.split("\n")[place.line - 1].strip()
    return Problem.of("file-unreadable", str(place), line=place.line, column=place.column, text=quoted(line))


class _Reading:
    """One file being read; gathers its problems."""

    def __init__(self, text: str, holds: dict[str, Any]) -> None:
        self._holds = holds
        self._end = end_of(text)
        self._spots = spots(text)
        self._problems: list[tuple[Position, Problem]] = []

    def wishes(self) -> Wishes | tuple[Problem, ...]:
        version = self._holds.get("schema_version", SCHEMA_VERSION)
        if isinstance(version, int) and version > SCHEMA_VERSION:
            where = str(self._spot("schema_version").value)
            return (Problem.of("file-too-new", where, found=version, known=SCHEMA_VERSION),)
        values = dict(self._values())
        self._check_version(values.get("schema_version"))
        self._check_needed(values)
        if self._problems:
            return tuple(problem for _, problem in sorted(self._problems, key=lambda found: found[0]))
        swatch = {name.removeprefix("swatch."): values.pop(name) for name in list(values) if "." in name}
        return Wishes(swatch=Swatch(**swatch), **values)

    def _values(self) -> Iterator[tuple[str, Any]]:
        """Every field that can be read; the others become problems."""
        for name, value in self._flat():
            spot = self._spot(name)
            if name not in READERS:
                self._add(spot.key, _unknown(name, str(spot.key)))
                continue
            read = read_field(name, value, str(spot.value))
            if isinstance(read, Problem):
                self._add(spot.value, read)
            yield name, read

    def _flat(self) -> Iterator[tuple[str, Any]]:
        for name, value in self._holds.items():
            if name == "swatch" and isinstance(value, dict):
                yield from ((f"swatch.{inner}", each) for inner, each in value.items())
            elif name == "swatch":
                place = self._spot(name).value
                self._add(place, Problem.of("field-not-a-table", str(place), field=field(name)))
            else:
                yield name, value

    def _check_version(self, version: object) -> None:
        if isinstance(version, int) and version < SCHEMA_VERSION:
            place = self._spot("schema_version").value
            named, found, known = field("schema_version"), str(version), str(SCHEMA_VERSION)
            problem = Problem.of("choice-unknown", str(place), field=named, text=found, choices=known)
            self._add(place, problem)

    def _check_needed(self, values: Mapping[str, Any]) -> None:
        swatch = self._holds.get("swatch", {})
        for name in _NEEDED:
            if isinstance(swatch, dict) and name not in values:
                place = self._spots["swatch"].key if "swatch" in self._spots else self._end
                self._add(place, Problem.of("field-missing", str(place), field=field(name)))

    def _spot(self, name: str) -> Spot:
        return self._spots.get(name, Spot(self._end, self._end))

    def _add(self, place: Position, problem: Problem) -> None:
        self._problems.append((place, problem))


def _unknown(name: str, where: str) -> Problem:
    """Names the field that was meant, where one is near: misspelt, or on the wrong side of the swatch."""
    plain = name.removeprefix("swatch.").replace("-", "_").lower()
    by_last_part = {each.removeprefix("swatch."): each for each in READERS}
    meant = get_close_matches(plain, by_last_part, n=1, cutoff=0.75)
    if meant:
        return Problem.of("field-misspelt", where, name=quoted(name), meant=by_last_part[meant[0]])
    return Problem.of("field-unknown", where, name=quoted(name))


def write_wishes(wishes: Wishes, comments: Mapping[str, str] = COMMENTS) -> str:
    """A plan file that reads back as exactly these wishes; what is not wished stands in it as a comment.

    Args:
        wishes: what the file shall hold.
        comments: a line above each field, by its name, and "" for the head of the file.
    """
    lines = [*_commented(comments[""]), ""]
    for name in Wishes.model_fields:
        value = getattr(wishes, name)
        lines += [*_commented(comments[name]), _assignment(name, value), ""]
    return "\n".join(lines)


def wishes_text(wishes: Wishes) -> str:
    """The same without comments, and without what is as it would be anyway."""
    usual = {name: field.default for name, field in Wishes.model_fields.items()}
    lines = [f"{name} = {toml_value(value)}" for name, value in wishes if value != usual[name]]
    return "\n".join(lines) + "\n"


def _commented(text: str) -> list[str]:
    return [f"# {line}".rstrip() for line in text.split("\n")]


def _assignment(name: str, value: object) -> str:
    return f"# {name} = {EXAMPLES[name]}" if value in (None, ()) else f"{name} = {toml_value(value)}"
