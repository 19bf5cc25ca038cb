"""Lengths and numbers: what is read, what is refused, and that nothing is lost in between."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter

from plans.quantities import Gauge, Length, Number, Unreadable, exact_number, parse_number, plain_number

LENGTHS = st.fractions(min_value=0, max_value=100_000).map(Length)


@given(LENGTHS)
def test_every_length_reads_back_exactly(length):
    assert length == Length.parse(str(length))


@given(LENGTHS)
def test_every_length_goes_through_json_exactly(length):
    adapter = TypeAdapter(Length)

    assert length == adapter.validate_json(adapter.dump_json(length))


@given(st.fractions(min_value=0))
def test_every_number_reads_back_exactly(number):
    assert number == parse_number(exact_number(number))


@given(st.text())
def test_any_text_is_a_length_or_is_refused_as_unreadable(text):
    try:
        read = Length.parse(text)
    except Unreadable as wrong:
        assert wrong.kind in {"number", "length", "no-unit", "unit"}
    else:
        assert read.mm >= 0


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("24.5cm", "245"), ("24,5 cm", "245"), ("245mm", "245"), (" 245 mm ", "245"), ("1in", "25.4"),
        ("1 ⅞in", "47.625"), ("9 1/2 in", "241.3"), ('9½"', "241.3"), ("9½″", "241.3"), ("4 inches", "101.6"),
        ("1/4 inch", "6.35"), ("3 Centimetres", "30"), ("7 millimeters", "7"), (".5cm", "5"), ("0cm", "0"),
    ],
)  # fmt: skip
def test_reads_a_length(text, mm):
    assert Fraction(mm) == Length.parse(text).mm


@pytest.mark.parametrize(
    ("text", "kind", "part"),
    [
        ("24.5", "no-unit", "24.5"), ("9½", "no-unit", "9½"), ("24 feet", "unit", "feet"),
        ("24m", "unit", "m"),
        ("cm", "length", ""), ("", "length", ""), ("-3cm", "number", "-3"), ("1/0 cm", "number", "1/0"),
        ("2..5cm", "number", "2..5"), ("about 24cm", "length", ""), ("24cm 3", "length", ""),
        ("9" * 2000 + "cm", "length", ""), ("१२cm", "number", "१२"),
    ],
)  # fmt: skip
def test_refuses_what_is_no_length_and_says_what_it_lacks(text, kind, part):
    with pytest.raises(Unreadable) as refused:
        Length.parse(text)

    assert (kind, part) == (refused.value.kind, refused.value.part)


def test_a_bare_length_is_refused_with_its_cure():
    with pytest.raises(Unreadable, match=r"write 24\.5cm, 24\.5mm or 24\.5in"):
        Length.parse("24.5")


@pytest.mark.parametrize("number", [24.5, 24, True, None])
def test_a_record_refuses_a_length_that_is_a_bare_number(number):
    with pytest.raises(ValueError, match="has no unit"):
        TypeAdapter(Length).validate_python(number)


@pytest.mark.parametrize(
    ("mm", "written"),
    [
        ("245", "24.5cm"), ("0.05", "0.005cm"), ("10/3", "1/3cm"), ("25.4", "2.54cm"), ("25.4/3", "1/3 in"),
        ("0", "0cm"), ("-15", "-1.5cm"), ("740/3", "24 2/3cm"),
    ],
)  # fmt: skip
def test_writes_centimetres_where_they_end_and_else_the_plainer_fraction(mm, written):
    top, _, bottom = mm.partition("/")

    assert written == str(Length(Fraction(top) / int(bottom or 1)))


@pytest.mark.parametrize(
    ("number", "written"),
    [("60.75", "60.75"), ("30", "30"), ("8.5333", "8.53"), ("0.004", "0"), ("-2.5", "-2.5")],
)
def test_a_number_for_a_person_has_no_needless_digits(number, written):
    assert written == plain_number(Fraction(number))


@pytest.mark.parametrize("value", [True, float("inf"), float("nan"), None, [], "many", "1e5"])
def test_refuses_what_is_no_number(value):
    with pytest.raises(ValueError, match="not a number"):
        TypeAdapter(Number).validate_python(value)


@pytest.mark.parametrize(
    ("value", "exact"), [(30.1, "30.1"), (30, "30"), ("30 1/3", "91/3"), ("30½", "30.5")]
)
def test_reads_a_number_as_the_decimals_written(value, exact):
    assert Fraction(exact) == TypeAdapter(Number).validate_python(value)


@given(st.integers(0, 1000), st.fractions(Fraction(1, 10), 1000), st.fractions(Fraction(1, 10), 1000))
def test_widths_and_heights_follow_from_the_gauge(count, stitches, rounds):
    gauge = Gauge(stitches, rounds)

    assert count == gauge.width(count).mm * gauge.stitches_per_mm
    assert count == gauge.height(count).mm * gauge.rounds_per_mm


def test_four_inches_are_not_ten_centimetres():
    assert Length.parse("4in") == Length.parse("10.16cm")
    assert Length.parse("4in") != Length.parse("10cm")


@pytest.mark.parametrize(
    ("read", "text", "message"),
    [
        (parse_number, "two", "“two” is not a number"),
        (parse_number, "1/0", "“1/0” divides by zero"),
        (Length.parse, "cm", "“cm” is not a length: write a number and its unit, such as 24.5cm"),
        (Length.parse, "24.5", "“24.5” has no unit: write 24.5cm, 24.5mm or 24.5in"),
        (Length.parse, "3 feet", "“feet” is not a unit of length here: use cm, mm or in"),
    ],
)
def test_what_is_no_quantity_is_quoted_with_what_to_write(read, text, message):
    with pytest.raises(Unreadable) as refused:
        read(text)

    assert message == str(refused.value)
