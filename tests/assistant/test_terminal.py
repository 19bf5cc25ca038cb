"""Single keys in a real pseudo-terminal, which is as it was afterwards, however the program ended."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

if sys.platform == "win32":
    pytest.skip("pseudo-terminals are a thing of Unix", allow_module_level=True)

import pty
import select
import termios

ROOT = Path(__file__).parents[2]
HANDLED_S = 1.0
"""So long a signal may take to be acted on; until then the terminal looks as it did before."""
LIMIT_S = 20.0


class Pressing:
    """A program in a terminal of its own: keys go in, what it writes comes out."""

    def __init__(self, how: str, environment: dict[str, str], *, alone: bool = False) -> None:
        self.outside, self.inside = pty.openpty()
        self.before = termios.tcgetattr(self.inside)
        self.process = subprocess.Popen(
            [sys.executable, "-m", "tests.assistant.key_reader", how],
            cwd=ROOT,
            stdin=self.inside,
            stdout=self.inside,
            stderr=subprocess.DEVNULL,
            env={**os.environ, **environment},
            **({"start_new_session": True} if alone else {"process_group": 0}),
        )
        self.written = b""

    def press(self, keys: bytes) -> None:
        os.write(self.outside, keys)

    def until(self, line: str) -> None:
        """Wait until it has written a line."""
        end = time.monotonic() + LIMIT_S
        while line not in self.lines():
            assert time.monotonic() < end, self.written
            if select.select([self.outside], [], [], 0.2)[0]:
                self.written += os.read(self.outside, 4096)

    def until_raw(self) -> None:
        """Wait until it has taken its terminal over."""
        end = time.monotonic() + LIMIT_S
        while not self.is_raw():
            assert time.monotonic() < end
            time.sleep(0.01)

    def lines(self) -> list[str]:
        return self.written.decode(errors="ignore").split("\r\n")[:-1]

    def ended(self) -> int:
        return self.process.wait(LIMIT_S)

    def settings(self) -> list:
        return termios.tcgetattr(self.inside)

    def is_raw(self) -> bool:
        return not self.settings()[3] & (termios.ICANON | termios.ECHO)


@contextmanager
def pressing(how: str = "return", *, alone: bool = False, **environment: str) -> Iterator[Pressing]:
    terminal = Pressing(how, environment, alone=alone)
    try:
        terminal.until("ready")
        yield terminal
    finally:
        terminal.process.kill()
        terminal.process.wait()
        os.close(terminal.outside)
        os.close(terminal.inside)


def test_each_key_comes_in_at_once_and_is_not_echoed() -> None:
    with pressing() as terminal:
        for keys, name in [(b" ", "space"), (b"\x1b[6~", "page_down"), (b"\x1b", "escape"), (b"N", "n"),
                           ("ä".encode(), "ä"), (b"\r", "enter"), (b"\x1bOP", "f1")]:  # fmt: skip
            terminal.press(keys)
            terminal.until(name)

        assert terminal.lines() == ["ready", "space", "page_down", "escape", "n", "ä", "enter", "f1"]


@pytest.mark.parametrize("environment", [{}, {"NO_COLOR": "1"}, {"TERM": "dumb"}, {"TERM": "xterm-256color"}])
def test_what_is_written_is_plain_lines_on_every_terminal(environment: dict[str, str]) -> None:
    with pressing(**environment) as terminal:
        terminal.press(b"nq")
        terminal.until("after")

        assert terminal.written == b"ready\r\nn\r\nq\r\nafter\r\n"


@pytest.mark.parametrize(("how", "status"), [("return", 0), ("raise", 1), ("exit", 3)])
def test_the_terminal_is_as_it_was_after_the_program_ended(how: str, status: int) -> None:
    with pressing(how) as terminal:
        assert terminal.is_raw()
        terminal.press(b"q")

        assert terminal.ended() == status
        assert terminal.settings() == terminal.before


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP, signal.SIGQUIT, signal.SIGINT])
def test_the_terminal_is_as_it_was_after_a_signal(number: signal.Signals) -> None:
    with pressing("hang") as terminal:
        assert terminal.is_raw()
        terminal.process.send_signal(number)

        assert terminal.ended() == -number
        assert terminal.settings() == terminal.before


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP, signal.SIGQUIT])
def test_a_signal_that_does_not_interrupt_the_wait_for_a_key_is_acted_on_all_the_same(number: signal.Signals) -> None:
    with pressing("apart") as terminal:
        terminal.process.send_signal(number)

        assert terminal.ended() == -number
        assert terminal.settings() == terminal.before


def test_suspending_puts_the_terminal_back_and_going_on_takes_it_again() -> None:
    with pressing("hang") as terminal:
        terminal.process.send_signal(signal.SIGTSTP)
        _, status = os.waitpid(terminal.process.pid, os.WUNTRACED)
        assert os.WIFSTOPPED(status)
        assert terminal.settings() == terminal.before

        terminal.process.send_signal(signal.SIGCONT)
        terminal.until_raw()
        terminal.press(b"n")
        terminal.until("n")
        assert terminal.lines() == ["ready", "n"]


def test_a_program_that_nobody_could_wake_goes_on_when_suspended() -> None:
    with pressing("hang", alone=True) as terminal:
        terminal.process.send_signal(signal.SIGTSTP)
        time.sleep(HANDLED_S)
        for key in (b"n", b"m"):
            terminal.until_raw()
            terminal.press(key)
            terminal.until(key.decode())

        assert terminal.lines() == ["ready", "n", "m"]


@pytest.mark.parametrize("end", [b"\x04", b"q"])
def test_control_d_ends_the_keys(end: bytes) -> None:
    with pressing() as terminal:
        terminal.press(end)
        terminal.until("after")

        assert terminal.ended() == 0


def test_a_pipe_is_read_as_keys_to_its_end() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "tests.assistant.key_reader"], cwd=ROOT, input=b"n \x1b[5~\x1b",
        capture_output=True, check=True, timeout=LIMIT_S,
    )  # fmt: skip

    assert done.stdout.decode().split() == ["ready", "n", "space", "page_up", "escape", "after"]


def test_closing_from_another_thread_ends_the_keys() -> None:
    code = (
        "import threading\n"
        "from assistant.terminal import open_keyboard\n"
        "with open_keyboard() as keyboard:\n"
        "    threading.Timer(0.2, keyboard.close).start()\n"
        "    print(list(keyboard.strokes()))\n"
    )
    outside, inside = pty.openpty()
    try:
        done = subprocess.run(
            [sys.executable, "-c", code],
            cwd=ROOT,
            stdin=inside,
            capture_output=True,
            check=True,
            timeout=LIMIT_S,
        )
    finally:
        os.close(outside)
        os.close(inside)

    assert done.stdout == b"[]\n"
