"""Every construction on every needle arrangement: proven on any foot, refused where damaged, called at every grain."""

from collections import Counter
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from plans.conversation import Explain, HowFar, HowMany, Next, WhatNext, WhereAmI
from plans.engine.courses import course
from plans.engine.resuming import resume
from plans.making import Made, make_plan
from plans.names import load, names
from plans.pattern import Needles, Pairing, StageName
from plans.proof import prove
from plans.rows import parts
from plans.sayings import SAYINGS
from plans.wishes import Wishes
from tests.plans.damages import all_damages
from tests.plans.knitter import Knitter, assert_registered
from tests.plans.made_up_wishes import feet, swatches
from tests.strategies import ARRANGEMENTS, CHOICES, EVERYWHERE, KINDS, SHARED, USUAL, beginning, varied

PARTS = {
    "toes": ("TOE", parts.ToePart), "increases": ("INCREASE", parts.IncreasePart), "soles": ("SOLE", parts.SolePart),
    "heels": ("HEEL", parts.HeelPart), "legs": ("LEG", parts.LegPart), "cuffs": ("CUFF", parts.CuffPart),
    "bind_offs": ("BIND_OFF", parts.BindOffPart),
}  # fmt: skip
CAUSES = {"made", "foot-too-short", "too-few-stitches", "cuff-too-short", "leg-too-short", "cuff-longer-than-leg"}
"""What may come of an ordinary foot: each refusal is shown to be impossible in the tests of sizing."""


def _share(usual, full):
    """The usual share with one number, and at night everything with another."""
    night = [pytest.param(*each, full, marks=pytest.mark.nightly) for each in EVERYWHERE]
    return [*((*each, usual) for each in USUAL), *night]


@pytest.mark.parametrize("kind", PARTS)
def test_every_module_of_a_kind_holds_its_part(kind):
    attribute, part = PARTS[kind]

    assert names(kind)
    assert all(isinstance(load(kind, name, attribute), part) for name in names(kind).values())


def test_the_usual_share_has_every_construction_and_every_arrangement():
    assert {(field, name) for field, name, _, _ in USUAL} == set(CHOICES)
    assert {(needles, alone) for _, _, needles, alone in USUAL} == set(ARRANGEMENTS)


@pytest.mark.parametrize(("field", "name", "needles", "alone", "examples"), _share(4, 500))
def test_every_construction_on_any_needles_is_proven_on_any_foot(field, name, needles, alone, examples):
    causes = _proven_or_refused(
        {field: KINDS[field](name), "direction": beginning(field, name), "needles": needles, "one_at_a_time": alone},
        examples,
    )
    print(f"\n{field} {name} on {needles}, {'one at a time' if alone else 'both at once'}: {dict(causes)}")

    assert set(causes) <= CAUSES
    assert causes["made"] > examples // 10


def _proven_or_refused(chosen, examples):
    causes: Counter[str] = Counter()

    @given(swatches(), feet())
    @settings(max_examples=examples, derandomize=True, database=None, suppress_health_check=[HealthCheck.too_slow])
    def made(swatch, foot):
        found = make_plan(Wishes(swatch=swatch, **foot, **chosen))
        causes.update(["made"] if isinstance(found, Made) else {problem.key for problem in found})
        if not isinstance(found, Made):
            assert all(SAYINGS[problem.key] == {name for name, _ in problem.values} for problem in found)
            short = [dict(problem.values) for problem in found if problem.key == "foot-too-short"]
            assert all(values["needed"] > values["there"] for values in short)

    made()
    return causes


@pytest.mark.parametrize(("field", "name", "needles", "alone", "every"), _share(199, 1))
def test_every_single_damage_is_refused_and_named(field, name, needles, alone, every):
    first = Random(name).randrange(every)
    missed = []
    for damage in list(all_damages(varied(field, name, needles, alone=alone)))[first::every]:
        problems = prove(damage.plan)
        named = {f"row {place}" for place in damage.rows}
        if not problems or (named and problems[0].where not in named):
            missed.append((damage.kind, sorted(damage.rows), [(each.key, each.where) for each in problems[:1]]))

    assert not missed


@pytest.mark.parametrize(("field", "name", "needles", "alone"), SHARED)
def test_a_whole_pair_is_called_and_every_question_has_an_answer(field, name, needles, alone):
    plan = varied(field, name, needles, alone=alone)
    knitter = Knitter(plan, "half" if alone else "follow")
    while not knitter.finished:
        knitter.say(Next())
        if knitter.finished:
            break
        if len(knitter.events) % 9:
            continue
        for question in (WhereAmI(), HowMany(), HowFar(), WhatNext(), Explain()):
            knitter.say(question)
            assert_registered(resume(plan, knitter.progress))

    assert knitter.last.key == "finished"


@pytest.mark.parametrize(
    ("field", "name", "stage", "ops"),
    [
        ("leg_style", "ribbed", StageName.LEG, {"op-k", "op-p"}),
        ("cuff_style", "rib-2x2", StageName.CUFF, {"op-k", "op-p"}),
        ("cuff_style", "twisted-rib", StageName.CUFF, {"op-ktbl", "op-p"}),
        ("heel", "mini-gusset", StageName.LEG, {"op-ssk", "op-k2tog"}),
        ("heel", "forethought", StageName.LEG, {"op-waste"}),
        ("heel", "afterthought", StageName.LEG, {"op-thread"}),
    ],
)
def test_a_round_that_its_number_does_not_tell_is_read_out(field, name, stage, ops):
    plan, heard = varied(field, name), set()
    knitter = Knitter(plan, "follow")
    while not knitter.finished:
        if course(plan).row(knitter.at).stage is stage:
            heard |= {part.key for part in knitter.call.walk()}
        knitter.say(Next())

    assert ops <= heard


@given(st.sampled_from(CHOICES), st.sampled_from(ARRANGEMENTS))
@settings(max_examples=30)
def test_a_plan_says_what_it_is_made_of(choice, arrangement):
    (field, name), (needles, alone) = choice, arrangement
    made_of = varied(field, name, needles, alone=alone).construction

    assert getattr(made_of, field.removesuffix("_style")) == name
    assert (made_of.needles, made_of.order == "one-after-the-other") == (needles, alone)


def test_of_an_anatomic_pair_the_second_toe_is_the_first_seen_in_a_mirror():
    plan = varied("toe", "anatomic")
    other = {"m1l": "m1r", "m1r": "m1l"}
    toes = [
        {(row.round, row.half): [(group.op.value, group.times) for group in row.ops] for row in plan.rows
         if row.stage is StageName.TOE and row.sock == sock}
        for sock in (1, 2)
    ]  # fmt: skip
    mirrored = {at: [(other.get(op, op), times) for op, times in reversed(ops)] for at, ops in toes[0].items()}

    assert plan.construction.pairing is Pairing.MIRRORED
    assert mirrored == toes[1]
    assert mirrored != toes[0]


def test_an_anatomic_pair_of_two_like_socks_is_refused():
    plan = varied("toe", "anatomic")
    same = plan.construction.model_copy(update={"pairing": Pairing.IDENTICAL})

    assert prove(plan.model_copy(update={"construction": same}))


def test_one_at_a_time_the_first_sock_is_bound_off_before_the_second_is_cast_on():
    socks = [row.sock for row in varied("heel", "wrapped", alone=True).rows]

    assert socks == sorted(socks)


def test_a_heel_made_last_stands_behind_the_bind_off():
    names_of_stages = [stage.name for stage in varied("heel", "forethought").stages]

    assert names_of_stages == [
        StageName.CAST_ON, StageName.TOE, StageName.FOOT, StageName.LEG, StageName.CUFF, StageName.BIND_OFF,
        StageName.HEEL,
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("name", "worked"),
    [
        ("short-row-wrapped", [11, 10, 9, 8, 7, 6, 5, 4, 5, 6, 7, 8, 9, 10, 11, 12, 12]),
        ("short-row-german", [11, 10, 9, 8, 7, 6, 5, 4, 8, 12, 7, 2, 3, 4, 5, 6, 7, 8, 9, 11, 12]),
    ],
)
def test_the_rows_of_a_short_row_heel_are_as_worked_out(name, worked):
    """The wrapped one: 12 down to 4 and up again, as of 40 stitches on 20 down to 8 (socknitters.com 1999)."""
    rows = [row for row in varied("heel", name).rows if row.stage is StageName.HEEL and row.half == "back"]
    first = [sum(group.times for group in row.ops if group.op in {"k", "p", "ds"}) for row in rows if row.sock == 1]

    assert first == worked


def test_the_needles_of_two_circulars_are_taken_up_by_turns():
    plan = varied("heel", "wrapped", Needles.TWO_CIRCULARS)
    taken = [act for row in plan.rows for act in row.acts if act.startswith("take the")]

    assert taken[::2] == ["take the first needle"] * (len(taken) // 2)
    assert taken[1::2] == ["take the second needle"] * (len(taken) // 2)
