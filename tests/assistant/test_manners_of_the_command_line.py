"""One sentence for every wrong command line, in her language; and an interrupt at any moment is quiet."""

import shutil
from pathlib import Path

import pytest

from assistant.command_line import run
from tests.assistant.running import Machine, no_traceback
from tests.languages_under_test import TEST_LANGUAGES

TYPED = ("--recogniser", "typed", "--to", "none")


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(tmp_path)


@pytest.fixture
def polish(machine: Machine) -> Machine:
    """A machine with a language of the user's own beside ours."""
    shutil.copytree(TEST_LANGUAGES / "pl", machine.home / "data" / "roundcaller" / "languages" / "pl")
    return machine


@pytest.mark.parametrize(("arguments", "sentence"), [
    (("journal",), "“roundcaller journal” needs one of these after it: show, check, export, rescue."),
    (("models",), "“roundcaller models” needs one of these after it: list, fetch, verify."),
    (("models", "burn"), "“roundcaller models” has no “burn”: choose from list, fetch, verify."),
    (("plan",), "--out must be given: see “roundcaller plan --help”."),
    (("plan", "--out"), "--out needs a value after it: see “roundcaller"),
    (("plan", "--wool", "red", "--out", "x.toml"), "There is no option --wool: see “roundcaller plan --help”."),
    (("knit", "--grain", "fine"), "--grain takes one of follow, group, half, side, round."),
    (("settings", "--rate", "fast"), "--rate takes a whole number from 80 to 450."),
    (("journal", "export", "x.sqlite", "--take", "0"), "--take takes a whole number."),
    (("journal", "show"), "FILE is missing: see “roundcaller journal show --help”."),
    (("show", "a.toml", "b.toml"), "“b.toml” is too much after “roundcaller show”"),
    (("show",), "FILE is missing: name a plan file, or give --schema."),
    (("--voice", "en", "knit"), "--voice belongs after knit: write it there."),
    (("knit", "--model", "x"), "--model is for --recogniser vosk: give both, or neither."),
])  # fmt: skip
def test_a_wrong_command_line_is_one_sentence(
    arguments: tuple[str, ...], sentence: str, capsys: pytest.CaptureFixture[str]
) -> None:
    code = run(arguments)
    caught = capsys.readouterr()

    assert (2, "") == (code, caught.out)
    assert caught.err.startswith(sentence)
    assert 1 == caught.err.count("\n")


def test_messages_follow_the_language_named_and_the_one_remembered(polish: Machine) -> None:
    named = polish.run("show", "none.toml", "--language", "pl")
    written = polish.run("show", "none.toml", "--language=pl")
    english = polish.run("show", "none.toml")
    polish.run("settings", "--language", "pl")
    remembered = polish.run("show", "none.toml")
    usage = polish.run("journal")

    assert named.complaint == written.complaint == remembered.complaint
    assert "There is no file none.toml: check the name." == english.complaint
    assert english.complaint != named.complaint
    assert "Po „roundcaller journal” brakuje jednego z: show, check, export, rescue." == usage.complaint


def test_settings_and_the_first_minutes_speak_it_too(polish: Machine) -> None:
    shown = polish.run("settings", "--language", "pl")
    begun = Machine(polish.home, "no_devices").run(typed="tak\n22\n30\n" + "pomiń\n" * 4 + "tak\ndalej\n")

    assert "Język: pl." in shown.lines
    assert "Zwykłe zdania." in shown.lines
    assert 0 == begun.code
    english = {"Hello", "Please", "pair", "Shall", "sock", "There", "speaker", "microphone"}
    assert not english & set(f"{begun.out} {begun.err}".replace(",", " ").replace(".", " ").split())


def test_damaged_settings_are_told_in_the_language_named(polish: Machine) -> None:
    folder = polish.home / "config" / "roundcaller"
    folder.mkdir(parents=True)
    (folder / "settings.toml").write_text("[")
    wrong_too = polish.run("show", "none.toml", "--language", "pl")
    told = polish.run("settings", "--language", "pl")

    assert wrong_too.complaint.startswith("Nie ma") or "none.toml" in wrong_too.complaint
    assert told.err.startswith("Ustawienia są zepsute")
    assert "[" == (folder / "settings.toml.damaged-1").read_text()


def test_a_language_that_is_nowhere_is_told(machine: Machine) -> None:
    assert "There is no language “xx”: choose from en." == machine.run("phrases", "--language", "xx").complaint


@pytest.mark.parametrize("module", ["click", "pydantic", "numpy", "assistant.program", "assistant.verbs.knit",
                                    "hassil.parse_expression", "fluent.runtime"])  # fmt: skip
def test_an_interrupt_in_the_first_instants_is_quiet(module: str, tmp_path: Path) -> None:
    machine = Machine(tmp_path, "interrupted")
    ran = machine.run("knit", machine.plan(), *TYPED, also={"INTERRUPTED_AT": module})

    assert 130 == ran.code
    assert no_traceback(ran.out, ran.err)
    assert "Error" not in ran.err


def test_without_an_interrupt_the_same_machine_knits(tmp_path: Path) -> None:
    machine = Machine(tmp_path, "interrupted")
    ran = machine.run("knit", machine.plan(), *TYPED, typed="next\n", also={"INTERRUPTED_AT": "never.imported"})

    assert (0, "") == (ran.code, ran.err)
