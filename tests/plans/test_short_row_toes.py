"""Toes of short rows over a provisional cast-on: their rows, the loops the waste yarn keeps, and what is said."""

from functools import cache

import pytest

from plans.conversation import HowFar, Next, WhereAmI
from plans.engine.resuming import resume
from plans.making import Made, make_plan
from plans.pattern import Act, Half, Needles, StageName, Toe
from plans.proof import prove
from plans.quantities import Length
from plans.stitches import Op
from plans.wishes import Swatch, Wishes
from tests.plans.damages import all_damages
from tests.plans.knitter import Knitter, assert_registered
from tests.strategies import ARRANGEMENTS, varied

TOES = ("short-row-wrapped", "short-row-german", "short-row-shadow")


@cache
def plan_of(name, needles=Needles.ONE_LONG_CIRCULAR, *, alone=False):
    return varied("toe", name, needles, alone=alone)


def toe_rows(plan, sock):
    return [row for row in plan.rows if row.sock == sock and row.stage in {StageName.CAST_ON, StageName.TOE}]


@pytest.mark.parametrize(
    ("name", "worked"),
    [
        ("short-row-wrapped", [11, 10, 9, 8, 7, 6, 5, 4, 5, 6, 7, 8, 9, 10, 11, 12, 12]),
        ("short-row-german", [11, 10, 9, 8, 7, 6, 5, 4, 8, 12, 7, 2, 3, 4, 5, 6, 7, 8, 9, 11, 12]),
    ],
)
def test_the_rows_are_those_of_the_short_row_heel(name, worked):
    """12 down to 4 and up again, as of 40 stitches on 20 down to 8 ("Easy toe-up sock", socknitters.com 1999)."""
    rows = toe_rows(plan_of(name), 1)[1:-1]
    found = [sum(group.times for group in row.ops if group.op in {"k", "p", "ds"}) for row in rows]

    assert found == worked
    assert {row.half for row in rows} == {Half.BACK}


@pytest.mark.parametrize("name", TOES)
def test_one_half_is_cast_on_and_the_other_comes_off_the_waste_yarn(name):
    plan = plan_of(name)
    for sock in (1, 2):
        first, *_, last = toe_rows(plan, sock)
        assert [(group.op, group.times) for group in first.ops] == [(Op.CO_WASTE, 12)]
        assert [(group.op, group.times) for group in last.ops] == [(Op.FREE, 11), (Op.PICK_UP, 1)]
        assert (first.half, last.half, last.acts[0]) == (Half.BACK, Half.FRONT, Act.PULL_WASTE)
    assert plan.cast_on == plan.half == 12


@pytest.mark.parametrize(("needles", "alone"), ARRANGEMENTS)
def test_each_sock_is_closed_to_a_round_before_the_other_is_begun(needles, alone):
    plan = plan_of("short-row-german", needles, alone=alone)
    names = [stage.name for stage in plan.stages if stage.name in {StageName.CAST_ON, StageName.TOE}]
    socks = list(dict.fromkeys(row.sock for row in plan.rows))

    assert names == [StageName.CAST_ON, StageName.TOE] * 2
    assert socks == ([1, 2] if alone else [2, 1])


@pytest.mark.parametrize("change", [{"times": 12}, {"times": 10}, {"op": Op.CO}])
def test_there_are_no_more_loops_on_the_waste_yarn_than_lie_between_the_feet(change):
    plan = plan_of("short-row-wrapped")
    at = toe_rows(plan, 2)[-1].index
    ops = (plan.rows[at].ops[0].model_copy(update=change), *plan.rows[at].ops[1:])
    row = plan.rows[at].model_copy(update={"ops": ops, "stitches_after": sum(group.times for group in ops)})
    found = prove(plan.model_copy(update={"rows": (*plan.rows[:at], row, *plan.rows[at + 1 :])}))

    assert found[0].where == f"row {at}"
    assert change != {"times": 12} or found[0].key == "nothing-kept"


@pytest.mark.parametrize("every", [61, pytest.param(1, marks=pytest.mark.nightly)])
@pytest.mark.parametrize("needles", [Needles.ONE_LONG_CIRCULAR, Needles.TWO_CIRCULARS])
def test_every_damage_in_the_toe_is_refused_and_named(needles, every):
    plan = plan_of("short-row-german", needles)
    begun = frozenset(range(toe_rows(plan, 1)[-1].index + 6))
    missed = []
    for damage in [each for each in all_damages(plan) if each.rows and each.rows <= begun][::every]:
        problems = prove(damage.plan)
        if not problems or problems[0].where not in {f"row {place}" for place in damage.rows}:
            missed.append((damage.kind, sorted(damage.rows)))

    assert not missed


def test_she_hears_the_toe_row_by_row_and_how_many_are_ahead():
    knitter = Knitter(plan_of("short-row-german"))
    knitter.say(Next())
    for _ in range(4):
        knitter.say(Next())
    knitter.say(WhereAmI())
    assert {"turn-doubles", "where-heel-row", "stage-toe"} <= {part.key for part in knitter.last.walk()}
    knitter.say(HowFar())
    ahead = {part.key: dict(part.values) for part in knitter.last.walk()}
    assert ahead["toe-rows-ahead"]["rows"] == 2 * 22 - 4
    assert_registered(resume(knitter.plan, knitter.progress))


def test_while_the_front_hangs_free_the_yarn_waits_at_the_back():
    plan = plan_of("short-row-german")
    knitter = Knitter(plan)
    while plan.rows[knitter.progress.now.first.row_index].stage is not StageName.FOOT:
        knitter.say(Next())
    yarns = [part.key for part in resume(plan, knitter.progress).walk() if part.key.startswith("yarn-")]

    assert yarns == ["yarn-at-the-edge", "yarn-in-the-gap"]


def _wished(**more):
    swatch = Swatch(stitches=30, rounds=42)
    return make_plan(Wishes(swatch=swatch, foot_length=Length.parse("24.5cm"), toe=Toe("short-row-wrapped"), **more))


def test_a_cast_on_of_her_own_must_be_the_half():
    assert isinstance(_wished(around=64, cast_on=32), Made)
    (problem,) = _wished(around=64, cast_on=24)

    assert problem.key == "cast-on-not-half"
    assert dict(problem.values) == {"loops": 24, "stitches": 64, "half": 32}


def test_the_toe_is_as_long_as_its_rows_folded_in_the_middle():
    """Of 64: 32, 31 … 12, 13 … 32, twenty rounds' length of forty rows."""
    plan = _wished(around=64).plan
    rounds = {stage: len({row.round for row in plan.rows if row.stage is stage}) for stage in StageName}
    foot = 20 + rounds[StageName.FOOT] + rounds[StageName.GUSSET] + plan.heel_depth

    assert rounds[StageName.TOE] == 42
    assert plan.finished.foot_length_cm == foot * 10 / plan.gauge.rounds_per_10cm
