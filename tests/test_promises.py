"""What README and DEVELOPERS promise is so."""

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from assistant.command_line import run
from plans.files import write_wishes
from tests.assistant.sitting import PRACTICE

ROOT = Path(__file__).parents[1]
PACKAGES = ("assistant", "plans", "models")
NO_SOCKETS = """
import socket, sys
def refuse(*_, **__):
    raise AssertionError("a connection was tried")
socket.socket.connect = socket.socket.connect_ex = socket.create_connection = socket.getaddrinfo = refuse
from assistant.command_line import run
sys.exit(run(sys.argv[1:]))
"""


def blocks() -> list[str]:
    """The sh blocks of README."""
    return re.findall(r"^```sh\n(.*?)^```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL | re.MULTILINE)


def test_readme_has_two_blocks_of_one_line_each() -> None:
    assert [block.count("\n") for block in blocks()] == [1, 1]


def test_readme_names_only_verbs_and_options_that_there_are(capsys: pytest.CaptureFixture[str]) -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    used = re.findall(r"\.venv/bin/roundcaller (\w+)([^\n`&]*)", text)

    assert used
    for verb, rest in used:
        assert run([verb, "--help"]) == 0
        told = capsys.readouterr().out
        assert [option for option in re.findall(r"--[a-z-]+", rest) if option not in told] == []


def outside(arguments: list[str], typed: str = "") -> subprocess.CompletedProcess[str]:
    """The program in a process of its own that may not connect anywhere."""
    command = (sys.executable, "-c", NO_SOCKETS, *arguments)
    return subprocess.run(command, cwd=ROOT, input=typed, capture_output=True, text=True, check=False)


def test_a_whole_session_connects_nowhere(tmp_path: Path) -> None:
    plan = tmp_path / "plan.toml"
    plan.write_text(write_wishes(PRACTICE), encoding="utf-8")
    arguments = ["knit", str(plan), "--journal", str(tmp_path / "j.sqlite"), "--recogniser", "typed"]
    done = outside([*arguments, "--to", str(tmp_path / "voice.wav")], "next\nwhere am i\nundo\n")

    assert (done.returncode, done.stdout.count("\n") > 3) == (0, True), done.stderr


def test_listening_to_a_recording_connects_nowhere(tmp_path: Path) -> None:
    spoken = tmp_path / "next.wav"
    subprocess.run(("espeak-ng", "-v", "en-us+f5", "-s", "150", "-w", str(spoken), "next"), check=True)
    done = outside(["listen", str(spoken), "--json"])

    assert (done.returncode, '"command": "next"' in done.stdout) == (0, True), done.stderr


def test_fetching_is_what_the_refusal_catches() -> None:
    """The guard itself works: the one verb that goes online is stopped by it."""
    done = outside(["models", "fetch", "vosk-small-en-us"])

    assert (done.returncode, "a connection was tried" in done.stderr) == (1, True), done.stderr


@pytest.mark.parametrize("package", PACKAGES)
def test_no_module_is_over_360_lines(package: str) -> None:
    modules = [path for path in (ROOT / package).rglob("*.py") if "training" not in path.parts]
    long = {path.name: count for path in modules if (count := len(path.read_text(encoding="utf-8").splitlines())) > 360}

    assert long == {}


def test_every_dependency_has_a_lower_bound_and_a_reason() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    reasons = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")

    for needed in project["dependencies"]:
        name, _, bound = needed.partition(">=")
        assert bound, needed
        assert name in reasons
