"""A recording in place of the microphone: the same path, faster than real time, the same every time."""

import time
import wave
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest

from assistant.command_line import run
from assistant.journal import Journal
from assistant.rehearsal import script
from plans.files import write_wishes
from plans.making import Made, make_plan
from plans.quantities import Length
from plans.wishes import Swatch, Wishes
from tests.assistant.sitting import PRACTICE
from tests.end_to_end.driving import misheard, speak

ADULT = Wishes(
    name="adult",
    swatch=Swatch(stitches=Fraction(30), rounds=Fraction(42)),
    foot_length=Length.parse("24.5cm"),
    ball=Length.parse("23cm"),
)
"""Invented."""
PAUSE_S = 0.9


def recorded(commands: list[str], folder: Path) -> Path:
    """All commands spoken by another voice than the program's, pauses between; a little noise, as rooms have."""
    parts, rate_hz = [], 22_050
    for words in commands:
        with wave.open(str(speak(words, folder))) as file:
            rate_hz = file.getframerate()
            spoken = np.frombuffer(file.readframes(file.getnframes()), "<i2")
        parts += [np.zeros(int(PAUSE_S * rate_hz), np.int16), spoken]
    parts.append(np.zeros(int(PAUSE_S * rate_hz), np.int16))
    sound = np.concatenate(parts)
    noise = np.random.default_rng(1).normal(0, 3, len(sound))
    target = folder / "take.wav"
    with wave.open(str(target), "wb") as file:
        file.setparams((1, 2, rate_hz, 0, "NONE", ""))
        file.writeframes(np.clip(sound + noise, -32_768, 32_767).astype("<i2").tobytes())
    return target


def knitted(wishes: Wishes, commands: list[str], folder: Path) -> tuple[list[str], float, float]:
    """What was heard, in order; seconds of the recording; seconds it took."""
    plan, journal = folder / "plan.toml", folder / "journal.sqlite"
    plan.write_text(write_wishes(wishes), encoding="utf-8")
    take = recorded(commands, folder)
    with wave.open(str(take)) as file:
        long_s = file.getnframes() / file.getframerate()
    began = time.monotonic()
    code = run(["knit", str(plan), "--journal", str(journal), "--from", str(take), "--to", str(folder / "answers.wav")])
    took_s = time.monotonic() - began
    assert 0 == code
    with Journal.read(journal) as opened:
        return [entry.heard for entry in opened.entries() if entry.heard is not None], long_s, took_s


def commands_of(wishes: Wishes) -> list[str]:
    made = make_plan(wishes)
    assert isinstance(made, Made)
    return list(script(made.plan))


@pytest.mark.parametrize(("wishes", "count"), [(PRACTICE, 40), pytest.param(ADULT, None, marks=pytest.mark.nightly)])
def test_a_recording_drives_a_pair(wishes: Wishes, count: int | None, tmp_path: Path) -> None:
    commands = commands_of(wishes)[:count]
    heard, long_s, took_s = knitted(wishes, commands, tmp_path)
    wrong = misheard(commands, heard)

    print(f"{len(commands)} commands, {wrong} misheard or missed; {took_s / long_s:.2f} of real time, answers included")
    assert wrong <= len(commands) // 5
    with wave.open(str(tmp_path / "answers.wav")) as answers:
        assert answers.getnframes() / answers.getframerate() > long_s


def test_the_same_recording_gives_the_same_journal(tmp_path: Path) -> None:
    commands = commands_of(PRACTICE)[:8]
    heard = []
    for number in range(2):
        folder = tmp_path / str(number)
        folder.mkdir()
        heard.append(knitted(PRACTICE, commands, folder)[0])

    assert heard[0] == heard[1]


