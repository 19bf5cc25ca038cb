"""A sock on five double-pointed needles: what lies on which, when the next is taken up, and how large a step is."""

import json

import pytest

from plans.charts import rows_of
from plans.conversation import Coarser, Finer, Next
from plans.engine.courses import course
from plans.engine.resuming import resume
from plans.engine.steps import steps
from plans.json_form import as_json, from_json
from plans.making import Made, make_plan
from plans.opening import made_of
from plans.pattern import Act, Chart, Half, Heel, Needles, Order, Plan, StageName, Toe
from plans.proof import prove
from plans.wishes import Swatch, Wishes
from plans.written.printing import pattern_text, print_pattern
from tests.plans.knitter import Knitter, shown
from tests.strategies import varied

POINTED = Needles.DOUBLE_POINTED


def pointed(field: str = "heel", name: str = "wrapped") -> Plan:
    return varied(field, name, POINTED, alone=True)


def of_first_sock(plan: Plan, stage: StageName, half: Half) -> list[tuple[int, ...]]:
    return [row.needles for row in plan.rows if (row.stage, row.sock, row.half) == (stage, 1, half)]


def laced(rows: str) -> Plan:
    """An invented pair of 64 stitches with a chart up the front of the leg."""
    chart = Chart(name="lace", rows=rows_of(rows), on="front", stages=(StageName.LEG,))
    swatch = {"stitches": 30, "rounds": 42}
    made = make_plan(
        Wishes.model_validate({
            "swatch": swatch, "foot_length": "24.5cm", "ball": "23cm", "needles": POINTED, "leg": "9cm", "chart": chart,
        })
    )  # fmt: skip
    assert isinstance(made, Made), made
    return made.plan


def test_a_quarter_of_the_stitches_lies_on_each_of_four_needles():
    plan = pointed()

    assert set(of_first_sock(plan, StageName.FOOT, Half.FRONT)) == {(6, 6)}
    assert of_first_sock(plan, StageName.TOE, Half.BACK)[::2] == [(2, 2), (3, 3), (4, 4), (5, 5)]
    assert of_first_sock(plan, StageName.GUSSET, Half.BACK)[-1] == (12, 12)


def test_a_heel_lies_on_one_needle_and_is_divided_again_after_it():
    plan = pointed()
    heel = [row for row in plan.rows if row.stage in {StageName.HEEL_TURN, StageName.HEEL_FLAP} and row.sock == 1]
    backs = [row for row in heel if row.half is Half.BACK]

    assert Act.ONE_NEEDLE in backs[0].acts
    assert not any(Act.ONE_NEEDLE in row.acts for row in backs[1:])
    assert {row.needles for row in backs} == {()}
    assert [row.needles for row in heel if row.half is Half.FRONT] == [(6, 6)]
    assert of_first_sock(plan, StageName.LEG, Half.BACK)[0] == (6, 6)


def test_few_stitches_stay_on_one_needle():
    """A heel made last narrows to the four loops of each tip and is grafted off."""
    plan = pointed("heel", "forethought")
    heel = of_first_sock(plan, StageName.HEEL, Half.FRONT)

    assert heel[0] == heel[-1] == ()
    assert heel[-2] == (2, 2)


def test_nothing_is_turned_but_in_a_heel():
    for row in pointed().rows:
        in_heel = row.stage in {StageName.HEEL_TURN, StageName.HEEL_FLAP} and row.half is Half.BACK
        assert in_heel or not row.turn_after
        assert not {Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE, Act.READY_TO_KNIT} & set(row.acts)


def test_one_sock_is_knitted_after_the_other_and_that_is_said_where_it_was_not_asked_for():
    wish = Wishes(swatch=Swatch(stitches=22, rounds=30), practice=True, needles=POINTED)
    asked = wish.model_copy(update={"one_at_a_time": True})
    made, asked_for = make_plan(wish), make_plan(asked)

    assert isinstance(made, Made)
    assert isinstance(asked_for, Made)
    assert made.plan.construction.order is Order.ONE_AFTER_THE_OTHER
    assert "needles-hold-one" in {note.key for note in made.notes}
    assert "needles-hold-one" not in {note.key for note in asked_for.notes}


def test_the_next_needle_is_called_wherever_one_is_taken_up():
    plan = pointed()
    row = next(row for row in plan.rows if row.stage is StageName.GUSSET and row.half is Half.BACK)
    cut = [step for step in steps(row) if step.groups]

    assert [(group.op, group.times) for step in cut for group in step.groups] == [
        ("k", 1), ("m1r", 1), ("k", 5), ("k", 5), ("m1l", 1), ("k", 1),
    ]  # fmt: skip
    assert [Act.NEXT_NEEDLE in step.before for step in cut] == [True, False, False, True, False, False]


def test_the_next_needle_is_named_after_the_lifeline_with_the_stitches():
    plan = pointed()
    row = next(row for row in plan.rows if row.stage is StageName.LEG)
    alone, works = steps(row)[0], next(step for step in steps(row) if step.groups)

    assert Act.LIFELINE in row.acts
    assert Act.NEXT_NEEDLE not in alone.before
    assert works.before[0] is Act.NEXT_NEEDLE


@pytest.mark.parametrize("rows", ["|O^O||\n||||||", "O\\|/O|\n||||||", "/O\n||"])
def test_stitches_that_a_decrease_takes_from_two_needles_are_slipped_on_to_the_second(rows):
    plan = laced(rows)
    slipped = [row for row in plan.rows if row.slipped]

    assert not prove(plan)
    assert all(sum(row.needles) == row.stitches_after for row in plan.rows if row.needles)
    for row in slipped:
        works = [step for step in steps(row) if step.groups]
        assert sum((Act.SLIP_OVER, Act.NEXT_NEEDLE) == step.before for step in works) == 1
    assert all(len(row.needles) == 2 and min(row.needles) > 3 for row in plan.rows if row.chart)


def test_a_decrease_at_the_very_middle_does_take_from_both():
    assert any(row.slipped for row in laced("|O^O||\n||||||").rows)


def test_what_the_needles_hold_goes_into_the_json_and_comes_back():
    plan = laced("|O^O||\n||||||")
    rows = as_json(plan)["rows"]

    assert from_json(json.dumps(as_json(plan))).rows == plan.rows
    assert {"needles", "slipped"} <= {name for row in rows for name in row}
    assert not any("needles" in row or "slipped" in row for row in as_json(varied("heel", "wrapped"))["rows"])


def test_the_grains_are_group_needle_half_and_round():
    knitter = Knitter(pointed(), "group").knits_to(StageName.TOE, 4)
    names = [dict(knitter.say(Coarser()).values)["grain"].key for _ in range(4)]
    back = [dict(knitter.say(Finer()).values)["grain"].key for _ in range(2)]

    assert names == ["grain-needle", "grain-half", "grain-round", "grain-follow"]
    assert back == ["grain-needle", "grain-group"]


def test_a_step_by_the_needle_ends_where_the_next_is_taken_up():
    knitter = Knitter(pointed(), "half").knits_to(StageName.TOE, 4)
    first = shown(knitter.call)
    second = shown(knitter.say(Next()))

    assert "op-m1r" in first
    assert "op-m1l" in second
    assert first.count("act-take-the-next-needle") == second.count("act-take-the-next-needle") == 1


def test_the_yarn_hangs_where_she_works():
    knitter = Knitter(pointed()).knits_to(StageName.FOOT, 2)

    assert "yarn-at-the-working-point" in shown(resume(knitter.plan, knitter.progress))


def test_the_pattern_leaves_the_needles_to_the_knitter_but_for_the_heel():
    text = pattern_text(pointed("heel", Heel.GERMAN))

    assert "put it on one needle" in text
    assert "take the next needle" not in text
    assert "turn clockwise" not in text


@pytest.mark.parametrize("toe", Toe)
def test_whatever_the_toe_the_printed_pattern_puts_as_much_on_each_needle(toe):
    plan = pointed("toe", toe)
    read = made_of(print_pattern(plan))

    assert isinstance(read, Made)
    assert read.plan.rows == plan.rows


def test_only_on_double_pointed_needles_does_a_row_say_what_lies_on_which():
    plan = varied("heel", "wrapped", alone=True)
    rows = tuple(row.model_copy(update={"needles": (row.stitches_after,)}) for row in plan.rows)

    assert {problem.key for problem in prove(plan.model_copy(update={"rows": rows}))} == {"needles-wrong"}
    assert course(plan).one_sock


def test_of_a_set_of_four_one_needle_holds_the_front_and_two_the_back():
    plan = varied("heel", "wrapped", Needles.FOUR_DOUBLE_POINTED, alone=True)

    assert set(of_first_sock(plan, StageName.FOOT, Half.FRONT)) == {(12,)}
    assert set(of_first_sock(plan, StageName.FOOT, Half.BACK)) == {(6, 6)}
    assert plan.construction.order is Order.ONE_AFTER_THE_OTHER
    assert not any(row.turn_after for row in plan.rows if row.stage is StageName.FOOT)


def test_of_a_set_of_four_the_next_needle_is_taken_up_three_times_a_round():
    knitter = Knitter(varied("heel", "wrapped", Needles.FOUR_DOUBLE_POINTED, alone=True), "half")
    knitter.knits_to(StageName.FOOT, 2)
    taken = 0
    while knitter.plan.rows[knitter.progress.now.first.row_index].round == 2:
        taken += shown(knitter.call).count("act-take-the-next-needle")
        knitter.say(Next())

    assert taken == 3


@pytest.mark.parametrize("needles", [(6, 6), (11,), ()])
def test_a_front_of_a_set_of_four_that_lies_otherwise_is_refused(needles):
    plan = varied("heel", "wrapped", Needles.FOUR_DOUBLE_POINTED, alone=True)
    front = next(row for row in plan.rows if row.stage is StageName.FOOT and row.round == 2)
    rows = (*plan.rows[: front.index], front.model_copy(update={"needles": needles}), *plan.rows[front.index + 1 :])
    [problem] = prove(plan.model_copy(update={"rows": rows}))

    assert (problem.key, problem.where) == ("needles-wrong", f"row {front.index}")
