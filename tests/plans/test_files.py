"""The plan file: it reads back as it was written, and says every mistake with its line and column."""

import tomllib
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.conversation import Measure, Problem, Reply
from plans.files import LONGEST_FILE, read_wishes, write_wishes
from plans.files.comments import COMMENTS, EXAMPLES
from plans.files.fields import READERS, read_answer, read_counts
from plans.pattern import BindOff, Heel, StageName, Toe
from plans.quantities import Length
from plans.sayings import SAYINGS
from plans.sizing.sayings import FIELD_SAYINGS, SIZING_SAYINGS
from plans.wishes import Count, Swatch, Wishes, Worked
from tests.plans.made_up_wishes import absurd_wishes, wishes

SWATCH = "swatch = { stitches = 30, rounds = 42 }\n"


def problems(text: str) -> list[tuple[str, str, dict]]:
    """Key, place and values; no field replies, only their keys."""
    found = read_wishes(text)
    assert isinstance(found, tuple), found
    assert all(SAYINGS[each.key] == {name for name, _ in each.values} for each in found)
    return [(each.key, each.where, {name: getattr(value, "key", value) for name, value in each.values})
            for each in found]  # fmt: skip


# --- writing ---


@given(wishes() | absurd_wishes())
def test_any_wishes_read_back_the_same(wish):
    assert wish == read_wishes(write_wishes(wish))


@given(wishes() | absurd_wishes())
def test_any_wishes_survive_windows_line_ends_and_a_byte_order_mark(wish):
    text = "\N{BYTE ORDER MARK}" + write_wishes(wish).replace("\n", "\r\n")

    assert wish == read_wishes(text)


def test_a_file_explains_every_field_to_a_person():
    text = write_wishes(Wishes(swatch=Swatch(stitches=30, rounds=Fraction("42.5")), foot_length="24.5cm"))

    for name in Wishes.model_fields:
        assert f"# {COMMENTS[name].splitlines()[0]}\n" in text
        assert f"\n{name} = " in text or f"\n# {name} = {EXAMPLES[name]}\n" in text
    assert 'swatch = { stitches = 30, rounds = 42.5, over = "10cm" }' in text
    assert max(map(len, text.splitlines())) < 100


def test_every_wish_left_open_can_be_made_by_taking_the_mark_away():
    text = write_wishes(Wishes(swatch=Swatch(stitches=30, rounds=42)))
    for name in EXAMPLES:
        text = text.replace(f"# {name} = ", f"{name} = ")

    filled = read_wishes(text)

    assert isinstance(filled, Wishes)
    assert not [name for name in EXAMPLES if getattr(filled, name) is None]


@pytest.mark.parametrize("number", ["30.12345678901234567891", "0.1", "1e30", "1e-12", "7/3"])
def test_a_number_no_binary_float_holds_reads_back_exactly(number):
    wish = Wishes(swatch=Swatch(stitches=Fraction(number), rounds=42))

    assert wish == read_wishes(write_wishes(wish))


def test_comments_can_be_in_another_language():
    german = {name: f"Zu {name}" for name in COMMENTS}

    assert "# Zu ball\n" in write_wishes(Wishes(swatch=Swatch(stitches=30, rounds=42)), german)


@pytest.mark.parametrize(
    "name", ['so"cks', "back\\slash", "line\nend", "\x7f\x00", "Ünïcode 🧦", "# no comment"]
)
def test_any_name_is_escaped(name):
    wish = Wishes(swatch=Swatch(stitches=30, rounds=42), name=name)

    assert wish == read_wishes(write_wishes(wish))
    assert name == tomllib.loads(write_wishes(wish))["name"]


# --- reading ---


def test_reads_a_file_written_by_hand():
    text = """
    # mine
    foot_length = "9 1/2 in"
    ball = "23,5 cm"      # left foot
    ease_percent = 12.5
    socks = [
      "red one",  # first
      "blue one",
    ]
    heel = "german"
    through_back_loop = true

    [swatch]
    stitches = "30½"
    rounds = 42
    over = "4in"
    """

    expected = Wishes(
        swatch=Swatch(stitches=Fraction("30.5"), rounds=42, over="4in"),
        foot_length="24.13cm", ball="23.5cm", ease_percent=Fraction("12.5"), socks=("red one", "blue one"),
        heel=Heel.GERMAN, through_back_loop=True,
    )  # fmt: skip
    assert expected == read_wishes(text)


@pytest.mark.parametrize("text", [
    "swatch = { stitches = 30, rounds = 42 }", "swatch.stitches = 30\nswatch.rounds = 42",
    "[swatch]\nstitches = 30\nrounds = 42", '["swatch"]\n"stitches" = 30\n\'rounds\' = 42.0',
])  # fmt: skip
def test_the_swatch_may_be_written_in_any_way_toml_knows(text):
    assert Wishes(swatch=Swatch(stitches=30, rounds=42)) == read_wishes(text)


def test_says_all_mistakes_at_once_in_the_order_of_lines():
    text = """schema_version = 1
foot_lenght = "24cm"
ball = 23.5
  ankle = "23 feet"
practice = "yes"
stitches = 3
toe = "square"
socks = [
  "a" ]
swatch = { stitches = "x", over = 10 }
gauge.needle = 3
"""

    expected = [
        ("field-misspelt", "line 2, column 1", {"name": "foot_lenght", "meant": "foot_length"}),
        ("length-no-unit", "line 3, column 8", {"field": "field-ball", "text": "23.5", "number": "23.5"}),
        ("length-unknown-unit", "line 4, column 11",
         {"field": "field-ankle", "text": "23 feet", "unit": "feet"}),
        ("yes-or-no-unreadable", "line 5, column 12", {"field": "field-practice", "text": "yes"}),
        ("field-misspelt", "line 6, column 1", {"name": "stitches", "meant": "swatch.stitches"}),
        ("choice-unknown", "line 7, column 7",
         {"field": "field-toe", "text": "square", "choices": ", ".join(Toe)}),
        ("two-names-unreadable", "line 8, column 9", {"field": "field-socks", "text": '["a"]'}),
        ("field-missing", "line 10, column 1", {"field": "field-rounds"}),
        ("number-unreadable", "line 10, column 23", {"field": "field-stitches", "text": "x"}),
        ("length-no-unit", "line 10, column 35", {"field": "field-over", "text": "10", "number": "10"}),
        ("field-unknown", "line 11, column 1", {"name": "gauge"}),
    ]  # fmt: skip
    assert expected == problems(text)


@pytest.mark.parametrize(
    ("line", "key", "column"),
    [
        ("ball = true", "length-unreadable", 8), ('ball = "wide"', "length-unreadable", 8),
        ("ball = [23]", "length-unreadable", 8), ("ball = 1979-05-27", "length-unreadable", 8),
        ("ball = nan", "length-unreadable", 8), ('ball = "-3cm"', "length-unreadable", 8),
        ("ease_percent = inf", "number-unreadable", 16), ('ease_percent = "lots"', "number-unreadable", 16),
        ("ease_percent = false", "number-unreadable", 16), ("around = 64.0", "whole-number-unreadable", 10),
        ('around = "64"', "whole-number-unreadable", 10), ("cast_on = true", "whole-number-unreadable", 11),
        ("name = 3", "text-unreadable", 8), ("shoe = 39", "text-unreadable", 8),
        ('socks = "both"', "two-names-unreadable", 9), ("socks = [1, 2]", "two-names-unreadable", 9),
        ('socks = ["a", "b", "c"]', "two-names-unreadable", 9), ("practice = 1", "yes-or-no-unreadable", 12),
        ("heel = true", "choice-unknown", 8), ('bind_off = "Sewn"', "choice-unknown", 12),
        ("schema_version = 0", "choice-unknown", 18), ('schema_version = "1"', "whole-number-unreadable", 18),
        ("foot-length = '24cm'", "field-misspelt", 1), ("  Ball = '24cm'", "field-misspelt", 3),
        ("colour = 'red'", "field-unknown", 1), ('"a = b" = 1', "field-unknown", 1),
        ("[[colours]]", "field-unknown", 1), ("[a.b]", "field-unknown", 1),
    ],
)  # fmt: skip
def test_a_mistake_is_named_at_its_line_and_column(line, key, column):
    [(found, where, _)] = problems(SWATCH + "\n# a comment\n" + line)

    assert (key, f"line 4, column {column}") == (found, where)


def test_a_file_older_than_the_oldest_is_told_which_there_are():
    [(key, where, values)] = problems(SWATCH + "schema_version = 0")

    assert ("choice-unknown", "line 2, column 18") == (key, where)
    assert {"field": "field-schema-version", "text": "0", "choices": "1"} == values


def test_one_count_that_cannot_be_read_is_told_beside_those_that_can():
    counts = 'counts = [{ stitches = 30, rounds = 42 }, { stitches = "many" }]\n'
    [(key, where, values)] = problems(SWATCH + counts)

    assert ("number-unreadable", "line 2, column 10") == (key, where)
    assert {"field": "field-stitches", "text": "many"} == values


def test_a_chart_lies_on_the_front_of_the_leg_unless_told_otherwise():
    found = read_wishes(SWATCH + "chart = { rows = ['|-', '-|'] }")

    assert isinstance(found, Wishes)
    assert (found.chart.on, found.chart.stages, found.chart.yarns) == ("front", (StageName.LEG,), None)
    assert "chart" == found.chart.name


@pytest.mark.parametrize(
    ("direction", "text", "choices"),
    [("direction", "sideways", "toe-up, cuff-down"),
     ("needles", "hooks", "one-long-circular, two-circulars, double-pointed, double-pointed-four")],
)  # fmt: skip
def test_a_choice_that_is_none_is_told_with_those_there_are(direction, text, choices):
    [(key, _, values)] = problems(SWATCH + f'{direction} = "{text}"')

    assert key == "choice-unknown"
    assert {"field": f"field-{direction}", "text": text, "choices": choices} == values


def test_a_mistake_inside_a_table_is_named_at_its_line_and_column():
    text = 'ball = "23cm"\n[swatch]\nstitches = 30\nwarmth = 3\nrounds = 4\n\n over = 10\nleg = "3cm"'

    expected = [
        ("field-unknown", "line 4, column 1", {"name": "swatch.warmth"}),
        ("length-no-unit", "line 7, column 9", {"field": "field-over", "text": "10", "number": "10"}),
        ("field-misspelt", "line 8, column 1", {"name": "swatch.leg", "meant": "leg"}),
    ]
    assert expected == problems(text)


@pytest.mark.parametrize(
    ("text", "where"),
    [
        (SWATCH + "ball =", "line 2, column 7"), (SWATCH + "ball = 23cm", "line 2, column 10"),
        (SWATCH + 'ball = "23cm', "line 2, column 13"), (SWATCH * 2, "line 2, column 40"),
        ("[swatch", "line 1, column 8"), ("hello", "line 1, column 6"),
        ("a = " + "[" * 5000, "line 1, column 5005"),
    ],
)  # fmt: skip
def test_text_that_is_no_toml_is_one_problem_with_its_line(text, where):
    [(key, place, values)] = problems(text)

    assert ("file-unreadable", where) == (key, place)
    assert values["text"].rstrip("…") in text
    assert f"line {values['line']}, column {values['column']}" == place


def test_a_newer_file_is_refused_as_such_and_not_for_its_new_fields():
    [found] = problems("new = 3\nschema_version = 2\n")

    assert found == ("file-too-new", "line 2, column 18", {"found": 2, "known": 1})


def test_a_swatch_that_is_no_table_is_named():
    [found] = problems("swatch = 30")

    assert found == ("field-not-a-table", "line 1, column 10", {"field": "field-swatch"})


def test_an_empty_file_misses_its_gauge():
    stitches, rounds = problems("")

    assert stitches == ("field-missing", "line 1, column 1", {"field": "field-stitches"})
    assert rounds == ("field-missing", "line 1, column 1", {"field": "field-rounds"})


def test_a_file_far_too_long_is_refused_before_it_is_read():
    [found] = problems("#" * (LONGEST_FILE + 1))

    assert found == ("file-too-long", "line 1, column 1", {"most": LONGEST_FILE})


@given(st.text(st.characters(exclude_categories=["Cs"])) | st.text("[]{}=\"'.,#\n ab1-"))
def test_any_text_is_wishes_or_registered_problems(text):
    read = read_wishes(text)

    assert isinstance(read, Wishes) or read
    for each in () if isinstance(read, Wishes) else read:
        assert isinstance(each, Problem)
        assert SIZING_SAYINGS[each.key] == {name for name, _ in each.values}
        assert each.where.startswith("line ")


@given(wishes(), st.data())
def test_a_damaged_file_never_breaks_the_reader(wish, data):
    text = write_wishes(wish)
    start = data.draw(st.integers(0, len(text)))
    length, put = data.draw(st.integers(0, 20)), data.draw(st.text("[]{}=\"'.,#\n a1-", max_size=5))

    read = read_wishes(text[:start] + put + text[start + length:])

    assert isinstance(read, Wishes) or all(each.where.startswith("line ") for each in read)


# --- one field at a time ---


def test_every_field_has_a_reader_a_name_and_a_comment():
    fields = {f"swatch.{name}" for name in Swatch.model_fields} | Wishes.model_fields.keys() - {"swatch"}

    assert fields == READERS.keys()
    assert {"", *Wishes.model_fields} == COMMENTS.keys()
    names = {f"field-{name.rpartition('.')[2].replace('_', '-')}" for name in fields | {"swatch"}}
    assert names == FIELD_SAYINGS.keys()


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("around", " 64 ", 64), ("ball", "23 cm", Length.of_cm(23)), ("ease_percent", "10%", Fraction(10)),
        ("toe", "rounded", Toe.ROUNDED), ("bind_off", "yarn-over", BindOff.YARN_OVER),
        ("shoe", " EU 39", "EU 39"),
    ],
)  # fmt: skip
def test_an_answer_typed_as_text_is_read_like_a_field(name, text, value):
    assert value == read_answer(name, text, "--" + name)


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("31 stitches 43 rounds over 10cm, flat, unwashed",
         Count(stitches=31, rounds=43, over=Length.of_cm(10), worked=Worked.FLAT, washed=False)),
        ("62 sts over 20 cm", Count(stitches=62, over=Length.of_cm(20))),
        ("15 1/2 sts, 22 rnds over 2in, in the round, washed",
         Count(stitches=Fraction(31, 2), rounds=22, over=Length.parse("2in"))),
        ("43 rows", Count(rounds=43)),
    ],
)  # fmt: skip
def test_a_count_typed_in_words_is_read(text, count):
    assert (count,) == read_counts([text], "--count")


@pytest.mark.parametrize("text", ["", "washed", "over 10cm", "stitches", "30", "30 stitches over ten"])
def test_what_counts_nothing_is_no_count(text):
    found = read_counts([text], "--count")

    assert isinstance(found, Problem)
    assert ("counts-unreadable", "--count") == (found.key, found.where)


@pytest.mark.parametrize(
    ("name", "text", "key"),
    [("around", "sixty", "whole-number-unreadable"), ("around", "9" * 5000, "whole-number-unreadable"),
     ("ball", "23", "length-no-unit"), ("toe", "", "choice-unknown")],
)  # fmt: skip
def test_an_answer_that_is_none_is_a_problem_at_its_place(name, text, key):
    problem = read_answer(name, text, "--here")

    assert (key, "--here") == (problem.key, problem.where)
    assert len(dict(problem.values)["text"]) <= 61
    assert isinstance(dict(problem.values)["field"], Reply)
    assert not isinstance(dict(problem.values)["field"], Measure)
