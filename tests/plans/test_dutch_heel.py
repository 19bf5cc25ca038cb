"""A heel turned square on its middle third: its rows as they are in print, and what is left for the gusset."""

import pytest

from plans.making import Made, make_plan
from plans.pattern import BindOff, Direction, Half, Heel, Plan, Row, StageName
from plans.wishes import Wishes


def plan_of(around: int, **more: object) -> Plan:
    made = make_plan(Wishes.model_validate({
        "swatch": {"stitches": 30, "rounds": 42}, "foot_length": "30cm", "around": around, "heel": Heel("dutch"),
        "direction": Direction.CUFF_DOWN, "bind_off": BindOff("graft"), **more,
    }))  # fmt: skip
    assert isinstance(made, Made), made
    return made.plan


def backs(plan: Plan, stage: StageName) -> list[Row]:
    return [row for row in plan.rows if row.stage is stage and row.sock == 1 and row.half is Half.BACK]


def worked(row: Row) -> list[tuple[str, int]]:
    return [(group.op.value, group.times) for group in row.ops]


def test_of_30_stitches_the_middle_ten_are_left_as_in_print():
    """Of 60 around: as many rows of flap as stitches, a third in the middle, each row takes one from beside it."""
    plan = plan_of(60)
    turn = backs(plan, StageName.HEEL_TURN)

    assert len(backs(plan, StageName.HEEL_FLAP)) == 30
    assert worked(turn[0]) == [("k", 19), ("ssk", 1)]
    assert all(worked(row) == [("sl_wyif", 1), ("p", 8), ("p2tog", 1)] for row in turn[1:-1:2])
    assert all(worked(row) == [("sl_wyib", 1), ("k", 8), ("ssk", 1)] for row in turn[2:-1:2])
    assert [row.stitches_after for row in turn] == [*range(29, 9, -1), 10 + 16]


def test_the_gusset_is_what_was_picked_up_beyond_the_half():
    plan = plan_of(60)

    assert [row.stitches_after for row in backs(plan, StageName.GUSSET)][:2] == [10 + 2 * 16, 40]
    assert (plan.gusset, plan.turned, plan.heel_depth) == (6, 10, 21)


@pytest.mark.parametrize("around", [8, 12, 16, 20, 28, 44, 64, 72, 100])
def test_the_middle_is_the_even_number_that_is_nearest_to_a_third(around):
    plan = plan_of(around)
    left = backs(plan, StageName.HEEL_TURN)[-2].stitches_after

    assert left % 2 == 0
    assert abs(left - around / 6) <= 1


def test_a_wider_gusset_has_a_longer_flap():
    assert len(backs(plan_of(60, gusset=10), StageName.HEEL_FLAP)) == 38
