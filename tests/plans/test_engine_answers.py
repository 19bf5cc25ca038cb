"""Answers that change nothing."""

import pytest

from plans.conversation import GrainSet, HowFar, HowMany, Mark, Marks, Next, Reply, WhatNext, WhereAmI
from plans.pattern import Heel, StageName
from tests.plans.knitter import Knitter, shown
from tests.strategies import practice

TURN_ROWS = [
    # row in hand, marks on her right and left as the row faces her, bare middle: after row r, h - r (derived)
    (1, 0, 0, 12), (2, 1, 0, 11), (3, 1, 1, 10), (4, 2, 1, 9),
    (5, 2, 2, 8), (6, 3, 2, 7), (7, 3, 3, 6), (8, 4, 3, 5),
]  # fmt: skip


def values(said: Reply) -> dict[str, object]:
    return dict(said.values)


@pytest.mark.parametrize(("row", "right", "left", "unmarked"), TURN_ROWS)
@pytest.mark.parametrize("sock", [1, 2])
def test_in_the_turn_wraps_on_each_side_and_the_middle_are_told(
    sock: int, row: int, right: int, left: int, unmarked: int
):
    knitter = Knitter(practice()).knits_to(StageName.HEEL_TURN, 1)
    knitter = knitter.knits_to(StageName.HEEL_TURN, 2, sock) if row > 1 else past_the_fronts(knitter, sock)
    heel = values(knitter.knits_to(StageName.HEEL_TURN, row, sock).say(WhereAmI()))["heel"]

    assert shown(heel) == f"turn-wraps(on_right {right}; on_left {left}; unmarked {unmarked})"


def past_the_fronts(knitter: Knitter, sock: int) -> Knitter:
    knitter.say(Next())
    return knitter if sock == 2 else knitter.knits_to(StageName.HEEL_TURN, 1, 1)


def test_german_doubles_stand_where_wraps_would():
    """Each turn's double stitch is made at the start of the following row: it counts once that is done."""
    knitter = Knitter(practice(Heel.GERMAN)).knits_to(StageName.HEEL_TURN, 4)
    knitter.happens(GrainSet(grain="group"))
    at_row = values(knitter.say(WhereAmI()))["heel"]
    knitter.say(Next())

    assert shown(at_row) == "turn-doubles(on_right 1; on_left 1; unmarked 10)"
    assert shown(values(knitter.say(WhereAmI()))["heel"]) == "turn-doubles(on_right 2; on_left 1; unmarked 9)"


FLAP_ROWS = [(1, 6, 6), (2, 5, 6), (3, 5, 5), (4, 4, 5), (7, 3, 3), (12, 0, 1), (13, 0, 0)]


@pytest.mark.parametrize(("row", "right", "left"), FLAP_ROWS)
def test_in_the_flap_the_gusset_stitches_to_go_are_told(row: int, right: int, left: int):
    knitter = Knitter(practice()).knits_to(StageName.HEEL_FLAP, row, 1)
    heel = values(knitter.say(WhereAmI()))["heel"]

    assert shown(heel).endswith(f"flap-gussets(on_right {right}; on_left {left})")


def test_wraps_not_yet_lifted_are_told_in_the_flap_too():
    knitter = Knitter(practice()).knits_to(StageName.HEEL_FLAP, 2)
    heel = values(knitter.say(WhereAmI()))["heel"]

    assert shown(heel) == (
        "turn-wraps(on_right 0; on_left 4; unmarked 8) flap-gussets(on_right 5; on_left 6)"
    )


def test_where_am_i_tells_sock_half_stage_round_and_counts():
    knitter = Knitter(practice(), "half").knits_to(StageName.GUSSET, 5, 2)
    knitter.say(Next())
    found = values(knitter.say(WhereAmI()))

    assert shown(found["where"]) == "where-half(half half-back; sock sock-second)"
    assert (found["stage"], found["round"], found["of"]) == (Reply.of("stage-gusset"), 5, 12)
    assert shown(found["counts"]).endswith("before 16; after 18)")
    assert found["heel"] == ()
    assert found["call"] == knitter.call


def test_where_am_i_tells_both_socks_in_one_where_they_agree():
    knitter = Knitter(practice()).knits_to(StageName.GUSSET, 6)

    assert shown(values(knitter.say(WhereAmI()))["counts"]) == (
        "half-counts(where where-side(half half-front); before 12; after 12) "
        "half-counts(where where-side(half half-back); before 18; after 18)"
    )


def test_how_many_follows_the_row_along():
    knitter = Knitter(practice(), "group").knits_to(StageName.TOE, 4)
    found = []
    for _ in range(5):
        said = values(knitter.say(HowMany()))
        found.append((said["now"], said["after"], said["to_go"]))
        knitter.say(Next())

    assert found == [(6, 6, 6), (6, 7, 5), (7, 7, 5), (7, 8, 1), (8, 8, 1)]


def test_how_far_counts_rounds_and_the_heel_rows_ahead():
    knitter = Knitter(practice()).knits_to(StageName.FOOT, 2)
    leg, cuff = (max(row.round for row in practice().rows if row.stage is stage) for stage in (
        StageName.LEG, StageName.CUFF))  # fmt: skip
    heel_front = bind_off = 1

    assert shown(knitter.say(HowFar())) == (
        f"how-far(stage stage-foot; rounds 3; in_sock {3 + 12 + heel_front + leg + cuff + bind_off}; "
        "heels heel-rows-ahead(rows 42))"
    )


def test_how_far_in_a_heel_counts_its_rows():
    knitter = Knitter(practice()).knits_to(StageName.HEEL_FLAP, 4, 2)
    said = values(knitter.say(HowFar()))

    assert (said["rows"], shown(said["heels"])) == (10, "heel-rows-ahead(rows 31)")


def test_how_far_past_the_heels_does_not_mention_them():
    assert values(Knitter(practice()).knits_to(StageName.LEG, 2).say(HowFar()))["heels"] == ()


def test_what_comes_after_is_what_the_following_next_calls():
    knitter = Knitter(practice())
    while not knitter.finished:
        following = values(knitter.say(WhatNext()))["call"]
        assert following == knitter.say(Next())


def test_questions_at_the_end_say_that_it_is_finished():
    knitter = Knitter(practice(), "round")
    while not knitter.finished:
        knitter.say(Next())

    assert {"finished-already"} == {
        knitter.say(command).key for command in (WhereAmI(), HowMany(), HowFar(), WhatNext())
    }


def test_marks_are_read_in_order_with_their_places():
    knitter = Knitter(practice()).knits_to(StageName.TOE, 3)
    empty = knitter.say(Marks()).key
    numbers = [shown(knitter.say(Mark()))]
    numbers.append(shown(knitter.knits_to(StageName.HEEL_FLAP, 3, 1).say(Mark())))

    assert (empty, numbers) == ("no-marks", ["marked(number 1)", "marked(number 2)"])
    front, back = (f"where where-half(half half-{half}; sock sock-first)" for half in ("front", "back"))
    assert shown(knitter.say(Marks())) == (
        f"marks(marks mark(number 1; stage stage-toe; round 3; of 8; {front}) "
        f"mark(number 2; stage stage-heel-flap; round 3; of 13; {back}))"
    )


def test_socks_go_by_the_names_in_the_plan():
    plan = practice().model_copy(update={"socks": ("Left", "second")})
    knitter = Knitter(plan, "half").knits_to(StageName.TOE, 2)
    knitter.say(Next())
    back = values(knitter.say(HowMany()))["where"]
    knitter.say(Next())
    knitter.say(Next())

    assert "sock-second" in shown(back)
    assert "sock-named(name Left)" in shown(values(knitter.say(HowMany()))["where"])
