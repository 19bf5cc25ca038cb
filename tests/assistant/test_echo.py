"""What is played is taken out of what is heard; what is said over it stays."""

from collections.abc import Iterator

import numpy as np
import pytest

from assistant.echo import FRAME_SAMPLES, Playback, WithoutEcho, make_canceller
from models.loudness import dbfs
from models.recognising import SAMPLE_RATE_HZ, Block
from tests.end_to_end.room import STEP, Room, response
from tests.fakes import ListedSource

LATE_S = 0.06
"""The latencies of loudspeaker and microphone together."""


class Subtracting:
    """Takes the one from the other, with no room between; remembers how it was asked."""

    def __init__(self) -> None:
        self.lengths: list[int] = []

    def process(self, near: np.ndarray, far: np.ndarray) -> np.ndarray:
        self.lengths.append(len(near))
        return near - far


def counting(begin: int, end: int) -> np.ndarray:
    return np.arange(begin, end, dtype=np.int16)


def blocks(*spans: tuple[int, int]) -> Iterator[Block]:
    return (Block(begin, counting(begin, end)) for begin, end in spans)


class TestPlayback:
    def test_silence_stands_where_nothing_was_played(self) -> None:
        playback = Playback()
        playback.begin(100, counting(0, 50))

        assert [0] * 10 + list(range(50)) + [0] * 10 == playback.between(90, 160).tolist()
        assert [20, 21, 22] == playback.between(120, 123).tolist()

    def test_what_was_cut_short_was_not_played(self) -> None:
        playback = Playback()
        playback.begin(100, counting(1, 51))
        playback.stop(110)

        assert list(range(1, 11)) + [0] * 40 == playback.between(100, 150).tolist()

    def test_what_begins_ends_what_was_played(self) -> None:
        playback = Playback()
        playback.begin(0, np.full(100, 1, np.int16))
        playback.begin(40, np.full(20, 2, np.int16))

        assert [1] * 40 + [2] * 20 + [0] * 40 == playback.between(0, 100).tolist()

    def test_a_sound_after_the_end_of_another_leaves_it_whole(self) -> None:
        playback = Playback()
        playback.begin(0, np.full(10, 1, np.int16))
        playback.stop(30)
        playback.begin(50, np.full(10, 2, np.int16))

        assert [1] * 10 + [0] * 40 + [2] * 10 == playback.between(0, 60).tolist()

    def test_what_is_long_past_is_forgotten(self) -> None:
        playback = Playback()
        for second in range(0, 300, 2):
            playback.begin(second * SAMPLE_RATE_HZ, np.full(SAMPLE_RATE_HZ, 1, np.int16))

        assert not playback.between(0, SAMPLE_RATE_HZ).any()
        assert playback.between(298 * SAMPLE_RATE_HZ, 299 * SAMPLE_RATE_HZ).all()


class TestWithoutEcho:
    def test_blocks_of_any_length_come_out_whole_frames_in_order(self) -> None:
        playback = Playback()
        playback.begin(0, counting(0, 1000))
        canceller = Subtracting()
        source = WithoutEcho(ListedSource(blocks((0, 100), (100, 350), (350, 900))), playback, canceller)
        out = list(source.blocks())

        assert [(0, 320), (320, 800)] == [(block.first_sample, block.end_sample) for block in out]
        assert not np.concatenate([block.samples for block in out]).any()
        assert all(length % FRAME_SAMPLES == 0 for length in canceller.lengths)

    def test_after_a_gap_it_begins_anew(self) -> None:
        source = WithoutEcho(ListedSource(blocks((0, 250), (1000, 1200))), Playback(), Subtracting())

        assert [(0, 160), (1000, 1160)] == [(block.first_sample, block.end_sample) for block in source.blocks()]

    def test_where_nothing_is_played_nothing_is_changed(self) -> None:
        playback = Playback()
        playback.begin(0, counting(1, 161))
        canceller = Subtracting()
        late = 160 + SAMPLE_RATE_HZ
        source = WithoutEcho(ListedSource(blocks((late, late + 320))), playback, canceller)

        assert counting(late, late + 320).tolist() == next(iter(source.blocks())).samples.tolist()
        assert [] == canceller.lengths

    def test_the_rest_is_the_sources_business(self) -> None:
        inner = ListedSource(blocks((0, 160)))
        source = WithoutEcho(inner, Playback(), Subtracting())
        source.pause()
        source.resume()
        source.close()

        assert (1, 1, True) == (inner.pauses, inner.resumes, inner.closed)


def speech(seconds: float, seed: int) -> np.ndarray:
    """Noise that is loud and soft in turn, as syllables are."""
    count = int(seconds * SAMPLE_RATE_HZ)
    chance = np.random.default_rng(seed)
    loudness = np.repeat(chance.choice([0.0, 0.4, 1.0], -(-count // 2400)), 2400)[:count]
    return (chance.normal(size=count) * loudness * 3000).astype(np.int16)


@pytest.mark.parametrize("gain_db", [-6.0, -12.0])
def test_the_echo_of_a_room_is_taken_out_and_what_is_said_stays(gain_db: float) -> None:
    played = speech(12.0, 1)
    room = Room(response(gain_db))
    late = np.zeros(int(LATE_S * SAMPLE_RATE_HZ), np.int16)
    steps = np.concatenate((late, played))[: len(played) // STEP * STEP].reshape(-1, STEP)
    echo = np.concatenate([room.pass_on(step) for step in steps])
    said = np.zeros(len(echo), np.int16)
    over = slice(10 * SAMPLE_RATE_HZ, 11 * SAMPLE_RATE_HZ)
    said[over] = speech(1.0, 2)
    playback = Playback()
    playback.begin(0, played)
    source = ListedSource([Block(0, (echo + said).astype(np.int16))])
    cleaned = next(iter(WithoutEcho(source, playback, make_canceller()).blocks())).samples

    alone = slice(6 * SAMPLE_RATE_HZ, 10 * SAMPLE_RATE_HZ)
    assert level(cleaned[alone]) < level(echo[alone]) - 15.0
    assert abs(level(cleaned[over]) - level(said[over])) < 10.0
    assert level(cleaned[over]) > level(cleaned[alone]) + 10.0


def level(samples: np.ndarray) -> float:
    return dbfs(float(np.square(samples / 32_768.0).mean()))
