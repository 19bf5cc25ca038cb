"""From the cuff down the leg is measured before its heel and the foot before its toe: planned anew, proven, offered."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.commands import Yes
from plans.conversation import Asked
from plans.engine import decide, evolve
from plans.pattern import Calf, Direction, Heel, Leg, Plan, StageName
from plans.proof import prove
from plans.wishes import Height
from tests.plans.test_engine_taping import at_round, hers, rounds_of, says, taken, told

DOWN = Direction.CUFF_DOWN
FRENCH, SHORT = Heel("french"), Heel("short-row-german")


def down(**changes) -> Plan:
    return hers(direction=DOWN, **{"ball": "23cm", **changes})


def upper(plan: Plan) -> tuple[int, int]:
    return rounds_of(plan, StageName.CUFF), rounds_of(plan, StageName.LEG)


def test_a_leg_measured_in_the_leg_keeps_its_cuff_and_gets_another_foot():
    """15 cm of 63 rounds at 42: 17 of cuff. 40 rounds that measure 10 cm: 60 in all, and the foot anew at 40 too."""
    plan = down()
    decision, progress = taken(plan, at_round(plan, StageName.LEG, 24), says("leg", 100))
    new = decision.plan

    assert upper(plan) == (17, 46)
    assert upper(new) == (17, 43)
    assert prove(new) == ()
    assert new.rows[: progress.now.first.row_index + 1] == plan.rows[: progress.now.first.row_index + 1]
    assert abs(new.finished.leg_cm - 15) <= Fraction(1, 4)
    assert abs(new.finished.foot_length_cm - Fraction("23.5")) <= Fraction(1, 4)


def test_a_leg_measured_in_its_cuff_makes_both_anew():
    plan = down(leg="20cm", cuff="8cm")
    new = taken(plan, at_round(plan, StageName.CUFF, 17), says("leg", 40))[0].plan

    assert upper(plan) == (34, 50)
    assert upper(new) == (32, 48)


def test_a_foot_is_measured_from_the_back_of_its_heel_and_leaves_the_leg():
    """Turned and picked up 8 rounds, 20 of gusset; 11 rounds more are 39; 10 cm of them are 39 to ten centimetres."""
    plan = down()
    decision, _, values = told(plan, at_round(plan, StageName.FOOT, 12), says("foot", 100))
    new = taken(plan, at_round(plan, StageName.FOOT, 12), says("foot", 100))[0].plan

    assert values["rounds"] == "39"
    assert decision.events == (Asked(wish=says("foot", 100)),)
    assert upper(new) == upper(plan)
    assert abs(new.finished.foot_length_cm - Fraction("23.5")) <= Fraction(1, 4)
    assert rounds_of(new, StageName.FOOT) == rounds_of(plan, StageName.FOOT) + round(23.5 * 3.9) - round(23.5 * 4.2)


def test_a_foot_with_its_own_rounds_keeps_them_when_the_leg_is_measured():
    plan = down(foot_rounds=50)
    new = taken(plan, at_round(plan, StageName.LEG, 24), says("leg", 100))[0].plan

    assert rounds_of(new, StageName.FOOT) == 50


@pytest.mark.parametrize(
    ("stage", "number", "part", "mm", "key"),
    [
        (StageName.CAST_ON, 1, "leg", 40, "tape-too-early"),
        (StageName.CUFF, 1, "leg", 40, "tape-too-early"),
        (StageName.LEG, 24, "leg", 95, "tape-same"),
        (StageName.LEG, 24, "foot", 95, "tape-too-early"),
        (StageName.LEG, 24, "leg", 20, "tape-too-early"),
        (StageName.LEG, 24, "leg", 200, "tape-unlikely"),
        (StageName.HEEL_FLAP, 3, "leg", 150, "tape-too-late"),
        (StageName.HEEL_FLAP, 3, "foot", 50, "tape-too-early"),
        (StageName.HEEL_TURN, 3, "foot", 50, "tape-too-early"),
        (StageName.GUSSET, 13, "foot", 45, "tape-same"),
        (StageName.GUSSET, 12, "leg", 150, "tape-too-late"),
        (StageName.TOE, 1, "foot", 190, "tape-too-late"),
        (StageName.BIND_OFF, 1, "foot", 235, "tape-too-late"),
    ],
)
def test_a_measure_tells_something_only_where_something_is_still_to_be_changed(stage, number, part, mm, key):
    plan = down()
    decision, found, _ = told(plan, at_round(plan, stage, number), says(part, mm))

    assert (found, decision.events) == (key, ())


def test_the_second_of_two_socks_knitted_in_turn_is_made_like_the_first():
    plan = down(one_at_a_time=True)
    first = at_round(plan, StageName.LEG, 24)
    decision, progress = taken(plan, first, says("leg", 100))
    row = next(row for row in plan.rows if (row.stage, row.round, row.sock) == (StageName.LEG, 24, 2))
    place = first.now.first.model_copy(update={"row_index": row.index, "step_index": 0})
    second = first.model_copy(update={"now": first.now.model_copy(update={"first": place, "second": place})})

    begins = decision.plan.rows[progress.now.second.row_index]
    assert progress.now.first == first.now.first
    assert (begins.sock, begins.stage) == (2, StageName.CAST_ON)
    assert decision.plan.rows[begins.index - 1].stage is StageName.BIND_OFF
    assert told(plan, second, says("leg", 100))[1] == "tape-second-sock"


@pytest.mark.parametrize(("at", "percent"), [(3, 70), (14, 120), (15, 90), *(
    pytest.param(at, percent, marks=pytest.mark.nightly)
    for at in (3, 13, 14, 15, 40, 54, 70, 117) for percent in (70, 90, 100, 120)
)])  # fmt: skip
def test_a_leg_cast_on_for_its_calf_narrows_by_as_many_pairs_whatever_the_tape_says(at, percent):
    plan = down(calf="37cm", leg_height=Height.KNEE, leg_style=Leg("calf-shaped"), leg=None, cuff=None)
    before = at_round(plan, StageName.LEG, at)
    knitted = rounds_of(plan, StageName.CUFF) + at - 1
    decision, key, _ = told(plan, before, says("leg", max(30, round(knitted * 10000 / 42 / percent))))

    assert plan.calf == Calf(pairs=14, first_round=15, every=3)
    assert key in {"ask-replan", "tape-passed", "tape-same"}
    if key != "ask-replan":
        return
    new = decide(plan, evolve(before, decision.events[0]), Yes()).plan
    assert prove(new) == ()
    assert new.calf.pairs == plan.calf.pairs
    assert new.calf == plan.calf if at >= 15 else new.calf.first_round > at
    assert new.calf.last_round <= rounds_of(new, StageName.LEG)


@given(
    heel=st.sampled_from([FRENCH, SHORT]), part=st.sampled_from(["leg", "foot"]), share=st.fractions(0, 1),
    percent=st.integers(70, 140),
)  # fmt: skip
@settings(max_examples=12, deadline=None)
def test_whatever_the_tape_says_the_plan_taken_is_proven_and_keeps_what_is_knitted(heel, part, share, percent):
    plan = down(heel=heel)
    stage = StageName.LEG if part == "leg" else StageName.FOOT
    number = 1 + int(share * (rounds_of(plan, stage) - 1))
    before = at_round(plan, stage, number)
    picked_up = 2 * plan.gusset
    done = number - 1 + (rounds_of(plan, StageName.CUFF) if part == "leg" else plan.heel_depth + picked_up)
    decision, key, _ = told(plan, before, says(part, max(30, round(done * 1000 / 42 * 100 / percent / 10))))

    assert key in {"ask-replan", "tape-same", "tape-passed", "tape-too-early"}
    if key != "ask-replan":
        return
    new = decide(plan, evolve(before, decision.events[0]), Yes()).plan

    assert prove(new) == ()
    assert new.rows[: before.now.first.row_index + 1] == plan.rows[: before.now.first.row_index + 1]
