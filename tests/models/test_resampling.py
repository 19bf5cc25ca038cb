"""Sound of any rate, channel count and format becomes 16 kHz mono without changing what is heard."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from models.errors import RateUnusable
from models.resampling import HIGHEST_HZ, LOWEST_HZ, Resampler, mix, to_int16, to_whole, unpack

COMMON_RATES_HZ = (8_000, 11_025, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 88_200, 96_000, 192_000)


def tone(frequency_hz, rate_hz, seconds=0.25, amplitude=0.5):
    """A sine as floats."""
    return amplitude * np.sin(2 * np.pi * frequency_hz * np.arange(round(rate_hz * seconds)) / rate_hz)


def resampled(samples, rate_hz, channels=1):
    """The whole stream in one block."""
    resampler = Resampler(rate_hz, channels)
    return np.concatenate((resampler.accept(samples), resampler.finish()))


def level_db(samples):
    """Root mean square in dB of full scale, edges left out."""
    inner = samples[200:-200].astype(np.float64) / 32_768
    return 10 * np.log10((inner**2).mean() + 1e-20)


@given(
    rate_hz=st.one_of(st.sampled_from(COMMON_RATES_HZ), st.integers(40, 480).map(lambda rate: rate * 100)),
    share=st.floats(0.02, 0.40),
    amplitude=st.floats(0.01, 0.99),
)
@settings(max_examples=60, deadline=None)
def test_a_tone_keeps_its_time_frequency_and_level(rate_hz, share, amplitude):
    frequency_hz = share * min(rate_hz, 16_000)

    actual = resampled(tone(frequency_hz, rate_hz, 0.1, amplitude), rate_hz)

    expected = 32_768 * tone(frequency_hz, 16_000, 0.1, amplitude)
    inner = slice(100, -100)
    worst = np.abs(actual[inner] - expected[: len(actual)][inner]).max()
    assert worst <= 2 + 32_768 * amplitude * 0.001


@pytest.mark.parametrize("rate_hz", [rate for rate in COMMON_RATES_HZ if rate > 16_000])
def test_what_16_khz_cannot_hold_is_gone_rather_than_folded_down(rate_hz):
    for frequency_hz in (8_150, 9_000, rate_hz * 0.45):
        if 8_000 < frequency_hz < rate_hz / 2:
            assert level_db(resampled(tone(frequency_hz, rate_hz), rate_hz)) < -80


@given(
    rate_hz=st.one_of(st.sampled_from(COMMON_RATES_HZ), st.integers(40, 960).map(lambda rate: rate * 100)),
    channels=st.integers(1, 3),
    seed=st.integers(0, 2**32 - 1),
    lengths=st.lists(st.integers(0, 700), min_size=1, max_size=12),
)
@settings(max_examples=80, deadline=None)
def test_splitting_the_stream_into_blocks_changes_nothing(rate_hz, channels, seed, lengths):
    noise = np.random.default_rng(seed).integers(-32_768, 32_768, (sum(lengths), channels)).astype(np.int16)
    resampler = Resampler(rate_hz, channels)

    parts = [resampler.accept(block) for block in np.split(noise, np.cumsum(lengths)[:-1])]
    actual = np.concatenate([*parts, resampler.finish()])

    expected = resampled(noise, rate_hz, channels)
    assert expected.tolist() == actual.tolist()


@given(rate_hz=st.integers(40, 1_920).map(lambda rate: rate * 100), length=st.integers(0, 5_000))
@settings(max_examples=60, deadline=None)
def test_duration_is_kept_to_the_sample(rate_hz, length):
    expected = -(-length * 16_000 // rate_hz)

    assert expected == len(resampled(np.zeros(length, np.int16), rate_hz))


def test_a_rate_without_any_common_factor_works_too():
    actual = resampled(tone(440, 15_991, 0.1), 15_991)

    expected = 32_768 * tone(440, 16_000, 0.1)
    assert np.abs(actual[100:-100] - expected[: len(actual)][100:-100]).max() < 20


@given(st.lists(st.integers(-32_768, 32_767), max_size=50))
def test_16_khz_mono_passes_unchanged(values):
    assert values == resampled(np.array(values, np.int16), 16_000).tolist()


@pytest.mark.parametrize("rate_hz", COMMON_RATES_HZ)
def test_a_constant_stays_exactly_that_constant(rate_hz):
    actual = resampled(np.full(rate_hz // 10, 1_234, np.int16), rate_hz)

    assert {1_234} == set(actual[100:-100].tolist())


def test_a_full_scale_square_is_clipped_and_never_wraps_round():
    square = np.where(tone(500, 48_000) >= 0, 1.0, -1.0)

    actual = resampled(square, 48_000)

    expected = 32_768 * tone(500, 16_000, 0.25, 1.0)
    loud = np.abs(expected) > 16_000
    assert (np.sign(expected[loud]) == np.sign(actual[: len(expected)][loud].astype(np.float64))).all()
    assert actual.max() == 32_767
    assert actual.min() == -32_768


def test_channels_are_averaged_interleaved_or_not():
    pairs = np.array([[100, 200], [-3, -4], [32_767, 32_767]], np.int16)

    expected = [150, -3, 32_767]
    assert expected == to_int16(mix(pairs, 2)).tolist()
    assert expected == to_int16(mix(pairs.ravel(), 2)).tolist()


@given(st.lists(st.integers(-32_768, 32_767), max_size=30))
def test_every_sample_format_gives_the_same_sound(values):
    as_int16 = np.array(values, np.int16)
    packed_24 = b"".join((value << 8).to_bytes(3, "little", signed=True) for value in values)

    for samples in (
        as_int16,
        as_int16.astype(np.int32) << 16,
        as_int16 / np.float32(32_768),
        as_int16 / 32_768,
        unpack(as_int16.tobytes(), 2),
        unpack(packed_24, 3),
        unpack((as_int16.astype("<i4") << 16).tobytes(), 4),
    ):
        assert values == to_int16(to_whole(samples)).tolist()


def test_8_bit_sound_has_its_silence_at_128():
    expected = [0, -32_768, 32_512]
    assert expected == to_int16(to_whole(unpack(bytes([128, 0, 255]), 1))).tolist()


def test_floats_beyond_full_scale_are_clipped_and_what_is_no_number_is_silence():
    wild = np.array([2.0, -2.0, np.inf, -np.inf, np.nan], np.float32)

    expected = [32_767, -32_768, 32_767, -32_768, 0]
    assert expected == to_int16(to_whole(wild)).tolist()


def test_a_sample_cut_off_at_the_end_of_a_file_is_dropped():
    expected = [1]
    assert expected == unpack(b"\x01\x00\x07", 2).tolist()


@pytest.mark.parametrize("width", [0, 5])
def test_an_unknown_sample_width_is_refused(width):
    with pytest.raises(ValueError, match=str(width)):
        unpack(b"1234567890", width)


def test_an_unknown_sample_type_is_refused():
    with pytest.raises(TypeError, match="complex"):
        to_whole(np.zeros(3, np.complex128))


@pytest.mark.parametrize("rate_hz", [0, -16_000, LOWEST_HZ - 1, HIGHEST_HZ + 1])
def test_a_rate_out_of_range_is_refused_with_the_range(rate_hz):
    with pytest.raises(RateUnusable) as refused:
        Resampler(rate_hz)

    expected = {"rate_hz": str(rate_hz), "lowest_hz": "4000", "highest_hz": "192000"}
    assert expected == refused.value.values
