"""The gauge from one count or many: which are used, what their mean is, and how far off it may be."""

from fractions import Fraction
from statistics import stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.making import Made, make_plan
from plans.quantities import Length
from plans.sizing import gauge_of, measured
from plans.wishes import Count, Swatch, Wishes, Worked

SWATCH = Swatch(stitches=30, rounds=42)


def of(*counts: Count, swatch: Swatch = SWATCH):
    return measured(Wishes(swatch=swatch, counts=counts, foot_length="24.5cm", ball="23.7cm"))


def keys(found) -> dict:
    return {note.key: dict(note.values) for note in found.notes}


def test_one_count_is_the_gauge_read_to_half_a_stitch():
    found = of()

    assert gauge_of(SWATCH) == found.gauge
    assert found.stitches.share == Fraction(round(Fraction(1, 60), 4))
    assert found.rounds.share == Fraction(round(Fraction(1, 84), 4))
    assert {} == keys(found)


def test_the_mean_of_several_counts_is_told_with_how_far_off_it_may_be():
    found = of(Count(stitches=31), Count(stitches=29, rounds=43))

    assert {"counts": 3, "stitches": "30", "give_or_take": "1.2", "rounds": "42.5", "rounds_off": "1"} == keys(found)[
        "gauge-mean"
    ]


def test_a_narrow_count_is_less_certain_than_a_wide_one():
    narrow, wide = (of(swatch=Swatch(stitches=3 * cm, rounds=4 * cm, over=f"{cm}cm")) for cm in (5, 10))

    assert narrow.gauge == wide.gauge
    assert abs(narrow.stitches.share - 2 * wide.stitches.share) <= Fraction(1, 5000)


def test_a_wide_count_weighs_more_than_a_narrow_one():
    found = of(Count(stitches=17, over="5cm"))

    assert found.gauge.stitches_per_10cm == Fraction(30 + 17, 15) * 10
    assert found.gauge.rounds_per_10cm == 42


@given(st.lists(st.integers(250, 350), min_size=1, max_size=8))
def test_what_the_counts_differ_is_carried_on(tenths):
    counts = [Fraction(30), *(Fraction(each, 10) for each in tenths)]
    found = of(*(Count(stitches=each) for each in counts[1:]))
    mean = sum(counts) / len(counts)
    reading = 0.25 / float(mean)
    spread = max(stdev(map(float, counts)) / float(mean), reading)

    assert found.stitches.mean == mean
    assert float(found.stitches.share) == pytest.approx(2 * spread / len(counts) ** 0.5, abs=1e-4)


@pytest.mark.parametrize(
    ("counts", "stitches"),
    [
        ([Count(stitches=32, washed=False)], 30),
        ([Count(stitches=32, worked=Worked.FLAT)], 30),
        ([Count(stitches=32)], 31),
    ],
)
def test_counts_most_like_the_socks_are_used(counts, stitches):
    assert of(*counts).gauge.stitches_per_10cm == stitches


def test_a_washed_flat_count_goes_before_an_unwashed_one_in_the_round():
    unwashed = Swatch(stitches=32, rounds=42, washed=False)

    assert of(Count(stitches=28, worked=Worked.FLAT), swatch=unwashed).gauge.stitches_per_10cm == 28


def test_a_swatch_that_is_not_as_the_socks_is_said():
    found = of(swatch=Swatch(stitches=30, rounds=42, worked=Worked.FLAT, washed=False))

    assert {"swatch-unwashed", "swatch-flat"} == keys(found).keys()


def test_what_washing_and_flat_knitting_change_is_said_beyond_a_fiftieth():
    fewer = of(Count(stitches=32, rounds=42, washed=False))
    more = of(Count(stitches=28, rounds=44, worked=Worked.FLAT))

    assert keys(fewer)["washing-changes-stitches-fewer"] == {"percent": "6"}
    assert keys(more)["flat-differs-stitches-more"] == {"percent": "7"}
    assert keys(more)["flat-differs-rounds-fewer"] == {"percent": "5"}
    assert {} == keys(of(Count(stitches=Fraction("30.5"), washed=False)))


def test_counts_that_differ_in_two_ways_are_not_held_against_each_other():
    assert {} == keys(of(Count(stitches=20, rounds=20, washed=False, worked=Worked.FLAT)))


def test_the_spread_reaches_the_finished_measures():
    made = make_plan(Wishes(swatch=SWATCH, foot_length="24.5cm", ball="23.7cm"))
    assert isinstance(made, Made)
    finished, off = made.plan.finished, made.plan.give_or_take

    assert Length.of_cm(finished.circumference_cm) == gauge_of(SWATCH).width(64)
    assert off.circumference_cm == round(finished.circumference_cm / 60, 2)
    assert off.foot_length_cm == round(finished.foot_length_cm / 84, 2)
    assert off.leg_cm == round(finished.leg_cm / 84, 2)
