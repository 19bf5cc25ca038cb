"""Socks from the cuff down: the order of their parts, their numbers, every damage, and what is refused."""

from functools import cache
from random import Random

import pytest

from plans.conversation import IHave, Next
from plans.json_form import as_json, plan_id
from plans.making import Made, make_plan
from plans.opening import made_of
from plans.pattern import Act, BindOff, Cuff, Direction, Half, Heel, Needles, StageName, Toe
from plans.proof import prove
from plans.quantities import Length
from plans.stitches import Op
from plans.wishes import Swatch, Wishes
from plans.written.printing import print_pattern
from tests.plans.damages import all_damages
from tests.plans.graph_oracle import Oracle
from tests.plans.knitter import Knitter
from tests.strategies import ARRANGEMENTS, DOWN_HEELS, KINDS

DOWN = Direction.CUFF_DOWN
FRENCH = Heel("french")
SHARE = [pytest.param(heel, *arrangement, marks=() if (number + at) % 4 == 0 else pytest.mark.nightly)
         for number, heel in enumerate(DOWN_HEELS) for at, arrangement in enumerate(ARRANGEMENTS)]  # fmt: skip
"""Every heel on every arrangement; usually each heel on one of them."""
ENDS = [pytest.param(end, *arrangement, marks=() if at == 2 * number else pytest.mark.nightly)
        for number, end in enumerate(("gathered", "three-needle"))
        for at, arrangement in enumerate(ARRANGEMENTS)]  # fmt: skip
"""Every end but the graft, which all others have, on every arrangement; usually on one of them."""


@cache
def plan_of(heel=FRENCH, needles=Needles.ONE_LONG_CIRCULAR, *, alone=False, **more):
    wishes = Wishes(
        swatch=Swatch(stitches=22, rounds=30), practice=True, direction=DOWN, heel=heel, needles=needles,
        one_at_a_time=alone, **more,
    )  # fmt: skip
    made = make_plan(wishes)
    assert isinstance(made, Made), made
    return made.plan


def wished(**more):
    return make_plan(Wishes.model_validate({
        "swatch": {"stitches": 30, "rounds": 42}, "foot_length": "24.5cm", "ball": "23cm", "around": 64,
        "direction": DOWN, **more,
    }))  # fmt: skip


def rows_of(plan, stage, sock=1):
    return [row for row in plan.rows if row.stage is stage and row.sock == sock]


def test_the_parts_come_in_the_other_order():
    names = list(dict.fromkeys(stage.name.value for stage in plan_of().stages))

    assert names == [
        "cast-on", "cuff", "leg", "heel-flap", "heel-turn", "gusset", "foot", "toe", "bind-off",
    ]  # fmt: skip
    assert plan_of().construction.direction == "cuff-down"


def test_without_a_word_the_heel_has_a_flap_and_the_toe_is_grafted():
    made_of_it = wished().plan.construction

    assert (made_of_it.heel, made_of_it.bind_off, made_of_it.toe) == ("french", "graft", "wedge")


def test_of_64_the_counts_are_those_of_the_books():
    """32 on the flap, 18 left after the turn, 17 picked up a side, 20 decreased again (see cuff_down.toml)."""
    plan = wished().plan
    flap, turn = rows_of(plan, StageName.HEEL_FLAP), rows_of(plan, StageName.HEEL_TURN)
    backs = [row.stitches_after for row in rows_of(plan, StageName.GUSSET) if row.half is Half.BACK]

    assert len(flap) == 1 + 32
    assert [row.stitches_after for row in turn] == [*range(31, 17, -1), 18 + 17]
    assert backs == [52, *(count for pair in range(50, 30, -2) for count in (pair, pair))]
    assert (plan.cast_on, plan.around, plan.closing, plan.gusset) == (64, 64, 24, 10)


def test_the_foot_is_as_long_as_from_the_toe_up():
    for heel in DOWN_HEELS:
        plan = wished(heel=heel).plan
        assert abs(plan.finished.foot_length_cm - Length.parse("23.5cm").cm) <= 10 / plan.gauge.rounds_per_10cm


def test_a_wider_gusset_has_a_longer_flap():
    plan = wished(gusset=14).plan

    assert len(rows_of(plan, StageName.HEEL_FLAP)) == 1 + 40
    assert plan.gusset == 14
    assert not prove(plan)


@pytest.mark.parametrize(("heel", "needles", "alone"), SHARE)
def test_it_is_knitted_printed_and_read_back(heel, needles, alone):
    plan = plan_of(heel, needles, alone=alone)
    oracle = Oracle(as_json(plan)).knit()
    back = made_of(print_pattern(plan))

    assert [row.stitches_after for row in plan.rows] == oracle.counts
    assert not oracle.worked_not_once()
    assert len(oracle.grafted) == plan.closing
    assert isinstance(back, Made)
    assert plan_id(back.plan) == plan_id(plan)


@pytest.mark.parametrize("every", [211, pytest.param(1, marks=pytest.mark.nightly)])
@pytest.mark.parametrize(("heel", "needles", "alone"), SHARE)
def test_every_single_damage_is_refused_and_named(heel, needles, alone, every):
    missed = []
    first = Random(f"{heel} {needles} {alone}").randrange(every)
    for damage in list(all_damages(plan_of(heel, needles, alone=alone)))[first::every]:
        problems = prove(damage.plan)
        named = {f"row {place}" for place in damage.rows}
        if not problems or (named and problems[0].where not in named):
            missed.append((damage.kind, sorted(damage.rows)))

    assert not missed


@pytest.mark.parametrize(("end", "needles", "alone"), ENDS)
def test_every_end_of_a_toe_is_knitted_printed_and_read_back(end, needles, alone):
    plan = plan_of(FRENCH, needles, alone=alone, bind_off=BindOff(end))
    oracle = Oracle(as_json(plan)).knit()
    back = made_of(print_pattern(plan))

    assert [row.stitches_after for row in plan.rows] == oracle.counts
    assert not oracle.worked_not_once()
    assert isinstance(back, Made)
    assert plan_id(back.plan) == plan_id(plan)


@pytest.mark.parametrize("every", [101, pytest.param(1, marks=pytest.mark.nightly)])
@pytest.mark.parametrize(("end", "needles", "alone"), ENDS)
def test_every_single_damage_to_a_toe_and_its_end_is_refused_and_named(end, needles, alone, every):
    plan, missed = plan_of(FRENCH, needles, alone=alone, bind_off=BindOff(end)), []
    toe = {f"row {row.index}" for row in plan.rows if row.stage in {StageName.TOE, StageName.BIND_OFF}}
    damages = [each for each in all_damages(plan) if any(f"row {place}" in toe for place in each.rows)]
    for damage in damages[Random(f"{end} {needles}").randrange(every) :: every]:
        problems = prove(damage.plan)
        if not problems or problems[0].where not in {f"row {place}" for place in damage.rows}:
            missed.append((damage.kind, sorted(damage.rows)))

    assert len(damages) > 100
    assert not missed


def test_a_gathered_toe_is_narrowed_to_eight_and_drawn_together_with_the_tail():
    plan = wished(bind_off=BindOff("gathered"), toe=Toe("rounded")).plan
    last_toe, ends = rows_of(plan, StageName.TOE)[-1], rows_of(plan, StageName.BIND_OFF)

    assert plan.closing == 8
    assert Act.CUT_LONG in last_toe.acts
    assert [[(group.op, group.times) for group in row.ops] for row in ends] == [[(Op.GATHER, 4)]] * 2
    assert abs(plan.finished.foot_length_cm - Length.parse("23.5cm").cm) <= 10 / plan.gauge.rounds_per_10cm


def test_a_three_needle_end_is_worked_inside_out_with_the_yarn_that_is_cut_then():
    plan = wished(bind_off=BindOff("three-needle")).plan
    [end] = rows_of(plan, StageName.BIND_OFF)
    last_toe = rows_of(plan, StageName.TOE)[-1]

    assert [(group.op, group.times) for group in end.ops] == [(Op.THREE_NEEDLE, 12)]
    assert {Act.INSIDE_OUT, Act.CUT} <= set(end.acts)
    assert Act.CUT_LONG not in last_toe.acts


def test_a_whole_pair_is_called_to_its_grafted_toes():
    knitter, heard = Knitter(plan_of()), set()
    while not knitter.finished:
        heard |= {part.key for part in knitter.call.walk()}
        knitter.say(Next())

    assert {"op-pick-up-k", "op-graft", "act-cast-on-loosely", "act-join-in-the-round", "act-measure-leg",
            "act-measure-foot", "heel-begins"} <= heard  # fmt: skip


@pytest.mark.parametrize(
    ("end", "grain", "said"),
    [
        ("three-needle", "group", {"op-three-needle", "act-turn-inside-out"}), ("gathered", "group", {"op-gather"}),
        ("three-needle", "round", {"op-three-needle", "act-turn-inside-out"}), ("gathered", "round", {"work-gather"}),
    ],
)  # fmt: skip
def test_a_whole_pair_is_called_to_the_end_of_its_toes(end, grain, said):
    knitter, heard = Knitter(plan_of(bind_off=BindOff(end)), grain), set()
    while not knitter.finished:
        heard |= {part.key for part in knitter.call.walk()}
        knitter.say(Next())

    assert said <= heard


def test_the_leg_is_measured_before_its_heel_and_the_foot_from_the_heel_on():
    plan, due = plan_of(), []
    knitter = Knitter(plan)
    while not knitter.finished:
        due += [(part.key, dict(part.values)["due"].tenths_mm) for part in knitter.call.walk() if "measure" in part.key]
        knitter.say(Next())

    one = 1000 / plan.gauge.rounds_per_10cm
    foot = plan.heel_depth + 2 * plan.gusset + 4
    assert due == [("act-measure-leg", round(8 * one)), ("act-measure-foot", round(foot * one))]


def test_a_wrong_count_has_other_causes_where_it_narrows():
    knitter = Knitter(plan_of()).knits_to(StageName.TOE, 3)
    knitter.say(IHave(stitches=11))

    assert {"cause-decrease-missed"} <= {part.key for part in knitter.last.walk()}


@pytest.mark.parametrize(
    ("field", "wish", "key"),
    [
        ("heel", Heel("wrapped"), "not-cuff-down"), ("heel", Heel("forethought"), "not-cuff-down"),
        ("heel", Heel("mini-gusset"), "not-cuff-down"), ("toe", Toe("anatomic"), "not-cuff-down"),
        ("toe", Toe("short-row-german"), "not-cuff-down"), ("cuff_style", Cuff("picot"), "not-cuff-down"),
        ("bind_off", BindOff("decrease"), "not-cuff-down"), ("cast_on", 24, "cast-on-not-cuff-down"),
    ],
)  # fmt: skip
def test_what_is_not_knitted_so_is_refused_with_what_is(field, wish, key):
    (problem,) = wished(**{field: wish})

    assert (problem.key, problem.where) == (key, field)
    if key == "not-cuff-down":
        choices = map(KINDS[field], dict(problem.values)["choices"].split(", "))
        assert all(isinstance(wished(**{field: choice}), Made) for choice in choices)


@pytest.mark.parametrize(("field", "wish"), [("heel", Heel("french")), ("bind_off", BindOff("graft"))])
def test_nor_is_from_the_toe_up_what_belongs_to_the_cuff(field, wish):
    usual = {"heel": Heel("wrapped"), "bind_off": BindOff("decrease")}
    (problem,) = wished(direction=Direction.TOE_UP, **usual | {field: wish})

    assert (problem.key, problem.where) == ("not-toe-up", field)


def test_more_or_fewer_picked_up_than_the_flap_has_are_refused():
    plan = plan_of()
    at = next(row for row in plan.rows if row.ops[-1].op is Op.PICK_UP_K).index
    ops = (plan.rows[at].ops[0], plan.rows[at].ops[1].model_copy(update={"times": 8}))
    row = plan.rows[at].model_copy(update={"ops": ops, "stitches_after": plan.rows[at].stitches_after + 1})

    assert prove(plan.model_copy(update={"rows": (*plan.rows[:at], row, *plan.rows[at + 1 :])}))


def test_the_flap_is_turned_after_each_of_its_rows():
    rows = rows_of(plan_of(), StageName.HEEL_FLAP)[1:]

    assert all(Act.TURN in row.acts and row.turn_after for row in rows)
