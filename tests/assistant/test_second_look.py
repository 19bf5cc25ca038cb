"""A second opinion: asked where it is wanted and can be had in time, told about where it cannot."""

import subprocess
import wave
from pathlib import Path

import numpy as np
import pytest

from assistant.equipment import Present
from assistant.second_look import SECOND_LOOK_PROBLEMS, second_opinion
from assistant.settings import Settings, load_settings
from models.errors import SecondOpinionMissing
from models.recordings import read_sound
from plans.conversation import Problem
from tests.assistant.running import Machine
from tests.fakes import TextScorer


def scorer() -> TextScorer:
    return TextScorer("next")


def nobody() -> TextScorer:
    raise SecondOpinionMissing(what="ctranslate2", cure="pip install ctranslate2")


def key(problem: Problem | None) -> str | None:
    if problem is None:
        return None
    assert SECOND_LOOK_PROBLEMS[problem.key] == set(dict(problem.values))
    return problem.key


@pytest.mark.parametrize(("seconds", "said"), [(0.5, None), (0.51, "second-opinion-slow")])
def test_what_takes_too_long_while_somebody_waits_is_left_out_and_told(seconds: float, said: str | None) -> None:
    opinion, problem = second_opinion(scorer, "en", live=True, measure=lambda _: seconds)

    assert (opinion is None, key(problem)) == (said is not None, said)


def test_a_recording_waits_as_long_as_it_takes() -> None:
    opinion, problem = second_opinion(scorer, "en", live=False, measure=lambda _: 100.0)

    assert opinion is not None and problem is None


def test_another_language_and_another_machine_go_without() -> None:
    for (opinion, problem), said in (
        (second_opinion(scorer, "pl", live=False), "second-opinion-foreign"),
        (second_opinion(nobody, "en", live=False), "second-opinion-gone"),
    ):
        assert (None, said) == (opinion, key(problem))


def test_nobody_is_asked_unless_that_is_wanted() -> None:
    assert Present(Settings()) == Present(Settings()).with_second_opinion(nobody, live=True)
    wanted = Present(Settings(careful=True)).with_second_opinion(scorer, live=False)

    assert wanted.second is not None and wanted.notes == ()
    assert ["second-opinion-gone"] == [
        note.key for note in Present(Settings(careful=True)).with_second_opinion(nobody, live=False).notes
    ]


@pytest.fixture
def take(tmp_path: Path) -> Path:
    """A command, in a voice, in so much noise that PocketSphinx is unsure of it."""
    spoken, file = tmp_path / "spoken.wav", tmp_path / "take.wav"
    subprocess.run(["flite", "-voice", "rms", "-t", "how far", "-o", str(spoken)], check=True)
    sound = np.concatenate((np.zeros(12_000), read_sound(spoken), np.zeros(20_000)))
    noise = np.random.default_rng(0).normal(0.0, 450.0, len(sound))
    with wave.open(str(file), "wb") as whole:
        whole.setparams((1, 2, 16_000, 0, "NONE", ""))
        whole.writeframes(np.rint(sound + noise).astype("<i2").tobytes())
    return file


def test_it_is_asked_about_a_recording_and_remembered(tmp_path: Path, take: Path) -> None:
    machine = Machine(tmp_path)
    listen = ("listen", take, "--recogniser", "pocketsphinx")
    without, careful = machine.run(*listen), machine.run(*listen, "--careful")
    again, never = machine.run(*listen), machine.run(*listen, "--no-careful")

    assert [(0, "")] * 4 == [(ran.code, ran.err) for ran in (without, careful, again, never)]
    assert without.out == never.out != careful.out == again.out
    assert "how_far, act" in careful.out
    assert not load_settings(tmp_path / "config" / "roundcaller").settings.careful


@pytest.mark.parametrize("verb", [("listen", "take.wav"), ("knit",), ("settings",)])
def test_where_the_library_is_missing_it_is_one_sentence_and_nothing_is_remembered(
    tmp_path: Path, verb: tuple[str, ...]
) -> None:
    machine = Machine(tmp_path, "no_ctranslate2")
    ran = machine.run(*verb, "--careful")

    assert 2 == ran.code
    assert ran.complaint.startswith("For a second opinion ctranslate2 is needed") and "pip install" in ran.complaint
    assert not load_settings(tmp_path / "config" / "roundcaller").settings.careful
