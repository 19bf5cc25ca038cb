"""The tape measure while knitting: her real rounds, and foot and leg planned anew by them, proven, and offered."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.commands import Next, No, TapeSays, Undo, Yes
from plans.conversation import Answered, Asked, Replanned, Undone
from plans.engine import begin, decide, evolve, replay
from plans.engine.courses import course
from plans.engine.places import standing_at
from plans.engine.replanning import measured_too, written_plan
from plans.engine.wished import wishes_of
from plans.files import wishes_text
from plans.json_form import plan_id
from plans.making import Made, make_plan
from plans.pattern import BindOff, Direction, Plan, StageName
from plans.proof import prove
from plans.quantities import Length
from plans.sayings import SAYINGS
from plans.wishes import Swatch, Wishes
from tests.plans.knitter import shown
from tests.strategies import HEELS, adult, practice


def hers(**changes) -> Plan:
    wishes = {"swatch": Swatch(stitches=30, rounds=42), "foot_length": "24.5cm", "ball": "23.7cm", "leg": "15cm"}
    found = make_plan(Wishes(**{**wishes, **changes}))
    assert isinstance(found, Made)
    return found.plan


def at_round(plan: Plan, stage: StageName, number: int):
    """Progress at the start of a round."""
    progress = replay(begin(plan).events)
    row = next(row for row in plan.rows if row.stage is stage and row.round == number)
    now = standing_at(course(plan), plan_id(plan), course(plan).starts[row.index])
    return progress.model_copy(update={"now": now})


def rounds_of(plan: Plan, stage: StageName) -> int:
    return max(row.round for row in plan.rows if row.stage is stage)


def says(part: str, mm: int) -> TapeSays:
    return TapeSays(part=part, length=Length(Fraction(mm)))


def told(plan, progress, command):
    decision = decide(plan, progress, command)
    values = dict(decision.reply.values)
    assert SAYINGS[decision.reply.key] == values.keys()
    return decision, decision.reply.key, values


def taken(plan, progress, command):
    """The plan after a yes, and the progress in it."""
    asked = decide(plan, progress, command)
    assert asked.events == (Asked(wish=command),)
    for event in asked.events:
        progress = evolve(progress, event)
    decision = decide(plan, progress, Yes())
    assert decision.reply.key == "replan-taken"
    for event in decision.events:
        progress = evolve(progress, event)
    return decision, progress


def test_real_rounds_come_from_the_whole_rounds_so_far():
    plan = hers()
    _, key, values = told(plan, at_round(plan, StageName.FOOT, 21), says("foot", 100))

    assert key == "ask-replan"
    assert (values["rounds"], values["planned"]) == ("40", "42")
    assert [shown(change) for change in values["changes"]] == ["replan-change(stage stage-foot; before 37; after 32)"]


@pytest.mark.parametrize(
    ("way", "stage", "number", "mm", "parts"),
    [
        (Direction.TOE_UP, StageName.LEG, 24, 50, ["leg", "cuff"]),
        (Direction.CUFF_DOWN, StageName.CUFF, 16, 30, ["cuff", "leg"]),
    ],
)
def test_leg_and_cuff_are_both_named_where_both_change(way, stage, number, mm, parts):
    plan = hers(direction=way)
    values = told(plan, at_round(plan, stage, number), says("leg", mm))[2]
    new = taken(plan, at_round(plan, stage, number), says("leg", mm))[0].plan
    counts = [(rounds_of(plan, StageName(part)), rounds_of(new, StageName(part))) for part in parts]

    assert all(before != after for before, after in counts)
    assert [shown(change) for change in values["changes"]] == [
        f"replan-change(stage stage-{part}; before {before}; after {after})"
        for part, (before, after) in zip(parts, counts, strict=True)
    ]


def test_after_a_yes_the_new_plan_is_proven_and_the_foot_comes_to_its_length():
    plan = hers()
    decision, progress = taken(plan, at_round(plan, StageName.FOOT, 21), says("foot", 100))
    new = decision.plan

    assert new is not None
    assert prove(new) == ()
    assert decision.events == (Answered(yes=True), Replanned(now=progress.now, why="measured"))
    assert progress.now.plan == plan_id(new)
    assert abs(new.finished.foot_length_cm - Fraction("23.5")) <= Fraction(1, 4)
    assert rounds_of(new, StageName.FOOT) == 32
    assert rounds_of(new, StageName.LEG) + rounds_of(new, StageName.CUFF) == 60


def test_what_is_knitted_stays_and_both_socks_stay_where_they_are():
    plan = hers()
    before = at_round(plan, StageName.FOOT, 21)
    decision, progress = taken(plan, before, says("foot", 100))
    done = before.now.first.row_index

    assert decision.plan.rows[: done + 1] == plan.rows[: done + 1]
    assert (progress.now.first, progress.now.second) == (before.now.first, before.now.second)


def test_undo_goes_back_to_the_old_plan():
    plan = hers()
    before = at_round(plan, StageName.FOOT, 21)
    decision, progress = taken(plan, before, says("foot", 100))
    undone = decide(decision.plan, progress, Undo())

    assert evolve(progress, undone.events[0]).now == before.now


def test_after_a_no_nothing_has_changed():
    plan = hers()
    before = at_round(plan, StageName.FOOT, 21)
    asked = decide(plan, before, says("foot", 100))
    progress = evolve(before, asked.events[0])
    decision = decide(plan, progress, No())

    assert decision.reply.key == "dropped"
    assert evolve(progress, decision.events[0]) == before


def test_a_foot_with_too_many_rounds_already_is_told_how_long_it_comes():
    plan = hers()
    decision, key, values = told(plan, at_round(plan, StageName.FOOT, 37), says("foot", 180))

    assert (key, decision.events) == ("tape-passed", ())
    assert values["length"].tenths_mm > values["aimed"].tenths_mm + 300


def test_rounds_that_are_begun_are_never_taken_away():
    plan = hers(foot_rounds=60)
    decision, _ = taken(plan, at_round(plan, StageName.FOOT, 50), says("foot", 170))

    assert rounds_of(decision.plan, StageName.FOOT) == 50


def test_a_leg_measured_in_the_leg_leaves_the_foot_as_it_was_knitted():
    plan = hers()
    before = at_round(plan, StageName.LEG, 31)
    decision, _ = taken(plan, before, says("leg", 60))
    new = decision.plan

    assert rounds_of(new, StageName.FOOT) == 37
    assert rounds_of(new, StageName.LEG) + rounds_of(new, StageName.CUFF) == 75
    assert abs(new.finished.leg_cm - 15) <= Fraction(1, 5)
    assert new.rows[: before.now.first.row_index + 1] == plan.rows[: before.now.first.row_index + 1]


def test_a_leg_measured_in_the_cuff_changes_the_cuff_alone():
    plan = hers()
    decision, _ = taken(plan, at_round(plan, StageName.CUFF, 5), says("leg", 110))
    new, leg = decision.plan, rounds_of(plan, StageName.LEG)

    assert rounds_of(new, StageName.LEG) == leg
    assert rounds_of(new, StageName.LEG) + rounds_of(new, StageName.CUFF) == round(150 * Fraction(leg + 4, 110))


@pytest.mark.parametrize(
    ("stage", "number", "part", "mm", "key"),
    [
        (StageName.FOOT, 21, "foot", 97, "ask-replan"),
        (StageName.FOOT, 22, "foot", 97, "tape-same"),
        (StageName.FOOT, 21, "foot", 29, "tape-too-early"),
        (StageName.TOE, 1, "foot", 40, "tape-too-early"),
        (StageName.FOOT, 21, "foot", 170, "tape-unlikely"),
        (StageName.FOOT, 21, "foot", 60, "tape-unlikely"),
        (StageName.FOOT, 21, "leg", 60, "tape-too-early"),
        (StageName.GUSSET, 3, "foot", 150, "tape-too-late"),
        (StageName.LEG, 3, "foot", 230, "tape-too-late"),
        (StageName.LEG, 1, "leg", 40, "tape-too-early"),
        (StageName.BIND_OFF, 1, "leg", 150, "tape-too-late"),
    ],
)
def test_a_measure_tells_something_only_where_something_is_still_to_be_changed(stage, number, part, mm, key):
    plan = hers()
    decision, found, _ = told(plan, at_round(plan, stage, number), says(part, mm))

    assert found == key
    assert decision.events == ((Asked(wish=says(part, mm)),) if key == "ask-replan" else ())


@pytest.mark.parametrize("heel", HEELS)
@pytest.mark.parametrize("alone", [False, True])
def test_every_heel_has_its_foot_planned_anew(heel, alone):
    plan = hers(heel=heel, one_at_a_time=alone)
    before = at_round(plan, StageName.FOOT, 21)
    decision, progress = taken(plan, before, says("foot", 100))
    new = decision.plan
    first = progress.now.first.row_index
    begins = new.rows[progress.now.second.row_index]

    assert prove(new) == ()
    assert abs(new.finished.foot_length_cm - Fraction("23.5")) <= Fraction(1, 4)
    assert first == before.now.first.row_index
    assert new.rows[: first + 1] == plan.rows[: first + 1]
    assert (begins.sock, begins.stage) == ((2, StageName.CAST_ON) if alone else (2, StageName.FOOT))


def test_practice_socks_and_plans_without_their_wishes_stay_as_they_are():
    bare = adult().model_copy(update={"wishes": ""})
    for plan in (practice(), bare):
        _, key, _ = told(plan, at_round(plan, StageName.FOOT, 3), says("foot", 50))
        assert key == "tape-no-plan"


def test_a_finished_pair_has_nothing_to_measure():
    plan = hers()
    end = standing_at(course(plan), plan_id(plan), course(plan).end)
    progress = replay(begin(plan).events).model_copy(update={"now": end})

    assert decide(plan, progress, says("leg", 150)).reply.key == "finished-already"


def test_measured_twice_the_second_measure_is_held_against_the_first_ones_plan():
    plan = hers()
    decision, progress = taken(plan, at_round(plan, StageName.FOOT, 11), says("foot", 75))
    again = decide(decision.plan, progress, says("foot", 75))

    assert again.reply.key == "tape-same"
    assert decide(decision.plan, progress, Next()).reply.key in {"call", "call-round"}


@given(st.integers(1, 37), st.integers(60, 160))
@settings(max_examples=25, deadline=None)
def test_whatever_the_tape_says_the_plan_taken_is_proven_and_keeps_what_is_knitted(number, percent):
    plan = hers()
    before = at_round(plan, StageName.FOOT, number)
    done = 20 + number - 1
    command = says("foot", round(done * 10000 / 42 / percent * 10) // 10)
    decision, key, _ = told(plan, before, command)
    if key != "ask-replan":
        return
    progress = evolve(before, decision.events[0])
    new = decide(plan, progress, Yes()).plan
    rounds = done * 100 / command.length.mm

    assert prove(new) == ()
    assert new.rows[: before.now.first.row_index + 1] == plan.rows[: before.now.first.row_index + 1]
    aimed = round(Fraction(235) * Fraction(round(rounds * 10), 1000))
    besides = 20 + 32 + 10
    assert rounds_of(new, StageName.FOOT) == max(number, aimed - besides)


def test_a_plan_made_anew_comes_from_the_plan_as_it_was_written():
    plan = hers()
    begun = begin(plan).events
    decision, after = taken(plan, at_round(plan, StageName.FOOT, 21), says("foot", 100))
    again = decision.events[-1]

    assert written_plan(begun, plan_id(plan)) == plan_id(plan)
    assert after.now.plan != plan_id(plan)
    assert written_plan([*begun, again], after.now.plan) == plan_id(plan)
    other = after.now.model_copy(update={"plan": "other"})
    assert written_plan([*begun, again, Replanned(now=other)], "other") == "other"
    third = after.now.model_copy(update={"plan": "third"})
    events = [*begun, again, Replanned(now=other), Undone(now=after.now), Replanned(now=third, why="measured")]
    assert written_plan(events, "third") == plan_id(plan)
    merged = Replanned(now=other, written="file")
    assert written_plan([*begun, again, merged], "other") == "file"
    assert written_plan([*begun, again, merged, Replanned(now=third, why="measured")], "third") == "file"


@pytest.mark.parametrize(
    ("edit", "foot", "leg"),
    [
        ({"bind_off": BindOff.SEWN}, "measured", "measured"), ({"foot_length": "25.5cm"}, "longer", "measured"),
        ({"leg": "20cm"}, "measured", "longer"), ({"foot_rounds": 60}, 60, "measured"),
    ],
)  # fmt: skip
def test_what_is_edited_comes_into_the_plan_that_was_measured(edit, foot, leg):
    """At 40 rounds to 10 cm a foot that is a centimetre longer has four more of them, a leg higher by five 20."""
    plan = hers()
    measured = taken(plan, at_round(plan, StageName.FOOT, 21), says("foot", 100))[0].plan
    found = measured_too(plan, hers(**edit), measured)
    one, other = (rounds_of(measured, stage) for stage in (StageName.FOOT, StageName.LEG))

    assert prove(found) == ()
    assert found.gauge == measured.gauge != plan.gauge
    assert rounds_of(found, StageName.FOOT) == {"measured": one, "longer": one + 4}.get(foot, foot)
    assert rounds_of(found, StageName.LEG) == {"measured": other, "longer": other + 20}[leg]
    assert found.construction == hers(**edit).construction


@pytest.mark.parametrize("edit", [{"swatch": Swatch(stitches=30, rounds=41)}, {"around": 4}])
def test_with_another_swatch_or_where_none_can_be_made_what_was_measured_is_given_up(edit):
    plan = hers()
    measured = taken(plan, at_round(plan, StageName.FOOT, 21), says("foot", 100))[0].plan
    wishes = wishes_of(plan)
    edited = plan.model_copy(update={"wishes": wishes_text(wishes.model_copy(update=edit))})

    assert measured_too(plan, edited, measured) is None
    assert measured_too(plan, edited.model_copy(update={"wishes": ""}), measured) is None
