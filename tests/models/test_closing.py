"""Only texts that may be said come out of a list of readings, and each with its share of the likelihood."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as some

from models.closing import FILE, Hypothesis, Judging, joined, judged, read_judging, sayable
from models.grammar import make_grammar
from models.recognising import UNKNOWN_WORD, Vocabulary

GRAMMAR = make_grammar(Vocabulary(("next", "i have {number}"), {"number": ("thirteen", "thirty", "thirty one")}))
_WAYS = some.lists(
    some.builds(
        Hypothesis,
        some.sampled_from(("next", "i have thirty", "i have thirteen", "i have one thirty", "", "[unk]", "next next")),
        some.floats(-500, 500),
    ),
    min_size=1,
    max_size=10,
)


def closed(ways, grammar, seconds, judging):
    return judged(sayable(ways, grammar, judging.scale), seconds, judging)


def _ways(*ways):
    return tuple(Hypothesis(words, score) for words, score in ways)


def test_what_nobody_may_say_is_passed_over():
    ways = _ways(("i have one thirty", -1.0), ("i have thirty", -1.0), ("thirty have i", -2.0))
    found = closed(ways, GRAMMAR, 1.0, Judging(plausible=0.1))

    assert [each.words for each in found] == ["i have thirty"]
    assert math.isclose(found[0].confidence, 1 / (2 + math.exp(-1.0)))


def test_another_text_that_may_be_said_is_a_rival_with_its_own_share():
    found = closed(_ways(("i have thirteen", 0.0), ("i have thirty", -0.5)), GRAMMAR, 1.0, Judging())

    assert [each.words for each in found] == ["i have thirteen", "i have thirty"]
    assert math.isclose(sum(each.confidence for each in found), 1.0)


def test_what_is_hardly_likely_is_unknown():
    found = closed(_ways(("[unk]", 0.0), ("next", -3.0)), GRAMMAR, 1.0, Judging())

    assert [each.words for each in found] == [UNKNOWN_WORD]
    assert found[0].confidence > 0.9


def test_what_only_sounds_like_a_text_that_may_be_said_speaks_for_it():
    grammar = make_grammar(Vocabulary(("back two rounds", "ripped back to round two", "how many rounds", "next")))
    ways = _ways(("back to rounds", 0.0), ("back two rounds", -2.0), ("ripped back two round to", -2.0), ("next", -2.0))
    heard = sayable(ways, grammar, 1.0, (("two", "to"), ("four", "for")))
    deaf = sayable(ways, grammar, 1.0)

    share = 1 / (1 + 3 * math.exp(-2))
    assert ["back two rounds", "ripped back to round two", "next"] == list(heard)
    assert math.isclose(share * (1 + math.exp(-2)), heard["back two rounds"])
    assert {"back two rounds", "next"} == deaf.keys()


def test_a_number_that_nobody_says_is_never_heard():
    assert closed(_ways(("i have thirty thirteen", 0.0)), GRAMMAR, 1.0, Judging())[0].words == UNKNOWN_WORD


@given(_WAYS, some.floats(0.1, 3.0))
def test_only_texts_that_may_be_said_come_out_and_the_surest_first(ways, seconds):
    found = closed(ways, GRAMMAR, seconds, Judging(weights=(0.1, 0.9, -0.2, -0.5)))
    shares = [each.confidence for each in found]

    assert all(GRAMMAR.accepts(each.words) or each.words == UNKNOWN_WORD for each in found)
    assert shares == sorted(shares, reverse=True)
    assert all(0.0 <= share <= 1.0 for share in shares)


def test_pieces_that_follow_each_other_are_one_text():
    pieces = (_ways(("i have", -1.0), ("i", -2.0)), (), _ways(("thirty", -1.0), ("thirteen", -1.5)))

    assert joined(pieces, 3) == _ways(("i have thirty", -2.0), ("i have thirteen", -2.5), ("i thirty", -3.0))


def test_a_model_brings_its_own_judging(tmp_path):
    assert read_judging(tmp_path) == Judging()
    (tmp_path / FILE).write_text("alternatives = 4\nscale = 0.5\nplausible = 0.2\nweights = [1, 2, 3, 4]\n")

    assert read_judging(tmp_path) == Judging(4, 0.5, 0.2, (1.0, 2.0, 3.0, 4.0))


@pytest.mark.parametrize("text", ["weights = [1, 2]", "alternatives = 0", "scale = -1.0", "sureness = 3", "weights ="])
def test_a_judging_that_says_something_else_is_refused(tmp_path, text):
    (tmp_path / FILE).write_text(text)

    with pytest.raises((ValueError, TypeError)):
        read_judging(tmp_path)
