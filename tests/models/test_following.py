"""What recognisers have in common: when a pause begins, when it is enough, what comes after talk."""

import numpy as np
import pytest

from models.following import NOTHING_KNOWN, Following
from models.recognising import Alternative, Block, Heard, Partial, Vocabulary
from models.utterances import FRAME_SAMPLES, Pauses

PAUSES = Pauses(lead=3, look=2, brief=4, short=6, held=8, long=12)
QUIET = np.zeros(FRAME_SAMPLES, np.int16)
SPOKEN = "#" * 70
"""Long enough for any of the words."""
WORDS = Vocabulary(
    ("next", "go on", "how many", "how many stitches", "help"), costly=frozenset({"next", "go on"}),
    begins_talk=frozenset({"go on"}),
)  # fmt: skip


class Told(Following):
    """Hears what it is told that was said, and notes what was asked of it."""

    name = "told"

    def __init__(self, *said):
        self.said = list(said)
        self.asked = []
        super().__init__(PAUSES)

    def _take_up(self, _):
        self.asked.append("take up")

    def _feed(self, samples):
        """It needs no sound."""

    def _begin_reading(self):
        self.asked.append("begin")

    def _so_far(self):
        self.asked.append("so far")
        return self.said[0]

    def _to_end(self):
        self.asked.append("known" if self._was_asked else "to end")
        return (self.said.pop(0),)

    def _drop(self):
        """It keeps no sound."""


def _sure(words):
    return Alternative(words, 0.9)


def _run(told, marks):
    """What came, and after how many frames of silence; "#" is speech, "." is none."""
    found, silent = [], 0
    sound = np.full(FRAME_SAMPLES, 1_000, np.int16)
    for at, mark in enumerate(marks):
        silent = 0 if mark == "#" else silent + 1
        block = Block(at * FRAME_SAMPLES, sound, mark == "#")
        found += [(each, silent) for each in told.accept(block)]
    return found


def _heard(told, marks):
    return [(each.words, silent) for each, silent in _run(told, marks) if isinstance(each, Heard)]


@pytest.mark.parametrize(
    ("said", "silence"),
    [
        (_sure("help"), PAUSES.brief),
        (_sure("how many stitches"), PAUSES.brief),
        (_sure("how many"), PAUSES.short),
        (_sure("next"), PAUSES.short),
        (_sure("go on"), PAUSES.held),
        (_sure("how"), PAUSES.long),
        (Alternative("help", 0.5), PAUSES.long),
        (NOTHING_KNOWN, PAUSES.long),
    ],
)
def test_silence_is_enough_when_nothing_else_can_come_and_a_little_later_where_a_mistake_is_costly(said, silence):
    told = Told(said)
    told.expect(WORDS)

    assert _heard(told, f"..{SPOKEN}" + "." * 20) == [(said.words, silence)]


@pytest.mark.parametrize(("frames", "silence"), [(18, PAUSES.long), (19, PAUSES.brief)])
def test_what_nobody_can_have_said_so_fast_waits_for_what_may_follow(frames, silence):
    told = Told(_sure("help"))
    told.expect(WORDS)

    assert _heard(told, ".." + "#" * frames + "." * 20) == [("help", silence)]


def test_it_begins_to_read_when_a_pause_begins_and_reads_once():
    told = Told(_sure("help"))
    told.expect(WORDS)
    _run(told, f"..{SPOKEN}" + "." * 20)

    assert told.asked == ["take up", "begin", "so far", "known"]


def test_speech_that_goes_on_is_read_again_at_the_next_pause():
    told = Told(_sure("how many"))
    told.expect(WORDS)
    found = _run(told, f"..{SPOKEN}.....{SPOKEN}" + "." * 20)

    assert [type(each) for each, _ in found] == [Partial, Partial, Heard]
    assert told.asked == ["take up", "begin", "so far", "begin", "so far", "known"]


def test_what_the_end_of_the_stream_cuts_off_is_read_then():
    told = Told(_sure("help"))
    told.expect(WORDS)
    _run(told, f"..{SPOKEN}..")

    assert [each.words for each in told.finish()] == ["help"]
    assert told.asked == ["take up", "begin", "to end"]


def test_a_text_right_after_talk_belongs_to_it_and_later_it_counts():
    told = Told(NOTHING_KNOWN, _sure("help"), _sure("help"))
    told.expect(WORDS)
    talk, soon, later = "#" * 60 + "." * 15, "#" * 20 + "." * 130, "#" * 20 + "." * 15

    assert [words for words, _ in _heard(told, talk + soon + later)] == ["[unk]", "[unk]", "help"]


def test_a_reset_forgets_that_there_was_talk():
    told = Told(NOTHING_KNOWN, _sure("help"))
    told.expect(WORDS)
    _run(told, "#" * 60 + "." * 15)
    told.reset()

    assert [words for words, _ in _heard(told, "#" * 20 + "." * 15)] == ["help"]


def test_what_is_expected_during_an_utterance_counts_from_the_next_one_on():
    told = Told(_sure("next"), _sure("help"))
    told.expect(WORDS)
    told.asked.clear()
    _run(told, "..##")
    told.expect(Vocabulary(("help",)))
    assert "take up" not in told.asked
    found = [each for at in range(4, 40) for each in told.accept(Block(at * FRAME_SAMPLES, QUIET, False))]

    assert ["next"] == [each.words for each in found if isinstance(each, Heard)]
    assert ["take up"] == [asked for asked in told.asked if asked == "take up"]


def test_what_is_expected_counts_when_an_utterance_is_forgotten():
    told = Told(_sure("next"))
    _run(told, "..##")
    told.expect(WORDS)
    told.asked.clear()
    told.reset()

    assert ["take up"] == told.asked
