"""kill -9 while the program speaks: what it announced is never lost, and at most one command is in doubt."""

import os
import random
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from assistant.journal import Journal
from plans.files import write_wishes
from tests.assistant.sitting import PRACTICE

HERE = Path(__file__).parents[2]


class Child:
    """The program at its keys, its voice going into a file in real time; everything it prints, as it comes."""

    def __init__(self, plan: Path, journal: Path, voice: Path) -> None:
        options = ("--journal", str(journal), "--from", "keys", "--to", str(voice))
        command = (sys.executable, "-u", "-m", "assistant", "knit", str(plan), *options)
        self.announced: list[str] = []
        self.process = subprocess.Popen(
            command, cwd=HERE, stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=os.environ | {"PYTHONPATH": str(HERE)}
        )
        self._reader = threading.Thread(target=self._read)
        self._reader.start()

    def _read(self) -> None:
        for line in self.process.stdout or ():
            self.announced.append(line.decode().rstrip("\n"))

    def press(self, key: str) -> None:
        if self.process.stdin:
            self.process.stdin.write(key.encode())
            self.process.stdin.flush()

    def wait_for(self, lines: int, within_s: float = 60.0) -> None:
        until = time.monotonic() + within_s
        while len(self.announced) < lines:
            assert time.monotonic() < until, self.announced
            time.sleep(0.002)

    def kill(self) -> list[str]:
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()
        self._reader.join()
        for pipe in (self.process.stdin, self.process.stdout):
            if pipe:
                pipe.close()
        return self.announced


def said_in(journal: Path) -> list[str]:
    with Journal.open(journal) as opened:
        return [entry.said for entry in opened.entries() if entry.said is not None]


def kill_once(folder: Path, chance: random.Random, *, while_speaking: bool) -> int:
    """One life of the program; how many commands are in doubt."""
    plan, journal = folder / "plan.toml", folder / "journal.sqlite"
    plan.write_text(write_wishes(PRACTICE), encoding="utf-8")
    before = len(said_in(journal)) if journal.exists() else 0
    child = Child(plan, journal, folder / "voice.wav")
    child.wait_for(1)
    for _ in range(chance.randint(2, 8)):
        known = len(child.announced)
        child.press(chance.choice("nnnwuh"))
        if while_speaking:
            child.wait_for(known + 1)
            time.sleep(chance.uniform(0.0, 0.4))
        else:
            time.sleep(chance.uniform(0.0, 0.1))
    announced = child.kill()
    kept = said_in(journal)[before:]
    assert announced == kept[: len(announced)]
    return len(kept) - len(announced)


def test_killed_while_it_speaks_and_while_commands_stream(tmp_path: Path) -> None:
    kill_many(tmp_path, 8)


@pytest.mark.nightly
def test_killed_two_hundred_times(tmp_path: Path) -> None:
    kill_many(tmp_path, 200)


def kill_many(folder: Path, times: int) -> None:
    """Half of the kills fall between a command's acceptance and the end of its reply, for certain."""
    chance = random.Random(7)
    doubts = [kill_once(folder, chance, while_speaking=number % 2 == 0) for number in range(times)]
    print(f"{times} kills, {times // 2} while it spoke: {sum(doubts)} in doubt, at most {max(doubts)} a kill")
    assert max(doubts) <= 1
