"""The proof as a whole: it says everything that is wrong, in order, and follows the work from the operations alone."""

import pytest

from plans.pattern import Act, Group, Heel, StageName
from plans.proof import prove
from plans.proof.sayings import PROOF_SAYINGS
from plans.stitches import Op
from tests.plans.damages import all_damages
from tests.strategies import adult, practice, varied


def changed(plan, place, **changes):
    """The plan with one row changed."""
    row = plan.rows[place].model_copy(update=changes)
    return plan.model_copy(update={"rows": (*plan.rows[:place], row, *plan.rows[place + 1 :])})


def told(plan):
    return [(problem.where, problem.key) for problem in prove(plan)]


@pytest.mark.parametrize(
    "plan", [practice(Heel.WRAPPED), practice(Heel.GERMAN), adult(Heel.WRAPPED), adult(Heel.GERMAN)]
)
def test_good_plans_are_proven(plan):
    assert prove(plan) == ()


def test_everything_wrong_is_told_at_once_in_the_order_of_rows():
    plan = changed(practice(), 36, acts=())
    plan = changed(plan, 8, stitches_after=7)
    plan = plan.model_copy(update={"gusset": 6, "cast_on": 10})

    assert [key for _, key in told(plan)] == [
        "count-wrong", "socks-differ", "act-missing", "act-missing", "act-missing", "act-missing", "stated-wrong",
    ]  # fmt: skip
    assert [where for where, _ in told(plan)][:3] == ["row 8", "row 9", "row 36"]


def test_a_count_is_told_with_what_was_knitted_and_what_was_stated():
    problem = prove(changed(practice(), 8, stitches_after=7))[0]

    assert dict(problem.values) == {"found": 6, "stated": 7}


def test_a_plan_without_rows_is_refused():
    empty = practice().model_copy(update={"rows": (), "stages": ()})

    assert {key for _, key in told(empty)} >= {"rows-missing"}


def test_a_plan_that_stops_before_the_end_leaves_loops():
    plan = practice()
    short = plan.model_copy(update={"rows": plan.rows[:-4], "stages": plan.stages[:-1]})

    assert ("", "loops-at-end") in told(short)
    assert ("", "rows-missing") in told(short)


def test_one_at_a_time_a_sock_that_is_not_bound_off_is_told_of_where_the_other_begins():
    plan = varied("heel", "wrapped", alone=True)
    begins = next(row.index for row in plan.rows if row.sock == 2)
    left = plan.rows[: begins - 2] + plan.rows[begins:]
    problems = [each for each in prove(plan.model_copy(update={"rows": left})) if each.key == "other-sock-on-needle"]

    assert [(each.where, dict(each.values)) for each in problems] == [(f"row {begins - 2}", {"sock": 1, "loops": 24})]


def test_a_whole_round_too_few_is_a_foot_too_short():
    plan = practice()
    rows = plan.rows[:40] + plan.rows[48:]
    numbered = tuple(row.model_copy(update={"index": place}) for place, row in enumerate(rows))
    shorter = tuple(
        stage.model_copy(
            update={
                "first_row": stage.first_row - 8 * (stage.first_row > 36),
                "last_row": stage.last_row - 8 * (stage.last_row > 36),
            }
        )
        for stage in plan.stages
    )
    found = told(plan.model_copy(update={"rows": numbered, "stages": shorter}))

    assert ("", "foot-length-off") in found


def test_a_plan_that_goes_wrong_in_the_same_way_in_both_socks_is_still_refused():
    """Both heels turn a stitch too early; the socks are alike and every stated count holds."""
    plan = practice()
    for place in (102, 123):
        groups = (Group(op=Op.K, times=16), Group(op=Op.WRAP_TURN, times=1))
        plan = changed(plan, place, ops=groups)

    assert ("row 102", "turned-at-wrong-loop") in told(plan)


def test_rows_beside_the_heel_may_leave_no_loop_unworked():
    plan = changed(practice(), 40, ops=(Group(op=Op.K, times=11),), stitches_after=12)

    assert told(plan)[0] == ("row 40", "loops-not-worked")


def test_a_bind_off_of_another_kind_than_stated_is_refused():
    place = len(practice().rows) - 4
    plan = changed(practice(), place, ops=(Group(op=Op.K, times=1), Group(op=Op.YO_BO, times=11)))

    assert (f"row {place}", "op-out-of-place") in told(plan)


def test_turning_the_same_way_all_the_time_is_refused():
    plan = practice()
    for row in plan.rows:
        if Act.TURN_ANTICLOCKWISE in row.acts:
            acts = tuple(Act.TURN_CLOCKWISE if act is Act.TURN_ANTICLOCKWISE else act for act in row.acts)
            plan = changed(plan, row.index, acts=acts)

    assert {key for _, key in told(plan)} == {"act-missing", "act-not-due"}


def test_rib_that_does_not_run_on_is_refused():
    cuff = next(stage for stage in practice().stages if stage.name is StageName.CUFF)
    shifted = practice().rows[cuff.first_row].ops[::-1]

    assert (f"row {cuff.first_row}", "rib-broken") in told(changed(practice(), cuff.first_row, ops=shifted))


def test_every_problem_is_registered_with_its_values():
    plan = practice(Heel.GERMAN)
    unheard = set()
    for damage in list(all_damages(plan))[::23]:
        for problem in prove(damage.plan):
            assert PROOF_SAYINGS[problem.key] == {name for name, _ in problem.values}
            unheard.add(problem.key)

    assert len(unheard) > 15
