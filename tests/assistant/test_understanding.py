"""What was heard is acted on, asked back, or ignored."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.listening.understanding import Attention, Expecting, Sureness, Understood, understand
from assistant.session_commands import Attend, CountGiven, LengthGiven, ListenAgain, Louder, Rest, Skip
from models.recognising import UNKNOWN_WORD, Alternative, Heard
from plans.conversation import AtRound, Back, Forward, IHave, Mark, Marks, Next, Reply, RippedBack, Stop, Undo, Yes
from plans.pattern import Half
from tests.languages_under_test import ENGLISH

ANYTHING = Expecting()


def heard(words: str, confidence: float = 1.0, *others: tuple[str, float]) -> Heard:
    readings = ((words, confidence), *others)
    return Heard(words, confidence, 0, 16_000, tuple(Alternative(*reading) for reading in readings))


def understood(
    words: str,
    confidence: float = 1.0,
    *others: tuple[str, float],
    asked: bool = False,
    expecting: Expecting = ANYTHING,
) -> Understood:
    return understand(heard(words, confidence, *others), ENGLISH, asked=asked, expecting=expecting)


@pytest.mark.parametrize(
    ("words", "command"),
    [
        ("next", Next()),
        ("Done.", Next()),
        ("undo", Undo()),
        ("stop for today", Stop()),
        ("back two rounds", Back(rounds=2)),
        ("go back a round", Back(rounds=1)),
        ("forward one round", Forward(rounds=1)),
        ("i am at round twelve", AtRound(round=12)),
        ("ripped back to round nine", RippedBack(round=9)),
        ("ripped back to the heel flap", RippedBack(stage="heel-flap")),
        ("i have thirty three", IHave(stitches=33)),
        ("i have 33", IHave(stitches=33)),
        ("i have thirty-three on the front", IHave(stitches=33, half=Half.FRONT)),
        ("i have a hundred and eight on the back of the second sock", IHave(stitches=108, half=Half.BACK, sock=2)),
        ("i have six on the first sock", IHave(stitches=6, sock=1)),
        ("louder", Louder()),
        ("listen again", ListenAgain()),
        ("take a rest", Rest()),
    ],
)
def test_a_command_said_alone_is_acted_on(words: str, command: object):
    found = understood(words)

    assert found.outcome == "act"
    assert found.command == command


@pytest.mark.parametrize(
    "words",
    [
        "",
        UNKNOWN_WORD,
        f"{UNKNOWN_WORD} next",
        f"next {UNKNOWN_WORD}",
        f"{UNKNOWN_WORD} next {UNKNOWN_WORD}",
        "next week",
        "the next round",
        "next next",
        "i have thirty three cats",
        "i have",
        "i have nineteen hundred",
        "potato",
    ],
)
def test_talk_and_commands_inside_talk_are_ignored(words: str):
    found = understood(words)

    assert found.outcome == "ignore"
    assert found.command is None


@given(st.text(alphabet="abcdefghijklmnopqrstuvwxyz 0123456789[]{}'-", max_size=40))
def test_any_text_at_all_is_met_without_an_error(words: str):
    assert understood(words).outcome in {"act", "ask", "ignore"}


@given(st.integers(0, 999), st.data())
def test_every_way_to_say_a_number_is_that_number(number: int, data: st.DataObject):
    words = data.draw(st.sampled_from(ENGLISH.numbers.ways(number)))

    assert understood(f"i have {words}").number == number


@given(st.lists(st.sampled_from(sorted({word for way in ENGLISH.numbers.heard for word in way.split()})), max_size=7))
def test_number_words_that_are_no_number_are_never_one(words: list[str]):
    found = understood(f"i have {' '.join(words)}")

    if found.command is not None:
        assert isinstance(found.command, IHave)
        assert " ".join(words) in ENGLISH.numbers.ways(found.command.stitches)


class TestNearMisses:
    @pytest.mark.parametrize(
        ("confidence", "outcome"),
        [(1.0, "act"), (0.6, "act"), (0.59, "ask"), (0.4, "ask"), (0.39, "ignore"), (0.0, "ignore")],
    )
    def test_between_the_thresholds_it_asks_back(self, confidence: float, outcome: str):
        assert understood("next", confidence).outcome == outcome

    def test_the_question_names_what_was_understood(self):
        found = understood("back two rounds", 0.5)

        assert found.command == Back(rounds=2)
        assert found.question == Reply.of("did-you-mean", said="back two rounds")

    def test_thresholds_are_given(self):
        strict = Sureness(act=0.95, ask=0.9)

        assert understand(heard("next", 0.92), ENGLISH, asked=False, sureness=strict).outcome == "ask"

    def test_another_command_nearly_as_likely_is_asked_back(self):
        found = understood("mark", 0.8, ("marks", 0.75))

        assert (found.outcome, found.command) == ("ask", Mark())
        assert found.why == "“marks” is nearly as likely"

    def test_another_command_much_less_likely_is_not(self):
        assert understood("marks", 0.8, ("mark", 0.6)).command == Marks()
        assert understood("marks", 0.8, ("mark", 0.6)).outcome == "act"

    def test_another_phrase_of_the_same_command_is_no_rival(self):
        assert understood("next", 0.8, ("done", 0.79)).outcome == "act"

    def test_talk_nearly_as_likely_is_no_rival(self):
        assert understood("next", 0.8, (f"{UNKNOWN_WORD} next", 0.79)).outcome == "act"


class TestThirteenOrThirty:
    def test_unsure_it_asks_back_digit_by_digit(self):
        found = understood("i have thirteen", 0.8)

        assert (found.outcome, found.command, found.other) == ("ask", IHave(stitches=13), IHave(stitches=30))
        assert found.question == Reply.of("which-number", first=13, second=30)

    def test_sure_it_acts(self):
        assert understood("i have thirteen", 0.95).outcome == "act"

    def test_sure_but_with_the_other_as_likely_it_asks_back(self):
        assert understood("i have thirteen", 0.95, ("i have thirty", 0.9)).other == IHave(stitches=30)

    def test_the_only_possible_number_is_taken(self):
        expecting = Expecting(possible=lambda number: number == 30)

        assert understood("i have thirteen", 0.8, expecting=expecting).command == IHave(stitches=30)
        assert understood("i have thirty", 0.8, expecting=expecting).command == IHave(stitches=30)

    def test_the_only_possible_number_is_still_asked_back_when_hardly_heard(self):
        expecting = Expecting(possible=lambda number: number == 30)

        assert understood("i have thirteen", 0.5, expecting=expecting).outcome == "ask"

    @pytest.mark.parametrize("possible", [lambda _: True, lambda _: False])
    def test_both_or_neither_possible_is_asked_back(self, possible):
        assert understood("i have thirteen", 0.8, expecting=Expecting(possible=possible)).outcome == "ask"

    def test_hundreds_too(self):
        found = understood("i have a hundred and sixteen", 0.8)

        assert found.other == IHave(stitches=160)

    def test_other_numbers_are_not_asked_back(self):
        assert understood("i have twelve", 0.8).outcome == "act"

    @pytest.mark.parametrize("words", ["one three", "thirteen"])
    def test_the_number_alone_settles_it(self, words: str):
        expecting = Expecting(between=(IHave(stitches=30), IHave(stitches=13)))

        assert understood(words, 0.8, asked=True, expecting=expecting).command == IHave(stitches=13)

    @pytest.mark.parametrize("words", ["three zero", "three nought", "three oh"])
    def test_nought_has_several_names(self, words: str):
        expecting = Expecting(between=(IHave(stitches=13), IHave(stitches=30)))

        assert understood(words, asked=True, expecting=expecting).command == IHave(stitches=30)

    def test_a_third_number_settles_nothing(self):
        expecting = Expecting(between=(IHave(stitches=13), IHave(stitches=30)))

        assert understood("four nought", asked=True, expecting=expecting).outcome == "ignore"

    def test_another_command_may_follow_instead(self):
        expecting = Expecting(between=(IHave(stitches=13), IHave(stitches=30)))

        assert understood("next", asked=True, expecting=expecting).command == Next()


class TestQuestions:
    def test_yes_counts_when_something_was_asked(self):
        assert understood("yes", asked=True).command == Yes()
        assert understood("yes", asked=True).outcome == "act"

    def test_yes_to_nothing_is_ignored(self):
        assert understood("yes").outcome == "ignore"
        assert understood("yes").why == "no question is open"

    def test_only_what_is_expected_is_heard(self):
        paused = Expecting(names=("listen_again",))

        assert understood("next", expecting=paused).outcome == "ignore"
        assert understood("listen again", expecting=paused).command == ListenAgain()

    @pytest.mark.parametrize(
        ("words", "number", "unit"),
        [
            ("twenty four and a half centimetres", Fraction(49, 2), "cm"),
            ("twenty four point five centimeters", Fraction(49, 2), "cm"),
            ("two hundred and forty five millimetres", Fraction(245), "mm"),
            ("nine and three quarters inches", Fraction(39, 4), "in"),
            ("nine inches", Fraction(9), "in"),
            ("half an inch", Fraction(1, 2), "in"),
            ("twenty four", Fraction(24), None),
        ],
    )
    def test_a_length_is_an_answer(self, words: str, number: Fraction, unit: str | None):
        expecting = Expecting(names=("length_given", "skip"))

        assert understood(words, asked=True, expecting=expecting).command == LengthGiven(number=number, unit=unit)

    def test_a_count_with_half_a_stitch_is_an_answer(self):
        expecting = Expecting(names=("count_given", "skip"))

        found = understood("thirty and a half stitches", asked=True, expecting=expecting)

        assert found.command == CountGiven(number=Fraction(61, 2))
        assert understood("i don't know", asked=True, expecting=expecting).command == Skip()

    def test_answers_are_not_heard_unless_expected(self):
        assert understood("twenty four").outcome == "ignore"


class TestAttention:
    ON = Expecting(attention=Attention.ON)
    OPEN = Expecting(attention=Attention.OPEN)

    def test_a_command_needs_the_word(self):
        found = understood("next", expecting=self.ON)

        assert (found.outcome, found.why) == ("ignore", "said without the attention word")

    def test_a_command_after_the_word_counts(self):
        assert understood("hello socks next", expecting=self.ON).command == Next()
        assert understood("hello socks i have twelve", expecting=self.ON).command == IHave(stitches=12)

    def test_the_word_alone_opens_the_ears(self):
        assert understood("hello socks", expecting=self.ON).command == Attend()
        assert understood("next", expecting=self.OPEN).outcome == "act"

    def test_an_answer_needs_no_word(self):
        assert understood("yes", asked=True, expecting=self.ON).outcome == "act"

    def test_talk_after_the_word_is_ignored(self):
        assert understood("hello socks potato", expecting=self.ON).outcome == "ignore"

    def test_the_vocabulary_holds_the_word_before_each_phrase(self):
        phrases = ENGLISH.vocabulary(attention=True).phrases

        assert "hello socks" in phrases
        assert "hello socks next" in phrases
        assert "next" not in phrases


def test_the_knitters_own_names_of_the_socks_are_heard():
    language = ENGLISH.with_socks(("Left One", "anna's"))

    found = understand(heard("i have twelve on left one"), language, asked=False)

    assert found.command == IHave(stitches=12, sock=1)
    assert understand(heard("i have twelve on the second sock"), language, asked=False).command == IHave(
        stitches=12, sock=2
    )
    assert "anna's" in language.vocabulary().slots["sock"]


def test_a_vocabulary_for_a_question_holds_only_its_answers():
    vocabulary = ENGLISH.vocabulary(("yes", "no"))

    assert set(vocabulary.phrases) == set(ENGLISH.phrases.of("yes")) | set(ENGLISH.phrases.of("no"))
    assert vocabulary.slots == {}


def test_a_vocabulary_of_two_numbers_holds_them_whole_and_digit_by_digit():
    assert {"thirteen", "one three", "thirty", "three nought", "three oh", "three zero"} == set(
        ENGLISH.vocabulary_of_numbers((13, 30)).phrases
    )
