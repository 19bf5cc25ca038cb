"""The order of rows on the needle, where the yarns hang, and what is done without a loop."""

from collections import Counter
from fractions import Fraction
from itertools import groupby, pairwise

import pytest

from plans.making import make_plan
from plans.pattern import Act, BindOff, Facing, Half, Heel, StageName, Toe
from plans.quantities import Length
from plans.wishes import Swatch, Wishes
from tests.plans.row_text import GOLDEN, PAIRS, text
from tests.strategies import FLAP_HEELS, adult, practice

HEEL = {StageName.HEEL_TURN, StageName.HEEL_FLAP}
TURNS = {Act.TURN, Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE}


def in_the_round(plan):
    """Rounds of four rows, without cast-on and heel."""
    rows = [row for row in plan.rows if row.stage not in {*HEEL, StageName.CAST_ON}]
    return [rows[start : start + 4] for start in range(0, len(rows), 4)]


@pytest.mark.parametrize("name", PAIRS)
def test_rows_are_as_they_were_read(name):
    """Written anew by `python -m tests.plans.row_text`, read in the difference."""
    assert (GOLDEN / f"{name}.txt").read_text(encoding="utf-8") == text(practice(*PAIRS[name]))


# --- the order on the needle ("Two toe-up socks on the magic loop", faithknitter.com, 2008) ---


def test_the_sock_further_from_the_tips_is_cast_on_first():
    rows = practice().rows[:4]

    assert [(row.sock, row.half) for row in rows] == [(2, "front"), (2, "back"), (1, "front"), (1, "back")]
    assert not any(row.turn_after for row in rows)


@pytest.mark.parametrize("plan", [practice(), practice(Heel.GERMAN, BindOff.SEWN), adult()])
def test_a_round_is_front_one_front_two_back_two_back_one(plan):
    for four in in_the_round(plan):
        assert [(row.sock, row.half) for row in four] == [(1, "front"), (2, "front"), (2, "back"), (1, "back")]
        assert [row.turn_after for row in four] == [False, True, False, True]
        assert len({(row.stage, row.round) for row in four}) == 1
        assert {row.facing for row in four} == {Facing.RS}


def test_both_socks_are_worked_alike():
    plan = practice()
    work = [
        [(row.stage, row.round, row.half, row.ops, row.stitches_after) for row in plan.rows if row.sock == sock]
        for sock in (1, 2)
    ]

    assert sorted(work[0], key=str) == sorted(work[1], key=str)


def test_each_sock_has_its_own_yarn_and_the_change_is_called():
    rows = adult().rows

    assert all(row.yarn == row.sock for row in rows)
    for one, following in pairwise(rows):
        assert (Act.CHANGE_YARN in following.acts) == (one.yarn != following.yarn)


def test_turns_go_one_way_and_the_other_so_that_yarns_do_not_twist():
    acts = [act for row in adult().rows for act in row.acts if act in TURNS - {Act.TURN}]

    assert all(one is not following for one, following in pairwise(acts))


def test_short_and_flap_rows_turn_plainly():
    for row in practice().rows:
        assert row.turn_after == bool(TURNS & set(row.acts))
        if Act.TURN in row.acts:
            assert row.stage in HEEL
            assert row.half is Half.BACK


# --- counts ---


@pytest.mark.parametrize("heel", FLAP_HEELS)
def test_practice_counts_of_each_half_are_as_worked_out(heel):
    """Cast-on 4/4, toe 6 8 10 12, foot 12/12, gusset 12/14 … 24, flap 12/23 … 12, bound off (derived)."""
    plan = practice(heel)
    counts = {
        half: [key for key, _ in groupby(row.stitches_after for row in plan.rows if row.sock == 1 and row.half is half)]
        for half in Half
    }

    assert counts[Half.FRONT] == [4, 6, 8, 10, 12, 1]
    assert counts[Half.BACK] == [4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, *range(23, 11, -1), 0]


@pytest.mark.parametrize(
    ("around", "due"),
    [(48, (16, 48, 72, 16, 24)), (56, (18, 56, 84, 18, 28)), (60, (20, 60, 90, 20, 30)),
     (64, (20, 64, 96, 20, 32)), (72, (24, 72, 108, 24, 36))],
)  # fmt: skip
def test_whole_socks_are_as_in_the_table(around, due):
    """Rounds of the toe, widest sole, widest sock, rows of turn and flap (wedge toe, g = h/2, w = floor(h/3))."""
    toe_rounds, sole, sock, turn, flap = due
    swatch = Swatch(stitches=Fraction(30), rounds=Fraction(42))
    plan = make_plan(Wishes(swatch=swatch, foot_length=Length.parse("30cm"), around=around)).plan
    rows = Counter(row.stage for row in plan.rows)
    widest = max(row.stitches_after for row in plan.rows)

    assert rows[StageName.TOE] == 4 * toe_rounds
    assert (widest, widest + around // 2) == (sole, sock)
    assert rows[StageName.GUSSET] == 4 * (sole - around // 2)
    assert rows[StageName.HEEL_TURN] == 2 * (turn + 1)
    assert rows[StageName.HEEL_FLAP] == 2 * (flap + 1)


def test_sixty_four_stitches_are_thirty_two_and_thirty_two():
    assert {row.stitches_after for row in adult().rows if row.stage is StageName.LEG} == {32}


@pytest.mark.parametrize("bind_off", [BindOff.DECREASE, BindOff.SEWN, BindOff.YARN_OVER])
def test_one_loop_of_each_front_waits_for_the_bind_off_of_its_back(bind_off):
    rows = practice(Heel.WRAPPED, bind_off).rows[-4:]

    assert [row.stitches_after for row in rows] == [1, 1, 0, 0]
    assert [sum(group.times for group in row.ops) for row in rows] == [12, 12, 13, 13]


# --- acts ---


def acts_of(plan):
    """Each act with the stages, rounds and halves at which it stands."""
    return [(act, row.stage, row.round, row.sock, row.half) for row in plan.rows for act in row.acts]


def test_a_lifeline_is_threaded_before_each_later_stage():
    stages = [stage for act, stage, *_ in acts_of(practice()) if act is Act.LIFELINE]

    assert stages == ["foot", "gusset", "heel-turn", "leg", "cuff", "bind-off"]


def test_socks_are_tried_on_and_measured_when_the_toe_is_done_and_before_gusset_heel_and_cuff():
    for wanted in (Act.TRY_ON, Act.MEASURE):
        stages = [stage for act, stage, *_ in acts_of(practice()) if act is wanted]

        assert stages == ["foot", "gusset", "heel-turn", "cuff"]


def test_each_half_begins_snug_and_no_row_of_the_heel_does():
    plan = practice()
    snugged = [row for row in plan.rows if Act.SNUG in row.acts]

    assert len(snugged) == 4 * (len(in_the_round(plan)) - 1) + 4
    assert all(row.round == 1 for row in snugged if row.stage in HEEL)


def test_tails_and_marker_and_the_end():
    found = acts_of(practice())

    pulled = [where for act, *where in found if act is Act.PULL_TAIL]
    assert pulled == [["toe", 1, 1, "front"], ["toe", 1, 2, "front"]]
    assert [where for act, *where in found if act is Act.MARKER] == [["toe", 2, 1, "front"]]
    assert [act for act, *_ in found][-3:] == [Act.TURN_ANTICLOCKWISE, Act.WEAVE_IN, Act.WASH]
    assert [where for act, *where in found if act is Act.CUT] == [
        ["bind-off", 1, 2, "back"],
        ["bind-off", 1, 1, "back"],
    ]


def test_a_sewn_edge_is_sewn_with_the_tail_cut_before():
    found = acts_of(practice(Heel.WRAPPED, BindOff.SEWN))

    cut = [where for act, *where in found if act is Act.CUT_LONG]
    assert cut == [["cuff", 4, 2, "back"], ["cuff", 4, 1, "back"]]
    assert Act.CUT not in [act for act, *_ in found]


def test_a_toe_of_the_full_width_hangs_its_marker_in_the_next_stage():
    swatch = Swatch(stitches=Fraction(30), rounds=Fraction(42))
    wished = Wishes(swatch=swatch, foot_length=Length.parse("25cm"), around=60, cast_on=60, toe=Toe.WEDGE)
    plan = make_plan(wished).plan

    assert [where for act, *where in acts_of(plan) if act is Act.MARKER] == [["foot", 1, 1, "front"]]
