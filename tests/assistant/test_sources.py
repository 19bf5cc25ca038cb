"""What is heard becomes 16 kHz mono blocks in order, from files of any kind, pipes and microphones."""

import io
import itertools
import struct
import subprocess
import sys
import threading
import time
import wave

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.clocks import StreamClock
from assistant.device_errors import (
    DeviceLost,
    DeviceRefused,
    NoMicrophone,
    NoSuchMicrophone,
    WavEmpty,
    WavMissing,
    WavUnreadable,
    WavUnsupported,
)
from assistant.listening.sources import BLOCK_SAMPLES, Microphone, StandardInput, WavFile
from assistant.listening.wav_reading import in_blocks
from tests.fakes import FakeSoundLibrary, StillTime, tone

RATES_HZ = (8_000, 11_025, 16_000, 22_050, 44_100, 48_000, 96_000)


@pytest.fixture
def clock():
    """A stream that waits for the answer."""
    return StreamClock(live=False)


def chunk(name, body, size=None):
    """A chunk of a RIFF file."""
    return name + struct.pack("<I", len(body) if size is None else size) + body + b"\0" * (len(body) % 2)


def form(tag, channels, rate_hz, bits, extra=b""):
    """The body of a format chunk."""
    frame = channels * bits // 8
    return struct.pack("<HHIIHH", tag, channels, rate_hz, rate_hz * frame, frame, bits) + extra


def riff(*chunks):
    """A whole file."""
    body = b"".join(chunks)
    return b"RIFF" + struct.pack("<I", len(body) + 4) + b"WAVE" + body


def wav(sound, channels=1, kind="16"):
    """A tone as a WAV of a kind: 8, 16, 24, 32 (whole), f32, f64 or extensible."""
    share = np.repeat(sound.samples / 32_768, channels)
    whole = {"8": ("<u1", 7, 128), "16": ("<i2", 15, 0), "32": ("<i4", 31, 0), "extensible": ("<i2", 15, 0)}
    if kind in whole:
        kind_of, bits, middle = whole[kind]
        data = (np.rint(share * (2**bits - 1)) + middle).astype(kind_of).tobytes()
    elif kind == "24":
        data = (np.rint(share * (2**23 - 1)).astype("<i4").view(np.uint8).reshape(-1, 4)[:, :3]).tobytes()
    else:
        data = share.astype("<f4" if kind == "f32" else "<f8").tobytes()
    bits = int(kind.lstrip("f")) if kind != "extensible" else 16
    if kind == "extensible":
        head = form(0xFFFE, channels, sound.rate_hz, bits, struct.pack("<HHIH", 22, 16, 0, 1) + bytes(14))
    else:
        head = form(3 if kind.startswith("f") else 1, channels, sound.rate_hz, bits)
    return riff(chunk(b"fmt ", head), chunk(b"data", data))


def file_of(tmp_path, data, name="heard.wav"):
    path = tmp_path / name
    path.write_bytes(data)
    return path


def all_of(blocks):
    """The samples of a whole stream, which must be without a gap."""
    blocks = list(blocks)
    for one, following in itertools.pairwise(blocks):
        assert following.first_sample == one.end_sample
    return np.concatenate([block.samples for block in blocks])


def error_of(samples, expected):
    """Root of the mean square of what is wrong in the middle, as a share of full scale."""
    middle = slice(800, min(len(samples), len(expected)) - 800)
    return np.sqrt(((samples[middle].astype(float) - expected[middle]) ** 2).mean()) / 32_768


class TestWavFiles:
    @pytest.mark.parametrize("rate_hz", RATES_HZ)
    @pytest.mark.parametrize("channels", [1, 2, 6])
    def test_any_rate_and_channels_become_16_khz_mono(self, tmp_path, clock, rate_hz, channels):
        path = file_of(tmp_path, wav(tone(0.6, rate_hz), channels))
        samples = all_of(WavFile(path, clock).blocks())
        assert len(samples) == 9_600
        assert error_of(samples, tone(0.6, 16_000).samples) < 0.005

    @pytest.mark.parametrize("kind", ["8", "16", "24", "32", "f32", "f64", "extensible"])
    def test_any_width_becomes_16_khz_mono(self, tmp_path, clock, kind):
        samples = all_of(WavFile(file_of(tmp_path, wav(tone(0.3, 16_000), kind=kind)), clock).blocks())
        assert error_of(samples, tone(0.3, 16_000).samples) < (0.005 if kind == "8" else 0.0001)

    def test_what_is_16_khz_mono_already_is_unchanged(self, tmp_path, clock):
        heard = tone(0.3, 16_000)
        assert np.array_equal(all_of(WavFile(file_of(tmp_path, wav(heard)), clock).blocks()), heard.samples)

    @pytest.mark.parametrize("size", [512, 800, 1_600])
    def test_blocks_have_the_size_asked_for(self, tmp_path, clock, size):
        path = file_of(tmp_path, wav(tone(0.31, 16_000)))
        blocks = list(WavFile(path, clock, block_samples=size).blocks())
        assert {len(block.samples) for block in blocks[:-1]} == {size}
        assert 0 < len(blocks[-1].samples) <= size
        assert [block.first_sample for block in blocks] == list(range(0, 4_960, size))

    @given(st.lists(st.integers(0, 3_000), max_size=12), st.integers(1, 1_600))
    def test_cutting_into_blocks_loses_and_adds_nothing(self, lengths, size):
        pieces = [np.arange(length, dtype=np.int16) for length in lengths]
        blocks = list(in_blocks(iter(pieces), size))
        assert all(len(block) == size for block in blocks[:-1])
        empty = np.zeros(0, np.int16)
        assert np.array_equal(np.concatenate((empty, *blocks)), np.concatenate((empty, *pieces)))

    def test_other_chunks_are_passed(self, tmp_path, clock):
        heard = tone(0.2, 16_000)
        data = riff(
            chunk(b"LIST", b"x" * 5_001), chunk(b"fmt ", form(1, 1, 16_000, 16)), chunk(b"junk", b"odd"),
            chunk(b"data", heard.samples.tobytes()), chunk(b"LIST", b"after the sound"),
        )  # fmt: skip
        assert np.array_equal(all_of(WavFile(file_of(tmp_path, data), clock).blocks()), heard.samples)

    def test_a_file_that_breaks_off_is_heard_as_far_as_it_goes(self, tmp_path, clock):
        heard = tone(0.5, 16_000)
        samples = all_of(WavFile(file_of(tmp_path, wav(heard)[: 44 + 8_001]), clock).blocks())
        assert np.array_equal(samples, heard.samples[:4_000])

    def test_twice_the_same_file_gives_the_same_blocks(self, tmp_path):
        path = file_of(tmp_path, wav(tone(0.5, 44_100), 2))
        one, other = (list(WavFile(path, StreamClock(live=False)).blocks()) for _ in range(2))
        assert [block.first_sample for block in one] == [block.first_sample for block in other]
        assert all(np.array_equal(a.samples, b.samples) for a, b in zip(one, other, strict=True))

    def test_it_is_much_faster_than_real_time(self, tmp_path, clock):
        path = file_of(tmp_path, wav(tone(20.0, 44_100)))
        began = time.monotonic()
        all_of(WavFile(path, clock).blocks())
        assert time.monotonic() - began < 10


class TestFilesThatAreWrong:
    def refused(self, path, error, **values):
        with pytest.raises(error) as refused:
            list(WavFile(path, StreamClock(live=False)).blocks())
        assert dict(refused.value.values) == {"path": str(path), **values}

    def test_a_missing_one(self, tmp_path):
        self.refused(tmp_path / "nowhere.wav", WavMissing)

    def test_a_folder(self, tmp_path):
        self.refused(tmp_path, WavUnreadable)

    def test_an_empty_one(self, tmp_path):
        self.refused(file_of(tmp_path, b""), WavEmpty)

    def test_one_without_a_sample(self, tmp_path):
        self.refused(file_of(tmp_path, riff(chunk(b"fmt ", form(1, 1, 16_000, 16)), chunk(b"data", b""))), WavEmpty)

    @pytest.mark.parametrize("data", [
        b"OggS and so on, not a WAV at all", b"RIFF", b"RIFF\x10\0\0\0AVI LIST", riff(),
        riff(chunk(b"fmt ", form(1, 1, 16_000, 16))), riff(chunk(b"data", b"1234")),
        riff(chunk(b"fmt ", b"short"), chunk(b"data", b"1234")),
        riff(chunk(b"fmt ", form(1, 0, 16_000, 16)), chunk(b"data", b"1234")),
        riff(chunk(b"fmt ", form(1, 1, 0, 16)), chunk(b"data", b"1234")),
    ])  # fmt: skip
    def test_one_that_is_no_wav_or_a_broken_one(self, tmp_path, data):
        self.refused(file_of(tmp_path, data), WavUnreadable)

    @pytest.mark.parametrize(("tag", "bits", "encoding"), [
        (2, 4, "ADPCM, 4 bit"), (6, 8, "A-law, 8 bit"), (7, 8, "µ-law, 8 bit"), (85, 0, "MP3, 0 bit"),
        (1, 12, "PCM, 12 bit"), (3, 16, "float, 16 bit"), (4_660, 16, "4660, 16 bit"),
    ])  # fmt: skip
    def test_one_of_another_encoding_is_named(self, tmp_path, tag, bits, encoding):
        data = riff(chunk(b"fmt ", form(tag, 1, 16_000, bits)), chunk(b"data", b"12345678"))
        self.refused(file_of(tmp_path, data), WavUnsupported, encoding=encoding)

    @pytest.mark.parametrize("rate_hz", [100, 3_999, 400_000])
    def test_one_of_an_unusable_rate_is_named(self, tmp_path, rate_hz):
        data = riff(chunk(b"fmt ", form(1, 1, rate_hz, 16)), chunk(b"data", b"12345678"))
        self.refused(file_of(tmp_path, data), WavUnsupported, encoding=f"{rate_hz} Hz")

    @given(st.binary(max_size=200))
    @settings(deadline=None)
    def test_no_bytes_at_all_bring_it_down(self, noise):
        """Behind a right beginning, anything: samples or one of the errors."""
        for data in (noise, b"RIFF\0\0\0\0WAVE" + noise, riff(chunk(b"fmt ", noise), chunk(b"data", b"12"))):
            source = StandardInput(StreamClock(live=False), io.BytesIO(data))
            try:
                list(source.blocks())
            except (WavEmpty, WavUnreadable, WavUnsupported) as refused:
                assert refused.values["path"] == "-"


class TestStandardInput:
    @pytest.mark.parametrize("size", [0, 0xFFFFFFFF, 0x7FFFFFFF])
    def test_a_stream_that_cannot_know_its_length_is_read_to_its_end(self, clock, size):
        heard = tone(0.4, 16_000)
        data = riff(chunk(b"fmt ", form(1, 1, 16_000, 16)), chunk(b"data", heard.samples.tobytes(), size))
        assert np.array_equal(all_of(StandardInput(clock, io.BytesIO(data)).blocks()), heard.samples)

    def test_a_pipe_is_heard_as_it_comes(self):
        """Each tenth of a second is there before the next is written."""
        script = (
            "import sys\n"
            "from assistant.clocks import StreamClock\n"
            "from assistant.listening.sources import StandardInput\n"
            "for block in StandardInput(StreamClock(live=False)).blocks():\n"
            "    print(block.first_sample, flush=True)\n"
        )
        command = (sys.executable, "-c", script)
        samples = tone(0.4, 16_000).samples
        with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, bufsize=0) as process:
            process.stdin.write(riff(chunk(b"fmt ", form(1, 1, 16_000, 16)), chunk(b"data", b"", 0)))
            for piece in range(4):
                process.stdin.write(samples[piece * 1_600 : (piece + 1) * 1_600].tobytes())
                for block in range(piece * 1_600, (piece + 1) * 1_600, BLOCK_SAMPLES):
                    assert process.stdout.readline() == b"%d\n" % block
            process.stdin.close()
            assert process.stdout.read() == b""
        assert process.returncode == 0

    def test_standard_input_stays_open(self, clock):
        stream = io.BytesIO(wav(tone(0.1, 16_000)))
        all_of(StandardInput(clock, stream).blocks())
        assert not stream.closed


class TestAnswersWhileAFileIsHeard:
    """The file holds the numbers of its own samples, so that a block tells where it comes from."""

    @pytest.fixture
    def path(self, tmp_path):
        with wave.open(str(tmp_path / "counted.wav"), "wb") as file:
            file.setparams((1, 2, 16_000, 0, "NONE", ""))
            file.writeframes(np.arange(16_000).astype("<i2").tobytes())
        return tmp_path / "counted.wav"

    def hear(self, source, clock, answers):
        """Hear to the end; after the block of that number an answer of so many samples is played."""
        blocks = []
        for number, block in enumerate(source.blocks()):
            blocks.append(block)
            if number in answers:
                source.pause()
                clock.wait(answers[number])
                source.resume()
        return blocks

    def test_a_patient_file_waits_and_the_stream_goes_on(self, path, clock):
        blocks = self.hear(WavFile(path, clock, block_samples=800), clock, {4: 10_000, 9: 300})
        assert np.array_equal(np.concatenate([block.samples for block in blocks]), np.arange(16_000))
        gaps = [after.first_sample - before.end_sample for before, after in itertools.pairwise(blocks)]
        assert {number: gap for number, gap in enumerate(gaps) if gap} == {4: 10_000, 9: 300}

    def test_a_file_that_runs_on_loses_what_is_said_under_the_answer(self, path, clock):
        blocks = self.hear(WavFile(path, clock, block_samples=800, patient=False), clock, {4: 1_000, 9: 300})
        for block in blocks:
            assert np.array_equal(block.samples, np.arange(block.first_sample, block.end_sample))
        heard = np.concatenate([block.samples for block in blocks])
        assert set(range(16_000)) - set(heard.tolist()) == {*range(4_000, 5_000), *range(8_800, 9_100)}

    @given(st.dictionaries(st.integers(0, 49), st.integers(0, 5_000), max_size=5))
    @settings(deadline=None)
    def test_whatever_the_answers_the_stream_never_goes_back(self, answers):
        data = riff(chunk(b"fmt ", form(1, 1, 16_000, 16)), chunk(b"data", tone(1.0, 16_000).samples.tobytes()))
        clock = StreamClock(live=False)
        blocks = self.hear(StandardInput(clock, io.BytesIO(data)), clock, answers)
        assert sum(len(block.samples) for block in blocks) == 16_000
        assert all(a.end_sample <= b.first_sample for a, b in itertools.pairwise(blocks))
        assert blocks[-1].end_sample == 16_000 + sum(length for at, length in answers.items() if at < 49)

    def test_on_another_thread_a_patient_file_waits_for_resume(self, path, clock):
        source, heard = WavFile(path, clock, block_samples=800), []
        source.pause()
        thread = threading.Thread(target=lambda: heard.extend(source.blocks()))
        thread.start()
        time.sleep(0.1)
        assert heard == []
        source.resume()
        thread.join()
        assert len(heard) == 20

    def test_closing_ends_it_also_while_it_waits(self, path, clock):
        source, heard = WavFile(path, clock, block_samples=800), []
        source.pause()
        thread = threading.Thread(target=lambda: heard.extend(source.blocks()))
        thread.start()
        source.close()
        thread.join(5)
        assert not thread.is_alive()
        assert heard == []

    def test_a_paced_file_comes_in_real_time(self, path):
        clock = StreamClock(live=True)
        began = time.monotonic()
        for block in WavFile(path, clock, paced=True).blocks():
            late_s = time.monotonic() - began - (block.end_sample - 0) / 16_000
            assert -0.02 < late_s < 0.5
        assert time.monotonic() - began > 0.95

    def test_a_paced_file_loses_what_is_said_during_a_pause(self, path):
        source, heard = WavFile(path, StreamClock(live=True), block_samples=800, paced=True), []
        for block in source.blocks():
            heard.append(block)
            if len(heard) == 5:
                source.pause()
                threading.Timer(0.3, source.resume).start()
        gaps = [b.first_sample - a.end_sample for a, b in itertools.pairwise(heard)]
        assert sum(map(bool, gaps)) == 1
        assert gaps[4] == pytest.approx(4_800, abs=2_400)
        offset = heard[0].first_sample
        assert all(int(block.samples[0]) == block.first_sample - offset for block in heard)


class TestMicrophone:
    HEARD = np.arange(8_000, dtype=np.int16).reshape(-1, 1)

    def hear(self, microphone, count):
        """So many blocks, then close."""
        heard = []
        for block in microphone.blocks():
            heard.append(block)
            if len(heard) == count:
                microphone.close()
        return heard

    def test_blocks_come_in_order_with_their_place_in_the_stream(self):
        clock = StreamClock(live=True, monotonic=StillTime())
        clock.hear(3_200)
        library = FakeSoundLibrary(heard=self.HEARD)
        heard = self.hear(Microphone(clock, block_samples=800, library=library), 10)
        assert [block.first_sample for block in heard] == list(range(3_200, 11_200, 800))
        assert np.array_equal(np.concatenate([block.samples for block in heard]), self.HEARD[:, 0])
        assert clock.now() == 11_200

    def test_the_device_is_let_go_at_the_end(self):
        library = FakeSoundLibrary(heard=self.HEARD)
        self.hear(Microphone(StreamClock(live=True), library=library), 3)
        assert library.opened[0].closed

    def test_a_device_with_a_rate_of_its_own_is_resampled(self):
        heard = tone(0.5, 48_000).samples.reshape(-1, 1)
        library = FakeSoundLibrary(serves_hz=frozenset({48_000}), heard=heard)
        blocks = self.hear(Microphone(StreamClock(live=True, monotonic=StillTime()), library=library), 25)
        samples = np.concatenate([block.samples for block in blocks])
        assert library.opened[0].samplerate == 48_000
        assert error_of(samples, tone(0.5, 16_000).samples) < 0.005
        assert blocks[-1].end_sample == len(samples)

    def test_a_device_with_two_channels_only_is_mixed(self):
        one = tone(0.5, 16_000).samples
        both = np.stack((one, np.zeros_like(one)), axis=1)
        library = FakeSoundLibrary((("Line", 2, 0, 16_000),), serves_channels=frozenset({2}), heard=both)
        blocks = self.hear(Microphone(StreamClock(live=True, monotonic=StillTime()), library=library), 25)
        assert error_of(np.concatenate([block.samples for block in blocks]), one / 2) < 0.001

    def test_one_that_gives_nothing_is_lost_by_name(self):
        microphone = Microphone(StreamClock(live=True), stalled_s=0.1, library=FakeSoundLibrary(heard=self.HEARD))
        blocks, heard = microphone.blocks(), []
        with pytest.raises(DeviceLost) as lost:
            heard.extend(blocks)
        assert dict(lost.value.values) == {"name": "Headset"}

    def test_before_it_is_lost_everything_was_handed_out(self):
        library, heard = FakeSoundLibrary(heard=self.HEARD), []
        with pytest.raises(DeviceLost):
            heard.extend(Microphone(StreamClock(live=True), stalled_s=0.1, library=library).blocks())
        assert sum(len(block.samples) for block in heard) == 8_000
        assert library.opened[0].closed

    def test_one_that_does_not_open_is_refused_by_name(self):
        library = FakeSoundLibrary(serves_hz=frozenset())
        with pytest.raises(DeviceRefused) as refused:
            next(Microphone(StreamClock(live=True), library=library).blocks())
        assert dict(refused.value.values) == {"name": "Headset"}

    def test_it_is_chosen_by_part_of_its_name(self):
        library = FakeSoundLibrary((("Built-in", 2, 2, 44_100), ("Headset", 1, 2, 48_000)))
        assert Microphone(StreamClock(live=True), "HEAD", library=library).name == "Headset"
        with pytest.raises(NoSuchMicrophone):
            Microphone(StreamClock(live=True), "piano", library=library)
        with pytest.raises(NoMicrophone):
            Microphone(StreamClock(live=True), library=FakeSoundLibrary((("Speaker", 0, 2, 48_000),)))

    def hear_with_a_pause(self, *, blocks, seconds):
        """Two blocks, then a pause in which so many come, resumed so long after the last of them."""
        moment, allowed = StillTime(), threading.Semaphore(2)
        clock = StreamClock(live=True, monotonic=moment)
        library = FakeSoundLibrary(heard=self.HEARD)
        library.before_block = lambda _: allowed.acquire()
        microphone, heard = Microphone(clock, block_samples=800, stalled_s=0.2, library=library), []
        with pytest.raises(DeviceLost):
            for block in microphone.blocks():
                heard.append(block)
                if len(heard) == 2:
                    microphone.pause()
                    allowed.release(blocks)
                    while clock.now() < 1_600 + 800 * blocks:
                        time.sleep(0.001)
                    moment.passes(seconds)
                    microphone.resume()
                    allowed.release(10)
        assert all(int(block.samples[0]) == block.first_sample for block in heard)
        return [(block.first_sample, block.end_sample) for block in heard]

    def test_what_comes_during_a_pause_is_skipped_and_counted(self):
        heard = self.hear_with_a_pause(blocks=2, seconds=0.0)
        assert heard == [(0, 800), (800, 1_600), *((begin, begin + 800) for begin in range(3_200, 8_000, 800))]

    def test_a_pause_that_ends_inside_a_block_keeps_its_rest(self):
        assert self.hear_with_a_pause(blocks=1, seconds=0.03)[2] == (2_400 + 480, 3_200)

    def test_a_device_that_starts_late_does_not_put_the_stream_behind(self):
        """The first block ends when it arrives, 0.3 s after it was asked for."""
        moment = StillTime()
        clock = StreamClock(live=True, monotonic=moment)
        library = FakeSoundLibrary(heard=self.HEARD)
        library.before_block = lambda number: moment.passes(0.05 if number else 0.3)
        heard = self.hear(Microphone(clock, block_samples=800, library=library), 10)
        assert [block.first_sample for block in heard] == list(range(4_000, 12_000, 800))

    def test_lost_sound_leaves_a_gap_in_the_numbers(self):
        moment = StillTime()
        clock = StreamClock(live=True, monotonic=moment)
        library = FakeSoundLibrary(heard=self.HEARD)
        library.overflows_at = 3
        library.before_block = lambda number: moment.passes(0.55 if number == 3 else 0.05)
        heard = self.hear(Microphone(clock, block_samples=800, library=library), 10)
        gaps = [b.first_sample - a.end_sample for a, b in itertools.pairwise(heard)]
        assert gaps == [0, 0, 8_000, 0, 0, 0, 0, 0, 0]
