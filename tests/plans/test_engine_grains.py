"""Smaller and larger steps; another plan; events that cannot be."""

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.conversation import (
    Advanced,
    Coarser,
    Command,
    Finer,
    Grain,
    GrainSet,
    IHave,
    Next,
    Place,
    Redo,
    Reply,
    RippedBack,
    Undo,
    WhereAmI,
)  # fmt: skip
from plans.engine import begin, decide, replay
from plans.engine.courses import identity
from plans.engine.replanning import take_over
from plans.pattern import Direction, Half, Heel, Needles, Pairing, Plan, StageName
from tests.plans.knitter import Knitter, shown
from tests.strategies import adult, commands, practice


def grains(knitter: Knitter, command: Command, many: int) -> list[str]:
    found: list[str] = []
    for _ in range(many):
        said = knitter.say(command)
        found.append(said.key if said.key != "grain-set" else dict(said.values)["grain"].key)
    return found


def test_finer_goes_down_from_what_is_called_now():
    knitter = Knitter(practice()).knits_to(StageName.FOOT, 2)

    assert grains(knitter, Finer(), 4) == ["grain-side", "grain-half", "grain-group", "grain-finest"]


def test_coarser_goes_up_and_then_follows_the_work_again():
    knitter = Knitter(practice(), "group").knits_to(StageName.TOE, 4)

    assert grains(knitter, Coarser(), 4) == ["grain-half", "grain-side", "grain-round", "grain-follow"]
    assert grains(knitter, Coarser(), 1) == ["grain-round"]


def test_a_plain_round_that_follows_is_the_coarsest():
    assert grains(Knitter(practice()).knits_to(StageName.FOOT, 2), Coarser(), 1) == ["grain-coarsest"]


def test_finer_in_a_heel_goes_to_groups_at_once():
    assert grains(Knitter(practice()).knits_to(StageName.HEEL_FLAP, 3), Finer(), 1) == ["grain-group"]


def test_a_new_grain_calls_the_step_in_hand_anew():
    knitter = Knitter(practice()).knits_to(StageName.FOOT, 2)
    said = knitter.say(Finer())

    assert dict(said.values)["call"] == knitter.call
    assert shown(knitter.call).startswith("call(where where-side(half half-front)")


def test_a_grain_is_no_step_to_undo():
    knitter = Knitter(practice())
    knitter.say(Next())
    knitter.say(Finer())
    knitter.say(Undo())

    assert knitter.at == 0


def taken_over(knitter: Knitter, new: Plan) -> Reply:
    decision = take_over(knitter.plan, new, knitter.progress)
    assert decision is not None
    knitter.plan = new
    return knitter.hears(decision)


def test_an_edited_plan_goes_on_at_the_very_same_step_and_undo_goes_back():
    old, new = practice(), practice(Heel.GERMAN)
    knitter = Knitter(old).knits_to(StageName.GUSSET, 2)
    before = knitter.progress.now
    called = shown(knitter.call)
    said = shown(taken_over(knitter, new))

    assert said.startswith("resume(")
    assert called in said
    assert (knitter.progress.now.first, knitter.progress.now.second) == (before.first, before.second)
    assert knitter.progress.now.plan == identity(new)
    assert knitter.say(Undo()).key == "undone-other-plan"
    assert knitter.progress.now == before
    knitter.plan = old
    assert knitter.say(Redo()).key == "redone-other-plan"


@given(st.integers(0, 393))
@settings(deadline=None, max_examples=40)
def test_a_plan_takes_over_only_where_no_knitted_row_differs(at: int):
    old, new = practice(), practice(Heel.GERMAN)
    first = next(row.index for row, other in zip(old.rows, new.rows, strict=False) if row != other)
    knitter = Knitter(old, "group")
    while knitter.at < at:
        knitter.say(Next())
    further = max(knitter.progress.now.first.row_index, knitter.progress.now.second.row_index)

    assert (take_over(old, new, knitter.progress) is not None) == (further < first)


def test_what_one_sock_that_is_ahead_has_knitted_counts_too():
    old, new = practice(), practice(Heel.GERMAN)
    knitter = Knitter(old).knits_to(StageName.GUSSET, 2)
    heel = next(row.index for row in old.rows if row.stage is StageName.HEEL_FLAP)
    ahead = knitter.progress.now.model_copy(update={"second": Place(row_index=heel)})

    assert take_over(old, new, knitter.progress) is not None
    assert take_over(old, new, knitter.progress.model_copy(update={"now": ahead})) is None


@pytest.mark.parametrize(
    "other", [{"needles": Needles.TWO_CIRCULARS}, {"direction": Direction.CUFF_DOWN}, {"pairing": Pairing.MIRRORED}]
)
def test_a_pair_that_lies_otherwise_on_its_needles_never_takes_over(other):
    plan = practice()
    laid = plan.model_copy(update={"construction": plan.construction.model_copy(update=other)})

    assert take_over(plan, laid, Knitter(plan).progress) is None


def test_another_count_of_stitches_never_takes_over():
    assert take_over(practice(), adult(), Knitter(practice()).progress) is None


def test_marks_of_another_plan_are_not_given_a_place():
    from plans.conversation import Mark, Marks

    old, new = practice(), practice(Heel.GERMAN)
    knitter = Knitter(old)
    knitter.say(Mark())
    taken_over(knitter, new)
    knitter.say(Mark())

    assert shown(knitter.say(Marks())).startswith("marks(marks mark-of-other-plan(number 1) mark(number 2;")


def test_a_plan_that_the_places_do_not_belong_to_is_refused():
    progress = replay(begin(practice()).events)

    with pytest.raises(ValueError, match="belong to another plan"):
        decide(practice(Heel.GERMAN), progress, Next())


def test_events_must_begin_a_pair():
    (begun,) = begin(practice()).events

    with pytest.raises(ValueError, match="begun first"):
        replay([Advanced(now=begun.now), begun])
    with pytest.raises(ValueError, match="no events"):
        replay([])


@given(commands(), st.sampled_from(("group", "half", "side", "round", "follow")), st.integers(0, 200))
@settings(deadline=None, max_examples=60)
def test_a_decision_changes_nothing_and_is_always_the_same(command: Command, grain: Grain, steps: int):
    knitter = Knitter(practice(), grain)
    for _ in range(steps):
        knitter.say(Next())
    before = knitter.progress.model_copy(deep=True)

    assert decide(knitter.plan, knitter.progress, command) == decide(knitter.plan, knitter.progress, command)
    assert before == knitter.progress


SLOW = [Next(), WhereAmI(), IHave(stitches=30, half=Half.BACK), RippedBack(stage="toe"), Undo()]


@pytest.mark.parametrize("command", SLOW, ids=lambda each: each.kind)
def test_a_reply_is_computed_without_walking_the_plan_anew(command: Command):
    """Deep in the second heel of an adult pair; far under the wait that anybody would notice."""
    knitter = Knitter(adult()).knits_to(StageName.HEEL_FLAP, 20, 1)
    began = time.perf_counter()
    for _ in range(20):
        decide(knitter.plan, knitter.progress, command)

    assert (time.perf_counter() - began) / 20 < 0.05


def test_grain_events_are_kept():
    knitter = Knitter(practice())
    knitter.say(Finer())

    assert isinstance(knitter.events[-1], GrainSet)
