"""What she sets by voice, key or option is so again the next time, after a crash too; a recording sets nothing."""

import signal
import time
from pathlib import Path

import pytest

from assistant.inputs import OutputWanted
from assistant.languages.verbosity import Verbosity
from assistant.settings import Settings, load_settings
from assistant.voice import Output
from assistant.wiring import Routes
from plans.conversation import Problem
from tests.assistant.running import Machine
from tests.assistant.sitting import sitting_down

TYPED = ("--recogniser", "typed", "--to", "none")


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(tmp_path)


def kept(machine: Machine) -> Settings:
    return load_settings(machine.home / "config" / "roundcaller").settings


def test_faster_and_softer_are_so_again_the_next_time(machine: Machine) -> None:
    first = machine.run("knit", machine.plan(), *TYPED, typed="faster\nfaster\nsofter\n")
    second = machine.run("knit", *TYPED, typed="louder\n")

    assert (0, 0) == (first.code, second.code)
    assert "Louder." == second.lines[-1]
    assert Settings(words_a_minute=Settings().words_a_minute + 40) == kept(machine)


def test_a_crash_loses_none_of_it(machine: Machine) -> None:
    process = machine.start("knit", machine.plan(), *TYPED)
    assert process.stdin is not None
    assert process.stdout is not None
    process.stdin.write("slower\n")
    process.stdin.flush()
    while "Slower." not in process.stdout.readline():
        time.sleep(0.01)
    process.send_signal(signal.SIGKILL)
    process.communicate()

    assert Settings().words_a_minute - 20 == kept(machine).words_a_minute


def test_the_key_for_voice_and_lines_is_remembered(machine: Machine) -> None:
    machine.run("knit", machine.plan(), "--from", "keys", "--to", "none", typed="v\t")

    assert Output.LINES is kept(machine).output


def test_options_are_remembered_and_the_last_one_counts(machine: Machine) -> None:
    machine.run("knit", machine.plan(), *TYPED, "--rate", "200", "--output", "lines", "--wording", "terse")
    ran = machine.run("knit", *TYPED, "--rate", "220", typed="how many\n")

    assert Settings(words_a_minute=220, output=Output.LINES, wording=Verbosity.TERSE) == kept(machine)
    assert " on this half" not in ran.lines[-1]


def test_a_voice_is_taken_by_a_part_of_its_name_and_an_unknown_one_is_told(machine: Machine) -> None:
    plan = machine.plan()
    taken = machine.run("knit", plan, "--recogniser", "typed", "--to", "out.wav", "--voice", "scotland")
    unknown = machine.run("knit", plan, *TYPED, "--voice", "nobody")
    several = machine.run("knit", plan, *TYPED, "--voice", "america")

    assert (0, "English (Scotland)") == (taken.code, kept(machine).voice)
    assert (2, 2) == (unknown.code, several.code)
    assert unknown.complaint.startswith("There is no voice named “nobody”: there is English (")
    assert several.complaint.startswith("Several voices are meant by “america”, English (America); English (")


def test_a_voice_that_is_gone_is_told_and_the_usual_one_speaks(machine: Machine) -> None:
    folder = machine.home / "config" / "roundcaller"
    folder.mkdir(parents=True)
    (folder / "settings.toml").write_text('voice = "Aunt Mathilda"\n')
    ran = machine.run("knit", machine.plan(), "--recogniser", "typed", "--to", "out.wav")

    assert (0, "") == (ran.code, ran.err)
    assert "The voice Aunt Mathilda is not here now: I use the usual one." == ran.lines[0]
    assert "Aunt Mathilda" == kept(machine).voice


def test_a_damaged_file_is_told_and_put_aside_and_she_knits(machine: Machine) -> None:
    folder = machine.home / "config" / "roundcaller"
    folder.mkdir(parents=True)
    (folder / "settings.toml").write_text("rate = fast")
    ran = machine.run("knit", machine.plan(), *TYPED, typed="next\n")

    assert 0 == ran.code
    assert ran.complaint.startswith(f"The settings in {folder}/settings.toml are damaged and were put aside as ")
    assert "rate = fast" == (folder / "settings.toml.damaged-1").read_text()


def test_where_nothing_can_be_remembered_it_is_told_once_and_holds_until_the_end(machine: Machine) -> None:
    (machine.home / "config").write_text("in the way")
    ran = machine.run("knit", machine.plan(), *TYPED, typed="faster\nfaster\nnext\n")

    told = [line for line in ran.lines if line.startswith("The settings cannot be written to ")]
    assert (0, 1) == (ran.code, len(told))
    assert ["Faster.", told[0], "Faster."] == ran.lines[-4:-1]


def test_an_option_out_of_its_limits_is_told(machine: Machine) -> None:
    ran = machine.run("knit", machine.plan(), *TYPED, "--rate", "5")

    assert (2, "") == (ran.code, ran.out)
    assert "--rate" in ran.complaint
    assert Settings() == kept(machine)


def test_before_it_is_said_it_is_remembered_and_only_what_changed(tmp_path: Path) -> None:
    changes: list[dict[str, object]] = []

    def remember(**choices: object) -> Problem | None:
        changes.append(choices)
        return None

    with sitting_down(tmp_path / "j.sqlite", remember=remember) as table:
        table.hear("next", "where am i")
        assert [] == changes
        table.hear("faster")
        table.session.take(OutputWanted())

    usual = Settings()
    assert [(usual.words_a_minute + 20, Output.BOTH), (usual.words_a_minute + 20, Output.VOICE)] == [
        (choices["words_a_minute"], choices["output"]) for choices in changes
    ]


@pytest.mark.parametrize(("hear_from", "recogniser", "is_recording"), [
    ("take.wav", "pocketsphinx", True), ("-", "pocketsphinx", True), ("-", "typed", False), ("mic", "vosk", False),
    ("keys", "pocketsphinx", False),
])  # fmt: skip
def test_only_what_she_does_now_is_hers(hear_from: str, recogniser: str, is_recording: bool) -> None:
    assert is_recording is Routes(hear_from, "none", recogniser).is_recording
