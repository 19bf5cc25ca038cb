"""The least time a step can take, her pace, and the time still needed."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.journal_events import Paused, SessionBegan, SessionEnded, Told
from assistant.pace import (
    DEFAULT_PACE,
    FEWEST_LOOPS,
    FEWEST_STEPS,
    PACE_SAYINGS,
    Pace,
    is_pause,
    learn,
    said_duration,
    said_range,
    time_to_go,
)
from assistant.timing import is_too_soon, least_plausible_ms
from assistant.work import Loops, Worked, worked
from plans.conversation import Advanced, Begun, Marked, PlaceSet, Reply, Undone
from plans.pattern import StageName
from tests.assistant.journalling import OTHER_PLAN, PLAN, standing
from tests.assistant.small_plan import END, ROWS, SMALL, at_row, entry

MINUTE = 60_000
LOOPS = Loops(SMALL)
COUNTED = {PLAN: LOOPS}


def loops_of_rows(first: int, end: int) -> int:
    return sum(group.times for row in ROWS[first:end] for group in row.ops)


@pytest.mark.parametrize(("loops", "least_ms"), [(0, 0), (1, 255), (118, 30_000), (236, 60_000), (12, 3051)])
def test_the_least_time_is_twice_the_record(loops: int, least_ms: int) -> None:
    assert least_plausible_ms(loops) == least_ms


@given(st.integers(1, 1000))
def test_a_step_is_too_soon_just_before_its_least_time(loops: int) -> None:
    least = least_plausible_ms(loops)

    assert is_too_soon(loops, least - 1)
    assert not is_too_soon(loops, least)


def test_a_clock_set_back_never_makes_a_step_too_soon() -> None:
    assert not is_too_soon(100, -5)


@given(st.integers(0, END), st.integers(0, END))
def test_loops_between_two_rows_are_those_of_the_rows_between(one: int, other: int) -> None:
    first, end = sorted((one, other))

    assert LOOPS.done(at_row(end)) - LOOPS.done(at_row(first)) == loops_of_rows(first, end)
    assert LOOPS.in_pair(at_row(first)) == loops_of_rows(first, END)


@given(st.integers(0, END - 1))
def test_loops_to_go_in_a_stage_are_those_of_its_rows_still_ahead(index: int) -> None:
    stage = next(stage for stage in SMALL.stages if stage.first_row <= index <= stage.last_row)

    assert LOOPS.in_stage(at_row(index)) == loops_of_rows(index, stage.last_row + 1)


def test_nothing_is_to_go_at_the_end() -> None:
    assert LOOPS.in_stage(at_row(END)) == 0
    assert LOOPS.in_pair(at_row(END)) == 0


def test_half_a_row_counts_its_steps() -> None:
    assert LOOPS.done(at_row(8, step=2)) - LOOPS.done(at_row(8)) == 2


def test_only_steps_count_as_work_and_each_from_the_last_place_written_down() -> None:
    entries = [
        entry(SessionBegan(), 0),
        entry(Begun(now=at_row(4)), 0),
        entry(Told(command="where_am_i"), 5_000),
        entry(Advanced(now=at_row(5)), 10_000),
        entry(Marked(at=at_row(5)), 12_000),
        entry(Advanced(now=at_row(8)), 40_000),
        entry(Undone(now=at_row(5)), 41_000),
        entry(PlaceSet(now=at_row(18), why="forward"), 42_000),
        entry(Paused(), 43_000),
        entry(Advanced(now=at_row(19)), 60_000),
        entry(Advanced(now=standing(20, 20, plan=OTHER_PLAN)), 61_000),
    ]

    assert worked(entries, COUNTED) == (
        Worked(0, 10_000, 4, steady=True),
        Worked(10_000, 40_000, 12, steady=True),
        Worked(40_000, 41_000, 0, steady=True),
        Worked(41_000, 42_000, 0, steady=True),
        Worked(42_000, 60_000, 6, steady=False),
        Worked(60_000, 61_000, 0, steady=True),
    )


def steps(rates: list[int], loops: int = 25) -> list[Worked]:
    """One stretch for each rate, of as many loops each."""
    return [Worked(0, loops * MINUTE // rate, loops, steady=True) for rate in rates]


def test_the_default_stands_until_enough_was_knitted() -> None:
    assert learn([]) == DEFAULT_PACE
    assert learn(steps([30] * (FEWEST_STEPS - 1))) == DEFAULT_PACE
    assert learn(steps([30] * 2 * FEWEST_STEPS, loops=FEWEST_LOOPS // FEWEST_STEPS // 4)) == DEFAULT_PACE


def test_her_own_pace_is_the_median_with_quartiles() -> None:
    learned = learn(steps([20, 20, 25, 25, 30, 30, 30, 40, 40, 50, 50, 50]))

    assert [round(rate) for rate in (learned.slow, learned.usual, learned.fast)] == [25, 30, 40]


@pytest.mark.parametrize(
    "odd",
    [
        Worked(0, 60 * MINUTE, 25, steady=True),
        Worked(0, 1 * MINUTE, 250, steady=True),
        Worked(0, 8 * MINUTE, 25, steady=False),
        Worked(10, 0, 25, steady=True),
        Worked(0, 0, 25, steady=True),
        Worked(0, 5 * MINUTE, 0, steady=True),
    ],
    ids=["a pause", "faster than the record", "a session's end", "clock set back", "no time", "no loops"],
)
def test_what_is_no_knitting_does_not_change_the_pace(odd: Worked) -> None:
    assert learn([*steps([30] * 12), *[odd] * 9]) == learn(steps([30] * 12))


@given(st.lists(st.integers(16, 110), min_size=12, max_size=60), st.integers(0, 4))
def test_a_few_odd_steps_leave_the_usual_pace_among_the_others(rates: list[int], odd: int) -> None:
    learned = learn([*steps(rates), *steps([6] * odd)])

    assert min(rates) - 1 <= learned.usual <= max(rates) + 1
    assert learned.slow <= learned.usual <= learned.fast


def test_a_long_round_is_no_pause_where_its_loops_take_as_long() -> None:
    assert not is_pause(Worked(0, 20 * MINUTE, 256, steady=True))
    assert is_pause(Worked(0, 20 * MINUTE, 64, steady=True))


@pytest.mark.parametrize(
    ("minutes", "said"),
    [
        (2, Reply.of("duration-few-minutes")), (3, Reply.of("duration-minutes", minutes=5)),
        (24, Reply.of("duration-minutes", minutes=25)), (30, Reply.of("duration-half-hour")),
        (54, Reply.of("duration-minutes", minutes=55)), (60, Reply.of("duration-hours", hours=1)),
        (92, Reply.of("duration-hours-and-half", hours=1)),
        (150, Reply.of("duration-hours-and-half", hours=2)),
        (170, Reply.of("duration-hours", hours=3)), (630, Reply.of("duration-hours", hours=10)),
        (959, Reply.of("duration-hours", hours=16)),
    ],
)  # fmt: skip
def test_durations_are_said_as_people_say_them(minutes: int, said: Reply) -> None:
    assert said_duration(Fraction(minutes)) == said


@given(st.fractions(0, 3000))
def test_a_said_duration_is_close_to_the_true_one(minutes: Fraction) -> None:
    said = said_duration(minutes)
    values = dict(said.values)
    told = {
        "duration-few-minutes": 0, "duration-half-hour": 30, "duration-minutes": values.get("minutes"),
        "duration-hours": 60 * values.get("hours", 0),
        "duration-hours-and-half": 60 * values.get("hours", 0) + 30,
    }[said.key]  # fmt: skip

    assert abs(told - minutes) <= max(Fraction(5, 2), 15 if minutes > 57 else 0, 30 if minutes >= 600 else 0)


def test_a_range_that_rounds_to_one_figure_is_said_as_one() -> None:
    even = Pace(Fraction(24), Fraction(25), Fraction(26))

    assert said_range(3750, even) == Reply.of(
        "time-about", duration=Reply.of("duration-hours-and-half", hours=2)
    )


def test_the_time_for_a_pair_of_sixty_four_stitches_is_about_sixteen_hours() -> None:
    """23,808 stitches in 16 hours: a knitter's own count (makingalife.me, 2014)."""
    pace = Pace(DEFAULT_PACE.usual, DEFAULT_PACE.usual, DEFAULT_PACE.usual)

    assert said_range(23_808, pace) == Reply.of("time-about", duration=Reply.of("duration-hours", hours=16))


def test_time_to_go_is_told_for_the_stage_and_for_the_pair() -> None:
    assert ROWS[18].stage is StageName.LEG
    slow = Pace(Fraction(1), Fraction(2), Fraction(4))

    assert time_to_go(LOOPS, at_row(18), slow) == Reply.of(
        "time-to-go",
        in_stage=Reply.of(
            "time-between",
            least=Reply.of("duration-minutes", minutes=10),
            most=Reply.of("duration-minutes", minutes=50),
        ),
        in_pair=Reply.of(
            "time-between",
            least=Reply.of("duration-minutes", minutes=20),
            most=Reply.of("duration-hours", hours=1),
        ),
    )


@given(st.integers(0, END), st.integers(1, 100), st.integers(0, 50))
def test_all_that_is_said_about_time_is_listed(index: int, slow: int, more: int) -> None:
    pace = Pace(Fraction(slow), Fraction(slow), Fraction(slow + more))
    for reply in time_to_go(LOOPS, at_row(index), pace).walk():
        assert frozenset(dict(reply.values)) == PACE_SAYINGS[reply.key]


def test_an_end_of_session_breaks_a_stretch() -> None:
    entries = [
        entry(Begun(now=at_row(4)), 0),
        entry(SessionEnded(), 1),
        entry(SessionBegan(), 90_000),
        entry(Advanced(now=at_row(5)), 100_000),
    ]

    assert worked(entries, COUNTED) == (Worked(0, 100_000, 4, steady=False),)
