"""The ball on the scales and a new ball: how far it reaches, by the plan's own stitches, and where to join."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.commands import NewBall, YarnLeft
from plans.conversation import BallBegun, Weighed
from plans.engine import begin, decide, evolve, replay
from plans.engine.courses import course
from plans.engine.places import standing_at
from plans.json_form import plan_id
from plans.making import Made, make_plan
from plans.pattern import Half, StageName
from plans.sayings import SAYINGS
from plans.wishes import Swatch, Wishes
from plans.yarn.use import bind_off_rows, use_of


def hers(**changes):
    wishes = {
        "swatch": Swatch(stitches=30, rounds=42), "foot_length": "24.5cm", "ball": "23.7cm", "leg": "15cm",
        "skein": "50g", "skein_length": "200m", "skeins": 2,
    }  # fmt: skip
    found = make_plan(Wishes(**{**wishes, **changes}))
    assert isinstance(found, Made)
    return found.plan


PLAN = hers()


def at_round(plan, stage, number, half=Half.FRONT, sock=1):
    progress = replay(begin(plan).events)
    row = next(row for row in plan.rows if (row.stage, row.round, row.half, row.sock) == (stage, number, half, sock))
    now = standing_at(course(plan), plan_id(plan), course(plan).starts[row.index])
    return progress.model_copy(update={"now": now})


def told(plan, progress, command):
    decision = decide(plan, progress, command)
    assert SAYINGS[decision.reply.key] == dict(decision.reply.values).keys()
    return decision.events, decision.reply.key, dict(decision.reply.values)


def taken_grams(plan, progress, sock=1):
    """What one sock has taken so far by the plan, at 4 m to the gram."""
    end = (progress.now.first if sock == 1 else progress.now.second).row_index
    return use_of(plan).of(row.index for row in plan.rows[:end] if row.sock == sock) / 4000


@pytest.mark.parametrize(("washed", "metres"), [(True, 5), (False, 4)])
def test_the_reserve_is_that_of_the_swatch_washed_or_not(washed, metres):
    plan = hers(swatch=Swatch(stitches=30, rounds=42, washed=washed), ball="26cm")
    _, _, values = told(plan, at_round(plan, StageName.FOOT, 10), NewBall())

    assert metres == values["metres"]


def test_weighing_is_written_down_and_moves_nothing():
    progress = at_round(PLAN, StageName.FOOT, 10)
    events, _, _ = told(PLAN, progress, YarnLeft(grams=40))

    assert events == (Weighed(grams=40, socks=(1,), at=progress.now),)
    assert evolve(progress, events[0]) == progress


def test_enough_is_told_with_what_is_left_over():
    progress = at_round(PLAN, StageName.LEG, 10)
    grams = round(50 - taken_grams(PLAN, progress))
    _, key, values = told(PLAN, progress, YarnLeft(grams=grams))
    rest = use_of(PLAN).of(row.index for row in PLAN.rows if row.sock == 1) / 4000 - taken_grams(PLAN, progress)

    assert key == "yarn-left-enough"
    assert values["metres"] == pytest.approx(4 * grams, abs=4)
    assert values["spare"] == pytest.approx(float(grams - rest), abs=1.5)
    assert values["doubts"] == ()


@given(st.integers(1, 30))
@settings(max_examples=30, deadline=None)
def test_it_reaches_just_as_far_as_told_with_the_bind_off_kept_back(grams):
    """With a ball whose band is not known the geometry alone counts: 4 m to the gram, class 1."""
    plan = hers(skein=None, skein_length=None)
    progress = at_round(plan, StageName.GUSSET, 1)
    _, key, values = told(plan, progress, YarnLeft(grams=grams))
    here, use, mm = progress.now.first.row_index, use_of(plan), grams * 4000
    ahead = [row for row in plan.rows[here:] if row.sock == 1 and row.stage is not StageName.BIND_OFF]
    kept = list(bind_off_rows(plan, 1))
    if key == "yarn-left-enough":
        assert use.of([row.index for row in ahead] + kept) <= mm
        return
    reached = next(row for row in ahead if (f"stage-{row.stage}", row.round) == (values["stage"].key, values["round"]))
    before = [row.index for row in ahead if row.index < reached.index]
    to_its_end = [row.index for row in ahead if (row.stage, row.round) <= (reached.stage, reached.round)]

    assert use.of(before + kept) <= mm or not before
    assert use.of([*before, *to_its_end, *kept]) > mm


def test_what_the_ball_lost_so_far_tells_how_much_she_really_takes():
    """She takes a quarter more than geometry says: the rest of the ball reaches less far."""
    progress = at_round(PLAN, StageName.LEG, 1)
    taken = taken_grams(PLAN, progress)
    assert taken > 15
    loose = round(50 - taken * 5 / 4)
    _, key, values = told(PLAN, progress, YarnLeft(grams=loose))

    assert values["metres"] < 4 * loose * 0.85
    assert values["doubts"] == ()
    assert key in {"yarn-left-enough", "yarn-left-short"}


def test_a_ball_that_lost_far_more_than_was_knitted_is_doubted():
    _, _, values = told(PLAN, at_round(PLAN, StageName.FOOT, 1), YarnLeft(grams=20))

    assert [doubt.key for doubt in values["doubts"]] == ["yarn-lost-otherwise"]
    assert values["metres"] == 80


def test_a_ball_of_unknown_length_is_taken_as_usual_and_said():
    plan = hers(skein=None, skein_length=None, skeins=None)
    _, _, values = told(plan, at_round(plan, StageName.FOOT, 1), YarnLeft(grams=20))

    assert [(doubt.key, dict(doubt.values)) for doubt in values["doubts"]] == [("yarn-taken-as", {"metres": 400})]


def test_more_than_a_ball_weighs_is_not_believed():
    events, key, values = told(PLAN, at_round(PLAN, StageName.FOOT, 1), YarnLeft(grams=90))

    assert (events, key, values) == ((), "yarn-left-too-much", {"grams": 90, "ball": 50})


def test_one_ball_for_the_pair_serves_both_socks():
    plan = hers(skein="100g", skein_length="400m", skeins=1)
    events, _, values = told(plan, at_round(plan, StageName.FOOT, 1), YarnLeft(grams=90))

    assert events[0].socks == (1, 2)
    assert values["whose"].key == "sock-both"


def test_the_leg_that_the_rest_of_a_ball_allows_is_told():
    progress = at_round(PLAN, StageName.LEG, 5)
    _, key, values = told(PLAN, progress, YarnLeft(grams=8))

    assert key == "yarn-left-short"
    assert 0 < values["leg"].tenths_mm < 1500


def test_a_new_ball_is_reckoned_from_where_it_was_begun():
    progress = at_round(PLAN, StageName.LEG, 1)
    for event in decide(PLAN, progress, NewBall()).events:
        progress = evolve(progress, event)
    _, key, values = told(PLAN, progress, YarnLeft(grams=50))

    assert key == "yarn-left-enough"
    assert values["doubts"] == ()
    assert [begun.sock for begun in progress.balls] == [1]


@pytest.mark.parametrize(
    ("at", "sock", "key", "where"),
    [
        ((StageName.FOOT, 5), None, "new-ball-here", (StageName.FOOT, 5, "half-front")),
        ((StageName.FOOT, 5), 2, "new-ball-here", (StageName.FOOT, 5, "half-front")),
        ((StageName.LEG, 5), None, "new-ball", (StageName.LEG, 5, "half-back")),
        ((StageName.LEG, 5, Half.BACK), 1, "new-ball-here", (StageName.LEG, 5, "half-back")),
        ((StageName.FOOT, 5, Half.BACK), 1, "new-ball", (StageName.FOOT, 6, "half-front")),
        ((StageName.HEEL_TURN, 3, Half.BACK), 1, "new-ball", (StageName.LEG, 1, "half-back")),
    ],
)
def test_a_good_place_is_at_a_side_line_not_under_the_foot_nor_in_a_heel(at, sock, key, where):
    progress = at_round(PLAN, *at)
    events, found, values = told(PLAN, progress, NewBall(sock=sock))

    assert found == key
    assert (values["stage"].key, values["round"]) == (f"stage-{where[0]}", where[1])
    assert dict(values["where"].values)["half"].key == where[2]
    assert events == (BallBegun(sock=sock or 1, at=progress.now),)
    assert values["metres"] == -(-use_of(PLAN).of(bind_off_rows(PLAN)) // 1000)


def test_in_the_last_rounds_a_new_ball_is_joined_anywhere():
    last = max(row.round for row in PLAN.rows if row.stage is StageName.CUFF)
    progress = at_round(PLAN, StageName.BIND_OFF, 1)

    assert told(PLAN, progress, NewBall())[1] == "new-ball-anywhere"
    assert told(PLAN, at_round(PLAN, StageName.CUFF, last), NewBall())[1] == "new-ball"


@pytest.mark.parametrize("command", [NewBall(), YarnLeft(grams=10)])
def test_a_finished_pair_needs_no_yarn(command):
    end = standing_at(course(PLAN), plan_id(PLAN), course(PLAN).end)
    progress = replay(begin(PLAN).events).model_copy(update={"now": end})

    assert decide(PLAN, progress, command).reply.key == "finished-already"
