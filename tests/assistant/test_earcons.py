"""Short tones are soft, short, clean at their ends, and told apart by how their pitch moves."""

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.speaking.earcons import PEAK, RATE_HZ, Earcon, earcon

EVERY = pytest.mark.parametrize("name", list(Earcon))
RATES_HZ = (8_000, 16_000, 22_050, 44_100, 48_000)


def contour_hz(sound, parts=4):
    """The pitch in each part of the tone, from the strongest line of its spectrum."""
    pieces = np.array_split(sound.samples.astype(np.float64), parts)
    spectra = [np.abs(np.fft.rfft(piece * np.hanning(len(piece)), 1 << 15)) for piece in pieces]
    return np.array([np.argmax(spectrum) * sound.rate_hz / (1 << 15) for spectrum in spectra])


@EVERY
def test_a_tone_is_shorter_than_200_ms(name):
    assert 0.05 < earcon(name).seconds < 0.2


@EVERY
def test_a_tone_is_soft_enough_for_any_recording(name):
    assert np.abs(earcon(name).samples.astype(int)).max() <= PEAK * 32_767 + 1


@EVERY
def test_a_tone_is_loud_enough_to_be_heard(name):
    samples = earcon(name).samples / 32_768
    assert np.sqrt((samples**2).mean()) > 0.05


@EVERY
def test_a_tone_begins_and_ends_in_silence(name):
    samples = earcon(name).samples.astype(int)
    assert abs(samples[0]) == 0
    assert abs(samples[-1]) <= 2
    assert np.abs(samples[:20]).max() < PEAK * 32_767 / 10


@EVERY
def test_a_tone_has_no_step_that_clicks(name):
    """No two neighbours differ by more than a sine of twice the highest pitch would."""
    sound = earcon(name)
    steepest = 2 * np.pi * 2 * 900 / sound.rate_hz * PEAK * 32_767
    assert np.abs(np.diff(sound.samples.astype(int))).max() <= steepest


@EVERY
@pytest.mark.parametrize("rate_hz", RATES_HZ)
def test_a_tone_is_the_same_at_every_rate(name, rate_hz):
    there, here = earcon(name, rate_hz), earcon(name)
    assert there.rate_hz == rate_hz
    assert abs(there.seconds - here.seconds) < 0.002
    assert np.abs(contour_hz(there) / contour_hz(here) - 1).max() < 0.03


def test_any_two_tones_differ_in_how_their_pitch_moves():
    """In length by a fifth, or somewhere in pitch by more than a third of an octave."""
    for one, other in itertools.combinations(Earcon, 2):
        ratio = np.abs(np.log2(contour_hz(earcon(one)) / contour_hz(earcon(other)))).max()
        lengths = sorted((earcon(one).seconds, earcon(other).seconds))
        assert ratio > 1 / 3 or lengths[1] > 1.2 * lengths[0]


def test_heard_rises_and_not_understood_falls():
    rising, falling = contour_hz(earcon(Earcon.HEARD)), contour_hz(earcon(Earcon.NOT_UNDERSTOOD))
    assert rising[-1] > rising[0]
    assert falling[-1] < falling[0]


def test_turn_the_work_goes_up_and_comes_back():
    begin, middle, end = contour_hz(earcon(Earcon.TURN_THE_WORK), parts=3)
    assert middle > 1.3 * begin
    assert abs(end / begin - 1) < 0.1


@given(volume=st.floats(0.0, 1.0), name=st.sampled_from(Earcon))
def test_volume_scales_the_tone(volume, name):
    full, soft = earcon(name).samples, earcon(name, RATE_HZ, volume).samples
    assert np.abs(soft - full * volume).max() <= 1


def test_a_tone_cannot_be_changed_by_whoever_plays_it():
    with pytest.raises(ValueError, match="read-only"):
        earcon(Earcon.HEARD).samples[0] = 1
