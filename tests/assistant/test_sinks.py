"""What is said is played whole, cut softly, and told at its true place in the stream of the ears."""

import io
import threading
import time
import wave

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.clocks import StreamClock
from assistant.device_errors import DeviceLost, DeviceRefused, NoSpeaker, NoSuchSpeaker, WavUnwritable
from assistant.ports import Played, Sound
from assistant.speaking.playing import at_rate
from assistant.speaking.speaker import Speaker
from assistant.speaking.wav_sink import Silent, WavSink
from tests.fakes import FakeSoundLibrary, StillTime, tone

NOTHING = Sound(np.zeros(0, np.int16), 22_050)


@pytest.fixture
def clock():
    """A stream that waits for the answer."""
    return StreamClock(live=False)


def written(file):
    """Samples and rate of a finished WAV."""
    file = io.BytesIO(file.getvalue()) if isinstance(file, io.BytesIO) else str(file)
    with wave.open(file) as reader:
        assert (reader.getnchannels(), reader.getsampwidth()) == (1, 2)
        return np.frombuffer(reader.readframes(reader.getnframes()), "<i2"), reader.getframerate()


def given_to(library):
    """All that the only stream was given, in one."""
    return np.concatenate(library.opened[-1].given)


class TestRates:
    @given(st.sampled_from([8_000, 16_000, 22_050, 44_100, 48_000]), st.sampled_from([16_000, 22_050, 48_000]))
    @settings(deadline=None)
    def test_a_tone_is_the_same_tone_at_another_rate(self, from_hz, to_hz):
        there, expected = at_rate(tone(0.5, from_hz), to_hz), tone(0.5, to_hz)
        assert there.rate_hz == to_hz
        assert abs(there.seconds - 0.5) < 0.001
        middle = slice(len(expected.samples) // 10, -(len(expected.samples) // 10))
        wrong = there.samples[middle].astype(float) - expected.samples[middle]
        assert np.sqrt((wrong**2).mean()) < 0.02 * 16_384

    def test_the_same_rate_changes_nothing(self):
        assert np.array_equal(at_rate(tone(0.2), 22_050).samples, tone(0.2).samples)

    def test_nothing_stays_nothing(self):
        assert at_rate(NOTHING, 48_000) == Sound(NOTHING.samples, 48_000)

    def test_loud_sound_does_not_wrap_round(self):
        square = Sound(np.where(np.arange(22_050) // 50 % 2, 32_767, -32_768).astype(np.int16), 22_050)
        there = at_rate(square, 48_000).samples.astype(int)
        assert np.abs(np.diff(np.sign(there[500:-500]))).sum() // 2 == pytest.approx(441, abs=20)


class TestSpeaker:
    def test_a_sound_is_played_whole(self, clock):
        library = FakeSoundLibrary()
        speaker = Speaker(clock, library=library)
        speaker.play(tone(0.123))
        speaker.close()
        samples = tone(0.123).samples
        assert np.array_equal(given_to(library)[: len(samples)], samples)

    def test_silence_follows_for_as_long_as_the_system_holds_sound(self, clock):
        """What the system still holds when the stream ends is lost: it must be silence."""
        library = FakeSoundLibrary()
        Speaker(clock, latency_s=0.05, library=library).play(tone(0.1))
        rest = given_to(library)[len(tone(0.1).samples) :]
        assert not rest.any()
        assert len(rest) >= 0.05 * 22_050

    def test_it_tells_when_it_is_heard(self, clock):
        clock.hear(5_000)
        played = Speaker(clock, latency_s=0.02, library=FakeSoundLibrary()).play(tone(0.5))
        assert played == Played(5_000 + 320, 5_000 + 320 + 8_000, cut_short=False)

    def test_a_stream_that_waits_moves_on_by_the_sound(self, clock):
        Speaker(clock, library=FakeSoundLibrary()).play(tone(0.5))
        assert clock.now() == 8_000

    def test_one_stream_serves_all_sounds_of_a_rate(self, clock):
        library = FakeSoundLibrary()
        speaker = Speaker(clock, library=library)
        for _ in range(3):
            speaker.play(tone(0.05))
        assert len(library.opened) == 1
        assert not library.opened[0].closed

    def test_another_rate_opens_another_stream(self, clock):
        library = FakeSoundLibrary()
        speaker = Speaker(clock, library=library)
        speaker.play(tone(0.05, 22_050))
        speaker.play(tone(0.05, 44_100))
        assert [(stream.samplerate, stream.closed) for stream in library.opened] == [(22_050, True), (44_100, False)]

    def test_a_device_that_knows_one_rate_gets_that(self, clock):
        library = FakeSoundLibrary(serves_hz=frozenset({48_000}))
        speaker = Speaker(clock, library=library)
        played = [speaker.play(tone(0.5, rate_hz)) for rate_hz in (22_050, 22_050, 48_000)]
        assert [stream.samplerate for stream in library.opened] == [48_000]
        assert [one.ended - one.began for one in played] == [8_000] * 3

    def test_nothing_is_played_at_once(self, clock):
        assert Speaker(clock, library=FakeSoundLibrary()).play(NOTHING).cut_short is False

    def test_a_cut_fades_within_5_ms_and_is_told(self, clock):
        library = FakeSoundLibrary()
        speaker = Speaker(clock, library=library)
        library.before_block = lambda number: speaker.cut() if number == 7 else None
        played = speaker.play(tone(1.0))
        heard = given_to(library)
        last = np.flatnonzero(heard)[-1]
        assert played.cut_short
        assert 7 * 220 <= last < 7 * 220 + 0.005 * 22_050 + 1
        assert played.ended - played.began == (7 * 220 + 110) * 16_000 // 22_050
        steepest = np.abs(np.diff(tone(1.0).samples.astype(int))).max()
        assert np.abs(np.diff(heard.astype(int))).max() < 1.5 * steepest

    def test_a_cut_before_anything_plays_changes_nothing(self, clock):
        speaker = Speaker(clock, library=FakeSoundLibrary())
        speaker.cut()
        assert not speaker.play(tone(0.1)).cut_short

    def test_after_a_cut_the_next_is_whole(self, clock):
        library = FakeSoundLibrary()
        speaker = Speaker(clock, library=library)
        library.before_block = lambda number: speaker.cut() if number == 1 else None
        assert speaker.play(tone(1.0)).cut_short
        library.before_block = lambda _: None
        assert not speaker.play(tone(0.1)).cut_short

    def test_a_cut_in_the_last_block_is_no_cut(self, clock):
        """All was given already; it is heard to its end."""
        library = FakeSoundLibrary()
        speaker = Speaker(clock, library=library)
        library.before_block = lambda number: speaker.cut() if number == 11 else None
        assert not speaker.play(tone(0.1)).cut_short

    @pytest.mark.parametrize("blocks", [0, 1, 5])
    def test_a_speaker_that_vanishes_is_told_by_name(self, clock, blocks):
        library = FakeSoundLibrary()
        library.asks_for = blocks
        speaker = Speaker(clock, lost_s=0.1, library=library)
        with pytest.raises(DeviceLost) as lost:
            speaker.play(tone(1.0))
        assert dict(lost.value.values) == {"name": "Headset"}
        assert library.opened[-1].closed

    def test_a_speaker_that_comes_back_is_used_again(self, clock):
        library = FakeSoundLibrary()
        library.asks_for = 2
        speaker = Speaker(clock, lost_s=0.1, library=library)
        with pytest.raises(DeviceLost):
            speaker.play(tone(1.0))
        library.asks_for = None
        assert not speaker.play(tone(0.1)).cut_short

    def test_a_speaker_that_does_not_open_is_told_by_name(self, clock):
        speaker = Speaker(clock, library=FakeSoundLibrary(serves_hz=frozenset()))
        with pytest.raises(DeviceRefused) as refused:
            speaker.play(tone(0.1))
        assert dict(refused.value.values) == {"name": "Headset"}

    def test_the_speaker_is_chosen_by_part_of_its_name(self, clock):
        library = FakeSoundLibrary((("Built-in", 0, 2, 44_100), ("Headset", 1, 2, 48_000)))
        assert Speaker(clock, "head", library=library).name == "Headset"
        with pytest.raises(NoSuchSpeaker):
            Speaker(clock, "piano", library=library)
        with pytest.raises(NoSpeaker):
            Speaker(clock, library=FakeSoundLibrary(()))


class TestWavSink:
    def test_everything_said_stands_at_its_time_with_silence_between(self, clock):
        file = io.BytesIO()
        sink = WavSink(file, clock)
        clock.hear(16_000)
        first = sink.play(tone(0.5))
        clock.hear(40_000)
        second = sink.play(tone(0.24))
        sink.close()
        samples, rate_hz = written(file)
        assert (first.began, first.ended) == (16_000, 24_000)
        assert (second.began, second.ended) == (40_000, 43_840)
        expected = np.zeros(int(2.75 * rate_hz) + 1, np.int16)
        expected[22_050 : 22_050 + 11_025] = tone(0.5).samples
        expected[55_125 : 55_125 + 5_292] = tone(0.24).samples
        assert np.array_equal(samples, expected[: 55_125 + 5_292])

    @given(st.lists(st.tuples(st.integers(0, 40_000), st.floats(0.01, 0.5)), max_size=8))
    @settings(deadline=None)
    def test_what_it_tells_is_what_the_file_holds(self, happenings):
        clock, file = StreamClock(live=False), io.BytesIO()
        sink = WavSink(file, clock, rate_hz=16_000)
        told = []
        for pause, length in happenings:
            clock.hear(clock.now() + pause)
            told.append(sink.play(Sound(np.full(round(length * 16_000), 1_000, np.int16), 16_000)))
        sink.close()
        samples, _ = written(file)
        expected = np.zeros(max((one.ended for one in told), default=0), np.int16)
        for one in told:
            expected[one.began : one.ended] = 1_000
        assert np.array_equal(samples, expected)

    def test_a_sound_of_another_rate_keeps_its_length(self, clock):
        file = io.BytesIO()
        sink = WavSink(file, clock, rate_hz=44_100)
        assert sink.play(tone(0.5, 16_000)).ended == 8_000
        sink.close()
        assert len(written(file)[0]) == 22_050

    def test_a_path_is_a_file_from_the_first_sound_on(self, clock, tmp_path):
        """Also where the program is killed: the header is right after every sound."""
        sink = WavSink(tmp_path / "said.wav", clock)
        sink.play(tone(0.5))
        assert len(written(tmp_path / "said.wav")[0]) == 11_025
        sink.close()
        assert len(written(tmp_path / "said.wav")[0]) == 11_025

    def test_without_a_sound_it_is_a_wav_all_the_same(self, clock, tmp_path):
        WavSink(tmp_path / "said.wav", clock).close()
        assert len(written(tmp_path / "said.wav")[0]) == 0

    def test_in_a_live_stream_playing_takes_its_time(self):
        clock = StreamClock(live=True)
        sink = WavSink(io.BytesIO(), clock)
        began = time.monotonic()
        played = sink.play(tone(0.3))
        assert time.monotonic() - began == pytest.approx(0.3, abs=0.1)
        assert played.ended - played.began == 4_800
        sink.close()

    def test_in_a_live_stream_it_can_be_cut(self):
        file = io.BytesIO()
        sink = WavSink(file, StreamClock(live=True))
        timer = threading.Timer(0.2, sink.cut)
        timer.start()
        played = sink.play(tone(5.0))
        timer.join()
        sink.close()
        assert played.cut_short
        assert (played.ended - played.began) / 16_000 == pytest.approx(0.21, abs=0.1)
        assert abs(int(written(file)[0][-1])) < 400

    @pytest.mark.parametrize("path", ["nowhere/said.wav", "."])
    def test_a_path_that_cannot_be_written_is_one_error(self, clock, tmp_path, path):
        with pytest.raises(WavUnwritable) as refused:
            WavSink(tmp_path / path, clock)
        assert dict(refused.value.values) == {"path": str(tmp_path / path)}

    def test_a_full_disk_is_one_error(self, clock):
        """Linux's own full disk."""
        sink = WavSink("/dev/full", clock)
        with pytest.raises(WavUnwritable) as refused:
            sink.play(tone(1.0))
        assert dict(refused.value.values) == {"path": "/dev/full"}
        sink.close()

    def test_a_file_of_someone_else_stays_open(self, clock):
        file = io.BytesIO()
        WavSink(file, clock).close()
        assert not file.closed


def test_silent_plays_nothing_and_takes_no_time(clock):
    clock.hear(800)
    sink = Silent(clock)
    assert sink.play(tone(5.0)) == Played(800, 800, cut_short=False)
    sink.cut()
    sink.close()
    assert clock.now() == 800


def test_a_live_clock_is_told_by_the_time_alone():
    moment = StillTime()
    clock = StreamClock(live=True, monotonic=moment)
    moment.passes(1.0)
    assert Silent(clock).play(tone(1.0)).began == 16_000
