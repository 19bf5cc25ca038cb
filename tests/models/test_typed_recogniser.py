import numpy as np
import pytest

from models.recognising import Alternative, Block, Heard
from models.typed_recogniser import SAMPLES_A_WORD, TypedRecogniser
from tests.models.hearing import SMALL


@pytest.fixture
def typed():
    recogniser = TypedRecogniser()
    recogniser.expect(SMALL)
    return recogniser


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("next", "next"),
        ("  Next!  ", "next"),
        ("Where am I?", "where am i"),
        ("I have thirty-six.", "i have thirty six"),
        ("what about next week", "[unk] [unk] next [unk]"),
        ("stop it", "stop [unk]"),
        ("i'm", "[unk]"),
        ("", ""),
        ("...", ""),
    ],
)
def test_typed_words_are_heard_and_words_outside_the_vocabulary_are_unknown(typed, line, words):
    assert typed.type(line).words == words


def test_what_is_typed_is_sure(typed):
    heard = typed.type("next")

    assert heard.confidence == 1.0
    assert heard.alternatives == (Alternative("next", 1.0),)


def test_a_curly_apostrophe_is_an_apostrophe():
    recogniser = TypedRecogniser()
    recogniser.expect(type(SMALL)(("i've got {number}",), SMALL.slots))

    assert recogniser.type("I\N{RIGHT SINGLE QUOTATION MARK}ve got six").words == "i've got six"


def test_lines_follow_each_other_in_the_stream(typed):
    first, second = typed.type("next"), typed.type("undo that")

    assert (first.began, first.ended) == (0, SAMPLES_A_WORD)
    assert (second.began, second.ended) == (first.ended, first.ended + 2 * SAMPLES_A_WORD)


def test_sound_says_nothing_but_moves_the_stream_on(typed):
    assert typed.accept(Block(0, np.full(16_000, 9_000, np.int16), speech=True)) == ()
    assert typed.finish() == ()
    assert typed.type("next") == Heard("next", 1.0, 16_000, 16_000 + SAMPLES_A_WORD, (Alternative("next", 1.0),))


def test_a_vocabulary_counts_from_the_next_line_on(typed):
    typed.expect(type(SMALL)(("carry on",)))

    assert [typed.type(line).words for line in ("next", "carry on")] == ["[unk]", "carry on"]
