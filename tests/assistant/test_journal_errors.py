"""Each thing that can go wrong with a journal is told apart, and nothing is lost."""

import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from assistant import journal_errors
from assistant.journal import JOURNAL_ERRORS, Journal, JournalError
from assistant.journal_errors import (
    DiskFull,
    JournalDamaged,
    JournalForeign,
    JournalInUse,
    JournalMissing,
    JournalMoved,
    JournalNewer,
    JournalUnwritable,
    PairUnknown,
)
from assistant.journal_file import MIGRATIONS, Migration, open_to_write
from assistant.journal_rescue import rescue
from plans.conversation import Advanced, Begun
from tests.assistant.journalling import advance, new_journal, standing


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "socks.sqlite"


def written(path: Path, rows: int = 5) -> Path:
    with new_journal(path) as journal:
        journal.append([Begun(now=standing(0, 0))], after=0, at_ms=0)
        for row in range(1, rows):
            advance(journal, row, said=f"row {row}" * 50)
    return path


def test_every_error_has_a_key_with_the_values_it_carries(path: Path) -> None:
    kinds = JournalError.__subclasses__()
    values = {"expected": 1, "found": 2, "version": 3, "known": 4, "readable": 5, "name": "gift"}

    assert set(JOURNAL_ERRORS) == {kind.key for kind in kinds}
    for kind in kinds:
        error = kind(path, **{name: values[name] for name in JOURNAL_ERRORS[kind.key] - {"file"}})
        assert set(error.values) == JOURNAL_ERRORS[kind.key]
        assert error.problem.key == kind.key
        assert error.problem.where == str(path)
        assert kind.__name__ in journal_errors.__doc__


def test_a_second_program_is_refused_and_may_still_look(path: Path) -> None:
    with new_journal(path) as journal:
        advance(journal, 1)
        code = (
            "import sys; from pathlib import Path; from assistant.journal import Journal\n"
            "try: Journal.open(Path(sys.argv[1]))\n"
            "except Exception as error: print(error.key)\n"
            "print(len(Journal.read(Path(sys.argv[1])).entries()))"
        )
        other = subprocess.run([sys.executable, "-c", code, path], capture_output=True, text=True, check=True)

        assert other.stdout.split() == ["journal-in-use", "1"]
        assert advance(journal, 2) == 2


def test_a_second_part_of_the_same_program_is_refused(path: Path) -> None:
    with new_journal(path), pytest.raises(JournalInUse) as refused:
        Journal.open(path)
    assert {"file": str(path)} == refused.value.values


def test_it_is_free_again_when_closed(path: Path) -> None:
    new_journal(path).close()
    with Journal.open(path) as journal:
        assert journal.last_seq == 0


def test_a_refused_open_leaves_no_lock_behind(path: Path) -> None:
    path.write_bytes(b"knit one, purl one\n" * 300)
    for _ in range(2):
        with pytest.raises(JournalForeign):
            Journal.open(path)


def test_a_link_to_a_journal_is_the_same_journal(path: Path, tmp_path: Path) -> None:
    link = tmp_path / "link.sqlite"
    with new_journal(path):
        link.symlink_to(path)
        with pytest.raises(JournalInUse):
            Journal.open(link)


def test_a_write_from_elsewhere_is_noticed_and_nothing_is_written(path: Path) -> None:
    with new_journal(path) as journal:
        advance(journal, 1)
        with closing(sqlite3.connect(path)) as other, other:
            other.execute(
                "INSERT INTO event"
                " SELECT seq + 1, pair, plan, at_ms, stream_ms, kind, body, heard, said FROM event"
            )
        with pytest.raises(JournalMoved) as moved:
            journal.append([Advanced(now=standing(9, 9))] * 3, after=1, at_ms=0)

        assert {"file": str(path), "expected": 1, "found": 2} == moved.value.values
        assert len(journal.entries()) == 2
        assert journal.append([Advanced(now=standing(9, 9))], after=2, at_ms=0) == 3


def test_another_connection_that_is_writing_is_waited_for_then_reported(path: Path) -> None:
    with new_journal(path) as journal, closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(JournalInUse):
            advance(journal, 1)
        other.execute("ROLLBACK")

        assert advance(journal, 1) == 1


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE event SET said = 'something else'",
        "DELETE FROM event",
        "INSERT OR REPLACE INTO event SELECT 1, pair, plan, 0, 0, kind, body, heard, said FROM event",
        "REPLACE INTO event SELECT seq, pair, plan, 0, 0, kind, body, heard, said FROM event",
        "INSERT INTO event SELECT 9, pair, plan, 0, 0, kind, body, heard, said FROM event LIMIT 1",
        "INSERT INTO event SELECT 0, pair, plan, 0, 0, kind, body, heard, said FROM event LIMIT 1",
        "INSERT INTO event SELECT 6, pair, plan, 'noon', 0, kind, body, heard, said FROM event LIMIT 1",
        "INSERT INTO event SELECT 6, pair, plan, 0, 0, kind, 'no json', heard, said FROM event LIMIT 1",
        "UPDATE plan SET body = '{}'",
        "DELETE FROM plan",
        "UPDATE pair SET name = 'hers'",
        "DELETE FROM pair",
    ],
)
def test_what_stands_in_the_file_cannot_be_changed(path: Path, statement: str) -> None:
    written(path)
    with Journal.read(path) as journal:
        before = journal.entries(), journal.plans(), journal.pairs()
    with closing(sqlite3.connect(path, isolation_level=None)) as other, pytest.raises(sqlite3.IntegrityError):
        other.execute(statement)

    with Journal.read(path) as journal:
        assert before == (journal.entries(), journal.plans(), journal.pairs())


def test_an_event_in_a_plan_that_was_not_kept_is_a_mistake_of_the_program(path: Path) -> None:
    with new_journal(path) as journal:
        with pytest.raises(ValueError, match="was not kept"):
            journal.append([Advanced(now=standing(1, 1, plan="ef" * 32))], after=0, at_ms=0)

        assert journal.entries() == ()


def test_keeping_a_plan_twice_is_keeping_it_once(path: Path) -> None:
    with new_journal(path) as journal:
        before = journal.plans()
        for plan, text in before.items():
            journal.keep_plan(plan, text)
            assert journal.plan_text(plan) == text

        assert journal.plans() == before
        assert journal.plan_text("ef" * 32) is None


def test_a_journal_that_is_only_read_must_be_there_and_is_not_made(path: Path) -> None:
    with pytest.raises(JournalMissing):
        Journal.read(path)
    assert not path.exists()


def test_a_journal_that_is_only_read_refuses_to_be_written(path: Path) -> None:
    with Journal.read(written(path)) as journal, pytest.raises(JournalUnwritable):
        advance(journal, 6)


def test_an_unknown_pair_is_named(path: Path) -> None:
    with Journal.read(written(path)) as journal, pytest.raises(PairUnknown) as unknown:
        journal.entries("gift")
    assert unknown.value.values["name"] == "gift"


def test_the_folder_is_made_with_the_first_journal(tmp_path: Path) -> None:
    with Journal.open(tmp_path / "a" / "b" / "socks.sqlite") as journal:
        assert journal.pairs() == ()
        assert journal.last_pair is None
        assert journal.events() == ()


def test_a_file_in_the_way_of_the_folder_is_reported(tmp_path: Path) -> None:
    (tmp_path / "a").write_text("in the way")
    with pytest.raises(JournalUnwritable):
        Journal.open(tmp_path / "a" / "socks.sqlite")


def test_a_folder_in_the_way_of_the_file_is_reported(path: Path) -> None:
    path.mkdir()
    with pytest.raises(JournalUnwritable):
        Journal.open(path)


def test_a_database_of_another_kind_is_not_touched(path: Path) -> None:
    with closing(sqlite3.connect(path)) as other, other:
        other.execute("CREATE TABLE recipe (name)")
    before = path.read_bytes()
    for way in (Journal.open, Journal.read):
        with pytest.raises(JournalForeign):
            way(path)
    assert before == path.read_bytes()


def test_a_newer_journal_is_refused_untouched(path: Path) -> None:
    written(path)
    with closing(sqlite3.connect(path)) as other:
        other.execute("PRAGMA user_version = 7")
    before = path.read_bytes()
    for way in (Journal.open, Journal.read):
        with pytest.raises(JournalNewer) as newer:
            way(path)
        assert {"file": str(path), "version": 7, "known": len(MIGRATIONS)} == newer.value.values
    assert before == path.read_bytes()


def test_an_older_journal_is_copied_before_it_is_brought_up_to_date(path: Path, tmp_path: Path) -> None:
    written(path)
    later = (*MIGRATIONS, Migration("a colour for each pair", ("ALTER TABLE pair ADD COLUMN colour TEXT",)))
    with closing(open_to_write(path, later)) as connection:
        assert connection.execute("SELECT name, colour FROM pair").fetchall() == [("socks", None)]
        assert connection.execute("PRAGMA user_version").fetchone() == (2,)
    with pytest.raises(JournalNewer):
        Journal.read(path)
    with Journal.read(tmp_path / "socks.sqlite.version-1") as copy:
        assert copy.last_seq == 5


def test_a_migration_that_fails_leaves_the_journal_as_it_was(path: Path) -> None:
    written(path)
    bad = Migration("half of it fails", ("ALTER TABLE pair ADD COLUMN colour TEXT", "SELECT * FROM nowhere"))
    with pytest.raises(JournalError):
        open_to_write(path, (*MIGRATIONS, bad))
    with Journal.open(path) as journal:
        assert journal.last_seq == 5
        assert advance(journal, 6) == 6


def test_no_database_at_all_is_no_journal_and_is_not_touched(path: Path) -> None:
    path.write_bytes(b"knit one, purl one\n" * 300)
    for way in (Journal.open, Journal.read):
        with pytest.raises(JournalForeign):
            way(path)
    assert path.read_bytes() == b"knit one, purl one\n" * 300


def test_a_database_of_which_nothing_can_be_read_is_damaged(path: Path) -> None:
    path.write_bytes(b"SQLite format 3\0" + b"knit one, purl one\n" * 300)
    for way in (Journal.open, Journal.read):
        with pytest.raises(JournalDamaged) as damaged:
            way(path)
        assert {"file": str(path), "readable": 0} == damaged.value.values


def test_a_torn_journal_tells_what_can_be_read_and_gives_it_to_a_new_one(path: Path, tmp_path: Path) -> None:
    written(path, 120)
    with Journal.read(path) as journal:
        whole = journal.entries()
    content = bytearray(path.read_bytes())
    middle = len(content) // 4096 // 2 * 4096
    content[middle : middle + 4096] = b"\xff" * 4096
    path.write_bytes(content)

    with pytest.raises(JournalDamaged) as damaged:
        Journal.open(path)
    readable = damaged.value.values["readable"]
    rescued = rescue(path, tmp_path / "rescued.sqlite")

    assert 60 < readable < 120
    assert (readable, 0) == rescued
    with Journal.open(tmp_path / "rescued.sqlite") as journal:
        kept = [entry.event for entry in journal.entries()]
        assert kept == [entry.event for entry in whole if entry.event in kept]
        assert kept[-1] == whole[-1].event
    assert bytes(content) == path.read_bytes()


def test_a_rescue_never_overwrites(path: Path) -> None:
    written(path)
    with pytest.raises(FileExistsError):
        rescue(path, path)


def test_a_full_journal_refuses_whole_and_goes_on_when_there_is_room(path: Path) -> None:
    with new_journal(path) as journal:
        advance(journal, 1)
        pages = journal._connection.execute("PRAGMA page_count").fetchone()[0]
        journal._connection.execute(f"PRAGMA max_page_count = {pages}")
        batch = [Advanced(now=standing(row, row)) for row in range(2, 200)]
        with pytest.raises(DiskFull):
            journal.append(batch, after=1, at_ms=0)

        assert len(journal.entries()) == 1
        journal._connection.execute("PRAGMA max_page_count = 100000")
        assert journal.append(batch, after=1, at_ms=0) == 199
