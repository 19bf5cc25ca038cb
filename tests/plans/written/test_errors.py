"""Whatever is wrong in a pattern is told with its line, its column and the count."""

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from plans.making import Made
from plans.opening import made_of
from tests.plans.written.pieces import COWL, HAT, MITTENS, SOCK, charted_sock, refused

SEVEN = "Rnd 7: *k3, k2tog; rep from * to end."


@pytest.mark.parametrize(
    ("old", "new", "key", "where", "values"),
    [
        (SEVEN, "Rnd 7: k10, k2tog, k46.", "written-too-few", "line 22, column 1",
         {"round": 7, "used": 58, "stitches": 60}),
        (SEVEN, "Rnd 7: k10, k2tog, k50.", "written-too-many", "line 22, column 20",
         {"round": 7, "used": 61, "stitches": 60}),
        (SEVEN, "Rnd 7: *k6, k2tog; rep from * to end.", "written-repeat-uneven", "line 22, column 8",
         {"round": 7, "used": 56, "stitches": 60, "width": 8}),
        (SEVEN, "Rnd 7: k to last 61 sts, k2tog, k59.", "written-too-many", "line 22, column 8",
         {"round": 7, "used": 61, "stitches": 60}),
        (SEVEN, "Rnd 7: *yo; rep from * to end.", "written-never-ends", "line 22, column 8", {}),
        (SEVEN, "Rnd 7: yo to end.", "written-never-ends", "line 22, column 8", {}),
        (SEVEN, "Rnd 7: k9000.", "written-too-long", "line 22, column 8", {"round": 7, "most": 5000}),
        (SEVEN, "Rnd 7: k3, lifeline, k57.", "written-act-in-the-way", "line 22, column 12", {"act": "lifeline"}),
        (SEVEN, "Rnd 7: k3, cut, k57.", "written-act-in-the-way", "line 22, column 17", {"act": "cut"}),
        (SEVEN, "Rnd 7: k to m, k to end.", "written-no-marker", "line 22, column 8", {"round": 7}),
        (SEVEN, "Rnd 7: sm, k to end.", "written-no-marker", "line 22, column 8", {"round": 7}),
        (SEVEN, "Rnd 7: chart leaf.", "written-no-chart", "line 22, column 8", {"name": "leaf", "names": ""}),
        (SEVEN, "Rnd 7: .", "written-not-understood", "line 22, column 8", {"text": "."}),
        (SEVEN, "Rnd 7: [k2, p2].", "written-how-often", "line 22, column 8", {}),
        (SEVEN, "Rnd 7: *k2, p2.", "written-star-alone", "line 22, column 8", {}),
        (SEVEN, "Rnd 7: *k2, pq2; rep from *.", "written-not-understood", "line 22, column 13", {"text": "pq2"}),
        (SEVEN, "Rnd 7: [[[[[[[[[k1] once", "written-too-deep", "line 22, column 17", {"most": 8}),
        (SEVEN, "Rnd 7:", "written-round-empty", "line 22, column 1", {}),
        (SEVEN, "Rnd 7: chart , k.", "written-not-understood", "line 22, column 14", {"text": ","}),
        (SEVEN, SEVEN + " (48 sts) k3.", "written-not-understood", "line 22, column 48", {"text": "k3"}),
        (SEVEN, "Rnd 7 *k3", "written-not-understood", "line 22, column 7", {"text": "*"}),
        (SEVEN, "Rnd 7: k123456.", "written-not-understood", "line 22, column 9", {"text": "123456"}),
        ("Body\nRnds 1-20: knit.", "Body\nRnds 1-20: k.\nRep rnd 1 twice in rib.", "written-not-understood",
         "line 14, column 17", {"text": "in"}),
        ("Body\nRnds", "Body: k.\nRnds", "written-not-understood", "line 12, column 1", {"text": "body"}),
        ("Rnds 1-20: knit.", "Rnds 3-1: knit.", "written-not-understood", "line 13, column 9", {"text": ":"}),
        ("CO 88 (96, 104).", "CO 88 (96, 104) sts k3.", "written-not-understood", "line 7, column 21", {"text": "k3"}),
        ("(77 (84, 91) sts)", "(77 (85, 91) sts)", "written-count-differs", "line 16, column 40",
         {"stated": 85, "found": 84}),
        ("Rnd 4: knit", "Rnd 5: knit", "written-round-twice", "line 20, column 1", {"round": 5}),
        ("Rnd 4: knit.\n", "", "written-round-missing", "line 25, column 1", {"round": 4, "following": 5}),
        ("Rnds 1-20: knit.", "Rnds 1-20: k.\nRep rnds 20-21 once.", "written-no-such-round", "line 14, column 1",
         {"round": 21}),
        ("Rnds 1-20: knit.", "Rnds 1-20: k.\nRep rnd 20.", "written-how-often", "line 14, column 1", {}),
        ("(96, 104)", "(96, 104, 112)", "written-sizes-differ", "line 7, column 7", {"found": 4, "wanted": 3}),
        ("(96, 104)", "(96)", "written-sizes-differ", "line 7, column 7", {"found": 2, "wanted": 3}),
        ("\nBody\n", "\nBoddy\n", "written-not-understood", "line 12, column 1", {"text": "boddy"}),
        ('size = "medium"\n', "", "written-size-needed", "line 2, column 9", {"choices": "small, medium, large"}),
        ('"medium"\n', '"huge"\n', "written-size-unknown", "line 3, column 8",
         {"text": "huge", "choices": "small, medium, large"}),
        ("multiple = 8", "multiple = 7", "written-not-a-multiple", "", {"stitches": 96, "multiple": 7}),
        ("multiple = 8", "multiple = 0", "written-field-wrong", "line 4, column 12", {"name": "multiple", "text": "0"}),
        ("multiple = 8", "pieces = 3", "written-field-wrong", "line 4, column 10", {"name": "pieces", "text": "3"}),
        ("multiple = 8", 'needles = "five"', "written-needles", "line 4, column 11",
         {"text": "five", "choices": "one-circular, one-long-circular"}),
        ("multiple = 8", 'pieces = 2\nneedles = "one-circular"', "written-pair-needs-halves", "line 5, column 11",
         {"choices": "one-long-circular"}),
        ("multiple = 8", "multiples = 8", "field-misspelt", "line 4, column 1",
         {"name": "multiples", "meant": "multiple"}),
        ("multiple = 8", "colour = 8", "field-unknown", "line 4, column 1", {"name": "colour"}),
        ("stitches = 20\n", "", "written-swatch-needed", "line 30, column 1", {"name": "swatch.stitches"}),
        ("Draw tail through remaining sts. Weave in ends.", "", "loops-at-end", "", {"loops": 12}),
        ('pattern = """', 'pattern = """\\q', "file-unreadable", "line 6, column 16",
         {"line": 6, "column": 16, "text": 'pattern = """\\q'}),
    ],
)  # fmt: skip
def test_a_mistake_in_a_hat(old, new, key, where, values):
    assert old in HAT
    assert [(key, where, values)] == refused(HAT.replace(old, new, 1))


@pytest.mark.parametrize(
    ("text", "old", "new", "key", "values"),
    [
        (MITTENS, "k11, pm, k2,", "k11, k2tog,", "written-across-halves", {"round": 1}),
        (MITTENS, "Rnd 2: knit.", "Rnd 2: Front: k.", "written-half-missing", {"round": 2, "half": "back"}),
        (MITTENS, "Rnd 2: knit.", "Rnd 2: Front: k. Front: k.", "written-half-twice", {"round": 2}),
        (MITTENS, "k to m, rm, ssk", "k to 1 st before m, k2tog", "written-marker-in-the-way", {"round": 8}),
        (MITTENS, "Rnd 2: knit.", "First sock: the same.", "written-nothing-same", {}),
        (COWL, "MMMC", "MMZC", "chart-symbol-unknown", {"name": "peak", "row": 3, "symbol": "Z"}),
        (COWL, "/O|-", "/O[|-", "chart-brackets", {"name": "lace", "row": 1}),
        (COWL, "MMMC\nMMCC\nMCCC\n", "", "chart-empty", {"name": "peak"}),
        (COWL, "chart peak", "chart peek", "written-no-chart", {"name": "peek", "names": "peak, lace"}),
        (COWL, "CO 24", "CO 28", "written-repeat-uneven", None),
        (SOCK, "foot", "pattern = 3\nfoot", "written-no-pattern", {}),
    ],
)  # fmt: skip
def test_a_mistake_with_halves_markers_and_charts(text, old, new, key, values):
    assert old in text
    found = refused(text.replace(old, new, 1)) if key != "written-repeat-uneven" else [
        (key, "", None)]  # fmt: skip

    assert [(key, values)] == [(each, given) for each, _, given in found]


@pytest.mark.parametrize(
    ("on", "rows", "key", "values"),
    [
        ("front", ["|Z"], "chart-symbol-unknown", {"name": "chart", "row": 1, "symbol": "Z"}),
        ("front", [""], "chart-empty", {"name": "chart"}),
        ("front", ["||", "|||"], "chart-rows-differ", {"name": "chart", "row": 2, "found": 2, "wanted": 3}),
        ("front", ["|O|"], "chart-count-changes", {"name": "chart", "row": 1, "found": 3, "wanted": 2}),
        ("front", ["|" * 33], "chart-too-wide", {"name": "chart", "found": 33, "wanted": 32}),
        ("around", ["-[|-]-"], "chart-edges-around", {"name": "chart"}),
        ("around", ["-[|-]"], "chart-edges-around", {"name": "chart"}),
        ("around", ["[|-]-"], "chart-edges-around", {"name": "chart"}),
        ("around", ["|-|-|"], "chart-uneven",
         {"name": "chart", "stitches": 64, "multiple": 20, "below": 60, "above": 80}),
        ("behind", ["|-"], "chart-wish-wrong", {"name": "chart"}),
    ],
)  # fmt: skip
def test_a_chart_that_a_sock_cannot_follow(on, rows, key, values):
    text = "around = 64\n" + charted_sock(on, '["leg"]', *rows)

    assert [(key, values)] == [(each, given) for each, _, given in refused(text)]


@pytest.mark.parametrize("parts", ["3", '"leg"', "[]", '["toe"]'])
def test_a_chart_lies_on_parts_that_are_listed(parts):
    text = "around = 64\n" + charted_sock("front", parts, "|-")

    assert [("chart-wish-wrong", {"name": "chart"})] == [(key, values) for key, _, values in refused(text)]


_WORDS = st.sampled_from([
    "Rnd", "Rnds", "1", "2", "-", ":", "k", "k2", "p", "*", ";", "rep", "from", "to", "end", "last", "sts", "[", "]",
    "(", ")", "3", "times", "twice", ",", ".", "\n", "CO", "24", "BO", "all", "Body", "Crown", "First", "sock", "front",
    "back", "the", "same", "Both", "chart", "row", "of", "{", "}", "cut", "turn", "w&t", "pm", "sm", "m", "MC",
    "with", "wraps", "Repeat", "more", "gather", "99999", "yo", "“x”", "ż",
])  # fmt: skip


@given(st.lists(_WORDS, max_size=60).map(" ".join))
@settings(max_examples=150, deadline=None)
@example("CO 24 ( 3")
@example("Rnd 1: chart")
@example("First sock, back: the same")
def test_no_text_breaks_the_reading(text):
    found = made_of(f"pattern = '''\n{text}\n'''\n[swatch]\nstitches = 20\nrounds = 28\n")

    assert isinstance(found, Made) or found
