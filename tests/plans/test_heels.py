"""Gusset, heel turn and flap against the worked rows of the trade and its counts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.pattern import Facing, Half, Heel, StageName
from plans.rows.heels import gusset_rounds, heel_round
from plans.stitches import Op
from tests.plans.row_text import operation
from tests.strategies import FLAP_HEELS, adult, practice

PAIR = (" sl_wyib 1, k 1," * 5 + " sl_wyib 1, ssk 1").strip()
WRONG_SIDE_PAIR = "sl_wyif 1, p 10, p2tog 1"


def passes(heel, half, gusset, turned):
    """Rows of turn and flap as text, with the loops after each."""
    back = heel_round(heel, half, gusset, turned).back
    return [(", ".join(operation(group) for group in one.ops), one.after) for one in back]


def short_rows(heel, half, gusset, turned):
    """Stitches worked in each row of the turn; the double stitch is not counted."""
    back = heel_round(heel, half, gusset, turned).back
    turn = [one for one in back if one.stage is StageName.HEEL_TURN]
    return [sum(group.times for group in one.ops if group.op in {Op.K, Op.P}) for one in turn]


# --- practice, N 24: derived, simulated by loops ---


def test_the_wrapped_practice_heel_is_row_for_row_as_worked_out():
    turn = [(f"{'kp'[place % 2]} {times}, wrap_turn 1", 24) for place, times in enumerate((17, 10, 9, 8, 7, 6, 5, 4))]
    first = [("k 4, k 3 with wraps, ssk 1 with wraps", 23), ("sl_wyif 1, p 7, p 3 with wraps, p2tog 1 with wraps", 22)]
    pairs = [(WRONG_SIDE_PAIR if loops % 2 == 0 else PAIR, loops) for loops in range(21, 11, -1)]

    assert passes(Heel.WRAPPED, 12, 6, 4) == [*turn, *first, *pairs, ("k 12", 12)]


def test_the_german_practice_heel_is_row_for_row_as_worked_out():
    turn = [("k 18", 24)] + [
        (f"ds 1, {'pk'[place % 2]} {times}", 24) for place, times in enumerate((11, 10, 9, 8, 7, 6, 5))
    ]
    first = [("ds 1, k 4, k 3 doubles, ssk 1 doubles", 23), ("sl_wyif 1, p 7, p 3 doubles, p2tog 1 doubles", 22)]
    pairs = [(WRONG_SIDE_PAIR if loops % 2 == 0 else PAIR, loops) for loops in range(21, 11, -1)]

    assert passes(Heel.GERMAN, 12, 6, 4) == [*turn, *first, *pairs, ("k 12", 12)]


# --- adult, N 64, and the values that make good tests ---


def test_the_adult_turn_is_as_worked_out():
    """Row 1 k47 (German k48), rows 2 to 20: 30 to 12 (German 31 to 13)."""
    assert short_rows(Heel.WRAPPED, 32, 16, 10) == [47, *range(30, 11, -1)]
    assert short_rows(Heel.GERMAN, 32, 16, 10) == [48, *range(31, 12, -1)]


@pytest.mark.parametrize(("heel", "mark", "ds"), [(Heel.WRAPPED, "with wraps", ""), (Heel.GERMAN, "doubles", "ds 1, ")])
def test_the_first_pair_of_the_adult_flap_resolves_nine_marks_and_joins_the_tenth(heel, mark, ds):
    rows = passes(heel, 32, 16, 10)

    assert rows[20] == (f"{ds}k 12, k 9 {mark}, ssk 1 {mark}", 63)
    assert rows[21] == (f"sl_wyif 1, p 21, p 9 {mark}, p2tog 1 {mark}", 62)


def test_the_adult_heel_has_twenty_rows_of_turn_and_thirty_two_of_flap():
    rows = passes(Heel.WRAPPED, 32, 16, 10)

    assert len(rows) == 20 + 32 + 1
    assert [loops for _, loops in rows[20:]] == [*range(63, 31, -1), 32]


@pytest.mark.parametrize(
    ("heel", "worked"),
    [(Heel.WRAPPED, [22, 14, 13, 12, 11, 10, 9, 8, 7, 6]), (Heel.GERMAN, [23, 15, 14, 13, 12, 11, 10, 9, 8, 7])],
)
def test_a_turn_on_sixteen_with_seven_gusset_stitches(heel, worked):
    assert short_rows(heel, 16, 7, 5) == worked


def test_a_flap_on_sixteen_eats_seven_stitches_a_side():
    loops = [after for _, after in passes(Heel.WRAPPED, 16, 7, 5)][10:]

    assert loops[:2] == [29, 28]
    assert loops[-1] == 16
    assert len(loops) - 1 == 14


@pytest.mark.parametrize(
    ("half", "gusset", "sole"), [(32, 16, 64), (30, 8, 46), (35, 9, 53), (16, 7, 30), (12, 6, 24)]
)  # april-klich.squarespace.com, Morgan-Oakes; Knitty Fall 2008 (60 → 76, 70 → 88); common practice
def test_the_gusset_adds_two_to_the_sole_every_other_round(half, gusset, sole):
    rounds = list(gusset_rounds(gusset, half))

    assert len(rounds) == 2 * gusset
    assert rounds[-1].back[0].after == sole
    assert {work.front.after for work in rounds} == {half}
    assert [work.back[0].after - half for work in rounds] == [2 * (number // 2 + 1) for number in range(2 * gusset)]


# --- any heel ---


@given(st.sampled_from(FLAP_HEELS), st.integers(2, 40).map(lambda quarter: 2 * quarter), st.data())
def test_turn_and_flap_bring_any_sole_back_to_its_half(heel, half, data):
    gusset = data.draw(st.integers(1, half))
    turned = data.draw(st.integers(1, (half - 1) // 2))
    back = heel_round(heel, half, gusset, turned).back

    assert len(back) == 2 * turned + 2 * gusset + 1
    assert [one.turns for one in back] == [True] * (len(back) - 1) + [False]
    assert [one.facing for one in back] == [Facing.RS, Facing.WS] * (turned + gusset) + [Facing.RS]
    assert (back[0].after, back[-1].after) == (half + 2 * gusset, half)


@pytest.mark.parametrize("plan", [practice(Heel.WRAPPED), practice(Heel.GERMAN), adult()])
def test_the_whole_heel_of_the_second_sock_comes_before_that_of_the_first(plan):
    heel = [row for row in plan.rows if row.stage in {StageName.HEEL_TURN, StageName.HEEL_FLAP}]
    socks = [row.sock for row in heel if row.half is Half.BACK]

    assert [row.sock for row in heel[:2]] == [1, 2]
    assert {row.half for row in heel[:2]} == {Half.FRONT}
    assert socks == sorted(socks, reverse=True)
    assert socks.count(1) == socks.count(2) == 2 * plan.turned + 2 * plan.gusset + 1
