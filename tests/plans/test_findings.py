"""What the proof says of a plan that is wrong: the row, the key and the values."""

from fractions import Fraction

import pytest

from plans.making import Made, make_plan
from plans.pattern import Act, Chart, Plan, Stage, StageName
from plans.proof import prove
from plans.proof.sayings import PROOF_SAYINGS
from plans.wishes import Swatch, Wishes
from tests.plans.damages import Damage, all_damages
from tests.plans.written.pieces import CAP, made
from tests.strategies import practice, varied


def findings(plan: Plan) -> list[tuple[str, str, dict]]:
    """Place, key and values of all that is wrong."""
    found = prove(plan)
    assert all(PROOF_SAYINGS[each.key] == {name for name, _ in each.values} for each in found)
    return [(each.where, each.key, dict(each.values)) for each in found]


def staged(plan: Plan, place: int, **changes: object) -> Plan:
    """The plan with one stage listed otherwise."""
    stages: list[Stage] = [*plan.stages]
    stages[place] = stages[place].model_copy(update=changes)
    return plan.model_copy(update={"stages": tuple(stages)})


def acting(plan: Plan, place: int, acts: tuple[Act, ...]) -> Plan:
    row = plan.rows[place].model_copy(update={"acts": acts})
    return plan.model_copy(update={"rows": (*plan.rows[:place], row, *plan.rows[place + 1 :])})


def damaged(plan: Plan, kind: str, stage: StageName) -> list[Damage]:
    wanted = [each for each in all_damages(plan) if each.kind == kind]
    return [each for each in wanted if each.rows and plan.rows[min(each.rows)].stage is stage]


@pytest.mark.parametrize(
    ("choice", "stage"),
    [(("heel", "wrapped"), StageName.HEEL_TURN), (("heel", "wrapped"), StageName.HEEL_FLAP),
     (("heel", "french"), StageName.HEEL_FLAP), (("heel", "short-row-german"), StageName.HEEL),
     (("heel", "forethought"), StageName.HEEL)],
)  # fmt: skip
@pytest.mark.parametrize("kind", ["row dropped", "row doubled"])
def test_a_heel_with_a_row_too_few_or_too_many_says_how_many_there_are(choice, stage, kind):
    told = [findings(each.plan) for each in damaged(varied(*choice), kind, stage)[4:12:3]]

    assert told
    assert all(any(key == "heel-rows-wrong" for _, key, _ in each) for each in told)
    for values in (values for each in told for _, key, values in each if key == "heel-rows-wrong"):
        assert abs(values["found"] - values["wanted"]) == 1


def test_a_last_stage_that_ends_too_early_is_told_by_its_name():
    plan = practice()
    last = plan.stages[-1]
    told = findings(staged(plan, -1, last_row=last.last_row - 1))

    assert (f"row {last.last_row}", "stage-wrong", {"found": "bind-off", "wanted": "bind-off"}) in told


def test_a_gap_between_two_stages_is_told_with_both():
    plan = practice()
    foot = next(place for place, stage in enumerate(plan.stages) if stage.name is StageName.FOOT)
    told = findings(staged(plan, foot, last_row=plan.stages[foot].last_row - 1))

    assert (f"row {plan.stages[foot + 1].first_row}", "stage-wrong", {"found": "gusset", "wanted": "foot"}) in told


def test_of_a_written_piece_a_stage_that_is_another_is_told_with_both():
    plan = made(CAP)
    crown = plan.stages[3]
    [told] = [each for each in findings(staged(plan, 3, name=StageName.BODY)) if each[1] == "stage-wrong"]

    assert (f"row {crown.first_row}", "stage-wrong", {"found": "body", "wanted": "crown"}) == told


def test_an_act_twice_is_not_due_and_two_the_wrong_way_round_are_out_of_order():
    plan = practice()
    row = next(row for row in plan.rows if row.acts[:2] == (Act.LIFELINE, Act.TRY_ON))
    twice = findings(acting(plan, row.index, (row.acts[0], *row.acts)))
    round_about = findings(acting(plan, row.index, (row.acts[1], row.acts[0], *row.acts[2:])))

    assert [(f"row {row.index}", "act-not-due", {"act": "lifeline"})] == twice
    assert [(f"row {row.index}", "acts-out-of-order", {"act": "lifeline"})] == round_about


@pytest.mark.parametrize(
    ("choice", "stage", "key"),
    [(("heel", "wrapped"), StageName.CAST_ON, "cast-on-out-of-order"),
     (("heel", "forethought"), StageName.HEEL, "opened-out-of-order")],
)  # fmt: skip
def test_halves_set_up_in_another_order_say_whose_turn_it_is(choice, stage, key):
    plan = varied(*choice)
    at = next(each.first_row for each in plan.stages if each.name is stage)
    swapped = (*plan.rows[:at], plan.rows[at + 1], plan.rows[at], *plan.rows[at + 2 :])
    numbered = tuple(row.model_copy(update={"index": place}) for place, row in enumerate(swapped))
    told = [each for each in findings(plan.model_copy(update={"rows": numbered})) if each[1] == key]

    halves = ({"sock": 2, "half": "front"}, {"sock": 2, "half": "back"})
    assert [(f"row {at + number}", key, half) for number, half in enumerate(halves)] == told


@pytest.mark.parametrize("wide", [32, 33])
def test_a_chart_may_be_as_wide_as_the_front(wide):
    chart = Chart(name="wide", rows=("-" * wide,), on="front", stages=(StageName.LEG,))
    made_of = make_plan(Wishes(swatch=Swatch(stitches=30, rounds=42), foot_length="24.5cm", around=64, chart=chart))

    if wide == 32:
        assert isinstance(made_of, Made)
    else:
        assert [("chart", "chart-too-wide", {"name": "wide", "found": 33, "wanted": 32})] == [
            (each.where, each.key, dict(each.values)) for each in made_of
        ]


@pytest.mark.parametrize("plan", [practice(), made(CAP)], ids=["sock", "cap"])
@pytest.mark.parametrize("counts", [{"stitches_per_10cm": Fraction(0)}, {"rounds_per_10cm": Fraction(0)}])
def test_a_gauge_of_nothing_is_told_and_nothing_is_divided_by_it(plan, counts):
    gauge = plan.gauge.model_copy(update=counts)

    assert ("", "stated-wrong", {"name": "gauge", "stated": 0, "found": 0}) in findings(
        plan.model_copy(update={"gauge": gauge})
    )
