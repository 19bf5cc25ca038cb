"""A journal whose program is killed at any moment keeps all that was announced."""

import os
import random
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from assistant.journal import Entry, Journal
from plans.conversation import Answered

ROOT = Path(__file__).parents[2]


class Announced:
    """A writer in a process of its own, and what came out of it, line by line."""

    def __init__(self, path: Path) -> None:
        self.process = subprocess.Popen(
            [sys.executable, "-m", "tests.assistant.journal_writer", str(path)],
            cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
        )  # fmt: skip
        self.lines: list[str] = []
        self.began = threading.Event()
        self._reader = threading.Thread(target=self._read)
        self._reader.start()

    def _read(self) -> None:
        for line in self.process.stdout:
            self.lines.append(line.rstrip("\n"))
            self.began.set()

    def kill(self) -> int:
        """End it at once; returns its exit status, once all that it announced has been read."""
        os.kill(self.process.pid, signal.SIGKILL)
        self._reader.join()
        self.process.stdout.close()
        self.process.stderr.close()
        return self.process.wait()


@contextmanager
def writing(path: Path) -> Iterator[Announced]:
    announced = Announced(path)
    assert announced.began.wait(20), announced.process.stderr.read()
    try:
        yield announced
    finally:
        if announced.process.poll() is None:
            announced.kill()


def kill_and_compare(path: Path, wait_s: float) -> tuple[int, int]:
    """Let it write, kill it, look; returns how many commands it announced, and how many are in doubt."""
    with writing(path) as announced:
        time.sleep(wait_s)
        assert announced.kill() == -signal.SIGKILL
    took_up, *told = announced.lines
    before = int(took_up.removeprefix("took up "))

    with Journal.open(path) as journal:
        entries = journal.entries()
    new = entries[before:]
    assert [entry.seq for entry in entries] == list(range(1, len(entries) + 1))
    said = [f"{entry.seq} {entry.said}" for entry in new if entry.said is not None]
    assert said[: len(told)] == told
    assert_commands_are_whole(new)
    return len(told), len(said) - len(told)


def assert_commands_are_whole(entries: tuple[Entry, ...]) -> None:
    """What belongs to one command stands there whole or not at all."""
    for entry, following in zip(entries, (*entries[1:], None), strict=False):
        if isinstance(entry.event, Answered):
            assert following is not None
            assert following.event.kind == "place_set"


@pytest.mark.parametrize(
    "times", [20, pytest.param(200, marks=pytest.mark.nightly)], ids=["twenty times", "two hundred times"]
)
def test_what_was_announced_is_kept_and_one_command_at_most_in_doubt(tmp_path: Path, times: int) -> None:
    path, chance = tmp_path / "socks.sqlite", random.Random(20)

    found = [kill_and_compare(path, chance.uniform(0, 0.15)) for _ in range(times)]

    assert all(doubt in (0, 1) for _, doubt in found)
    assert sum(announced for announced, _ in found) > times
    told, doubtful = (sum(column) for column in zip(*found, strict=True))
    print(f"{times} kills, {told} announced, {doubtful} in doubt")


def test_a_killed_program_leaves_the_journal_free(tmp_path: Path) -> None:
    path = tmp_path / "socks.sqlite"
    with writing(path) as announced:
        announced.kill()
    with Journal.open(path) as journal:
        assert journal.last_seq >= 0
