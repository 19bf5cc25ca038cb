"""When the toe increases, and what its rows are."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.pattern import StageName, Toe
from plans.rows.toes import cast_on, foot_rounds, toe_rounds, toe_schedule, toe_steps
from plans.rows.toes import toe as toe_part
from plans.stitches import Op


def _around(toe, tip, half):
    """The whole sock's stitches after each round of the toe."""
    stitches, counts = 2 * tip, []
    for increases in toe_schedule(toe, tip, half):
        stitches += 4 * increases
        counts.append(stitches)
    return counts


GROWING = [each for each in Toe if toe_part(each).cup is None]
"""Toes that begin at their tip."""


@given(st.sampled_from(GROWING), st.integers(1, 60), st.integers(0, 60))
def test_every_toe_starts_plain_and_ends_at_the_half(toe, tip, increases):
    steps = toe_steps(toe, tip, tip + 2 * increases)

    assert steps[0] == (False, False)
    assert (sum(step.outer for step in steps), sum(step.inner for step in steps)) == (increases, increases)
    assert increases == 0 or any(steps[-1])


@given(st.integers(1, 60), st.integers(1, 60))
def test_a_wedge_increases_every_other_round(tip, increases):
    assert toe_schedule(Toe.WEDGE, tip, tip + 2 * increases) == (False, True) * increases


@pytest.mark.parametrize(
    ("tip", "increases", "around"), [(10, 10, 60), (11, 12, 70)]
)  # Knitty, Fall 2008, toe-up sock pattern
def test_increase_rounds_come_to_the_printed_stitches(tip, increases, around):
    counts = _around(Toe.WEDGE, tip, tip + 2 * increases)

    assert counts[-1] == around
    assert len(counts) == 2 * increases


def test_the_rounded_toe_of_64_is_as_printed():
    """24 cast on, 52 after 7 increase rounds, then 56, 60, 64; 18 rounds ("Making a rounded toe")."""
    counts = _around(Toe.ROUNDED, 12, 32)

    assert counts[:8] == [24, 28, 32, 36, 40, 44, 48, 52]
    assert counts[8:] == [52, 52, 56, 56, 56, 60, 60, 60, 60, 64]
    assert len(counts) == 18


@pytest.mark.parametrize(
    ("tip", "half", "ends"),
    [(10, 28, [44, 48, 52, 56]), (12, 30, [48, 52, 56, 60])],
)  # "Making a rounded toe", alpacadirect.com
def test_the_rounded_toes_of_56_and_60_are_as_printed(tip, half, ends):
    assert sorted(set(_around(Toe.ROUNDED, tip, half)))[-4:] == ends


@pytest.mark.parametrize("toe", Toe)
def test_a_cast_on_of_the_full_width_is_followed_by_one_plain_round(toe):
    assert toe_schedule(toe, 12, 12) == (False,)


@pytest.mark.parametrize(("tip", "half"), [(5, 12), (14, 12), (0, 12), (-2, 12)])
def test_a_half_that_twos_do_not_reach_is_refused(tip, half):
    with pytest.raises(ValueError, match=f"{tip} loops a tip never grow to {half}"):
        toe_schedule(Toe.WEDGE, tip, half)


def _written(ops):
    return [(group.op, group.times) for group in ops]


def test_increases_mirror_each_other_one_stitch_in_from_the_edges():
    rounds = list(toe_rounds((False, True), 4, Op.K))

    due = [(Op.K, 1), (Op.M1R, 1), (Op.K, 2), (Op.M1L, 1), (Op.K, 1)]
    assert [due, due] == [_written(rounds[1].front.ops), _written(rounds[1].back[0].ops)]
    assert (rounds[1].front.after, rounds[1].back[0].after) == (6, 6)


def test_of_two_stitches_none_lies_between_the_increases():
    work = list(toe_rounds((False, True), 2, Op.K))[1].front

    assert _written(work.ops) == [(Op.K, 1), (Op.M1R, 1), (Op.M1L, 1), (Op.K, 1)]
    assert work.after == 4


def test_the_second_tip_is_knitted_through_the_back_in_the_first_round_only():
    rounds = list(toe_rounds((False, True, False), 4, Op.KTBL))

    assert _written(rounds[0].front.ops) == [(Op.K, 4)]
    assert _written(rounds[0].back[0].ops) == [(Op.KTBL, 4)]
    assert all(op is not Op.KTBL for work in rounds[1:] for op, _ in _written(work.back[0].ops))


def test_the_cast_on_lies_on_both_tips():
    work = cast_on(5)

    assert work.front.stage is StageName.CAST_ON
    assert _written(work.front.ops) == _written(work.back[0].ops) == [(Op.CO, 5)]


def test_the_foot_is_plain():
    rounds = list(foot_rounds(3, 12))

    assert [work.front.number for work in rounds] == [1, 2, 3]
    assert {group.op for work in rounds for group in work.front.ops} == {Op.K}
