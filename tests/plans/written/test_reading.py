"""Patterns in the usual abbreviations come to the rows that a knitter would work."""

import re

import pytest

from plans.charts import SYMBOLS, Cell, parted
from plans.charts import Row as ChartedRow
from plans.pattern import Act, Colour, Facing, Half, Needles, Row, StageName
from plans.proof import prove
from plans.stitches import Op
from tests.plans.written.pieces import COWL, HAT, MITTENS, PIECES, made
from tests.source import ROOT


def piece(*rounds: str, cast_on: int = 12, head: str = "") -> tuple[Row, ...]:
    """The rows of an invented piece, without its cast-on and its bind-off."""
    text = "\n".join(rounds)
    plan = made(f"{head}pattern = '''\nCO {cast_on}.\n{text}\nBO all.\n'''\n[swatch]\nstitches = 20\nrounds = 28\n")
    return tuple(row for row in plan.rows if row.stage not in (StageName.CAST_ON, StageName.BIND_OFF))


def worked(text: str, cast_on: int = 12) -> list[tuple[str, int]]:
    """The stitches of one round."""
    return [(group.op.value, group.times) for group in piece(f"Rnd 1: {text}.", cast_on=cast_on)[0].ops]


@pytest.mark.parametrize("text", PIECES.values(), ids=PIECES.keys())
def test_invented_pieces_are_proven(text):
    assert prove(made(text)) == ()


@pytest.mark.parametrize(
    ("text", "stitches"),
    [
        ("knit", [("k", 12)]),
        ("K all sts", [("k", 12)]),
        ("purl to end of rnd", [("p", 12)]),
        ("k 3, p9", [("k", 3), ("p", 9)]),
        ("*k1, p1; rep from * to end", [("k", 1), ("p", 1)] * 6),
        ("*k1, p2; repeat from * around", [("k", 1), ("p", 2)] * 4),
        ("*k1, p1; rep from * to last 2 sts, k2", [("k", 1), ("p", 1)] * 5 + [("k", 2)]),
        ("*k1, p1; rep from * to last st, k1, k to end", None),
        ("*k1, p1; rep from * 3 times, k4", [("k", 1), ("p", 1)] * 4 + [("k", 4)]),
        ("*k1, p1; rep from * twice more, k6", [("k", 1), ("p", 1)] * 3 + [("k", 6)]),
        ("[k2, p2] 3 times", [("k", 2), ("p", 2)] * 3),
        ("[k2, p2] three times", [("k", 2), ("p", 2)] * 3),
        ("(k2, p2) twice, k4", [("k", 2), ("p", 2)] * 2 + [("k", 4)]),
        ("[[k1, p1] twice, k2] to end",
         [("k", 1), ("p", 1), ("k", 1), ("p", 1), ("k", 3), ("p", 1), ("k", 1), ("p", 1), ("k", 2)]),
        ("k2tog, k to last 2 sts, ssk", [("k2tog", 1), ("k", 8), ("ssk", 1)]),
        ("k2tog 6 times", [("k2tog", 6)]),
        ("p2tog twice, k8", [("p2tog", 2), ("k", 8)]),
        ("k1 tbl, p1 tbl, sl1 wyib, sl2 wyif, k to end",
         [("ktbl", 1), ("ptbl", 1), ("sl_wyib", 1), ("sl_wyif", 2), ("k", 7)]),
        ("kfb, pfb, m1l, m1r, yo, lli, rli, k to end",
         [("kfb", 1), ("pfb", 1), ("m1l", 1), ("m1r", 1), ("yo", 1), ("lifted_l", 1), ("lifted_r", 1), ("k", 10)]),
        ("k3tog, sssk, s2kp2, sk2p", [("k3tog", 1), ("sssk", 1), ("s2kp2", 1), ("sk2p", 1)]),
        ("ssp, skp, p3tog, k5", [("ssp", 1), ("skp", 1), ("p3tog", 1), ("k", 5)]),
        ("k3, yo, k2tog and then k to end", [("k", 3), ("yo", 1), ("k2tog", 1), ("k", 7)]),
    ],
)  # fmt: skip
def test_abbreviations_and_repeats(text, stitches):
    if stitches is None:
        with pytest.raises(AssertionError, match="written-repeat-uneven"):
            worked(text)
        return
    assert stitches == worked(text)


def test_a_number_in_brackets_is_that_of_the_size():
    counts = {}
    for size in ("small", "medium", "large"):
        plan = made(HAT.replace('size = "medium"', f'size = "{size}"'))
        counts[size] = (plan.cast_on, [row.stitches_after for row in plan.rows if row.stage is StageName.CROWN])

    assert {size: cast_on for size, (cast_on, _) in counts.items()} == {"small": 88, "medium": 96, "large": 104}
    assert counts["small"][1][:3] == [77, 77, 66]
    assert counts["large"][1][:3] == [91, 91, 78]


@pytest.mark.parametrize(
    ("rounds", "purled"),
    [
        (["Rnds 1-3: k.", "Rnd 4: p."], [4]),
        (["Rnds 1, 3 and 5: k.", "Rnds 2 & 4: p."], [2, 4]),
        (["Rnd 1: k.", "Rnd 2: p.", "Repeat rnds 1-2 twice.", "Rnd 3: k."], [2, 4, 6]),
        (["Rnd 1: k.", "Rnd 2: p.", "Repeat rnds 1-2 twice more.", "Rnd 7: p."], [2, 4, 6, 7]),
        (["Rnd 1: k.", "Rnd 2: p.", "Rep rnds 1 and 2 three times in all.", "Next rnd: p."], [2, 4, 6, 7]),
        (["Rnd 1: k.", "Rnd 2: p.", "Rep last rnd once.", "Rnd 3: k."], [2, 3]),
        (["Rnd 1: k.", "Rnd 2: p.", "Rep last 2 rnds once."], [2, 4]),
        (["Rnd 1: k", "Rnd 2: p"], [2]),
        (["Rnd 1: k6,", "k6.", "Rnd 2: p6, p6"], [2]),
    ],
)
def test_rounds_come_in_order_however_they_are_told(rounds, purled):
    rows = piece(*rounds)

    assert purled == [row.round for row in rows if row.ops[0].op is Op.P]
    assert list(range(1, len(rows) + 1)) == [row.round for row in rows]


@pytest.mark.parametrize(("size", "rounds"), [("small", 0), ("medium", 4), ("large", 9)])
def test_of_a_size_that_has_none_of_them_rounds_end_before_they_begin(size, rounds):
    text = HAT.replace('size = "medium"', f'size = "{size}"').replace("Rnds 1-20: knit.", "Rnds 1-0 (4, 9): knit.")

    assert rounds == sum(row.stage is StageName.BODY for row in made(text).rows)


def test_a_count_may_be_told_after_a_round():
    rows = piece("Rnd 1: k2tog, k to end. (11 sts)", "Rnd 2: k2tog, k to end. 10 sts.", "Rnd 3: k.")

    assert [11, 10, 10] == [row.stitches_after for row in rows]


def test_a_piece_lies_whole_on_one_needle_and_a_pair_in_halves():
    hat, mittens = made(HAT), made(MITTENS)

    assert {Half.FRONT} == {row.half for row in hat.rows}
    assert not any(row.turn_after for row in hat.rows)
    assert hat.socks == ("invented hat",)
    assert hat.construction.needles is Needles.ONE_CIRCULAR
    assert hat.construction.toe is hat.construction.heel is hat.construction.bind_off is None
    assert [(1, "front"), (2, "front"), (2, "back"), (1, "back")] == [(row.sock, row.half) for row in mittens.rows[4:8]]
    assert [False, True, False, True] == [row.turn_after for row in mittens.rows[4:8]]
    assert mittens.socks == ("left mitten", "right mitten")


def test_what_a_piece_measures_follows_from_its_counts():
    hat = made(HAT)

    assert hat.finished.circumference_cm == 48
    assert hat.finished.height_cm == pytest.approx(40 / 2.8)
    assert (hat.around, hat.cast_on, hat.multiple, hat.gusset) == (96, 96, 8, 0)


def test_acts_are_told_between_rounds_and_in_them():
    rows = made(HAT).rows

    assert rows[1].acts == (Act.MARKER, Act.JOIN)
    assert rows[-2].acts == (Act.CUT,)
    assert rows[-1].acts == (Act.WEAVE_IN,)
    told = piece("Lifeline. Measure.", "Rnd 1: k.", "Rnd 2: try on, k, cut yarn.")
    assert [row.acts for row in told] == [(Act.LIFELINE, Act.MEASURE), (Act.TRY_ON, Act.CUT)]


def test_halves_of_a_round_may_be_told_apart():
    rounds = ("Rnd 1: Front: p. Back: k.", "Rnd 2: Each half: k1, k2tog, k to end.")
    rows = piece(*rounds, head='needles = "one-long-circular"\n')

    assert [("front", "p"), ("back", "k")] == [(row.half, row.ops[0].op) for row in rows[:2]]
    assert [5, 5] == [row.stitches_after for row in rows[2:]]


def test_markers_are_gone_to_slipped_and_taken_out():
    mittens = made(MITTENS)
    thumb = [row for row in mittens.rows if row.stage is StageName.HAND and row.sock == 1 and row.half is Half.BACK]

    assert [12, 13, 13, 14, 14, 15, 15, 14, 14, 14] == [row.stitches_after for row in thumb]
    assert thumb[1].ops[1].op is Op.M1L
    assert thumb[1].ops[2].op is Op.SLIP_MARKER
    assert thumb[7].ops[2].op is Op.REMOVE_MARKER


@pytest.mark.parametrize("old", ["k to 2 sts before m,", "k to m, sm, m1r"])
def test_a_marker_may_be_written_in_full(old):
    written = MITTENS.replace(old, old.replace(" m,", " marker,"), 1)

    assert written != MITTENS
    assert made(written).rows == made(MITTENS).rows


def test_a_piece_written_by_hand_was_made_from_no_wishes():
    assert made(HAT).wishes == ""


def test_charts_are_read_from_the_bottom_and_the_right():
    rows = [row for row in made(COWL).rows if row.chart]
    first, lace = rows[0], rows[6]

    assert [(3, Colour.CONTRAST), (1, Colour.MAIN)] == [(group.times, group.colour) for group in first.ops[:2]]
    numbers = [(row.chart.row, row.chart.of) for row in rows if row.chart]
    assert [(1, 3), (2, 3), (3, 3)] * 2 + [(1, 2), (2, 2)] * 2 == numbers
    assert ["k", "p", "k", "yo", "k2tog", "p"] == [group.op.value for group in lace.ops[:6]]


def test_the_hat_in_the_readme_is_proven_in_both_sizes():
    (example,) = re.findall(r"^```toml\n(.*?)^```", (ROOT / "README.md").read_text("utf-8"), re.MULTILINE | re.DOTALL)

    files = [example.replace('size = "adult"', f'size = "{size}"') for size in ("child", "adult")]
    assert [80, 96] == [made(file).cast_on for file in files]


@pytest.mark.parametrize("symbol", sorted(SYMBOLS))
def test_every_symbol_of_a_chart_is_a_stitch_or_none(symbol):
    cell = SYMBOLS[symbol]

    assert parted(f"|{symbol}") == ChartedRow((), ((cell,) if cell else ()) + (Cell(Op.K),), ())


def test_what_stands_outside_the_brackets_of_a_chart_is_worked_once():
    assert [1, 3, 2] == [len(part) for part in parted("-O[/|Q]V")]


def test_short_rows_leave_stitches_and_the_same_is_worked_on_the_other():
    text = """pattern = '''
CO 16.
Hand
Rnd 1: k.
Heel
Rnd 1: Front: k.
Second sock, back:
Row 1 (RS): k6, w&t.
Row 2 (WS): p4, w&t.
Row 3 (RS): k4, k1 with wrap, k1.
Row 4 (WS): p6, p1 with wrap, p1, turn.
Row 5 (RS): k8.
First sock, back: the same.
Both socks:
Top
Rnd 1: k.
BO all.
'''
pieces = 2
[swatch]
stitches = 20
rounds = 28
"""
    heel = [row for row in made_rows(text) if row.stage is StageName.HEEL and row.half is Half.BACK]

    assert [2] * 5 + [1] * 5 == [row.sock for row in heel]
    assert [Facing.RS, Facing.WS, Facing.RS, Facing.WS, Facing.RS] * 2 == [row.facing for row in heel]
    assert [row.ops for row in heel[:5]] == [row.ops for row in heel[5:]]


def made_rows(text: str) -> tuple[Row, ...]:
    from plans.written.reading.files import read_pattern_file

    plan = read_pattern_file(text)
    assert not isinstance(plan, tuple), plan
    return plan.rows


def test_a_chart_is_repeated_to_the_marker_and_no_further():
    head = "[charts]\nab = '-|'\n"
    text = f"""
multiple = 4
pattern = '''
CO 16. Join in the round.
Body
Rnd 1: k8, pm, k8.
Rnd 2: chart ab to m, sm, k8.
BO all.
'''
[swatch]
stitches = 20
rounds = 28
{head}"""
    row = next(row for row in made(text).rows if (row.stage, row.round) == (StageName.BODY, 2))

    ops = [(group.op.value, group.times) for group in row.ops]

    assert [("k", 1), ("p", 1)] * 4 + [("slip_marker", 1), ("k", 8)] == ops


@pytest.mark.parametrize(("text", "op"), [("BO all.", Op.BO), ("BO all sts with yo.", Op.YO_BO)])
def test_an_end_may_be_bound_off_with_yarn_overs(text, op):
    plan = made(PIECES["mittens"].replace("BO all sts.", text))
    ends = {group.op for row in plan.rows if row.stage is StageName.BIND_OFF for group in row.ops}

    assert {op} == ends & {Op.BO, Op.YO_BO}


@pytest.mark.parametrize("name", PIECES)
def test_a_file_from_another_system_is_the_same_piece(name):
    other = "\N{BYTE ORDER MARK}" + PIECES[name].replace("\n", "\r\n")

    assert made(PIECES[name]).rows == made(other).rows
