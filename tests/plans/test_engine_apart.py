"""One sock ahead of the other: set by voice, called until they are level, with every turn, and found again later."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.conversation import AtRound, Back, Forward, Grain, Next, No, PlaceSet, Redo, RippedBack, Undo, WhereAmI, Yes
from plans.engine import replay
from plans.engine.apart import sock_ahead
from plans.engine.courses import course
from plans.engine.places import place, position
from plans.engine.resuming import resume
from plans.pattern import Half, Sock, StageName
from tests.plans.knitter import Knitter, shown
from tests.strategies import practice


def foot_at(number: int, grain: Grain = "half") -> Knitter:
    return Knitter(practice(), grain).knits_to(StageName.FOOT, number)


def own_rounds(knitter: Knitter) -> tuple[int, int]:
    the_course, now = course(knitter.plan), knitter.progress.now
    places = (position(the_course, now.first), position(the_course, now.second))
    return tuple(the_course.row(at).round for at in places)


@pytest.mark.parametrize("sock", [1, 2])
def test_one_sock_is_set_ahead_and_the_other_stays(sock: Sock) -> None:
    knitter = foot_at(2)
    asked = knitter.say(AtRound(round=4, sock=sock))
    done = knitter.say(Yes())

    assert "ask-at-round-on" == asked.key
    assert done.key == "place-set-on"
    assert {1: (4, 2), 2: (2, 4)}[sock] == own_rounds(knitter)
    assert sock == sock_ahead(course(knitter.plan), knitter.progress.now)


@pytest.mark.parametrize("sock", [1, 2])
def test_only_the_sock_behind_is_called_until_they_are_level(sock: Sock) -> None:
    knitter = foot_at(2)
    knitter.say(AtRound(round=4, sock=sock))
    knitter.say(Yes())
    socks = []
    while sock_ahead(course(knitter.plan), knitter.progress.now) is not None:
        socks.append(course(knitter.plan).row(knitter.at).sock)
        knitter.say(Next())

    assert {3 - sock} == set(socks)
    assert {1: (4, 4), 2: (3, 4)}[sock] == own_rounds(knitter)  # the back of the first ends a round


@pytest.mark.parametrize("sock", [1, 2])
def test_every_turn_between_front_and_back_is_called_past_the_sock_that_rests(sock: Sock) -> None:
    """A half is on the other side of the needle from the one before: between them a turn is told, at no other place."""
    knitter = foot_at(2)
    knitter.say(AtRound(round=4, sock=sock))
    knitter.say(Yes())
    the_course = course(knitter.plan)
    while sock_ahead(the_course, knitter.progress.now) is not None:
        half, called = the_course.row(knitter.at).half, shown(knitter.call)
        knitter.say(Next())
        crosses = half is not the_course.row(knitter.at).half
        assert crosses == ("act-turn" in called), called


def test_the_turns_go_on_alternating() -> None:
    knitter = foot_at(2)
    knitter.say(AtRound(round=4, sock=1))
    knitter.say(Yes())
    turns = []
    while sock_ahead(course(knitter.plan), knitter.progress.now) is not None:
        turns += re.findall(r"act-turn-\w+", shown(knitter.call))
        knitter.say(Next())

    assert ["act-turn-clockwise", "act-turn-anticlockwise"] * 2 == turns


def test_a_whole_round_of_one_sock_is_called_by_its_name() -> None:
    knitter = foot_at(2, "round")
    knitter.say(AtRound(round=4, sock=1))
    done = knitter.say(Yes())

    assert "where-sock-round(sock sock-second; round 2; of 4)" in shown(done)


def test_a_sock_ripped_back_for_a_repair_is_knitted_alone_until_it_is_level() -> None:
    knitter = foot_at(4)
    asked = knitter.say(RippedBack(round=2, sock=2))
    knitter.say(Yes())
    before = own_rounds(knitter)
    while sock_ahead(course(knitter.plan), knitter.progress.now) is not None:
        assert 2 == course(knitter.plan).row(knitter.at).sock
        knitter.say(Next())

    assert "ask-ripped-back-on" == asked.key
    assert (4, 2) == before
    assert StageName.FOOT is course(knitter.plan).row(knitter.at).stage
    assert (4, Half.FRONT, 1) == (
        course(knitter.plan).row(knitter.at).round,
        course(knitter.plan).row(knitter.at).half,
        course(knitter.plan).row(knitter.at).sock,
    )


def test_a_sock_is_not_ripped_back_to_what_it_has_not_got() -> None:
    knitter = foot_at(3)
    knitter.say(AtRound(round=2, sock=2))
    knitter.say(Yes())

    assert "not-knitted-yet" == knitter.say(RippedBack(round=3, sock=2)).key
    assert "ask-ripped-back-on" == knitter.say(RippedBack(round=2, sock=1)).key


def test_in_the_heel_one_sock_goes_on_by_its_own_rows() -> None:
    knitter = Knitter(practice()).knits_to(StageName.HEEL_TURN, 1, sock=2)
    knitter.say(AtRound(round=5, sock=2))
    reply = knitter.say(Yes())

    assert "sock sock-second; stage stage-heel-turn; round 5" in shown(reply)
    assert course(knitter.plan).row(knitter.at).sock == 2


def test_where_am_i_and_coming_back_tell_which_sock_is_ahead() -> None:
    knitter = foot_at(2)
    assert "sock-ahead" not in shown(knitter.say(WhereAmI()))
    knitter.say(AtRound(round=4, sock=1))
    knitter.say(Yes())
    told = "apart sock-ahead(sock sock-first; stage stage-foot; round 4; of 4)"
    again = replay(knitter.events)

    assert told in shown(knitter.say(WhereAmI()))
    assert again == knitter.progress
    assert told in shown(resume(knitter.plan, again))


def test_undo_and_redo_bring_both_socks_back_and_forth() -> None:
    knitter = foot_at(2)
    level = knitter.progress.now
    knitter.say(AtRound(round=4, sock=1))
    knitter.say(Yes())
    apart = knitter.progress.now
    knitter.say(Undo())
    assert level == knitter.progress.now
    knitter.say(Redo())
    assert apart == knitter.progress.now


@pytest.mark.parametrize("sock", [1, 2])
def test_back_and_forward_move_the_sock_behind_and_leave_the_other(sock: Sock) -> None:
    knitter = foot_at(3)
    knitter.say(AtRound(round=4, sock=sock))
    knitter.say(Yes())
    knitter.say(Back(rounds=1))
    assert {1: (4, 2), 2: (2, 4)}[sock] == own_rounds(knitter)
    knitter.say(Forward(rounds=1))
    assert {1: (4, 3), 2: (3, 4)}[sock] == own_rounds(knitter)


@pytest.mark.parametrize(("sock", "name"), [(1, "sock-first"), (2, "sock-second")])
def test_where_am_i_tells_that_the_sock_ahead_is_finished(sock: Sock, name: str) -> None:
    knitter = Knitter(practice(), "half").knits_to(StageName.CUFF, 2)
    the_course = course(knitter.plan)
    end = place(the_course, the_course.end)
    knitter.happens(PlaceSet(
        now=knitter.progress.now.model_copy(update={"first" if sock == 1 else "second": end}), why="at_round",
    ))  # fmt: skip

    assert f"sock-finished(sock {name})" in shown(knitter.say(WhereAmI()))


def test_no_drops_it_and_says_of_which_sock() -> None:
    knitter = foot_at(2)
    before = knitter.progress.now
    knitter.say(AtRound(round=4, sock=1))

    assert "dropped(wish wish-at-round-on(sock sock-first; stage stage-foot; round 4))" == shown(knitter.say(No()))
    assert before == knitter.progress.now


@given(st.data())
def test_wherever_the_socks_are_next_ends_with_both_done_and_works_no_stitch_twice(data: st.DataObject) -> None:
    knitter = Knitter(practice(), data.draw(st.sampled_from(("group", "half", "side", "round", "follow"))))
    for _ in range(data.draw(st.integers(0, 60))):
        knitter.say(Next())
    for _ in range(data.draw(st.integers(1, 3))):
        knitter.say(AtRound(round=data.draw(st.integers(1, 8)), sock=data.draw(st.sampled_from((1, 2)))))
        knitter.say(Yes())
    the_course = course(knitter.plan)
    for _ in range(2_000):
        if knitter.finished:
            break
        before = knitter.progress.now
        knitter.say(Next())
        now = knitter.progress.now
        for earlier, later in ((before.first, now.first), (before.second, now.second)):
            assert position(the_course, earlier) <= position(the_course, later)

    assert knitter.finished
