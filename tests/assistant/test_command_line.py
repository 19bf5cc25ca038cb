"""The entry point: exit codes, one sentence for each problem, no traceback unless asked for."""

import shutil
from pathlib import Path

import pytest

from assistant import packages
from assistant.command_line import run, tell
from assistant.failing import Refused, Surroundings, as_problem, as_refusal, explained, refuse
from assistant.journal_errors import DiskFull, JournalMissing
from plans.conversation import Problem
from tests.assistant.running import PRACTICE_OPTIONS, ROOT, Machine, no_traceback


def test_done_is_0_and_says_nothing_on_standard_error(capsys: pytest.CaptureFixture[str]) -> None:
    assert 0 == run(["phrases"])
    assert "" == capsys.readouterr().err


@pytest.mark.parametrize(("arguments", "code"), [
    (["--version"], 0), (["--help"], 0), (["models", "list"], 0), (["plan"], 2), (["no-such-verb"], 2),
    (["--no-such-option"], 2), (["journal", "show", "/no/such/journal"], 2), (["models"], 2),
])  # fmt: skip
def test_exit_codes(arguments: list[str], code: int, capsys: pytest.CaptureFixture[str]) -> None:
    assert code == run(arguments)
    assert (code == 0) == (capsys.readouterr().err == "")


def test_the_version_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert 0 == run(["--version"])
    assert capsys.readouterr().out.startswith("roundcaller")


def test_a_traceback_is_shown_only_when_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert 2 == run(["show", "none.toml"])
    plain = capsys.readouterr().err
    assert 2 == run(["show", "none.toml"], debug=True)
    debugged = capsys.readouterr().err

    assert no_traceback(plain)
    assert "There is no file none.toml: check the name.\n" == plain
    assert debugged.startswith("Traceback")
    assert debugged.endswith(plain)


@pytest.mark.parametrize("arguments", [("--debug", "show", "x"), ("show", "--debug", "x"), ("show", "x", "--debug")])
def test_debug_may_stand_anywhere(arguments: tuple[str, ...], tmp_path: Path) -> None:
    ran = Machine(tmp_path).run(*arguments)

    assert 2 == ran.code
    assert ran.err.startswith("Traceback")


@pytest.mark.parametrize(("error", "code", "key"), [
    (refuse("shoe-no-system", text="39"), 2, "shoe-no-system"),
    (Surroundings(Problem.of("no-speaker")), 1, "no-speaker"),
    (JournalMissing(Path("x")), 2, "journal-missing"),
    (DiskFull(Path("x")), 1, "disk-full"),
    (OSError(24, "Too many open files"), 1, "system-refused"),
    (ZeroDivisionError("division by zero"), 1, "unexpected"),
])  # fmt: skip
def test_every_error_becomes_a_sentence_and_a_code(
    error: Exception, code: int, key: str, capsys: pytest.CaptureFixture[str]
) -> None:
    refusal = explained(error)

    assert (code, [key]) == (refusal.exit_code, [problem.key for problem in refusal.problems])
    assert code == tell(refusal)
    (line,) = capsys.readouterr().err.splitlines()
    assert line.endswith(".")


def test_what_only_the_system_knows_is_no_refusal_of_ours() -> None:
    assert as_refusal(OSError(5, "Input/output error")) is None
    assert as_problem(ZeroDivisionError()) is None


def test_the_same_sentence_is_told_once(capsys: pytest.CaptureFixture[str]) -> None:
    problem = Problem.of("no-speaker")

    assert 2 == tell(Refused(problem, problem))
    assert 1 == len(capsys.readouterr().err.splitlines())


def test_a_problem_without_a_sentence_is_told_all_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    assert 1 == tell(Surroundings(Problem.of("never-heard-of", "row 3", loops=4)))
    assert "never-heard-of row 3 {'loops': 4}\n" == capsys.readouterr().err


def test_output_in_another_encoding_loses_signs_and_nothing_else(tmp_path: Path) -> None:
    machine = Machine(tmp_path)
    ran = machine.run("phrases", "--json", also={"PYTHONIOENCODING": "ascii"})
    shown = machine.run("listen", "none.wav", also={"PYTHONIOENCODING": "ascii"})

    assert (0, "") == (ran.code, ran.err)
    assert 2 == shown.code


def test_closed_streams_are_borne(tmp_path: Path) -> None:
    machine = Machine(tmp_path, "no_devices")
    plan = machine.plan()
    for number, options in ((0, ("knit", plan, "--from", "keys", "--to", "none")), (1, ("show", plan)),
                            (0, ("knit", "--recogniser", "typed", "--to", "none")), (0, ())):  # fmt: skip
        ran = machine.run(*options, before=Closing(number))

        assert 0 == ran.code, ran
        assert no_traceback(ran.err)


class Closing:
    """Closes a standard stream in the new process before the program starts."""

    def __init__(self, number: int) -> None:
        self.number = number

    def __call__(self) -> None:
        """Called there."""
        import os

        os.close(self.number)


# --- packages of other programs ------------------------------------------------------------------------------------


def test_our_own_packages_are_known() -> None:
    assert packages.stranger() is None


def test_a_package_that_is_not_there_is_noticed() -> None:
    assert packages.Stranger("no_such_package", "nowhere") == packages.stranger(("plans", "no_such_package"))


@pytest.mark.parametrize("name", ["plans", "models"])
def test_another_programs_package_in_the_way_is_told_with_its_place(name: str, tmp_path: Path) -> None:
    other = tmp_path / "elsewhere" / name / "__init__.py"
    other.parent.mkdir(parents=True)
    other.write_text("raise SystemExit('never run')\n", encoding="utf-8")
    ran = Machine(tmp_path).run("phrases", where=tmp_path / "elsewhere")

    assert (1, "") == (ran.code, ran.out)
    told = f"Another program's “{name}” is in the way, at {other}: install this program in an environment of its own."
    assert told == ran.complaint


@pytest.mark.parametrize("name", ["plans", "models"])
def test_a_package_written_over_by_another_program_is_told(name: str, tmp_path: Path) -> None:
    """As pip does where two distributions hold a package of one name."""
    installed = tmp_path / "installed"
    for package in ("assistant", "plans"):
        shutil.copytree(ROOT / package, installed / package, ignore=shutil.ignore_patterns("__pycache__"))
    (installed / "models").mkdir()
    shutil.copy(ROOT / "models" / "__init__.py", installed / "models")
    (installed / name / "__init__.py").write_text('"""Of somebody else."""\n', encoding="utf-8")
    ran = Machine(tmp_path).run("plan", *PRACTICE_OPTIONS, where=installed, also={"PYTHONPATH": str(installed)})

    assert (1, "") == (ran.code, ran.out)
    assert ran.complaint.startswith(f"Another program's “{name}” is in the way, at {installed / name}")
