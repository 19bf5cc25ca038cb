from collections.abc import Iterable, Sequence

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some

from models.recognising import Block, Samples
from models.utterances import (
    FRAME_SAMPLES,
    Closed,
    Happening,
    Lasted,
    Opened,
    Paused,
    Pauses,
    Utterances,
    Wait,
    Went,
)

_PAUSES = Pauses(lead=3, look=2, brief=3, short=4, held=6, long=8, longest=40)
_MARKS = some.lists(some.booleans(), max_size=60)


def _blocks(marks: Sequence[bool | None], first_sample: int = 0) -> list[Block]:
    """A block a frame; each sample holds the number of its frame."""
    starts = (first_sample + at * FRAME_SAMPLES for at in range(len(marks)))
    return [
        Block(start, np.full(FRAME_SAMPLES, at, np.int16), mark)
        for at, (start, mark) in enumerate(zip(starts, marks, strict=True))
    ]


def _happenings(
    blocks: Iterable[Block], *, complete: bool = False, finish: bool = True
) -> list[Happening]:
    utterances = Utterances(_PAUSES)
    found: list[Happening] = []
    for block in blocks:
        for happening in utterances.accept(block):
            found.append(happening)
            if complete and isinstance(happening, Lasted):
                utterances.settle(Wait.SHORT)
    return found + (list(utterances.finish()) if finish else [])


def _plain(happenings: Iterable[Happening]) -> list[object]:
    """Comparable: sound as its frames' numbers."""
    return [
        (type(each), getattr(each, "began", None), getattr(each, "ended", None), _frames(each))
        for each in happenings
    ]


def _frames(happening: Happening) -> tuple[int, ...]:
    if not isinstance(happening, Opened | Went):
        return ()
    return tuple(int(number) for number in happening.samples[::FRAME_SAMPLES])


def _bounds(happenings: Iterable[Happening]) -> list[tuple[int, int]]:
    """(first, after last) frame of each utterance."""
    happenings = list(happenings)
    begins = [each.began // FRAME_SAMPLES for each in happenings if isinstance(each, Opened)]
    ends = [each.ended // FRAME_SAMPLES for each in happenings if isinstance(each, Closed)]
    return list(zip(begins, ends, strict=True))


def _marks(text: str) -> list[bool | None]:
    return [{"#": True, ".": False, "?": None}[letter] for letter in text]


@pytest.mark.parametrize(
    ("marks", "complete", "expected"),
    [
        ("", False, []),
        ("............", False, []),
        ("....###.........", False, [(4, 7)]),
        ("###.......###........", False, [(0, 13)]),
        ("###........###........", False, [(0, 3), (11, 14)]),
        ("###....###....", True, [(0, 3), (7, 10)]),
        ("###...###....", True, [(0, 9)]),
        ("....###", False, [(4, 7)]),
        ("#" * 50 + "........", False, [(0, 50)]),
    ],
)
def test_utterances_lie_between_pauses(
    marks: str, complete: bool, expected: list[tuple[int, int]]
) -> None:
    assert _bounds(_happenings(_blocks(_marks(marks)), complete=complete)) == expected


def test_an_utterance_holds_a_little_sound_from_before_it() -> None:
    happenings = _happenings(_blocks(_marks(".....##........")))

    assert [_frames(each) for each in happenings[:2]] == [(3, 4, 5), (6,)]


def test_a_pause_is_looked_at_once_and_again_after_more_speech() -> None:
    happenings = _happenings(_blocks(_marks("##.....##........")))

    assert [each.ended // FRAME_SAMPLES for each in happenings if isinstance(each, Paused)] == [2, 9]


def test_speech_that_goes_on_takes_back_that_it_was_complete() -> None:
    utterances = Utterances(_PAUSES)
    for block in _blocks(_marks("##...")):
        tuple(utterances.accept(block))
    utterances.settle(Wait.SHORT)
    rest = [
        each
        for block in _blocks(_marks("#......."), 5 * FRAME_SAMPLES)
        for each in utterances.accept(block)
    ]

    assert not any(isinstance(each, Closed) for each in rest)


def test_the_silence_that_is_enough_ends_it() -> None:
    ends = {}
    for wait in Wait:
        utterances = Utterances(_PAUSES)
        for number, block in enumerate(_blocks(_marks("##........"))):
            for each in utterances.accept(block):
                if isinstance(each, Lasted):
                    utterances.settle(wait)
                if isinstance(each, Closed):
                    ends[wait] = number - 1

    assert ends == {
        Wait.BRIEF: _PAUSES.brief, Wait.SHORT: _PAUSES.short, Wait.HELD: _PAUSES.held, Wait.LONG: _PAUSES.long,
    }  # fmt: skip


def test_what_is_much_softer_than_the_utterance_is_silence_though_it_was_marked() -> None:
    sound = np.concatenate((_hum(0.5, 8_000, 1), _hum(1.0, 8_000 / 10**2.5, 2)))
    found = list(Utterances().accept(Block(0, sound, speech=True)))

    assert [each.ended for each in found if isinstance(each, Closed)] == [8_000]


def test_long_talk_is_neither_kept_nor_looked_at_but_called_talk() -> None:
    happenings = _happenings(_blocks(_marks("#" * 60 + "........")))

    assert sum(isinstance(each, Went) for each in happenings) == 39
    assert not any(isinstance(each, Paused) for each in happenings)
    assert happenings[-1] == Closed(60 * FRAME_SAMPLES, talk=True)


def test_a_gap_in_the_stream_ends_an_utterance_and_forgets_what_was_before() -> None:
    before = _blocks(_marks("..##."))
    after = _blocks(_marks(".##........"), 100 * FRAME_SAMPLES)
    happenings = _happenings(before + after)

    assert _bounds(happenings) == [(2, 4), (101, 103)]
    assert [_frames(each) for each in happenings if isinstance(each, Opened)] == [(0, 1, 2), (0, 1)]


def test_reset_forgets_an_utterance_that_has_begun() -> None:
    utterances = Utterances(_PAUSES)
    for block in _blocks(_marks("####")):
        tuple(utterances.accept(block))
    utterances.reset()

    assert list(utterances.finish()) == []


@given(_MARKS, some.lists(some.integers(1, 2_000), min_size=1, max_size=30), some.booleans())
def test_how_the_stream_is_cut_into_blocks_changes_nothing(
    marks: list[bool], sizes: list[int], complete: bool
) -> None:
    frames = _blocks(marks)
    assert _plain(_happenings(_cut(frames, sizes), complete=complete)) == _plain(
        _happenings(frames, complete=complete)
    )


def _cut(frames: Sequence[Block], sizes: Sequence[int]) -> Iterable[Block]:
    """The same samples and marks in blocks of at most these sizes; a block never has two marks."""
    for at, frame in enumerate(frames):
        begin = 0
        while begin < FRAME_SAMPLES:
            size = sizes[(at + begin) % len(sizes)]
            yield Block(frame.first_sample + begin, frame.samples[begin : begin + size], frame.speech)
            begin += size


@given(_MARKS)
def test_every_marked_frame_lies_in_an_utterance(marks: list[bool]) -> None:
    bounds = _bounds(_happenings(_blocks(marks)))
    within = [any(begin <= at < end for begin, end in bounds) for at in range(len(marks))]

    assert all(inside for inside, mark in zip(within, marks, strict=True) if mark)
    assert all(marks[begin] and marks[end - 1] for begin, end in bounds)


def _hum(seconds: float, level: float, seed: int = 0) -> Samples:
    noise = np.random.default_rng(seed).normal(0, level, round(seconds * 16_000))
    return noise.astype(np.int16)


def test_where_nobody_marked_speech_what_is_louder_than_the_room_is_speech() -> None:
    sound = np.concatenate((_hum(3.0, 20), _hum(0.5, 2_000, 1), _hum(1.5, 20, 2)))
    utterances = Utterances()
    found = list(utterances.accept(Block(0, sound, None)))

    assert [each.began for each in found if isinstance(each, Opened)] == [48_000]
    assert [each.ended for each in found if isinstance(each, Closed)] == [56_000]


def test_a_room_that_only_hums_says_nothing() -> None:
    utterances = Utterances()

    assert list(utterances.accept(Block(0, _hum(10.0, 30), None))) == []
