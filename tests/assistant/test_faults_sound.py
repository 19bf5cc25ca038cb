"""No microphone, no speaker, no PortAudio, no synthesiser, no model, wrong sound files: told once, and nothing lost."""

import subprocess
import wave
from pathlib import Path

import numpy as np
import pytest

from assistant.command_line import run
from assistant.journal import Journal
from tests.assistant.running import Machine, Ran, no_traceback

NO_PORTAUDIO = (
    "The PortAudio library is missing: install it (on Debian: apt install libportaudio2), "
    "or use keys and sound files."
)  # fmt: skip
NO_MICROPHONE = "There is no microphone: plug one in, or use --from keys."
NO_SPEAKER = "There is no speaker: plug one in, or use --to none."
NO_VOICE = "There is no voice: install espeak-ng (on Debian: apt install espeak-ng), or use --to none."


def events(journal: Path) -> list[str]:
    """What a journal holds, which is whole."""
    if not journal.exists():
        return []
    with Journal.read(journal) as opened:
        return [entry.event.kind for entry in opened.entries()]


def knit(machine: Machine, *options: object, typed: str = "") -> Ran:
    ran = machine.run("knit", machine.plan(), *options, typed=typed)
    assert no_traceback(ran.out, ran.err)
    return ran


@pytest.mark.parametrize(("lacks", "options", "sentence"), [
    ("no_portaudio", ("--from", "mic", "--to", "none"), NO_PORTAUDIO),
    ("no_portaudio", ("--from", "keys", "--to", "speaker"), NO_PORTAUDIO),
    ("no_portaudio", (), NO_PORTAUDIO),
    ("no_devices", ("--from", "mic", "--to", "none"), NO_MICROPHONE),
    ("no_devices", ("--from", "keys", "--to", "speaker"), NO_SPEAKER),
    ("no_devices", (), NO_MICROPHONE),
    ("no_espeak", ("--from", "keys", "--to", "answers.wav"), NO_VOICE),
])  # fmt: skip
def test_what_the_machine_lacks_is_told_before_anything_begins(
    lacks: str, options: tuple[str, ...], sentence: str, tmp_path: Path
) -> None:
    machine = Machine(tmp_path, lacks)
    ran = knit(machine, *options, typed=" ")

    assert (1, "", sentence) == (ran.code, ran.out, ran.complaint)
    assert [] == events(machine.journal)
    assert not (tmp_path / "answers.wav").exists()


@pytest.mark.parametrize("lacks", ["no_portaudio", "no_devices", "no_espeak"])
def test_keys_and_typed_words_need_none_of_it(lacks: str, tmp_path: Path) -> None:
    machine = Machine(tmp_path, lacks)
    pressed = knit(machine, "--from", "keys", "--to", "none", typed="  w")
    typed = machine.run("knit", "--recogniser", "typed", "--to", "none", typed="next\nwhere am i\n")

    assert (0, "") == (pressed.code, pressed.err)
    assert (0, "") == (typed.code, typed.err)
    assert 3 == events(machine.journal).count("advanced")


def test_a_voice_goes_into_a_file_without_portaudio(tmp_path: Path) -> None:
    machine = Machine(tmp_path, "no_portaudio")
    ran = knit(machine, "--recogniser", "typed", "--to", "answers.wav", typed="next\n")

    assert (0, "") == (ran.code, ran.err)
    with wave.open(str(tmp_path / "answers.wav")) as answers:
        assert answers.getnframes() > answers.getframerate()


@pytest.mark.parametrize("lacks", ["no_portaudio", "no_devices"])
def test_listening_to_a_microphone_that_is_not_there_is_told(lacks: str, tmp_path: Path) -> None:
    ran = Machine(tmp_path, lacks).run("listen", "--mic")
    sentence = NO_PORTAUDIO if lacks == "no_portaudio" else NO_MICROPHONE

    assert (1, "", sentence) == (ran.code, ran.out, ran.complaint)


@pytest.mark.parametrize(("lacks", "why"), [
    (("no_devices",), [NO_SPEAKER, NO_MICROPHONE]),
    (("no_portaudio",), [NO_PORTAUDIO]),
    (("no_espeak", "no_devices"), [NO_VOICE, NO_MICROPHONE]),
])  # fmt: skip
def test_alone_it_does_with_lines_and_typing_and_says_why(
    lacks: tuple[str, ...], why: list[str], tmp_path: Path
) -> None:
    machine = Machine(tmp_path, *lacks)
    ran = machine.run(typed="yes\n22\n30\nyes\nnext\n")

    assert (0, why) == (ran.code, ran.err.splitlines())
    assert ["Hello. I call the rounds of a pair of socks, and you say “next” when a step is done.",
            "I cannot speak: read the lines."] == ran.lines[:2]  # fmt: skip
    assert "advanced" in events(machine.journal)
    assert ["socks.toml"] == [file.name for file in machine.plans.iterdir()]


def test_a_vosk_model_that_is_not_there_is_told_with_its_cure(tmp_path: Path) -> None:
    machine = Machine(tmp_path, "no_devices")
    take = sound_file(tmp_path / "take.wav", 16_000)
    public = ("--recogniser", "vosk", "--model", "vosk-small-en-us")
    cure = "The model vosk-small-en-us is not on this machine: type “roundcaller models fetch vosk-small-en-us”."

    for ran in (
        knit(machine, "--from", take, "--to", "none", *public),
        machine.run("listen", take, *public),
        machine.run("models", "verify", "vosk-small-en-us"),
    ):
        assert (1, "", cure) == (ran.code, ran.out, ran.complaint)
    assert [] == events(machine.journal)


def test_a_recogniser_that_does_not_load_is_told(tmp_path: Path) -> None:
    machine = Machine(tmp_path, "no_pocketsphinx")
    take = sound_file(tmp_path / "take.wav", 16_000)
    ran = knit(machine, "--from", take, "--to", "none", "--recogniser", "pocketsphinx")

    assert (1, "") == (ran.code, ran.out)
    assert ran.complaint.startswith("The recogniser pocketsphinx is not usable here: ")
    assert [] == events(machine.journal)


def test_a_model_that_is_no_model_is_told(tmp_path: Path) -> None:
    take = sound_file(tmp_path / "take.wav", 16_000)
    ran = Machine(tmp_path).run("listen", take, "--recogniser", "vosk", "--model", "x")

    assert (2, "") == (ran.code, ran.out)
    assert ran.complaint.startswith("There is no model “x”: choose from pocketsphinx-en-us")


def sound_file(path: Path, rate_hz: int, *, seconds: float = 0.5, channels: int = 1) -> Path:
    with wave.open(str(path), "wb") as file:
        file.setparams((channels, 2, rate_hz, 0, "NONE", ""))
        file.writeframes(np.zeros(int(seconds * rate_hz) * channels, np.int16).tobytes())
    return path


@pytest.mark.parametrize("rate_hz", [1_000, 3_999, 1_000_000])
def test_a_sample_rate_that_cannot_be_used_is_told_with_one_that_can(rate_hz: int, tmp_path: Path) -> None:
    machine = Machine(tmp_path)
    take = sound_file(tmp_path / "take.wav", rate_hz)
    sentence = (
        f"{take} is of a kind that cannot be read ({rate_hz} Hz): "
        "save it as a WAV of 16-bit samples, 16000 a second."
    )  # fmt: skip

    for ran in (machine.run("listen", take), knit(machine, "--from", take, "--to", "none")):
        assert (2, "", sentence) == (ran.code, ran.out, ran.complaint)
    assert [] == events(machine.journal)


def run_here(capsys: pytest.CaptureFixture[str], *arguments: object) -> Ran:
    """In this process: sooner done."""
    code = run([str(argument) for argument in arguments])
    caught = capsys.readouterr()
    return Ran(code, caught.out, caught.err)


@pytest.mark.parametrize("rate_hz", [8_000, 11_025, 16_000, 44_100, 48_000, 96_000])
def test_every_usual_sample_rate_can_be_used(
    rate_hz: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ran = run_here(capsys, "listen", sound_file(tmp_path / "take.wav", rate_hz, channels=2))

    assert (0, "", "") == (ran.code, ran.out, ran.err)


WRONG_FILES = {
    "missing": (None, "There is no sound file {take}: check the name."),
    "empty": (b"", "There is no sound in {take}: give another file."),
    "text": (b"cast on, then knit\n" * 20, "{take} is not a sound file that can be read: give a WAV file."),
    "cut off": (b"RIFF\x24\x00\x00\x00WAVEfmt ", "{take} is not a sound file that can be read: give a WAV file."),
}


@pytest.mark.parametrize(("content", "sentence"), WRONG_FILES.values(), ids=WRONG_FILES)
def test_a_recording_that_cannot_be_heard_begins_no_pair(
    content: bytes | None, sentence: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    machine, take = Machine(tmp_path), tmp_path / "take.wav"
    knitting = ("knit", machine.plan(), "--journal", machine.journal, "--from", take, "--to", "none")
    if content is not None:
        take.write_bytes(content)

    for ran in (run_here(capsys, "listen", take), run_here(capsys, *knitting)):
        assert (2, "", sentence.format(take=take)) == (ran.code, ran.out, ran.complaint)
    assert [] == events(machine.journal)


def test_a_recording_without_sound_is_told(tmp_path: Path) -> None:
    take = sound_file(tmp_path / "take.wav", 16_000, seconds=0)
    ran = Machine(tmp_path).run("listen", take)

    assert (2, f"There is no sound in {take}: give another file.") == (ran.code, ran.complaint)


def test_what_was_heard_before_a_bad_file_is_told_all_the_same(tmp_path: Path) -> None:
    take = tmp_path / "next.wav"
    subprocess.run(["espeak-ng", "-v", "en-us", "-s", "150", "-w", str(take), "next"], check=True)
    ran = Machine(tmp_path).run("listen", take, "none.wav")

    assert (2, "There is no sound file none.wav: check the name.") == (ran.code, ran.complaint)
    assert 1 == len(ran.lines)


def test_no_file_of_another_kind_is_spoken_over(tmp_path: Path) -> None:
    machine = Machine(tmp_path)
    plan = machine.plan()
    before = plan.read_bytes()
    ran = machine.run("knit", plan, "--from", "keys", "--to", plan)

    assert (2, "") == (ran.code, ran.out)
    assert f"{plan} is there already and is no sound file: it was not touched, choose another name." == ran.complaint
    assert before == plan.read_bytes()


def test_the_recording_itself_is_not_spoken_over(tmp_path: Path) -> None:
    machine, take = Machine(tmp_path), sound_file(tmp_path / "take.wav", 16_000)
    before = take.read_bytes()
    ran = knit(machine, "--from", take, "--to", "./take.wav")

    assert (2, "--to must not be the file of --from: choose another name.") == (ran.code, ran.complaint)
    assert before == take.read_bytes()


def test_a_voice_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    machine = Machine(tmp_path)
    ran = knit(machine, "--from", "keys", "--to", tmp_path / "nowhere" / "answers.wav")

    assert (1, "") == (ran.code, ran.out)
    assert ran.complaint.endswith("answers.wav cannot be written: choose another place, or make room on the disk.")
    assert [] == events(machine.journal)
