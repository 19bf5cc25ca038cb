"""Levels are what was put in, whatever hums below, and a sound check's verdict follows from them."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from models.loudness import SILENCE_DBFS, Levels, Meter, NoiseFloor, Verdict, dbfs, voice_level
from models.recognising import Block
from tests.models.rooms import as_int16, white

FRAME = 512
FRAMES_A_SECOND = 16_000 / FRAME


def sine(frequency_hz, level_dbfs, samples=FRAME):
    amplitude = np.sqrt(2) * 10 ** (level_dbfs / 20)
    return as_int16(amplitude * np.sin(2 * np.pi * frequency_hz * np.arange(samples) / 16_000))


@given(level=st.floats(-60, -4), frequency_hz=st.integers(400, 6_500))
def test_a_tone_in_the_voice_band_has_its_level(level, frequency_hz):
    assert level == pytest.approx(voice_level(sine(frequency_hz, level)), abs=0.3)


@given(level=st.floats(-70, -20), seed=st.integers(0, 1_000))
def test_white_noise_has_its_level_but_for_what_lies_out_of_the_band(level, seed):
    frames = as_int16(white(3.2, level, seed)).reshape(-1, FRAME)

    assert level - 0.6 == pytest.approx(np.mean([voice_level(frame) for frame in frames]), abs=0.5)


@pytest.mark.parametrize("frequency_hz", [0, 50, 60, 100])
def test_hum_and_an_offset_hardly_count(frequency_hz):
    loud = sine(frequency_hz, -20) if frequency_hz else np.full(FRAME, 3_277, np.int16)

    assert voice_level(loud) < -45


def test_no_sound_at_all_has_the_lowest_level():
    assert voice_level(np.zeros(FRAME, np.int16)) == SILENCE_DBFS
    assert dbfs(0.0) == SILENCE_DBFS


def fed(levels):
    floor = NoiseFloor(FRAME)
    for level in levels:
        floor.accept(level)
    return floor.dbfs


def seconds(duration, level):
    return [level] * round(duration * FRAMES_A_SECOND)


@pytest.mark.parametrize(
    ("levels", "expected"),
    [
        (seconds(0.5, -20), -58),
        (seconds(0.1, -70), -70),
        (seconds(3, -40), -40),
        (seconds(5, -40) + seconds(2, -20), -40),
        (seconds(5, -40) + seconds(5, -20), -20),
        (seconds(5, -20) + seconds(0.1, -60) + seconds(2, -20), -60),
        (seconds(1, -100), -75),
    ],
    ids=["unknown at first", "falls at once", "known after a second", "speech", "a fan starts", "a gap", "a limit"],
)
def test_the_rooms_level_is_its_quietest_of_the_last_seconds(levels, expected):
    assert expected == fed(levels)


@given(levels=st.lists(st.floats(-100, 0), max_size=400))
def test_the_rooms_level_is_never_above_the_last_one_heard(levels):
    assert fed([*levels, -30.0]) <= -30.0


def metered(*parts):
    """Blocks of (samples, speech) through a meter."""
    meter, first = Meter(), 0
    for samples, speech in parts:
        meter.accept(Block(first, samples, speech))
        first += len(samples)
    return meter.levels


def test_speech_and_room_are_measured_apart():
    levels = metered((as_int16(white(1, -60)), False), (sine(500, -20, 16_000), True))

    assert levels.speech_dbfs == pytest.approx(-20, abs=0.1)
    assert levels.room_dbfs == pytest.approx(-60, abs=0.2)
    assert levels.peak_dbfs == pytest.approx(-17, abs=0.1)
    assert levels.clipped == 0


@pytest.mark.parametrize(
    ("parts", "expected"),
    [
        ([(np.zeros(16_000, np.int16), False)], Verdict.NOTHING),
        ([], Verdict.NOTHING),
        ([(sine(500, -50, 16_000), True)], Verdict.TOO_QUIET),
        ([(sine(500, -25, 16_000), True), (as_int16(white(1, -55)), False)], Verdict.FINE),
        ([(sine(500, -25, 16_000), True)], Verdict.FINE),
        ([(sine(500, -25, 16_000), True), (as_int16(white(1, -32)), False)], Verdict.TOO_NOISY),
        ([(sine(500, -6, 16_000), True)], Verdict.TOO_LOUD),
        ([(sine(500, 3, 16_000), True)], Verdict.TOO_LOUD),
        ([(np.full(100, -32_768, np.int16), True), (sine(500, -25, 16_000), True)], Verdict.TOO_LOUD),
        ([(sine(500, -25, 16_000), None)], Verdict.FINE),
    ],
)
def test_the_verdict_says_what_to_change(parts, expected):
    assert expected is metered(*parts).verdict


def test_the_limits_themselves_are_fine():
    quietest = Levels(Meter.QUIETEST_SPEECH_DBFS, Meter.QUIETEST_SPEECH_DBFS - 10, -30, 0)
    loudest = Levels(Meter.LOUDEST_SPEECH_DBFS, None, -1, Meter.MOST_CLIPPED)

    assert quietest.verdict is Verdict.FINE
    assert loudest.verdict is Verdict.FINE
