"""A new pair, question by question: no sound, no screen, only answers in and the next question out."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.interview import Answered, Interview, Question, answer
from assistant.session_commands import AnyCommand, CountGiven, Help, LengthGiven, Skip
from plans.conversation import Again, Next, No, Problem, Reply, Undo, Yes
from plans.making import Made, make_plan
from plans.quantities import Length
from plans.replies import Measure
from plans.wishes import Wishes

FOOT = ("foot_length", "ball", "ankle", "leg", "cuff")
SWATCH = ("swatch.stitches", "swatch.rounds")
MORE = ("heel_diagonal", "skein", "skein_length", "skeins")
NEEDED = {"practice", "foot_length", *SWATCH}
YES, NO, SKIP = Yes(), No(), Skip()


def cm(number: str | Fraction) -> LengthGiven:
    return LengthGiven(number=Fraction(number), unit="cm")


def count(number: str | Fraction) -> CountGiven:
    return CountGiven(number=Fraction(number))


def give(interview: Interview, command: AnyCommand | None, words: str = "") -> Answered:
    """An answer to the open question."""
    assert interview.question is not None
    return answer(interview, interview.question, command, words)


def answered(*commands: AnyCommand) -> Interview:
    """The interview after these answers, each of which fits."""
    interview = Interview()
    for command in commands:
        taken = give(interview, command)
        assert taken.interview != interview, (interview.question, command)
        interview = taken.interview
    return interview


def asked(interview: Interview, *commands: AnyCommand) -> list[str]:
    """Names of the questions that these answers meet."""
    names = []
    for command in commands:
        assert interview.question is not None
        names.append(interview.question.name)
        interview = give(interview, command).interview
    assert interview.question is None
    return names


def test_a_foot_is_asked_for_then_the_swatch() -> None:
    foot = (cm("24.5"), cm(23), cm(21), cm(15), cm(4))
    answers = (NO, *foot, count(30), count(42), cm(32), count(50), count(210), count(2))

    assert ["practice", *FOOT, *SWATCH, *MORE] == asked(Interview(), *answers)


def test_the_calf_is_asked_for_where_the_leg_reaches_it() -> None:
    answers = (NO, cm("24.5"), SKIP, SKIP, cm(30), SKIP, count(30), count(42), SKIP, cm(37), SKIP)

    assert ["practice", *FOOT, *SWATCH, "heel_diagonal", "calf", "skein"] == asked(Interview(), *answers)


def test_without_a_balls_weight_nothing_more_is_asked_of_the_yarn() -> None:
    answers = (NO, cm("24.5"), SKIP, SKIP, SKIP, SKIP, count(30), count(42), SKIP, SKIP)

    assert ["practice", *FOOT, *SWATCH, *MORE[:2]] == asked(Interview(), *answers)


def test_grams_metres_and_balls_are_told_as_plain_numbers() -> None:
    yarn = (count(50), count(210), count(2))
    wishes = answered(NO, cm("24.5"), *4 * [SKIP], count(30), count(42), SKIP, *yarn).wishes("hers")

    assert ("50g", "210m", 2) == (str(wishes.skein), str(wishes.skein_length), wishes.skeins)


def test_a_practice_pair_needs_the_swatch_only() -> None:
    assert ["practice", *SWATCH] == asked(Interview(), YES, count(22), count(30))


def test_the_answers_are_the_wishes() -> None:
    interview = answered(NO, cm("24.5"), cm(23), SKIP, SKIP, cm(4), count("30.5"), count(42), SKIP, SKIP)
    wishes = interview.wishes("hers")

    expected = Wishes.model_validate({
        "name": "hers", "foot_length": "24.5cm", "ball": "23cm", "cuff": "4cm", "practice": False,
        "swatch": {"stitches": "30.5", "rounds": "42"},
    })  # fmt: skip
    assert expected == wishes
    assert isinstance(make_plan(wishes), Made)


def test_inches_and_millimetres_are_lengths_too() -> None:
    inches, millimetres = LengthGiven(number=Fraction(77, 8), unit="in"), LengthGiven(number=Fraction(230), unit="mm")
    interview = answered(NO, inches, millimetres)

    assert {"foot_length": Length.parse("9 5/8in"), "ball": Length.parse("23cm")}.items() <= interview.answers.items()


def test_a_length_without_a_unit_is_asked_back_for_it() -> None:
    interview = answered(NO)
    taken = give(interview, LengthGiven(number=Fraction(49, 2), unit=None), "twenty-four and a half")

    assert Answered(interview, Reply.of("ask-unit", number="twenty-four and a half")) == taken


def test_what_was_taken_is_said_back() -> None:
    foot = give(answered(NO), cm("24.5"))
    swatch = give(answered(YES), count("30.5"), "thirty and a half")

    assert isinstance(foot.reply, Reply) and "answer-length" == foot.reply.key
    assert Reply.of("answer-count", number="thirty and a half") == swatch.reply


@pytest.mark.parametrize("name", [*FOOT, *SWATCH, "practice"])
def test_only_what_can_be_estimated_can_be_skipped(name: str) -> None:
    interview = Interview()
    while interview.question is not None and interview.question.name != name:
        fitting: AnyCommand = {"yes_no": NO, "length": cm(20), "count": count(30)}[interview.question.kind]
        interview = give(interview, fitting).interview
    taken = give(interview, SKIP)

    assert (name in NEEDED) == (taken.interview == interview)
    assert Reply.of("answer-needed" if name in NEEDED else "answer-skipped") == taken.reply
    assert interview.question is not None
    assert (name in NEEDED) == ("skip" not in interview.question.answers)


@pytest.mark.parametrize(("before", "words", "field", "value"), [
    ((NO,), "24.5cm", "foot_length", Length.parse("24.5cm")),
    ((NO,), " 9 5/8 in ", "foot_length", Length.parse("9 5/8in")),
    ((NO, cm(24)), "23,5 cm", "ball", Length.parse("23.5cm")),
    ((YES,), "22", "swatch.stitches", Fraction(22)),
    ((YES,), "22,5", "swatch.stitches", Fraction(45, 2)),
    ((YES, count(22)), "30½", "swatch.rounds", Fraction(61, 2)),
])  # fmt: skip
def test_what_nobody_would_say_can_be_typed(
    before: tuple[AnyCommand, ...], words: str, field: str, value: object
) -> None:
    taken = give(answered(*before), None, words)

    assert value == taken.interview.answers[field]
    assert isinstance(taken.reply, Reply)


@pytest.mark.parametrize(("before", "words", "key"), [
    ((), "perhaps", "not-yes-or-no"), ((NO,), "24.5", "length-no-unit"), ((NO,), "long", "length-unreadable"),
    ((NO,), "24 ells", "length-unknown-unit"), ((YES,), "many", "number-unreadable"),
    ((YES,), "-3", "number-unreadable"),
])  # fmt: skip
def test_what_is_no_answer_changes_nothing_and_says_what_would_be_one(
    before: tuple[AnyCommand, ...], words: str, key: str
) -> None:
    interview = answered(*before)
    taken = give(interview, None, words)

    assert interview == taken.interview
    assert taken.reply is not None and key == taken.reply.key


def test_questions_can_be_asked_again() -> None:
    interview = answered(NO, cm(10), cm(23), SKIP, SKIP, SKIP, count(30), count(42), SKIP, SKIP)
    again = interview.without(*FOOT, *SWATCH, *MORE)

    assert {"practice": False} == again.answers
    assert again.question is not None and "foot_length" == again.question.name
    assert interview.question is None


def test_the_last_answer_can_be_taken_back_and_told_again() -> None:
    """Forty was heard as fourteen: it is asked again, and she answers otherwise or leaves it."""
    interview = answered(NO, cm("24.5"), cm(14))
    back = give(interview, Undo()).interview
    assert back.question is not None and "ball" == back.question.name
    asked_now, names = back.asking(back.question)

    told = Reply.of("told-length", length=Measure(tenths_mm=1400))
    assert Reply.of("ask-earlier", question=Reply.of("ask-ball"), answer=told) == asked_now
    assert "next" in names
    assert interview.answers == give(back, Next()).interview.answers
    assert Length.parse("23cm") == give(back, cm(23)).interview.answers["ball"]


def test_every_answer_can_be_taken_back_in_turn() -> None:
    answers = (NO, cm("24.5"), SKIP, cm(21), SKIP, SKIP, count(30), count(42), SKIP, count(50), count(210), count(2))
    interview = answered(*answers)
    opened = []
    while interview.answers:
        last = list(interview.answers)[-1]
        interview = answer(interview, Question(last, "ask-ball", "length"), Undo(), "undo").interview
        assert interview.question is not None
        opened.append(interview.question.name)
    assert ["practice", *FOOT, *SWATCH, *MORE] == opened[::-1]

    practice = interview.question
    assert practice is not None and Reply.of("nothing-to-undo") == give(interview, Undo()).reply
    assert Reply.of("ask-practice") == interview.asking(practice)[0]
    again = give(interview, NO).interview
    while again.question is not None:
        again = give(again, Next()).interview
    assert answered(*answers).wishes("hers") == again.wishes("hers")


@pytest.mark.parametrize(("before", "told"), [
    ((NO, cm(24), SKIP), Reply.of("told-skipped")), ((YES, count("22.5")), Reply.of("told-count", number="22.5")),
    ((NO, cm(24), *4 * [SKIP], count(30), count(42), SKIP, count(50)), Reply.of("told-count", number="50")),
    ((NO, cm(24), *4 * [SKIP], count(30), count(42), SKIP, count(50), count(210), count(2)),
     Reply.of("told-count", number="2")),
])  # fmt: skip
def test_an_earlier_answer_is_told_in_the_words_of_its_question(before: tuple[AnyCommand, ...], told: Reply) -> None:
    interview = answered(*before)
    back = interview.without(list(interview.answers)[-1])
    assert back.question is not None

    assert ("answer", told) in back.asking(back.question)[0].values


def test_again_and_help_leave_the_question_open() -> None:
    interview = answered(NO)
    again, help_given = give(interview, Again()), give(interview, Help())

    assert Answered(interview, None) == again
    assert interview == help_given.interview
    assert Reply.of("interview-help", answer=Reply.of("help-foot-length")) == help_given.reply


def test_next_answers_only_what_was_answered_before() -> None:
    interview = answered(NO)
    assert interview.question is not None

    assert "next" not in interview.asking(interview.question)[1]
    assert interview == give(interview, Next(), "next").interview


def lengths(most: int, *units: str | None) -> st.SearchStrategy[LengthGiven]:
    return st.builds(LengthGiven, number=st.fractions(0, most, max_denominator=8), unit=st.sampled_from(units))


ANSWERS = st.one_of(
    st.sampled_from([YES, NO, SKIP, Next()]),
    st.fractions(0, 400, max_denominator=8).map(count),
    lengths(400, "cm", "mm", "in", None),
)
SAID = st.tuples(st.one_of(st.none(), ANSWERS), st.text(max_size=12) | st.sampled_from(["24.5cm", "30", "x", "9 in"]))


@given(st.lists(SAID, max_size=40))
def test_whatever_is_answered_the_interview_only_goes_on(said: list[tuple[AnyCommand | None, str]]) -> None:
    """An answer fills the open question or changes nothing; a question filled is never asked again of itself."""
    interview = Interview()
    for command, words in said:
        question = interview.question
        if question is None:
            break
        taken = answer(interview, question, command, words)
        new = taken.interview.answers.keys() - interview.answers.keys()

        assert new <= {question.name}
        assert new or (taken.interview == interview and isinstance(taken.reply, Reply | Problem))
        assert interview.answers.items() <= taken.interview.answers.items()
        interview = taken.interview


@given(st.data())
def test_fitting_answers_always_come_to_wishes_that_make_a_pair_or_problems(data: st.DataObject) -> None:
    interview = Interview()
    kinds: dict[str, st.SearchStrategy[AnyCommand]] = {
        "yes_no": st.sampled_from([YES, NO]),
        "length": lengths(120, "cm", "in"),
        "count": st.fractions(0, 90, max_denominator=2).map(count),
    }
    for _ in range(20):
        question: Question | None = interview.question
        if question is None:
            break
        fitting = kinds[question.kind] if question.needed else st.one_of(st.just(SKIP), kinds[question.kind])
        interview = give(interview, data.draw(fitting)).interview
    made = make_plan(interview.wishes("socks"))

    assert interview.question is None
    assert isinstance(made, Made) or (made and all(isinstance(problem, Problem) for problem in made))
