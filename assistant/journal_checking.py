"""All that may be wrong with a journal, found at once; nothing is changed."""

import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import closing
from pathlib import Path

from assistant.journal import is_knitting, standing_of
from assistant.journal_errors import JournalDamaged, JournalForeign
from assistant.journal_events import EVENTS, JournalEvent
from assistant.journal_file import is_database, open_to_read
from assistant.journal_salvage import Line, Salvage, salvage
from plans.conversation import Begun, Event, PlanId, Problem, Progress, Standing
from plans.engine import evolve
from plans.engine.courses import course
from plans.json_form import from_json, text_id
from plans.pattern import Plan

CHECK_PROBLEMS: dict[str, frozenset[str]] = {
    "check-file": frozenset({"found"}),              # what the database's own check says, as it is
    "check-gap": frozenset({"seq"}),                 # event `seq` is missing
    "check-event": frozenset({"seq"}),               # event `seq` cannot be read
    "check-plan": frozenset({"plan"}),               # its text is not what its hash, `plan`, says
    "check-plan-missing": frozenset({"seq", "plan"}),
    "check-place": frozenset({"seq"}),               # a place outside the plan
    "check-not-begun": frozenset({"seq", "name"}),   # knitting on a pair, `name`, that was never begun
    "check-replay": frozenset({"seq"}),              # played again, the events come elsewhere than `seq`
}  # fmt: skip
"""Every key that a check can find, with the names of its values."""

_SHORT = 8


def check(file: Path) -> tuple[Problem, ...]:
    """Every problem of a journal; () where it is sound.

    Raises:
        JournalError: it cannot be opened at all: missing, of another kind, newer.
    """
    problems = tuple(_of_the_file(file))
    found = salvage(file)
    plans, wrong = _plans(found)
    lines = tuple(_of_the_lines(found, plans))
    return tuple(problem.model_copy(update={"where": str(file)}) for problem in (*problems, *wrong, *lines))


def _of_the_file(file: Path) -> Iterator[Problem]:
    try:
        with closing(open_to_read(file)) as connection:
            for (said,) in connection.execute("PRAGMA integrity_check(5)"):
                if said != "ok":
                    yield Problem.of("check-file", found=str(said))
    except (JournalDamaged, sqlite3.DatabaseError) as error:
        if not is_database(file):
            raise JournalForeign(file) from error
        yield Problem.of("check-file", found=str(error.__cause__ or error))


def _plans(found: Salvage) -> tuple[dict[PlanId, Plan], tuple[Problem, ...]]:
    plans: dict[PlanId, Plan] = {}
    wrong: list[Problem] = []
    for name, text in found.plans.items():
        try:
            if text_id(text) != name:
                raise ValueError(name)
            plans[name] = from_json(text)
        except ValueError:
            wrong.append(Problem.of("check-plan", plan=name[:_SHORT]))
    return plans, tuple(wrong)


def _of_the_lines(found: Salvage, plans: Mapping[PlanId, Plan]) -> Iterator[Problem]:
    pairs: dict[int, Progress] = {}
    expected = 1
    for line in found.lines:
        yield from (Problem.of("check-gap", seq=seq) for seq in range(expected, line.seq))
        expected = line.seq + 1
        event = _read(line)
        if event is None:
            yield Problem.of("check-event", seq=line.seq)
            continue
        yield from _of_the_place(line, event, found, plans)
        if is_knitting(event):
            yield from _replayed(line, event, pairs, found.pairs)


def _read(line: Line) -> JournalEvent | None:
    try:
        event = EVENTS.validate_json(line.body)
    except ValueError:
        return None
    return event if event.kind == line.kind else None


def _of_the_place(
    line: Line, event: JournalEvent, found: Salvage, plans: Mapping[PlanId, Plan]
) -> Iterator[Problem]:
    standing = standing_of(event)
    if standing is None:
        return
    if standing.plan not in found.plans:
        yield Problem.of("check-plan-missing", seq=line.seq, plan=standing.plan[:_SHORT])
    elif standing.plan in plans and not _is_inside(standing, plans[standing.plan]):
        yield Problem.of("check-place", seq=line.seq)


def _is_inside(standing: Standing, plan: Plan) -> bool:
    the_course = course(plan)
    for place in (standing.first, standing.second):
        if place.row_index == len(plan.rows) and place.step_index == 0:
            continue
        if not 0 <= place.row_index < len(plan.rows):
            return False
        start, following = the_course.starts[place.row_index : place.row_index + 2]
        if not 0 <= place.step_index <= following - start:
            return False
    return True


def _replayed(
    line: Line, event: Event, pairs: dict[int, Progress], names: Mapping[int, str]
) -> Iterator[Problem]:
    progress = pairs.get(line.pair)
    if isinstance(event, Begun):
        pairs[line.pair] = Progress(now=event.now)
        return
    if progress is None:
        yield Problem.of("check-not-begun", seq=line.seq, name=names.get(line.pair, ""))
        return
    told = _told(event, progress)
    pairs[line.pair] = evolve(progress, event)
    if told is not None and told != standing_of(event):
        yield Problem.of("check-replay", seq=line.seq)


def _told(event: Event, progress: Progress) -> Standing | None:
    """Where undo or redo must lead."""
    if event.kind == "undone":
        return progress.past[-1] if progress.past else progress.now
    if event.kind == "redone":
        return progress.undone[-1] if progress.undone else progress.now
    return None
