"""Keys and values become sentences, in words as a person says them."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.languages.sentences import SentenceFailed
from assistant.speaking.wording import Verbosity, word
from plans.conversation import Command, Measure, Next, Problem, Reply, Value, WhereAmI
from plans.engine import begin, decide, evolve, replay
from plans.pattern import BindOff, Heel, Plan
from tests.languages_under_test import ALL, ENGLISH
from tests.strategies import HEELS, practice

POLISH = next(language for language in ALL if language.name == "pl")

SECOND_FRONT = Reply.of("where-half", sock=Reply.of("sock-second"), half=Reply.of("half-front"))


def knit(times: int) -> Reply:
    return Reply.of("op-k", times=times)


def a_call(**parts: tuple[Reply, ...]) -> Reply:
    values: dict[str, Value] = dict.fromkeys(("stage", "where", "acts", "work", "then", "makes"), ())
    return Reply(key="call", values=tuple({**values, **parts}.items()))


INCREASES = (knit(1), Reply.of("op-m1r", times=1), knit(2), Reply.of("op-m1l", times=1), knit(1))


def test_an_increase_row_is_called_with_its_count_last():
    call = a_call(where=(SECOND_FRONT,), work=INCREASES, makes=(Reply.of("makes", count=6),))

    assert (
        word(call, ENGLISH)
        == "Second sock, front: knit one, make one right, knit two, make one left, knit one. Makes six."
    )


def test_a_plain_round_is_called_by_its_number_alone():
    assert word(Reply.of("call-round", round=14, of=24), ENGLISH) == "Fourteen of twenty-four."


def test_acts_come_before_the_work_and_the_turn_after_it():
    call = a_call(
        where=(SECOND_FRONT,),
        acts=(Reply.of("act-change-yarn"), Reply.of("act-snug")),
        work=(knit(24),),
        then=(Reply.of("act-turn"),),
        makes=(Reply.of("makes", count=24),),
    )

    assert word(call, ENGLISH) == "Second sock, front: change yarn; snug; knit twenty-four, turn, makes twenty-four."


@pytest.mark.parametrize(
    ("parts", "said"),
    [
        ({"work": (knit(3),)}, "Knit three."),
        ({"then": (Reply.of("act-turn"),)}, "Turn."),
        ({"acts": (Reply.of("act-lifeline"),)}, "Thread a lifeline."),
        ({"makes": (Reply.of("makes", count=18),)}, "Makes eighteen."),
        ({"where": (SECOND_FRONT,), "then": (Reply.of("act-turn"),)}, "Second sock, front: turn."),
        ({"where": (SECOND_FRONT,)}, "Second sock, front."),
    ],
)
def test_a_call_leaves_out_what_there_is_not(parts: dict[str, tuple[Reply, ...]], said: str):
    assert word(a_call(**parts), ENGLISH) == said


def test_a_list_in_a_repeat_has_its_own_joiner():
    repeat = Reply.of("repeat", work=(Reply.of("op-sl-wyib", times=1), knit(1)), times=5)
    call = a_call(work=(repeat, Reply.of("op-ssk", times=1)))

    assert word(call, ENGLISH) == "Five times slip one knit one, slip slip knit."


@pytest.mark.parametrize(
    ("tenths_mm", "centimetres", "inches"),
    [
        (2350, "Twenty-three point five centimetres.", "Nine and a quarter inches."),
        (2400, "Twenty-four centimetres.", "Nine and a half inches."),
        (100, "One centimetre.", "Half an inch."),
        (254, "Two point five centimetres.", "One inch."),
        (0, "Zero centimetres.", "Zero inches."),
    ],
)
def test_a_length_is_said_in_its_unit(tenths_mm: int, centimetres: str, inches: str):
    """To the millimetre, or to the quarter of an inch (25.4 mm)."""
    reply = Reply.of("answer-length", length=Measure(tenths_mm=tenths_mm))

    assert word(reply, ENGLISH) == centimetres
    assert word(reply, ENGLISH, unit="in") == inches


def test_numbers_that_sound_alike_are_said_digit_by_digit():
    assert word(Reply.of("which-number", first=13, second=30), ENGLISH) == "One three, or three nought?"


def test_a_problem_says_where_what_and_what_to_do():
    problem = Problem.of("length-no-unit", "line 3, column 8", field=Reply.of("field-ankle"), text="21", number="21")

    assert (
        word(problem, ENGLISH)
        == "Line 3, column 8: The ankle, “21”, has no unit: write 21cm, 21mm or 21in."
    )


def test_a_problem_without_a_place_begins_with_what_is_wrong():
    problem = Problem.of("field-missing", field=Reply.of("field-swatch"))

    assert word(problem, ENGLISH) == "The swatch must be given: add what is missing."


def test_each_verbosity_has_its_form_and_the_plain_one_stands_in():
    pulled = Reply.of("act-snug")
    turned = Reply.of("act-turn")

    assert [word(pulled, ENGLISH, verbosity) for verbosity in Verbosity] == [
        "snug",
        "snug",
        "pull the first two stitches snug",
    ]
    assert {word(turned, ENGLISH, verbosity) for verbosity in Verbosity} == {"turn"}


def test_parts_are_worded_with_the_verbosity_of_the_whole():
    call = a_call(acts=(Reply.of("act-snug"),))

    assert word(call, ENGLISH, Verbosity.LEARNER) == "Pull the first two stitches snug."


def test_a_missing_value_is_an_error_and_not_a_word():
    with pytest.raises(SentenceFailed, match="of"):
        word(Reply.of("call-round", round=3), ENGLISH)


def test_an_unknown_key_is_an_error():
    with pytest.raises(SentenceFailed, match="no sentence for “no-such-thing”"):
        word(Reply.of("no-such-thing"), ENGLISH)


def test_another_language_says_the_whole_before_the_part_in_its_own_case():
    """"Of twenty-four the fourteenth": the genitive comes from the language's data alone."""
    assert word(Reply.of("call-round", round=14, of=24), POLISH) == "Z dwudziestu czterech czternaście."


@pytest.mark.parametrize(
    ("count", "said"),
    [(1, "razem jedno oczko"), (3, "razem trzy oczka"), (5, "razem pięć oczek"), (22, "razem dwadzieścia dwa oczka")],
)
def test_another_language_has_three_plural_forms(count: int, said: str):
    assert word(Reply.of("makes", count=count), POLISH) == said


@given(st.integers(0, 999))
def test_a_count_is_always_said_in_words_that_are_understood_as_it(count: int):
    said = word(Reply.of("makes", count=count), ENGLISH)

    assert ENGLISH.numbers.understood(said.removeprefix("makes ").replace("-", " ")) == count


@pytest.mark.parametrize("language", ALL, ids=lambda language: language.name)
@pytest.mark.parametrize("verbosity", list(Verbosity))
@pytest.mark.parametrize("heel", HEELS)
def test_a_whole_pair_is_called_without_a_digit_or_a_stray_mark(language, verbosity: Verbosity, heel: Heel):
    """Every reply to "next" and "where am I", from cast-on to bind-off, in every language and verbosity."""
    said = [word(reply, language, verbosity) for reply in replies(practice(heel, BindOff.SEWN))]

    assert [text for text in said if re.search(r"\d|[{}]|\s[.,:;]|[.,:;]{2}|^\s*$|\s$", text)] == []
    assert [text for text in said if not text[0].isupper() or text[-1] not in ".?"] == []


def replies(plan: Plan) -> list[Reply]:
    first = begin(plan)
    progress, found = replay(first.events), [first.reply]
    questions: tuple[Command, ...] = (WhereAmI(), Next())
    while found[-1].key != "finished":
        for command in questions:
            decision = decide(plan, progress, command)
            found.append(decision.reply)
        for event in decision.events:
            progress = evolve(progress, event)
    return found
