"""Shoe sizes: what is read, what is asked back, and that both ways agree."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.conversation import Measure, Problem
from plans.quantities import Length
from plans.sizing.shoes import LONGEST_FOOT, SHORTEST_FOOT, Shoe, System, parse_shoe, shoes_note, size_for

FEET = st.fractions(SHORTEST_FOOT.mm, LONGEST_FOOT.mm).map(Length)


@pytest.mark.parametrize(
    ("text", "system", "number"),
    [
        ("EU 39", System.EU, "39"), ("EU39", System.EU, "39"), ("eu 37 1/2", System.EU, "37.5"),
        ("UK 5½", System.UK, "5.5"), ("UK 5,5 men's", System.UK, "5.5"), ("UK child 7", System.UK_CHILD, "7"),
        ("child's UK 7", System.UK_CHILD, "7"), ("US men 10", System.US_MEN, "10"),
        ("US 8.5 women\N{RIGHT SINGLE QUOTATION MARK}s", System.US_WOMEN, "8.5"),
        ("US w8", System.US_WOMEN, "8"),
        ("us kids 10", System.US_CHILD, "10"), ("Mondopoint 245", System.MONDOPOINT, "245"),
    ],
)  # fmt: skip
def test_reads_a_shoe(text, system, number):
    assert Shoe(system, Fraction(number)) == parse_shoe(text)


@pytest.mark.parametrize("text", ["", "EU", "EU thirty-nine", "39 EU 40", "shoe 39", "EU -3"])
def test_what_is_no_shoe_is_a_problem_that_quotes_it(text):
    assert Problem.of("shoe-unreadable", "shoe", text=text) == parse_shoe(text)


def test_a_number_alone_asks_for_the_system():
    assert Problem.of("shoe-no-system", "shoe", text="39") == parse_shoe("39")


def test_a_us_number_alone_asks_whose_with_both_feet():
    feet = {"men": Measure(tenths_mm=2540), "women": Measure(tenths_mm=2455)}

    assert Problem.of("shoe-men-or-women", "shoe", text="US 8", **feet) == parse_shoe("US 8")


@pytest.mark.parametrize("text", ["EU 5", "EU 99", "UK 40", "US child 99", "Mondopoint 30", "Mondopoint 900"])
def test_a_shoe_no_foot_has_names_sizes_that_some_foot_has(text):
    problem = parse_shoe(text)

    assert problem.key == "shoe-out-of-range"
    values = dict(problem.values)
    for bound in ("least", "most"):
        assert isinstance(parse_shoe(values[bound]), Shoe), values[bound]


@given(FEET, st.sampled_from(System))
def test_a_size_is_at_most_half_a_size_from_its_foot(foot, system):
    shoe = size_for(foot, system)

    assert abs(shoe.foot.mm - foot.mm) < shoe.give_or_take.mm


@given(st.sampled_from(System), st.integers(0, 120))
def test_every_size_is_its_own_foots_size(system, doubled):
    number = Fraction(5 * doubled) if system is System.MONDOPOINT else Fraction(doubled, 2)
    shoe = Shoe(system, number)

    assert shoe == size_for(shoe.foot, system)


@given(st.sampled_from(System), st.integers(0, 100))
def test_every_size_that_is_written_reads_back(system, doubled):
    shoe = Shoe(system, Fraction(doubled, 2))
    read = parse_shoe(str(shoe))

    fits = SHORTEST_FOOT <= shoe.foot <= LONGEST_FOOT
    assert shoe == read if fits else isinstance(read, Problem)


@given(st.text())
def test_any_text_is_a_shoe_or_a_problem(text):
    assert isinstance(parse_shoe(text), (Shoe, Problem))


def test_a_foot_is_told_in_every_system_that_its_wearer_knows():
    told = [dict(shoes_note(Length.parse(foot), child=child).values)["sizes"] for foot, child in
            (("24.5cm", False), ("15cm", True))]  # fmt: skip

    assert told == ["EU 38.5, UK 6, US men 7, US women 8, Mondopoint 245",
                    "EU 24.5, UK child 7.5, US child 8, Mondopoint 150"]  # fmt: skip
