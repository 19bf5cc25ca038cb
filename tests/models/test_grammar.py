import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as some

from models.grammar import Grammar, SlotUnknown, make_grammar
from models.recognising import Vocabulary

_UNITS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
_TEENS = ["ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "nineteen"]
_TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]


def _numbers() -> tuple[str, ...]:
    below_hundred = [*_UNITS, *_TEENS, *_TENS, *(f"{ten} {unit}" for ten in _TENS for unit in _UNITS)]
    hundreds = [f"{unit} hundred" for unit in _UNITS]
    joined = itertools.product(hundreds, (" ", " and "), below_hundred)
    return ("zero", *below_hundred, *hundreds, *map("".join, joined))


_WORD = some.sampled_from(("go", "back", "on", "round", "one", "two"))
_TEXT = some.lists(_WORD, min_size=1, max_size=4).map(" ".join)
_PHRASE = some.lists(_WORD | some.just("{slot}"), min_size=1, max_size=4).map(" ".join)
_VOCABULARY = some.builds(
    lambda phrases, texts: Vocabulary(tuple(phrases), {"slot": tuple(texts)}),
    some.lists(_PHRASE, max_size=6),
    some.lists(_TEXT, min_size=1, max_size=6),
)


def _filled(vocabulary: Vocabulary) -> set[str]:
    """Every text, by plain substitution."""
    found: set[str] = set()
    for phrase in vocabulary.phrases:
        choices = [vocabulary.slots["slot"] if word == "{slot}" else (word,) for word in phrase.split()]
        found |= {" ".join(words) for words in itertools.product(*choices)}
    return found


def _followed(grammar: Grammar) -> set[str]:
    """Every text on the way to the single end."""
    start, end, arcs = grammar.single_ended()
    going: dict[int, list[tuple[int, str]]] = {}
    for begin, target, word in arcs:
        going.setdefault(begin, []).append((target, word))
    found, waiting = set(), [(start, ())]
    while waiting:
        state, words = waiting.pop()
        if state == end:
            found.add(" ".join(words))
        waiting += [(target, (*words, word)) for target, word in going.get(state, ())]
    return found


@given(_VOCABULARY)
def test_exactly_the_texts_of_the_vocabulary_may_be_said(vocabulary: Vocabulary) -> None:
    grammar = make_grammar(vocabulary)

    assert list(grammar.texts()) == sorted(_filled(vocabulary), key=str.split)
    assert _followed(grammar) == _filled(vocabulary)


@given(_VOCABULARY, _TEXT)
def test_a_text_is_accepted_if_it_is_one_and_begins_one_or_not(vocabulary: Vocabulary, text: str) -> None:
    texts = _filled(vocabulary)
    grammar = make_grammar(vocabulary)

    assert grammar.accepts(text) == (text in texts)
    assert grammar.begins(text) == any(f"{other} ".startswith(f"{text} ") for other in texts)


@given(_VOCABULARY)
def test_no_two_states_have_the_same_continuations(vocabulary: Vocabulary) -> None:
    grammar = make_grammar(vocabulary)
    continuations = [frozenset(grammar._from(state)) for state in grammar.arcs]

    assert len(set(continuations)) == len(continuations)


@given(_VOCABULARY)
def test_the_texts_for_neighbours_hold_every_pair_of_neighbours(vocabulary: Vocabulary) -> None:
    texts = _filled(vocabulary)
    chosen = set(make_grammar(vocabulary).neighbours())

    assert chosen <= texts
    assert _pairs(chosen) == _pairs(texts)


def _pairs(texts: set[str]) -> set[tuple[str, str]]:
    return {pair for text in texts for pair in itertools.pairwise(("<", *text.split(), ">"))}


def test_a_slot_of_two_thousand_numbers_costs_a_few_states_at_each_place() -> None:
    numbers = _numbers()
    rests = ("", " rounds", " on top")
    phrases = tuple(f"{verb} {{number}}{rest}" for verb in ("back", "have") for rest in rests)
    grammar = make_grammar(Vocabulary(phrases, {"number": numbers}))

    assert len(numbers) == 1_853
    assert len(grammar.arcs) <= 20
    assert len(grammar.single_ended()[2]) <= 300
    assert grammar.accepts("back nine hundred and ninety nine rounds")
    assert not grammar.accepts("back nine hundred and ninety nine nine rounds")


def test_the_same_number_slot_in_equal_places_is_made_once() -> None:
    one = make_grammar(Vocabulary(("back {number} rounds",), {"number": _numbers()}))
    two = make_grammar(Vocabulary(("back {number} rounds", "on {number} rounds"), {"number": _numbers()}))

    assert len(two.arcs) == len(one.arcs)


def test_a_slot_without_texts_is_named() -> None:
    with pytest.raises(SlotUnknown, match='slot "stage"'):
        make_grammar(Vocabulary(("to the {stage}",), {"number": ("one",)}))


def test_nothing_may_be_said_in_an_empty_vocabulary() -> None:
    grammar = make_grammar(Vocabulary(()))

    assert list(grammar.texts()) == []
    assert not grammar.accepts("next")
    assert grammar.words == ()
