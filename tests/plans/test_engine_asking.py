"""Places set by hand, and questions that wait for a yes."""

import pytest

from plans.conversation import (
    Again,
    Answered,
    Asked,
    AtRound,
    Back,
    Command,
    Forward,
    HowMany,
    Next,
    No,
    PlaceSet,
    RippedBack,
    Stop,
    Stopped,
    WhereAmI,
    Yes,
)  # fmt: skip
from plans.engine import ask_next, replay
from plans.pattern import StageName
from tests.plans.knitter import Knitter, shown
from tests.strategies import practice


def at(stage: StageName, number: int = 1, sock: int | None = None) -> Knitter:
    return Knitter(practice()).knits_to(stage, number, sock)


def place(knitter: Knitter) -> tuple[str, int]:
    values = dict(knitter.say(WhereAmI()).values)
    return values["stage"].key, values["round"]


def finished() -> Knitter:
    knitter = Knitter(practice(), "round")
    while not knitter.finished:
        knitter.say(Next())
    return knitter


@pytest.mark.parametrize(
    ("command", "key", "expected"),
    [
        (Back(), "went-back", ("stage-foot", 2)),
        (Back(rounds=3), "went-back", ("stage-toe", 8)),
        (Forward(), "went-forward", ("stage-foot", 4)),
        (Forward(rounds=4), "went-forward", ("stage-gusset", 3)),
        (Back(rounds=500), "went-back-fewer", ("stage-cast-on", 1)),
        (Forward(rounds=500), "went-forward-fewer", ("stage-bind-off", 1)),
    ],
)
def test_back_and_forward_go_whole_rounds(command: Command, key: str, expected: tuple[str, int]):
    knitter = at(StageName.FOOT, 3)
    said = knitter.say(command)

    assert (said.key, place(knitter)) == (key, expected)
    assert isinstance(knitter.events[-1], PlaceSet)


def test_fewer_rounds_than_asked_are_told():
    knitter = at(StageName.TOE, 3)
    values = dict(knitter.say(Back(rounds=9)).values)

    assert (values["asked"], values["rounds"]) == (9, 3)


def test_from_the_middle_of_a_round_back_goes_to_the_start_of_the_one_before():
    knitter = Knitter(practice(), "group").knits_to(StageName.TOE, 4)
    for _ in range(7):
        knitter.say(Next())
    knitter.say(Back())

    assert shown(knitter.call).startswith("call(where where-half(half half-front; sock sock-first)")
    assert place(knitter) == ("stage-toe", 3)


def test_in_a_heel_rows_count_as_rounds():
    knitter = at(StageName.HEEL_TURN, 5, 2)
    knitter.say(Back(rounds=3))

    assert place(knitter) == ("stage-heel-turn", 2)


@pytest.mark.parametrize(
    ("knitter", "command", "key"),
    [
        (Knitter(practice()), Back(), "cannot-go-back"),
        (at(StageName.BIND_OFF), Forward(), "cannot-go-forward"),
        (finished(), Forward(), "cannot-go-forward"),
        (at(StageName.FOOT), Back(rounds=0), "no-rounds"),
        (at(StageName.FOOT), AtRound(round=5), "no-such-round"),
        (at(StageName.FOOT), AtRound(round=0), "no-such-round"),
        (at(StageName.FOOT), RippedBack(round=3), "not-knitted-yet"),
        (at(StageName.FOOT), RippedBack(stage="gusset"), "not-knitted-yet"),
        (at(StageName.FOOT), RippedBack(stage="heel"), "not-knitted-yet"),
        (at(StageName.FOOT), RippedBack(stage="toe", round=9), "no-such-round"),
        (at(StageName.FOOT), RippedBack(stage="pocket"), "no-such-stage"),
        (at(StageName.FOOT), RippedBack(), "ripped-back-to-where"),
        (at(StageName.FOOT), Yes(), "nothing-asked"),
        (at(StageName.FOOT), No(), "nothing-asked"),
    ],
)
def test_what_cannot_be_is_said_and_changes_nothing(knitter: Knitter, command: Command, key: str):
    before, events = knitter.progress, list(knitter.events)

    assert knitter.say(command).key == key
    assert (knitter.progress, knitter.events) == (before, events)


TOE_5 = ("stage-toe", 5)


@pytest.mark.parametrize(
    ("wish", "asked", "expected"),
    [
        (AtRound(round=4), "ask-at-round(stage stage-foot; round 4; of 4)", ("stage-foot", 4)),
        (AtRound(round=1), "ask-at-round(stage stage-foot; round 1; of 4)", ("stage-foot", 1)),
        (RippedBack(round=2), "ask-ripped-back(stage stage-foot; round 2; of 4)", ("stage-foot", 2)),
        (RippedBack(stage="toe", round=5), "ask-ripped-back(stage stage-toe; round 5; of 8)", TOE_5),
        (RippedBack(stage="toe"), "ask-ripped-back(stage stage-toe; round 1; of 8)", ("stage-toe", 1)),
    ],
)
def test_a_place_is_set_only_after_a_yes(wish: AtRound | RippedBack, asked: str, expected: tuple[str, int]):
    knitter = at(StageName.FOOT, 3)
    before = knitter.progress.now

    assert shown(knitter.say(wish)) == asked
    assert (knitter.progress.now, knitter.progress.question) == (before, wish)
    said = knitter.say(Yes())
    assert (said.key, place(knitter), knitter.progress.question) == ("place-set", expected, None)
    assert dict(said.values)["call"] == knitter.call


def test_after_ripping_back_to_a_lifeline_it_is_not_threaded_again():
    knitter = at(StageName.GUSSET, 3)
    knitter.say(RippedBack(stage="gusset"))
    knitter.say(Yes())

    assert knitter.call == at(StageName.GUSSET, 1).call


def test_ripped_back_to_the_cast_on_the_tips_are_prepared_again():
    knitter = at(StageName.TOE, 2)
    knitter.say(RippedBack(stage="cast-on"))
    knitter.say(Yes())

    assert knitter.call == Knitter(practice()).call


def test_ripping_back_to_the_heel_means_the_one_in_hand():
    for sock in (2, 1):
        knitter = at(StageName.HEEL_FLAP, 4, sock)
        knitter.say(RippedBack(stage="heel"))
        knitter.say(Yes())

        assert f"sock-{('first', 'second')[sock - 1]}" in shown(knitter.call)
        assert place(knitter) == ("stage-heel-turn", 1)


def test_in_a_heel_at_round_means_its_row():
    knitter = at(StageName.HEEL_FLAP, 2, 1)
    knitter.say(AtRound(round=9))
    knitter.say(Yes())

    assert "where-heel-row(sock sock-first; row 9; of 13)" in shown(knitter.call)


def test_a_no_drops_the_question_and_says_what_it_was():
    knitter = at(StageName.FOOT, 3)
    knitter.say(RippedBack(stage="toe", round=5))

    assert shown(knitter.say(No())) == "dropped(wish wish-ripped-back(stage stage-toe; round 5))"
    assert place(knitter) == ("stage-foot", 3)
    assert knitter.say(Yes()).key == "nothing-asked"


@pytest.mark.parametrize("command", [HowMany(), Next(), Back(), Stop(), AtRound(round=2)])
def test_any_other_command_drops_the_question_in_silence(command: Command):
    knitter, other = at(StageName.FOOT, 3), at(StageName.FOOT, 3)
    knitter.say(AtRound(round=1))
    events = len(knitter.events)

    assert knitter.say(command) == other.say(command)
    assert knitter.events[events] == Answered(yes=False)
    assert (knitter.progress.question, knitter.progress.now) == (other.progress.question, other.progress.now)


def test_again_keeps_the_question_open():
    knitter = at(StageName.FOOT, 3)
    knitter.say(AtRound(round=1))

    assert knitter.say(Again()).key == "again"
    knitter.say(Yes())
    assert place(knitter) == ("stage-foot", 1)


def test_a_next_too_early_is_asked_back_and_a_yes_carries_it_out():
    knitter, other = at(StageName.FOOT, 3), at(StageName.FOOT, 3)
    said = knitter.hears(ask_next(knitter.plan, knitter.progress))

    assert (said.key, dict(said.values)["call"]) == ("ask-next", knitter.call)
    assert knitter.say(Yes()) == other.say(Next())


def test_asking_back_drops_the_question_before():
    knitter = at(StageName.FOOT, 3)
    knitter.say(AtRound(round=1))
    knitter.hears(ask_next(knitter.plan, knitter.progress))

    assert knitter.events[-2:] == [Answered(yes=False), Asked(wish=Next())]
    assert shown(knitter.say(No())) == "dropped(wish wish-next)"


def test_an_open_question_survives_a_restart():
    knitter = at(StageName.FOOT, 3)
    knitter.say(AtRound(round=1))
    knitter.progress = replay(knitter.events)
    knitter.say(Yes())

    assert place(knitter) == ("stage-foot", 1)


# stopping


@pytest.mark.parametrize(
    ("stage", "number", "steps"),
    [
        (StageName.FOOT, 2, 0), (StageName.FOOT, 2, 2), (StageName.HEEL_TURN, 3, 0),
        (StageName.HEEL_FLAP, 13, 0),
    ],
)
def test_at_the_end_of_a_side_or_heel_row_she_just_stops(stage: StageName, number: int, steps: int):
    knitter = Knitter(practice(), "half").knits_to(stage, number)
    for _ in range(steps):
        knitter.say(Next())

    assert knitter.say(Stop()).key == "stopped"
    assert knitter.events[-1] == Stopped()


@pytest.mark.parametrize(("steps", "to_go"), [(1, 15), (4, 9), (6, 7)])
def test_inside_a_side_finishing_it_is_offered(steps: int, to_go: int):
    knitter = Knitter(practice(), "group").knits_to(StageName.TOE, 6)
    for _ in range(steps):
        knitter.say(Next())
    values = dict(knitter.say(Stop()).values)

    assert (knitter.last.key, values["to_go"]) == ("ask-stop", to_go)
    assert shown(knitter.say(No())) == "dropped(wish wish-stop)"
    knitter.say(Stop())
    assert knitter.say(Yes()).key == "stopped"
    assert knitter.events[-2:] == [Answered(yes=True), Stopped()]


def test_in_the_gap_finishing_the_side_is_offered_too():
    knitter = Knitter(practice(), "half").knits_to(StageName.FOOT, 2)
    knitter.say(Next())

    assert shown(knitter.say(Stop())) == (
        "ask-stop(to_go 12; where where-half(half half-front; sock sock-second))"
    )


def test_stopping_at_the_very_end_is_no_question():
    assert finished().say(Stop()).key == "stopped-finished"
