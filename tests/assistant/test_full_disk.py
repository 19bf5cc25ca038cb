"""A disk that is full takes nothing from the journal, and the knitting goes on when there is room again."""

import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.journal import Journal
from assistant.journal_checking import check
from assistant.journal_errors import DiskFull, JournalUnwritable
from tests.assistant.disks import fill, mounted
from tests.assistant.journalling import advance, new_journal

SIZE_KIB = 512


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 512 KiB in memory."""
    with mounted(tmp_path / "disk", SIZE_KIB) as folder:
        yield folder


def append_until_full(journal: Journal) -> int:
    """Append until refused; returns the number of the last event that was taken."""
    while True:
        try:
            advance(journal, journal.last_seq + 1, said="x" * 500)
        except DiskFull as full:
            assert {"file": str(journal.file)} == full.values
            return journal.last_seq


def test_a_full_disk_refuses_whole_and_takes_more_when_there_is_room(small_disk: Path) -> None:
    path = small_disk / "socks.sqlite"
    with new_journal(path) as journal:
        advance(journal, 1)
        filler = fill(small_disk)
        last = append_until_full(journal)
        with pytest.raises(DiskFull):
            advance(journal, last + 1, said="x" * 500_000)
        assert [entry.seq for entry in journal.entries()] == list(range(1, last + 1))

        filler.unlink()
        assert advance(journal, last + 1) == last + 1
    with Journal.open(path) as journal:
        assert [entry.seq for entry in journal.entries()] == list(range(1, last + 2))


def test_a_journal_on_a_full_disk_can_be_taken_up_once_there_is_room(small_disk: Path) -> None:
    path = small_disk / "socks.sqlite"
    filler = fill(small_disk)
    with pytest.raises(DiskFull):
        new_journal(path)
    filler.unlink()
    with new_journal(path) as journal:
        assert advance(journal, 1) == 1


def test_what_is_written_when_the_disk_fills_survives_a_restart(small_disk: Path) -> None:
    path = small_disk / "socks.sqlite"
    with new_journal(path) as journal:
        last = append_until_full(journal)
    with Journal.read(path) as journal:
        assert [entry.seq for entry in journal.entries()] == list(range(1, last + 1))


def test_a_journal_on_a_disk_that_may_only_be_read_can_be_looked_at(small_disk: Path) -> None:
    path = small_disk / "socks.sqlite"
    with new_journal(path) as journal:
        advance(journal, 1)
    subprocess.run(["mount", "-o", "remount,ro", small_disk], check=True)

    with Journal.read(path) as journal:
        assert journal.last_seq == 1
    assert {problem.key for problem in check(path)} == {"check-plan", "check-not-begun"}
    with pytest.raises(JournalUnwritable):
        Journal.open(path)
