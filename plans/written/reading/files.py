"""A plan file that holds a pattern, written by hand or printed from a plan: to the rows it tells of."""

import json
import tomllib
from typing import Any

from pydantic import ValidationError

from plans.files import LONGEST_FILE, unreadable
from plans.files.fields import quoted
from plans.files.lines import Position, Spot, end_of, spots
from plans.pattern import Plan
from plans.replies import Problem
from plans.written.reading.assembling import Head, assembled, stages_of
from plans.written.reading.heads import Heads
from plans.written.reading.patterns import Refused, read_rows

_QUOTES = ('"""', "'''")


def holds_pattern(text: str) -> bool:
    """Whether a plan file tells its rounds itself; a file that is no TOML does so where it says `pattern =`."""
    try:
        return "pattern" in tomllib.loads(text.removeprefix("\N{BYTE ORDER MARK}"))
    except (ValueError, RecursionError):
        return any(line.replace(" ", "").startswith("pattern=") for line in text.split("\n"))


def read_pattern_file(text: str) -> Plan | tuple[Problem, ...]:
    """Read a file that holds a pattern; the rows are not proven.

    Returns:
        The plan, or every problem, `where` being "line 3, column 8".
    """
    text = text.removeprefix("\N{BYTE ORDER MARK}").replace("\r\n", "\n")
    if len(text) > LONGEST_FILE:
        return (Problem.of("file-too-long", "line 1, column 1", most=LONGEST_FILE),)
    try:
        holds = tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        return (unreadable(error, text),)
    places = spots(text)
    if not isinstance(holds.get("pattern"), str):
        place = places.get("pattern", Spot(end_of(text), end_of(text))).value
        return (Problem.of("written-no-pattern", str(place)),)
    began = _beginning(text, places["pattern"].value)
    if "plan" in holds:
        return _printed(holds, began, places)
    return _by_hand(holds, began, places, end_of(text))


def _beginning(text: str, value: Position) -> Position:
    """Where the pattern's first sign stands, behind its quotes."""
    line = text.split("\n")[value.line - 1][value.column - 1 :]
    if not line.startswith(_QUOTES):
        return Position(value.line, value.column + 1)
    return Position(value.line, value.column + 3) if line[3:] else Position(value.line + 1, 1)


def _printed(holds: dict[str, Any], began: Position, places: dict[str, Spot]) -> Plan | tuple[Problem, ...]:
    """A plan that was printed: its head stands in a table, its rows in the pattern."""
    where = str(places["plan"].key) if "plan" in places else ""
    strange = [name for name in holds if name not in ("plan", "pattern", "schema_version")]
    if strange:
        return (Problem.of("field-unknown", str(places[strange[0]].key), name=quoted(strange[0])),)
    table = holds["plan"]
    try:
        plan = Plan.model_validate_json(json.dumps({**table, "stages": [], "rows": []}))
    except (ValidationError, TypeError, ValueError) as error:
        return (Problem.of("written-head-wrong", where, text=_first_error(error)),)
    head = Head(pieces=len(plan.socks), needles=plan.construction.needles)
    rows = read_rows(holds["pattern"], head, began)
    if isinstance(rows, Refused):
        return rows.problems
    return plan.model_copy(update={"rows": rows, "stages": stages_of(rows)})


def _first_error(error: Exception) -> str:
    if isinstance(error, ValidationError):
        return ".".join(map(str, error.errors()[0]["loc"])) or "plan"
    return "plan"


def _by_hand(
    holds: dict[str, Any], began: Position, places: dict[str, Spot], end: Position
) -> Plan | tuple[Problem, ...]:
    head = Heads(holds, places, end).read()
    if isinstance(head, tuple):
        return head
    rows = read_rows(holds["pattern"], head, began)
    if isinstance(rows, Refused):
        return rows.problems
    if not rows:
        return (Problem.of("written-no-pattern", str(began)),)
    made = assembled(head, rows)
    return (made,) if isinstance(made, Problem) else made
