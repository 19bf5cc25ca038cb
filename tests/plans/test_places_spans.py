"""The step in hand at every grain, and what is to go."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.conversation import Grain, Place, Standing
from plans.engine.courses import course
from plans.engine.places import (
    Span,
    after,
    in_hand,
    is_finished,
    loops_on,
    loops_to_go,
    place,
    position,
    span,
    standing_at,
    to_go,
    worked_loops,
)
from plans.pattern import Half, Heel, Plan, StageName
from plans.stitches import Op
from tests.strategies import Pair, pairs, practice

ALL: tuple[Grain, ...] = ("group", "half", "side", "round", "follow")
grains = st.sampled_from(ALL)


def spans(plan: Plan, grain: Grain) -> list[Span]:
    standing, found = standing_at(course(plan), "plan", 0), []
    while not is_finished(plan, standing):
        found.append(span(plan, standing, grain))
        standing = after(plan, standing, grain)
    return found


def rows_of(plan: Plan, each: Span) -> list[int]:
    return sorted({course(plan).row_of[at] for at in each.positions})


@given(pairs(), grains)
def test_spans_tile_the_plan(pair: Pair, grain: Grain):
    plan = pair.plan
    found = spans(plan, grain)

    assert [0, *(each.end for each in found[:-1])] == [each.start for each in found]
    assert course(plan).end == found[-1].end


@given(pairs(), grains)
def test_acts_that_stand_alone_are_spans_of_their_own(pair: Pair, grain: Grain):
    plan = pair.plan
    for each in spans(plan, grain):
        alone = [course(plan).steps[at].alone for at in each.positions]
        assert alone == [True] or not any(alone)


@given(pairs(), grains)
def test_no_span_crosses_a_stage_a_round_or_a_heel_row(pair: Pair, grain: Grain):
    plan = pair.plan
    for each in spans(plan, grain):
        rows = [plan.rows[index] for index in rows_of(plan, each)]
        assert len({(row.stage, row.round) for row in rows}) == 1
        assert len(rows) == 1 or not any(course(plan).is_heel(row.index) for row in rows)


@given(pairs())
def test_a_group_is_one_step_and_a_half_one_row(pair: Pair):
    plan = pair.plan
    assert {1} == {len(each.positions) for each in spans(plan, "group")}
    assert {1} == {len(rows_of(plan, each)) for each in spans(plan, "half")}


@given(pairs())
def test_a_side_is_one_half_of_both_socks_where_nothing_stops_it(pair: Pair):
    plan = pair.plan
    halves = [[plan.rows[index].half for index in rows_of(plan, each)] for each in spans(plan, "side")]

    assert all(len(set(found)) == 1 for found in halves)
    assert [Half.FRONT] * 2 in halves
    assert [Half.BACK] * 2 in halves


def test_a_whole_round_goes_over_four_halves():
    plan = practice()
    foot = next(row.index for row in plan.rows if row.stage is StageName.FOOT)

    assert [foot, foot + 1, foot + 2, foot + 3] in [rows_of(plan, each) for each in spans(plan, "round")]


@pytest.mark.parametrize(
    ("stage", "expected"),
    [
        (StageName.CAST_ON, {1}),
        (StageName.FOOT, {1, 4}),
        (StageName.HEEL_FLAP, {1}),
        (StageName.BIND_OFF, {1}),
    ],
)
def test_by_default_the_grain_follows_the_work(stage: StageName, expected: set[int]):
    plan = practice()
    found = [rows_of(plan, each) for each in spans(plan, "follow")]

    assert expected == {len(rows) for rows in found if plan.rows[rows[0]].stage is stage}


def test_increase_rounds_go_by_sides_and_plain_rounds_whole():
    plan = practice()
    found = [rows_of(plan, each) for each in spans(plan, "follow")]
    gusset = [(plan.rows[rows[0]].round % 2, len(rows)) for rows in found if len(rows) > 1]

    assert {(1, 2), (0, 4)} <= set(gusset)


@given(pairs(), st.data())
def test_place_and_position_are_one_the_other_way_round(pair: Pair, data: st.DataObject):
    plan = pair.plan
    at = data.draw(st.integers(0, course(plan).end))

    assert at == position(course(plan), place(course(plan), at))


def test_a_place_past_its_row_counts_as_the_rows_end():
    prepared = course(practice())

    assert prepared.starts[3] == position(prepared, Place(row_index=2, step_index=99))
    assert prepared.end == position(prepared, Place(row_index=10_000))


@given(pairs(), st.data())
def test_each_sock_stands_at_its_own_next_step(pair: Pair, data: st.DataObject):
    plan = pair.plan
    prepared = course(plan)
    standing = standing_at(prepared, "plan", data.draw(st.integers(0, prepared.end)))

    for sock, own in ((1, standing.first), (2, standing.second)):
        at = position(prepared, own)
        assert at == prepared.end or plan.rows[own.row_index].sock == sock


def test_a_sock_that_is_ahead_is_passed_over_and_stays():
    plan, prepared = practice(), course(practice())
    foot = next(row.index for row in plan.rows if row.stage is StageName.FOOT and row.round == 2)
    ahead = Place(row_index=foot + 2)
    standing = Standing(plan="plan", first=Place(row_index=foot), second=ahead)
    found = span(plan, standing, "round")

    assert [foot, foot + 2, foot + 3] == rows_of(plan, found)
    assert prepared.starts[foot] == in_hand(prepared, standing)
    assert ahead == after(plan, standing, "half").second
    assert foot + 3 == after(plan, standing, "half").first.row_index


def test_either_sock_may_be_ahead():
    plan = practice()
    foot = next(row.index for row in plan.rows if row.stage is StageName.FOOT and row.round == 2)
    ahead = Place(row_index=foot + 8)
    standing = Standing(plan="plan", first=ahead, second=Place(row_index=foot + 1))

    assert [foot + 1, foot + 2] == rows_of(plan, span(plan, standing, "round"))
    assert ahead == after(plan, standing, "round").first
    assert Place(row_index=foot + 5) == after(plan, standing, "round").second


def naive_counts(plan: Plan) -> list[dict[tuple[int, Half], int]]:
    """After each row, from what the plan states."""
    now = {(sock, half): 0 for sock in (1, 2) for half in Half}
    found = []
    for row in plan.rows:
        now = {**now, (row.sock, row.half): row.stitches_after}
        both = {Op.GRAFT, Op.THREE_NEEDLE, Op.FASTEN} & {group.op for group in row.ops}
        if both:
            now = {**now, (row.sock, Half.FRONT): 0, (row.sock, Half.BACK): 0}
        found.append(now)
    return found


@given(pairs())
def test_counts_after_each_row_are_the_plans(pair: Pair):
    plan = pair.plan
    prepared = course(plan)

    for index, expected in enumerate(naive_counts(plan)):
        standing = standing_at(prepared, "plan", prepared.starts[index + 1])
        assert expected == {key: loops_on(plan, standing, *key) for key in expected}


@given(pairs())
def test_counts_are_never_negative_and_end_at_none(pair: Pair):
    plan = pair.plan
    counts = course(plan).counts

    assert min(min(each) for each in counts) == 0
    assert counts[-1] == (0, 0, 0, 0)


@given(pairs(), grains)
def test_loops_worked_add_up_to_every_operation(pair: Pair, grain: Grain):
    plan = pair.plan
    standing, total = standing_at(course(plan), "plan", 0), 0
    while not is_finished(plan, standing):
        total += worked_loops(plan, standing, grain)
        standing = after(plan, standing, grain)

    assert sum(group.times for row in plan.rows for group in row.ops) == total


def test_loops_to_go_fall_along_a_row():
    plan = practice()
    toe = next(row for row in plan.rows if row.stage is StageName.TOE and row.round == 4)
    standing = standing_at(course(plan), "plan", course(plan).starts[toe.index])
    found = []
    for _ in range(6):
        found.append(loops_to_go(plan, standing))
        standing = after(plan, standing, "group")

    assert found == [6, 5, 5, 1, 1, 6]


def test_rounds_to_go_count_the_one_in_hand_and_heel_rows_apart():
    plan = practice(Heel.WRAPPED)
    prepared = course(plan)
    gusset = next(row.index for row in plan.rows if row.stage is StageName.GUSSET and row.round == 3)
    found = to_go(plan, standing_at(prepared, "plan", prepared.starts[gusset]))
    leg_and_on = len({(row.stage, row.round) for row in plan.rows if row.index > gusset and row.stage in {
        StageName.LEG, StageName.CUFF, StageName.BIND_OFF}})  # fmt: skip

    assert found.in_stage == 10
    assert found.heel_rows == 2 * (8 + 13)
    assert 10 + 1 + leg_and_on == found.rounds


def test_nothing_is_to_go_at_the_end():
    plan = practice()
    found = to_go(plan, standing_at(course(plan), "plan", course(plan).end))

    assert (found.in_stage, found.rounds, found.heel_rows) == (0, 0, 0)


def test_a_span_is_empty_at_the_end():
    plan = practice()
    finished = standing_at(course(plan), "plan", course(plan).end)

    assert span(plan, finished, "follow").positions == ()
    assert finished == after(plan, finished, "round")
