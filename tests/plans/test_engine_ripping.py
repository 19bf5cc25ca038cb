"""Ripped back to a part by its name: the place set is the first row of what she names, in every construction."""

from collections.abc import Iterator
from itertools import groupby

import pytest

from plans.conversation import Next, PlaceSet, RippedBack, Yes
from plans.engine.courses import course, identity
from plans.engine.places import standing_at
from plans.opening import made_of
from plans.pattern import Direction, Half, Heel, Needles, Order, Plan, Row, StageName
from plans.rows.heels import heel
from tests.plans.knitter import Knitter
from tests.plans.test_cuff_down import plan_of
from tests.strategies import DOWN_HEELS, UP_HEELS, varied

HEEL = ("heel-turn", "heel-flap", "heel")
TOES = ("wedge", "short-row-german")
PLANS = [
    *((Direction.TOE_UP, "heel", name) for name in UP_HEELS),
    *((Direction.CUFF_DOWN, "heel", name) for name in DOWN_HEELS),
    *((Direction.TOE_UP, "toe", name) for name in TOES),
]  # fmt: skip
LYING = [(Needles.ONE_LONG_CIRCULAR, False), (Needles.ONE_LONG_CIRCULAR, True), (Needles.DOUBLE_POINTED, True)]


def plan_as(direction: Direction, field: str, name: str, needles: Needles, *, alone: bool) -> Plan:
    if direction is Direction.CUFF_DOWN:
        return plan_of(Heel(name), needles, alone=alone)
    return varied(field, name, needles, alone=alone)


def standing(plan: Plan, row: Row) -> Knitter:
    """A knitter at the beginning of a row; both socks where the order of the needle has brought them."""
    knitter, the_course = Knitter(plan), course(plan)
    now = standing_at(the_course, identity(plan), the_course.starts[row.index])
    knitter.happens(PlaceSet(now=now, why="forward"))
    return knitter


def parts(plan: Plan, sock: int) -> Iterator[tuple[str, Row]]:
    """Every part of one sock by each name it has, and its first row: a heel's turn or flap is the heel too."""
    own = [row for row in plan.rows if row.sock == sock]
    for stage, rows in groupby(own, key=lambda row: row.stage):
        yield str(stage), next(rows)
    for in_heel, rows in groupby(own, key=lambda row: row.stage in HEEL):
        if in_heel:
            yield "heel", next(rows)


def ripped(knitter: Knitter, name: str, sock=None) -> list[Row | None]:
    """Where both socks are afterwards."""
    asked = knitter.say(RippedBack(stage=name, sock=sock))
    assert asked.key.startswith("ask-ripped-back"), asked
    knitter.say(Yes())
    now, rows = knitter.progress.now, knitter.plan.rows
    return [rows[place.row_index] if place.row_index < len(rows) else None for place in (now.first, now.second)]


@pytest.mark.parametrize("lying", LYING)
@pytest.mark.parametrize("which", PLANS)
def test_every_part_that_is_knitted_begins_anew_at_its_first_row(which, lying):
    """From the last row of all: of a pair on the needle both socks, of two knitted in turn the second."""
    plan = plan_as(*which, lying[0], alone=lying[1])
    alone = plan.construction.order is Order.ONE_AFTER_THE_OTHER
    socks = (2,) if alone else (1, 2)
    for sock in socks:
        for name, first in parts(plan, sock):
            if (name, sock) == (str(plan.rows[-1].stage), 2):
                continue
            places = ripped(standing(plan, plan.rows[-1]), name)
            assert places[sock - 1] == first, name
            if alone:
                assert places[0] is None


@pytest.mark.parametrize("which", PLANS)
def test_one_sock_alone_goes_back_to_its_own_first_row_and_the_other_stays(which):
    plan = plan_as(*which, Needles.ONE_LONG_CIRCULAR, alone=False)
    end = plan.rows[-1]
    for sock in (1, 2):
        for name, first in parts(plan, sock):
            knitter = standing(plan, end)
            before = knitter.progress.now
            if first.index >= end.index - 1:
                continue
            places = ripped(knitter, name, sock)
            assert places[sock - 1] == first
            other = knitter.progress.now.second if sock == 1 else knitter.progress.now.first
            assert other == (before.second if sock == 1 else before.first)


@pytest.mark.parametrize("which", [plan for plan in PLANS if plan[1] == "heel" and not heel(plan[2]).made_last])
def test_within_a_heel_it_is_the_sock_in_hand_that_was_pulled_out(which):
    plan = plan_as(*which, Needles.ONE_LONG_CIRCULAR, alone=False)
    backs = [row for row in plan.rows if row.stage in HEEL and row.half is Half.BACK]
    for sock in (2, 1):
        own = [row for row in backs if row.sock == sock]
        stages = {stage: next(rows) for stage, rows in groupby(own, key=lambda row: row.stage)}
        for name, first in [*stages.items(), (StageName.HEEL, own[0])]:
            places = ripped(standing(plan, own[-1]), str(name))
            assert places[sock - 1] == first
            assert places[2 - sock] == next(row for row in plan.rows[own[-1].index :] if row.sock != sock)


def test_of_a_french_heel_the_flap_is_the_heels_beginning_and_the_turn_leaves_both_flaps():
    plan = plan_of()
    later = next(row for row in plan.rows if row.stage is StageName.FOOT)
    knitter = standing(plan, later)

    assert [(row.stage, row.round, row.half) for row in ripped(standing(plan, later), "heel")] == [
        (StageName.HEEL_FLAP, 1, Half.FRONT)
    ] * 2
    assert [(row.stage, row.round) for row in ripped(knitter, "heel-turn")] == [(StageName.HEEL_TURN, 1)] * 2
    stages = []
    while knitter.plan.rows[knitter.progress.now.first.row_index].stage is not StageName.GUSSET:
        row = course(plan).row(knitter.at)
        stages.append((row.sock, row.stage))
        knitter.say(Next())
    assert list(dict.fromkeys(stages)) == [(2, StageName.HEEL_TURN), (1, StageName.HEEL_TURN)]


def test_what_the_sock_in_hand_has_not_begun_is_not_knitted_yet():
    plan = plan_of()
    flap = next(row for row in plan.rows if (row.stage, row.sock, row.round) == (StageName.HEEL_FLAP, 1, 4))
    knitter = standing(plan, flap)

    assert knitter.say(RippedBack(stage="heel-turn")).key == "not-knitted-yet"
    assert ripped(knitter, "heel-turn", 2)[1].stage is StageName.HEEL_TURN


def test_pulled_back_to_a_cuff_that_was_cast_on_the_socks_are_joined_again():
    plan = plan_of()
    knitter = standing(plan, next(row for row in plan.rows if row.stage is StageName.LEG))
    ripped(knitter, "cuff")

    assert "act-join-in-the-round" in {part.key for part in knitter.call.walk()}


def test_a_round_of_a_part_that_is_worked_on_each_sock_alone_is_found_beyond_its_front():
    plan = varied("heel", "wrapped")
    knitter = standing(plan, next(row for row in plan.rows if row.stage is StageName.LEG))
    asked = knitter.say(RippedBack(stage="heel", round=3))

    assert dict(asked.values)["of"] == max(row.round for row in plan.rows if row.stage is StageName.HEEL_TURN)
    knitter.say(Yes())
    now = knitter.progress.now
    assert [(plan.rows[each.row_index].stage, plan.rows[each.row_index].round) for each in (now.first, now.second)] == [
        (StageName.HEEL_TURN, 3)
    ] * 2


def test_of_a_piece_written_by_hand_too():
    made = made_of(
        'name = "hat"\npattern = """\nCO 24. Join in the round.\nBrim\nRnds 1-3: *k2, p2; rep from * to end.\n'
        "Body\nRnds 1-4: knit.\nCrown\nRnd 1: *k2tog; rep from * to end.\nCut yarn. Draw tail through remaining sts.\n"
        '"""\n[swatch]\nstitches = 20\nrounds = 28\n'
    )
    plan = made.plan

    for name in ("cast-on", "brim", "body"):
        knitter = standing(plan, plan.rows[-1])
        knitter.say(RippedBack(stage=name))
        knitter.say(Yes())
        row = plan.rows[knitter.progress.now.first.row_index]
        assert row == next(row for row in plan.rows if str(row.stage) == name)
