"""A check finds each thing that can be wrong with a journal, and nothing in a sound one."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from assistant.journal import Journal
from assistant.journal_checking import CHECK_PROBLEMS, check
from assistant.journal_errors import JournalDamaged, JournalForeign, JournalMissing
from assistant.journal_plans import keep, kept, kept_plan
from assistant.journal_rescue import readable
from plans.conversation import Advanced, Begun, Counted, Marked, Place, Problem, Redone, Undone
from plans.json_form import plan_id, text_id
from plans.pattern import Half
from tests.assistant.small_plan import END, SMALL, at_row

ID = plan_id(SMALL)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A sound journal of nine events, with an undo, a redo and a mark."""
    file = tmp_path / "socks.sqlite"
    events = [
        Begun(now=at_row(0, plan=ID)),
        Advanced(now=at_row(1, plan=ID)),
        Advanced(now=at_row(4, plan=ID)),
        Undone(now=at_row(1, plan=ID)),
        Redone(now=at_row(4, plan=ID)),
        Counted(sock=1, half=Half.FRONT, stitches=4, expected=(4,), right=True),
        Marked(at=at_row(4, plan=ID)),
        Advanced(now=at_row(8, step=2, plan=ID)),
        Advanced(now=at_row(END, plan=ID)),
    ]
    with Journal.open(file) as journal:
        keep(journal, SMALL)
        for event in events:
            journal.append([event], after=journal.last_seq, at_ms=0)
    return file


@contextmanager
def forced(path: Path) -> Iterator[sqlite3.Connection]:
    """Behind the journal's back, its guards taken off."""
    with closing(sqlite3.connect(path)) as connection, connection:
        triggers = connection.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall()
        for (name,) in triggers:
            connection.execute(f"DROP TRIGGER {name}")
        yield connection


def found(path: Path) -> list[Problem]:
    problems = check(path)
    for problem in problems:
        assert problem.where == str(path)
        assert frozenset(dict(problem.values)) == CHECK_PROBLEMS[problem.key]
    return [Problem(key=problem.key, values=problem.values) for problem in problems]


def test_a_sound_journal_has_no_problem_and_is_not_changed(path: Path) -> None:
    before = path.read_bytes()

    assert check(path) == ()
    assert before == path.read_bytes()


def test_a_journal_in_use_can_be_checked(path: Path) -> None:
    with Journal.open(path):
        assert check(path) == ()


def test_an_event_taken_out_is_missed(path: Path) -> None:
    with forced(path) as connection:
        connection.execute("DELETE FROM event WHERE seq IN (6, 7)")

    assert found(path) == [Problem.of("check-gap", seq=6), Problem.of("check-gap", seq=7)]


@pytest.mark.parametrize(
    "body",
    [
        '{"kind": "purled"}',
        '{"kind": "stopped"}',
        '{"kind": "marked"}',
        '["marked"]',
        '{"kind": "marked", "x": 1}',
    ],
)
def test_an_event_that_cannot_be_read_or_is_another_is_named(path: Path, body: str) -> None:
    with forced(path) as connection:
        connection.execute("UPDATE event SET body = ? WHERE seq = 7", (body,))

    assert found(path) == [Problem.of("check-event", seq=7)]


def test_a_plan_edited_in_the_file_is_noticed_and_not_used(path: Path) -> None:
    with forced(path) as connection:
        connection.execute("UPDATE plan SET body = replace(body, '\"times\":4', '\"times\":5')")

    assert found(path) == [Problem.of("check-plan", plan=ID[:8])]
    with Journal.read(path) as journal:
        for way in (lambda: kept(journal), lambda: kept_plan(journal, ID)):
            with pytest.raises(JournalDamaged):
                way()


def test_a_text_that_is_no_plan_is_noticed_though_its_hash_is_right(path: Path) -> None:
    with forced(path) as connection:
        connection.execute("INSERT INTO plan VALUES (?, ?)", (text_id("knit"), "knit"))

    assert found(path) == [Problem.of("check-plan", plan=text_id("knit")[:8])]


def test_a_plan_that_is_gone_is_named_wherever_it_is_needed(path: Path) -> None:
    with forced(path) as connection:
        connection.execute("DELETE FROM plan")

    assert found(path) == [
        Problem.of("check-plan-missing", seq=seq, plan=ID[:8]) for seq in (1, 2, 3, 4, 5, 7, 8, 9)
    ]
    assert [entry.seq for entry in readable(path)] == [6]


@pytest.mark.parametrize(
    "place",
    [
        Place(row_index=END, step_index=1),
        Place(row_index=END + 1),
        Place(row_index=-1),
        Place(row_index=4, step_index=9),
    ],
)
def test_a_place_outside_the_plan_is_named(path: Path, place: Place) -> None:
    with Journal.open(path) as journal:
        standing = at_row(4, plan=ID).model_copy(update={"second": place})
        journal.append([Advanced(now=standing)], after=9, at_ms=0)

    assert found(path) == [Problem.of("check-place", seq=10)]


def test_an_undo_that_leads_elsewhere_than_back_is_named(path: Path) -> None:
    with Journal.open(path) as journal:
        journal.append([Undone(now=at_row(2, plan=ID))], after=9, at_ms=0)
        journal.append([Redone(now=at_row(3, plan=ID))], after=10, at_ms=0)

    assert found(path) == [Problem.of("check-replay", seq=10), Problem.of("check-replay", seq=11)]


def test_knitting_on_a_pair_that_was_not_begun_is_named(path: Path) -> None:
    with Journal.open(path) as journal:
        journal.append([Advanced(now=at_row(2, plan=ID))], after=9, at_ms=0, pair="gift")

    assert found(path) == [Problem.of("check-not-begun", seq=10, name="gift")]


def test_a_torn_page_is_reported_with_what_is_lost(path: Path) -> None:
    content = bytearray(path.read_bytes())
    content[-4096:] = b"\xff" * 4096
    path.write_bytes(content)

    keys = {problem.key for problem in check(path)}
    assert "check-file" in keys


def test_what_is_no_database_is_no_journal(path: Path) -> None:
    path.write_bytes(b"knit one, purl one\n" * 300)

    with pytest.raises(JournalForeign):
        check(path)


def test_a_database_of_which_nothing_can_be_read_is_reported(path: Path) -> None:
    path.write_bytes(b"SQLite format 3\0" + b"knit one, purl one\n" * 300)

    assert [problem.key for problem in check(path)] == ["check-file"]


def test_a_missing_journal_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(JournalMissing):
        check(tmp_path / "none.sqlite")


def test_a_plan_comes_back_as_it_was_kept(path: Path) -> None:
    with Journal.read(path) as journal:
        assert kept(journal) == {ID: SMALL}
        assert kept_plan(journal, ID) == SMALL
        assert kept_plan(journal, "ef" * 32) is None
