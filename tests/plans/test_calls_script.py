"""What is called, from cast-on to the end."""

import pytest

from plans.conversation import Grain, GrainSet, Next
from plans.pattern import Act, BindOff, Heel, StageName
from tests.plans.called_scripts import GOLDEN, SCRIPTS, called
from tests.plans.knitter import Knitter, shown
from tests.strategies import adult, practice


@pytest.mark.parametrize("name", SCRIPTS)
def test_the_whole_script_is_as_it_was_read(name: str):
    expected = (GOLDEN / f"{name}.txt").read_text(encoding="utf-8")

    assert expected == called(name)


def calls(grain: Grain, stage: StageName, number: int, many: int, heel: Heel = Heel.WRAPPED) -> list[str]:
    """So many calls from a stage's round on, parts in the order in which they are said."""
    knitter = Knitter(practice(heel)).knits_to(stage, number)
    knitter.happens(GrainSet(grain=grain))
    said = [spoken(knitter)]
    for _ in range(many - 1):
        knitter.say(Next())
        said.append(spoken(knitter))
    return said


def spoken(knitter: Knitter) -> str:
    """The parts of the call, keys shortened to what matters here."""
    said = knitter.call
    parts = [said] if said.key != "call" else [part for _, value in said.values for part in value]
    return ", ".join(shown(part) for part in parts)


FIRST = "where-half(half half-front; sock sock-first)"
SECOND = "where-half(half half-front; sock sock-second)"
HEEL_ROW = "where-heel-row(sock sock-second; row {}; of {}), {}, makes(count {})"


def test_at_group_grain_the_operation_is_named_with_the_count_it_makes():
    assert calls("group", StageName.TOE, 2, 6) == [
        f"{FIRST}, act-snug, op-k(times 1), makes(count 4)",
        "op-m1r(times 1), makes(count 5)",
        "op-k(times 2), makes(count 5)",
        "op-m1l(times 1), makes(count 6)",
        "op-k(times 1), makes(count 6)",
        f"{SECOND}, act-change-yarn, act-snug, op-k(times 1), makes(count 4)",
    ]


def test_at_half_grain_the_groups_are_listed_and_the_turn_is_named():
    groups = "op-k(times 1), op-m1r(times 1), op-k(times 2), op-m1l(times 1), op-k(times 1)"

    assert calls("half", StageName.TOE, 2, 2) == [
        f"{FIRST}, act-snug, {groups}, makes(count 6)",
        f"{SECOND}, act-change-yarn, act-snug, {groups}, act-turn-clockwise, makes(count 6)",
    ]


def test_at_side_grain_both_socks_are_said_in_one():
    assert calls("side", StageName.TOE, 2, 2) == [
        "where-side(half half-front), work-increase, act-turn-clockwise, makes-each(count 6)",
        "where-side(half half-back), work-increase, act-turn-anticlockwise, makes-each(count 6)",
    ]


def test_at_round_grain_an_increase_round_tells_each_half():
    assert calls("round", StageName.TOE, 2, 1) == [
        "where-round(round 2; of 8), work-increase, makes-each-half(count 6)"
    ]
    assert calls("round", StageName.GUSSET, 3, 1) == [
        (
            "where-round(round 3; of 12), on-half(half half-front; work work-plain), "
            "on-half(half half-back; work work-increase), makes-front-back(front 12; back 16)"
        )
    ]


def test_a_plain_round_is_nothing_but_its_number():
    assert calls("follow", StageName.FOOT, 2, 3) == [
        "call-round(round 2; of 4)",
        "call-round(round 3; of 4)",
        "call-round(round 4; of 4)",
    ]


def test_fourteen_of_the_foot_of_an_adult_pair_is_fourteen():
    knitter = Knitter(adult()).knits_to(StageName.FOOT, 14)

    assert spoken(knitter).startswith("call-round(round 14; of ")


def test_a_stage_is_named_first():
    begins = "stage-begins(stage stage-foot; rounds 4), where-round(round 1; of 4)"

    assert calls("follow", StageName.FOOT, 1, 1) == [f"{begins}, work-plain, makes-each-half(count 12)"]


def test_heel_rows_are_called_row_by_row_at_the_coarsest_grain():
    turned = "op-wrap-turn(times 1), act-turn"
    begins = "heel-stage-begins(stage stage-heel-turn; sock sock-second; rows 8), "
    knitter = Knitter(practice(), "round").knits_to(StageName.HEEL_TURN, 2)

    assert spoken(knitter) == HEEL_ROW.format(2, 8, f"op-p(times 10), {turned}", 24)
    assert calls("side", StageName.HEEL_TURN, 1, 2)[1] == (
        begins + HEEL_ROW.format(1, 8, f"act-snug, op-k(times 17), {turned}", 24)
    )


def test_stitches_with_wraps_are_said_to_be():
    assert calls("follow", StageName.HEEL_FLAP, 1, 2)[1] == (
        "where-heel-row(sock sock-second; row 2; of 13), op-sl-wyif(times 1), op-p(times 7), "
        "with-wraps(work op-p(times 3)), with-wraps(work op-p2tog(times 1)), act-turn, makes(count 22)"
    )


def test_german_doubles_are_made_first_and_worked_as_one():
    expected = HEEL_ROW.format(2, 8, "op-ds(times 1), op-p(times 11), act-turn", 24)

    assert calls("follow", StageName.HEEL_TURN, 2, 1, Heel.GERMAN) == [expected]


def test_a_slipped_row_is_a_repeat_and_its_ends():
    assert calls("group", StageName.HEEL_FLAP, 3, 3) == [
        HEEL_ROW.format(3, 13, "repeat(work op-sl-wyib(times 1) op-k(times 1); times 5)", 22),
        "op-sl-wyib(times 1), makes(count 22)",
        "op-ssk(times 1), act-turn, makes(count 21)",
    ]


def test_rib_is_one_repeat():
    assert calls("half", StageName.CUFF, 2, 1) == [
        f"{FIRST}, act-snug, repeat(work op-k(times 1) op-p(times 1); times 6), makes(count 12)"
    ]


def test_lengths_due_stand_at_the_stops():
    knitter, found = Knitter(practice()), []
    while not knitter.finished:
        parts = list(knitter.call.walk())
        found += [shown(part) for part in parts if part.key.startswith(("act-measure", "act-try"))]
        knitter.say(Next())

    assert found == [
        "act-try-on-foot(due 267)", "act-measure-foot(due 267)",
        "act-try-on-foot(due 400)", "act-measure-foot(due 400)",
        "act-try-on-foot(due 800)", "act-measure-foot(due 800)",
        "act-try-on-leg(due 133)", "act-measure-leg(due 133)",
    ]  # fmt: skip


def test_gusset_of_the_adult_pair_starts_where_the_printed_formula_says():
    """L - (2g + w) / R: gusset tutorial, april-klich.squarespace.com, 2015; w rounds for the turn derived."""
    plan, knitter = adult(), Knitter(adult()).knits_to(StageName.FOOT)
    while "act-measure-foot" not in [part.key for part in knitter.call.walk()]:
        knitter.say(Next())
    (due,) = (dict(part.values)["due"] for part in knitter.call.walk() if part.key == "act-measure-foot")

    to_come = (2 * plan.gusset + plan.turned) * 10 / plan.gauge.rounds_per_10cm
    assert round((plan.finished.foot_length_cm - to_come) * 100) == due.tenths_mm


def test_a_turned_heel_adds_as_many_rounds_as_stitches_marked_on_a_side():
    """Half of the 2w turn rows lie under the foot (derived): 24 rounds and 4 at 3 a centimetre are 9.3 cm."""
    plan = practice()
    leg = next(row.index for row in plan.rows if row.stage is StageName.LEG)
    tried_on = plan.rows[leg].model_copy(update={"acts": (Act.TRY_ON, *plan.rows[leg].acts)})
    plan = plan.model_copy(update={"rows": (*plan.rows[:leg], tried_on, *plan.rows[leg + 1 :])})
    knitter = Knitter(plan).knits_to(StageName.HEEL_FLAP, 13, 1)

    assert "act-try-on-foot(due 933)" in shown(knitter.say(Next()))


def test_the_end_is_said_once_and_next_after_it_changes_nothing():
    knitter = Knitter(practice(), "round")
    while not knitter.finished:
        said = knitter.say(Next())
    events = list(knitter.events)

    assert said.key == "finished"
    assert knitter.say(Next()).key == "finished-already"
    assert events == knitter.events


def test_a_sewn_edge_is_sewn():
    said = []
    knitter = Knitter(practice(bind_off=BindOff.SEWN))
    while not knitter.finished:
        said.append(spoken(knitter))
        knitter.say(Next())

    assert any("act-cut-a-long-tail" in line for line in said)
    assert any("op-sew-bo(times 11)" in line for line in said)


def test_only_the_rest_of_a_round_is_called_when_it_is_half_done():
    knitter = Knitter(practice(), "half").knits_to(StageName.FOOT, 2)
    knitter.say(Next())
    knitter.happens(GrainSet(grain="round"))

    assert spoken(knitter) == "where-rest-of-round(round 2; of 4), work-plain, makes-each-half(count 12)"
