"""The program as a user starts it: a process of its own, with folders of its own."""

import os
import signal
import subprocess
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from plans.files import write_wishes
from tests.assistant.sitting import PRACTICE

ROOT = Path(__file__).parents[2]
STAND_INS = Path(__file__).parent / "stand_ins"
PRACTICE_OPTIONS = ("--practice", "--stitches", "22", "--rounds", "30")
HERS = ("--foot-length", "24.5cm", "--ball", "23cm", "--stitches", "30", "--rounds", "42")


@dataclass(frozen=True)
class Ran:
    """What a run came to."""

    code: int
    out: str
    err: str

    @property
    def lines(self) -> list[str]:
        """On standard output."""
        return self.out.splitlines()

    @property
    def complaint(self) -> str:
        """The one line on standard error."""
        lines = self.err.splitlines()
        assert len(lines) == 1, self
        assert lines[0].endswith((".", "?")), self
        return lines[0]


class Machine:
    """A machine of one's own: a home folder, and what it lacks.

    Args:
        home: folder for settings and data.
        lacks: names of stand-ins for what this machine does not have.
    """

    def __init__(self, home: Path, *lacks: str) -> None:
        paths = (*(str(STAND_INS / name) for name in lacks), str(ROOT))
        home.mkdir(parents=True, exist_ok=True)
        own = {
            "HOME": str(home), "XDG_DATA_HOME": str(home / "data"), "XDG_CONFIG_HOME": str(home / "config"),
            "PYTHONPATH": os.pathsep.join(paths),
        }  # fmt: skip
        self.home = home
        self.environment = {**os.environ, **own}

    @property
    def plans(self) -> Path:
        """Where pairs that were asked for question by question are kept."""
        return self.home / "data" / "roundcaller" / "plans"

    @property
    def journal(self) -> Path:
        """The journal where none is named."""
        return self.home / "data" / "roundcaller" / "journal.sqlite"

    def start(
        self, *arguments: object, before: Callable[[], None] | None = None, where: Path | None = None,
        also: Mapping[str, str] | None = None, stdout: int = subprocess.PIPE,
    ) -> subprocess.Popen[str]:  # fmt: skip
        """Start it, with pipes."""
        return subprocess.Popen(
            (sys.executable, "-m", "assistant", *map(str, arguments)), env={**self.environment, **(also or {})},
            cwd=where or self.home, text=True, stdin=subprocess.PIPE, stdout=stdout, stderr=subprocess.PIPE,
            preexec_fn=before or interruptible,  # noqa: PLW1509 (no threads of ours)
        )  # fmt: skip

    def run(self, *arguments: object, typed: str = "", before: Callable[[], None] | None = None,
            where: Path | None = None, also: Mapping[str, str] | None = None, stdout: int = subprocess.PIPE) -> Ran:
        """Run it to its end.

        Args:
            arguments: of the command line.
            typed: on standard input.
            before: called in the new process first.
            where: the working folder; home where left out.
            also: more of the environment.
            stdout: where standard output goes; caught where left out.
        """
        with self.start(*arguments, before=before, where=where, also=also, stdout=stdout) as process:
            out, err = process.communicate(typed, timeout=120)
        return Ran(process.returncode, out or "", err)

    def plan(self, name: str = "socks.toml") -> Path:
        """A plan file of the practice pair."""
        file = self.home / name
        file.write_text(write_wishes(PRACTICE), encoding="utf-8")
        return file


def interruptible() -> None:
    """A process started by a test that itself ignores interrupts would ignore them too."""
    signal.signal(signal.SIGINT, signal.default_int_handler)


def no_traceback(*texts: str) -> bool:
    """Whether none of the texts shows the inside of the program."""
    return not any("Traceback" in text or 'File "' in text for text in texts)
