import numpy as np
import pytest

from models.errors import WordsUnknown
from models.pocketsphinx_recogniser import PocketSphinxRecogniser
from models.recognising import Block, Heard, Partial, Vocabulary
from models.utterances import Pauses
from tests.models import hearing, rooms

_KNOWN = "en-us+m5: "


@pytest.fixture(scope="module")
def ears():
    recogniser = PocketSphinxRecogniser()
    recogniser.expect(hearing.SMALL)
    return recogniser


@pytest.fixture
def listener(ears):
    ears.reset()
    ears.expect(hearing.SMALL)
    return ears


def _words(listener, *parts):
    return [each.words for each in hearing.heard(listener, hearing.marked(hearing.take(0.5, *parts, 1.2)))]


@pytest.mark.parametrize(
    "said", ["next", "undo that", "where am i", "go back twelve rounds", "i have thirty six", "stop for today"]
)
def test_a_command_said_alone_is_heard(listener, said):
    assert _words(listener, _KNOWN + said) == [said]


@pytest.mark.parametrize(
    "said",
    [
        "the next bus leaves at half past nine",
        "we should go back to the shop tomorrow",
        "there were thirty six people in the hall",
        "please feed the cat before you go out",
    ],
)
def test_talk_is_unknown_even_with_words_of_commands_in_it(listener, said):
    assert set(" ".join(_words(listener, _KNOWN + said)).split()) == {"[unk]"}


def test_two_commands_between_pauses_are_two(listener):
    assert _words(listener, _KNOWN + "next", 0.8, _KNOWN + "undo that") == ["next", "undo that"]


def test_a_command_right_after_talk_belongs_to_it_and_later_it_counts(listener):
    talk = _KNOWN + "the weather will be fine tomorrow"

    assert set(_words(listener, talk, 0.75, _KNOWN + "undo that")) == {"[unk]"}
    assert _words(listener, talk, 1.4, _KNOWN + "undo that")[-1] == "undo that"


def test_reset_forgets_that_there_was_talk(listener):
    listener.reset()
    hearing.heard(listener, hearing.marked(hearing.take(0.5, _KNOWN + "the weather will be fine tomorrow", 0.7)))
    listener.reset()

    assert _words(listener, _KNOWN + "undo that") == ["undo that"]


def test_a_hesitation_inside_a_command_does_not_cut_it(listener):
    assert _words(listener, _KNOWN + "i have", 0.35, _KNOWN + "thirty six") == ["i have thirty six"]


def test_what_is_complete_ends_after_a_short_pause_and_what_is_not_after_a_long_one(listener):
    complete = _wait(listener, _KNOWN + "undo that")
    open_still = _wait(listener, _KNOWN + "i have")

    assert complete <= 0.30
    assert 0.55 <= open_still <= 0.75


def _wait(listener, said):
    """Seconds of the stream from the end of the speech, as it was marked, to the utterance."""
    listener.reset()
    for block in hearing.marked(hearing.take(0.5, said, 1.2), 160):
        for each in listener.accept(block):
            if isinstance(each, Heard):
                return (block.end_sample - each.ended) / 16_000
    return None


def test_words_so_far_are_told_while_the_pause_is_waited_for(listener):
    found = hearing.everything(listener, hearing.marked(hearing.take(0.5, _KNOWN + "undo that", 1.0)))

    assert [(type(each), each.words) for each in found] == [(Partial, "undo that"), (Heard, "undo that")]


def test_long_talk_is_unknown():
    recogniser = PocketSphinxRecogniser(Pauses(longest=100))
    recogniser.expect(hearing.SMALL)
    sound = rooms.as_int16(rooms.white(3.0, -20))
    blocks = [*hearing.blocks(sound, speech=True), Block(len(sound), np.zeros(16_000, np.int16), speech=False)]
    heard = [each for block in blocks for each in recogniser.accept(block) if isinstance(each, Heard)]

    assert [(each.words, each.ended) for each in heard] == [("[unk]", len(sound))]


def test_a_word_outside_the_dictionary_needs_a_pronunciation_and_is_named(listener):
    with pytest.raises(WordsUnknown) as caught:
        listener.expect(Vocabulary(("kfb", "zzyx next")))

    assert caught.value.values["words"] == "kfb, zzyx"


def test_a_word_that_is_pronounced_can_be_heard(listener):
    listener.expect(Vocabulary(("tink it", "next"), pronounced={"tink": "T IH NG K"}))

    assert _words(listener, _KNOWN + "tink it") == ["tink it"]


def test_another_vocabulary_counts_from_the_next_utterance_on(listener):
    listener.expect(Vocabulary(("carry on",)))
    assert _words(listener, _KNOWN + "carry on") == ["carry on"]

    listener.expect(hearing.SMALL)
    assert _words(listener, _KNOWN + "next") == ["next"]


def test_a_quiet_voice_is_heard_like_a_loud_one(listener):
    loud = hearing.take(0.5, _KNOWN + "undo that", 1.0)
    quiet = (loud / 8).astype(np.int16)

    assert [each.words for each in hearing.heard(listener, hearing.blocks(quiet, speech=None))] == ["undo that"]


def test_what_was_heard_before_changes_nothing(listener):
    sound = hearing.take(0.5, _KNOWN + "undo that", 1.0)
    alone = hearing.heard(listener, hearing.marked(sound))
    hearing.heard(listener, hearing.marked(hearing.take(0.5, "en-gb+f2: the weather is fine", 1.0)))
    after = hearing.heard(listener, hearing.marked(sound))

    assert after == alone
