"""What every recogniser must do, whichever it is."""

from itertools import pairwise

import numpy as np
import pytest

from models.pocketsphinx_recogniser import PocketSphinxRecogniser
from models.recognising import UNKNOWN_WORD, Block, Heard, Partial, Recogniser, Vocabulary
from models.vosk_recogniser import VoskRecogniser
from tests.models import hearing, rooms
from tests.models.test_vosk_recogniser import KOREAN, _korean_model

WORD = {"pocketsphinx": "next", "vosk": "ko: \N{HANGUL SYLLABLE NE}"}


def _make(name: str) -> Recogniser:
    return PocketSphinxRecogniser() if name == "pocketsphinx" else VoskRecogniser(_korean_model())


def _vocabulary(name: str) -> Vocabulary:
    return KOREAN if name == "vosk" else hearing.SMALL


@pytest.fixture(params=["pocketsphinx", "vosk"])
def recogniser(request):
    made = _make(request.param)
    made.expect(_vocabulary(made.name))
    return made


@pytest.fixture(params=["pocketsphinx", "vosk"])
def listener(request):
    """A recogniser that takes sound."""
    made = _make(request.param)
    made.expect(_vocabulary(made.name))
    return made


def _twice(listener):
    word = WORD[listener.name]
    return hearing.take(0.5, word, 1.0, word, 1.0)


def test_it_has_a_name(recogniser):
    assert recogniser.name in {"pocketsphinx", "vosk"}


def test_a_silent_room_says_nothing(recogniser):
    room = rooms.as_int16(rooms.pink(5.0, -55))

    assert hearing.everything(recogniser, hearing.marked(room)) == []


def test_nothing_is_open_at_first(recogniser):
    assert recogniser.finish() == ()


def test_a_reset_before_anything_is_harmless(recogniser):
    recogniser.reset()

    assert recogniser.finish() == ()


def test_every_word_said_alone_is_an_utterance(listener):
    found = hearing.heard(listener, hearing.marked(_twice(listener)))

    assert len(found) == 2


def test_utterances_follow_each_other_inside_the_stream(listener):
    sound = _twice(listener)
    found = hearing.heard(listener, hearing.marked(sound))
    bounds = [0, *(sample for each in found for sample in (each.began, each.ended)), len(sound)]

    assert all(earlier <= later for earlier, later in pairwise(bounds))


def test_confidences_are_shares_and_the_words_are_the_best_alternative(listener):
    for each in hearing.heard(listener, hearing.marked(_twice(listener))):
        shares = [other.confidence for other in each.alternatives]

        assert (each.alternatives[0].words, shares[0]) == (each.words, each.confidence)
        assert all(0.0 <= share <= 1.0 for share in shares)
        assert shares[1:] == sorted(shares[1:], reverse=True)


def test_partial_results_name_the_utterance_they_belong_to(listener):
    found = hearing.everything(listener, hearing.marked(_twice(listener)))
    began = [each.began for each in found if isinstance(each, Heard)]

    assert {each.began for each in found if isinstance(each, Partial)} <= set(began)


def test_how_the_stream_is_cut_into_blocks_changes_nothing(listener):
    sound = _twice(listener)
    found = [hearing.everything(listener, hearing.blocks(sound, size)) for size in (160, 333, 8_000)]

    assert found[0] == found[1] == found[2]


def test_the_same_utterance_is_heard_the_same_later_in_the_stream(listener):
    sound = hearing.take(0.5, WORD[listener.name], 1.0)
    first = hearing.heard(listener, hearing.blocks(sound))
    later = hearing.heard(listener, hearing.blocks(sound, first_sample=1_000_000))

    assert [each.words for each in later] == [each.words for each in first]
    assert [each.began - 1_000_000 for each in later] == [each.began for each in first]


def test_reset_forgets_an_utterance_that_has_begun(listener):
    sound = hearing.take(0.5, WORD[listener.name])
    for block in hearing.blocks(sound, speech=True):
        listener.accept(block)
    listener.reset()

    assert listener.finish() == ()


def test_the_end_of_the_stream_ends_an_utterance(listener):
    found = hearing.heard(listener, hearing.marked(hearing.take(0.5, WORD[listener.name])))

    assert len(found) == 1


def test_a_gap_in_the_stream_ends_an_utterance(listener):
    sound = hearing.take(0.5, WORD[listener.name])
    before = [each for block in hearing.blocks(sound, speech=True) for each in listener.accept(block)]
    after = listener.accept(Block(len(sound) + 16_000, np.zeros(160, np.int16), speech=False))

    assert not any(isinstance(each, Heard) for each in before)
    assert [each.ended <= len(sound) for each in after if isinstance(each, Heard)] == [True]


def test_without_a_vocabulary_nothing_but_unknown_words_is_heard(listener):
    listener.expect(Vocabulary(()))
    found = hearing.heard(listener, hearing.marked(hearing.take(0.5, WORD[listener.name], 1.0)))

    assert {word for each in found for word in each.words.split()} <= {UNKNOWN_WORD}
