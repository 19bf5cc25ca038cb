"""A rest is offered after fifty minutes, at the end of a round, never inside a heel, nor again at once."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.journal_events import Rested, RestSnoozed, RestsSet, RestSuggested, Told
from assistant.resting import (
    REPEAT_MINUTES,
    REST_MINUTES,
    WORK_MINUTES,
    Rests,
    is_good_place,
    rest_due,
    rests_after,
    working_since,
)
from assistant.work import Worked
from plans.conversation import Reply
from plans.engine.steps import steps
from plans.pattern import Half, StageName
from tests.assistant.small_plan import END, ROWS, SMALL, at_row, entry

MINUTE = 60_000
ROUND_BEGINS = 22
NOTHING_SAID = Rests()


def busy(minutes: int, began: int = 0) -> list[Worked]:
    """A stretch of fifteen loops every minute."""
    return [
        Worked((began + at) * MINUTE, (began + at + 1) * MINUTE, 15, steady=True) for at in range(minutes)
    ]


def due(minutes: int, *, row: int = ROUND_BEGINS, rests: Rests = NOTHING_SAID, step: int = 0) -> Reply | None:
    return rest_due(SMALL, at_row(row, step), busy(minutes), rests, minutes * MINUTE)


@given(st.integers(0, 200))
def test_it_is_due_from_fifty_minutes_on(minutes: int) -> None:
    expected = Reply.of("rest-due", minutes=minutes) if minutes >= WORK_MINUTES else None

    assert due(minutes) == expected


def test_the_figures_are_those_published() -> None:
    """5 to 10 minutes after 50 to 60 minutes: UK Health and Safety Executive, L26."""
    assert 50 <= WORK_MINUTES <= 60
    assert 5 <= REST_MINUTES <= 10


def test_good_places_are_where_the_front_of_the_first_sock_begins_a_round() -> None:
    good = [row.index for row in ROWS if is_good_place(SMALL, at_row(row.index))]

    assert good == [4, 8, 12, 18, 22, 26]
    assert all(ROWS[index].half is Half.FRONT and ROWS[index].sock == 1 for index in good)


@given(st.integers(0, END), st.integers(0, 4))
def test_it_is_never_offered_inside_a_heel_nor_between_the_ends_of_rounds(index: int, step: int) -> None:
    step = step % len(steps(ROWS[index])) if index < END else 0
    offered = due(90, row=index, step=step) is not None

    if index < END and ROWS[index].stage is StageName.HEEL_TURN:
        assert not offered
    assert offered == (index in (4, 8, 12, 18, 22, 26) and step == 0)


def test_it_is_not_offered_when_switched_off() -> None:
    rests = rests_after([entry(RestsSet(on=False), 0)])

    assert due(90, rests=rests) is None
    assert due(90, rests=rests_after([entry(RestsSet(on=True), 1)], rests)) is not None


@pytest.mark.parametrize(("event", "quiet"), [(RestSuggested(), REPEAT_MINUTES), (RestSnoozed(minutes=7), 7)])
def test_an_offer_passed_over_or_put_off_is_not_repeated_before_its_time(event: object, quiet: int) -> None:
    rests = rests_after([entry(event, 50 * MINUTE)])

    assert due(50 + quiet - 1, rests=rests) is None
    assert due(50 + quiet, rests=rests) == Reply.of("rest-due", minutes=50 + quiet)


def test_a_rest_that_she_told_of_starts_the_time_anew() -> None:
    rests = rests_after([entry(RestSuggested(), 50 * MINUTE), entry(Rested(), 55 * MINUTE)])

    assert due(104, rests=rests) is None
    assert due(105, rests=rests) == Reply.of("rest-due", minutes=50)


def test_a_gap_longer_than_its_loops_need_is_a_rest() -> None:
    gap = Worked(30 * MINUTE, 37 * MINUTE, 30, steady=True)
    stretches = [*busy(30), gap, *busy(20, began=37)]

    assert working_since(stretches, Rests()) == 35 * MINUTE
    assert working_since([*busy(30), Worked(30 * MINUTE, 37 * MINUTE, 60, steady=True)], Rests()) == 0


def test_a_night_between_is_a_rest() -> None:
    night = Worked(30 * MINUTE, 600 * MINUTE, 0, steady=False)

    assert working_since([*busy(30), night], Rests()) == 600 * MINUTE


def test_nothing_worked_is_no_work() -> None:
    assert working_since([], Rests()) is None
    assert working_since(busy(5), Rests(rested_ms=5 * MINUTE)) is None
    assert working_since(busy(5), Rests(rested_ms=270_000)) == 270_000
    assert rest_due(SMALL, at_row(ROUND_BEGINS), [], Rests(), 10**12) is None


def test_other_entries_say_nothing_about_rests() -> None:
    assert rests_after([entry(Told(command="how_far"), 5)]) == Rests()
