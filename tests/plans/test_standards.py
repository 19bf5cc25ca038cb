"""Needles, yarn weights and estimates of feet, beyond the published rows."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.quantities import Length
from plans.sizing.feet import CHILD, Estimate, estimate, is_childs
from plans.sizing.standards import (
    NEEDLE_SIZES,
    YARN_WEIGHTS,
    needle_by_old_uk,
    needle_by_thickness,
    needle_by_us,
    over_four_inches,
    yarn_weights,
)


def test_needles_are_told_apart_by_each_of_their_numbers():
    for size in NEEDLE_SIZES:
        assert size == needle_by_thickness(Length(size.mm))
        assert size.us is None or size == needle_by_us(size.us)
        assert size.old_uk is None or size == needle_by_old_uk(size.old_uk)


def test_old_uk_numbers_fall_and_us_numbers_rise_as_needles_grow():
    def rank(number, zeros_grow):
        zeros = len(number) - 1 if set(number) == {"0"} else 0
        return -zeros if zeros_grow else float(number.replace("½", ".5")) - zeros

    us = [rank(size.us, zeros_grow=False) for size in NEEDLE_SIZES if size.us]
    uk = [rank(size.old_uk, zeros_grow=set(size.old_uk) == {"0"}) for size in NEEDLE_SIZES if size.old_uk]

    assert sorted(us) == us
    assert sorted(uk, reverse=True) == uk
    assert sorted(size.mm for size in NEEDLE_SIZES) == [size.mm for size in NEEDLE_SIZES]


@pytest.mark.parametrize("number", ["", "12", "14", "None", "½"])
def test_a_us_number_that_is_not_sold_is_none(number):
    assert needle_by_us(number) is None


def test_thickness_between_sizes_is_none():
    assert needle_by_thickness(Length.parse("3.1mm")) is None


@given(st.fractions(0, 100))
def test_every_gauge_has_a_class_or_two_neighbours(gauge):
    numbers = [weight.number for weight in yarn_weights(gauge)]

    assert numbers in [[n] for n in range(8)] + [[n, n + 1] for n in range(7)]


@given(st.fractions(0, 40), st.fractions(0, 40))
def test_finer_gauges_have_finer_classes(one, other):
    few, many = sorted((one, other))

    assert yarn_weights(many)[0].number <= yarn_weights(few)[0].number


def test_whole_gauges_fall_into_the_printed_classes():
    for gauge in range(1, 41):
        printed = [weight for weight in YARN_WEIGHTS if weight.fewest <= gauge <= weight.most]

        assert printed == list(yarn_weights(Fraction(gauge)))


def test_a_gauge_over_10_cm_is_converted_exactly():
    assert Fraction("30.48") == over_four_inches(Fraction(30), Length.parse("10cm"))
    assert Fraction(30) == over_four_inches(Fraction(30), Length.parse("4in"))


GIRTHS = ("ball", "ankle", "heel", "calf")
MEASURED = Length(Fraction(0))


def of_length(part, foot):
    return estimate(part, {"foot": Estimate(foot, MEASURED)})


@given(st.fractions(40, 400), st.fractions(40, 400), st.sampled_from(GIRTHS))
def test_a_longer_foot_is_wider_everywhere(one, other, part):
    shorter, longer = sorted((Length(one), Length(other)))

    assert of_length(part, shorter).length <= of_length(part, longer).length


@pytest.mark.parametrize("part", GIRTHS)
def test_the_estimate_does_not_jump_where_children_begin(part):
    below, above = of_length(part, CHILD - Length(Fraction(1, 100))), of_length(part, CHILD)

    assert abs(above.length.mm - below.length.mm) <= Fraction(1, 10)


@given(st.fractions(40, 400).map(Length), st.sampled_from(GIRTHS))
def test_every_estimate_says_how_far_off_it_may_be(foot, part):
    found = of_length(part, foot)

    assert 0 < found.give_or_take.mm < found.length.mm / 4
    assert is_childs(foot) == (foot.mm < 210)


@given(st.fractions(210, 320).map(Length))
def test_a_girth_measured_makes_the_guess_of_another_surer(foot):
    ball = of_length("ball", foot)
    both = {"foot": Estimate(foot, MEASURED), "ball": Estimate(ball.length, MEASURED)}

    assert estimate("heel", both).give_or_take < of_length("heel", foot).give_or_take
