"""What would be heard, what can be said, which models there are, and the demonstration."""

import json
import os
import subprocess
import wave
from pathlib import Path

import numpy as np
import pytest

from assistant.command_line import run
from assistant.rehearsal import INVENTED, script
from models.catalogue import catalogue
from plans.making import Made, make_plan
from tests.assistant.running import Machine, Ran
from tests.languages_under_test import ENGLISH

FIELDS = {"began_s", "ended_s", "words", "confidence", "command", "number", "outcome", "why"}
SPOKEN = ("next", "where am i", "i have thirty two")


@pytest.fixture(scope="module")
def take(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Three commands, spoken by a synthetic voice, a second apart."""
    folder = tmp_path_factory.mktemp("take")
    parts = []
    for number, words in enumerate(SPOKEN):
        file = folder / f"{number}.wav"
        subprocess.run(["espeak-ng", "-v", "en-us", "-s", "150", "-w", str(file), words], check=True)
        with wave.open(str(file)) as spoken:
            rate_hz = spoken.getframerate()
            parts += [np.zeros(rate_hz, np.int16), np.frombuffer(spoken.readframes(spoken.getnframes()), "<i2")]
    sound = np.concatenate((*parts, np.zeros(rate_hz, np.int16)))
    target = folder / "take.wav"
    with wave.open(str(target), "wb") as whole:
        whole.setparams((1, 2, rate_hz, 0, "NONE", ""))
        whole.writeframes(sound.tobytes())
    return target


def here(capsys: pytest.CaptureFixture[str], *arguments: object) -> Ran:
    capsys.readouterr()
    code = run([str(argument) for argument in arguments])
    caught = capsys.readouterr()
    return Ran(code, caught.out, caught.err)


def test_json_lines_tell_what_was_heard_and_what_would_be_done(
    take: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ran = here(capsys, "listen", take, "--json")
    lines = [json.loads(line) for line in ran.lines]
    names = {*ENGLISH.phrases.commands, *ENGLISH.phrases.answers, None}

    assert (0, "") == (ran.code, ran.err)
    assert all(line.keys() == FIELDS for line in lines)
    assert all(line["command"] in names and line["outcome"] in {"act", "ask", "ignore"} for line in lines)
    assert all(line["began_s"] < line["ended_s"] and 0 <= line["confidence"] <= 1 for line in lines)
    assert all(line["why"] for line in lines)
    assert [line["began_s"] for line in lines] == sorted(line["began_s"] for line in lines)
    assert "next" in [line["command"] for line in lines]
    assert {line["number"] for line in lines if line["command"] == "i_have"} <= {32}


def test_plain_lines_tell_the_same(take: Path, capsys: pytest.CaptureFixture[str]) -> None:
    told = here(capsys, "listen", take)
    lines = [json.loads(line) for line in here(capsys, "listen", take, "--json").lines]

    assert len(lines) == len(told.lines)
    for line, plain in zip(lines, told.lines, strict=True):
        assert f"“{line['words']}”" in plain
        assert line["outcome"] in plain


def test_several_files_are_told_apart(take: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = [json.loads(line) for line in here(capsys, "listen", take, take, "--json").lines]

    assert {str(take)} == {line["file"] for line in lines}
    assert lines[: len(lines) // 2] == lines[len(lines) // 2 :]


def test_a_recording_may_come_through_a_pipe(take: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    direct = here(capsys, "listen", take, "--json")
    machine = Machine(tmp_path)
    pipe = tmp_path / "pipe.wav"
    os.mkfifo(pipe)
    with machine.start("listen", pipe, "--json") as process:
        pipe.write_bytes(take.read_bytes())
        out, err = process.communicate(timeout=60)

    assert (0, "") == (process.returncode, err)
    assert direct.out == out


# --- phrases -------------------------------------------------------------------------------------------------------


def test_phrases_as_json_say_what_moves_the_place_and_what_is_never_nought(capsys: pytest.CaptureFixture[str]) -> None:
    form = json.loads(here(capsys, "phrases", "--json").out)
    moving = {command["name"] for command in form["commands"] if command.get("moves")}
    never_nought = {command["name"] for command in form["commands"] if command.get("least") == 1}

    assert {"next", "undo", "redo", "back", "forward", "at_round", "ripped_back"} == moving
    assert {"back", "forward", "at_round", "ripped_back"} == never_nought
    assert set(form["slots"]["number"]) - set(form["slots"]["number_above_nought"]) == {"zero", "nought", "none"}


def test_phrases_as_json_have_the_form_agreed(capsys: pytest.CaptureFixture[str]) -> None:
    ran = here(capsys, "phrases", "--language", "en", "--json")
    form = json.loads(ran.out)

    assert (0, "", "en") == (ran.code, ran.err, form["language"])
    for command in form["commands"]:
        assert {"name", "phrases"} == command.keys() - {"moves", "least"}
        assert command["phrases"] and all(isinstance(text, str) and text for text in command["phrases"])
    commands = {command["name"] for command in form["commands"]}
    promised = {
        "next", "back", "forward", "at_round", "ripped_back", "where_am_i", "undo", "redo", "again", "how_many",
        "how_far", "what_next", "finer", "coarser", "slower", "faster", "louder", "softer", "pause_listening",
        "listen_again", "mark", "marks", "i_have", "help", "stop",
    }  # fmt: skip
    assert promised <= commands


def test_every_slot_of_a_phrase_is_listed_and_numbers_go_from_0_to_999(capsys: pytest.CaptureFixture[str]) -> None:
    form = json.loads(here(capsys, "phrases", "--json").out)
    used = {
        word.strip("{}")
        for command in form["commands"] for phrase in command["phrases"] for word in phrase.split() if "{" in word
    }  # fmt: skip
    understood = {ENGLISH.numbers.understood(words) for words in form["slots"]["number"]}

    assert used <= form["slots"].keys()
    assert {"number"} <= used
    assert set(range(1000)) == understood
    assert all(form["slots"].values())


def test_plain_phrases_are_a_command_a_line(capsys: pytest.CaptureFixture[str]) -> None:
    lines = here(capsys, "phrases").lines

    assert [line.partition(":")[0] for line in lines] == list(ENGLISH.phrases.commands)


# --- models --------------------------------------------------------------------------------------------------------


def test_models_are_listed_a_line_each(tmp_path: Path) -> None:
    ran = Machine(tmp_path).run("models", "list")

    assert (0, "") == (ran.code, ran.err)
    assert list(catalogue()) == [line.partition(";")[0] for line in ran.lines]
    assert any("not here: roundcaller models fetch vosk-small-en-us" in line for line in ran.lines)
    assert any("here: " in line and "not here" not in line for line in ran.lines)


def test_models_that_came_along_are_verified(tmp_path: Path) -> None:
    ran = Machine(tmp_path).run("models", "verify")

    assert (0, "") == (ran.code, ran.err)
    packaged = ("pocketsphinx-en-us", "commands-en", "voice-activity", "whisper-tiny-en")
    assert {f"{name}: verified." for name in packaged} == set(ran.lines)


def test_a_model_without_a_network_is_told_with_what_needs_none(tmp_path: Path) -> None:
    """The name of no server can be looked up: as on a machine that is offline."""
    machine = Machine(tmp_path, "no_network")
    ran = machine.run("models", "fetch", "vosk-small-en-us", "--accept-unknown")

    assert (1, "") == (ran.code, ran.out)
    assert ran.complaint.startswith("The model vosk-small-en-us cannot be fetched, ")
    assert ran.complaint.endswith("or use --recogniser pocketsphinx, which needs no fetching.")


# --- demo ----------------------------------------------------------------------------------------------------------


def test_without_a_voice_there_is_no_demonstration(tmp_path: Path) -> None:
    machine = Machine(tmp_path, "no_espeak")
    ran = machine.run("demo", "--to", "demo.wav")

    assert (1, "") == (ran.code, ran.out)
    assert ran.complaint.startswith("There is no voice: install espeak-ng")
    assert not (tmp_path / "demo.wav").exists()


@pytest.mark.nightly
def test_the_demonstration_is_heard_as_it_was_said_and_goes_into_a_file_without_a_speaker(tmp_path: Path) -> None:
    made = make_plan(INVENTED)
    assert isinstance(made, Made)
    ran = Machine(tmp_path, "no_devices").run("demo")

    assert (0, "That was the last of it: both socks are done.") == (ran.code, ran.lines[-1])
    assert "commands were heard as they were said." in ran.err
    assert len(ran.lines) > len(tuple(script(made.plan)))
    with wave.open(str(tmp_path / "roundcaller-demo.wav")) as answers:
        assert answers.getnframes() / answers.getframerate() > 60
