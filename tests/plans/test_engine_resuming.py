"""What is said when she comes back."""

import pytest
from hypothesis import given, settings

from plans.conversation import Next
from plans.engine.courses import course
from plans.engine.resuming import resume
from plans.pattern import Half, Heel, Plan, Row, StageName
from plans.stitches import Op
from tests.plans.knitter import Knitter, assert_registered, shown
from tests.strategies import Pair, adult, pairs, practice

EDGE, GAP, POINT, CUT = "yarn-at-the-edge", "yarn-in-the-gap", "yarn-at-the-working-point", "yarn-cut"


def told(knitter: Knitter) -> dict[str, object]:
    said = resume(knitter.plan, knitter.progress)
    assert_registered(said)
    return dict(said.values)


def yarns(knitter: Knitter) -> dict[str, str]:
    return {dict(part.values)["sock"].key: part.key for part in told(knitter)["yarns"]}


@pytest.mark.parametrize(
    ("halves_done", "first", "second", "marker"),
    [
        # where each yarn hangs after each quarter of a round (derived from the order on the needle)
        (0, EDGE, GAP, "marker-faces-you"),
        (1, GAP, GAP, "marker-faces-you"),
        (2, GAP, EDGE, "marker-hidden"),
        (3, GAP, GAP, "marker-hidden"),
        (4, EDGE, GAP, "marker-faces-you"),
    ],
)
def test_yarns_and_marker_through_a_round(halves_done: int, first: str, second: str, marker: str):
    knitter = Knitter(practice(), "half").knits_to(StageName.FOOT, 2)
    for _ in range(halves_done):
        knitter.say(Next())

    assert yarns(knitter) == {"sock-first": first, "sock-second": second}
    assert told(knitter)["marker"].key == marker


def test_inside_a_half_its_yarn_hangs_at_the_working_point():
    knitter = Knitter(practice(), "group").knits_to(StageName.TOE, 4)
    knitter.say(Next())

    assert yarns(knitter) == {"sock-first": POINT, "sock-second": GAP}


@pytest.mark.parametrize(
    ("sock", "row", "first", "second"),
    [(2, 2, GAP, POINT), (2, 8, GAP, POINT), (1, 2, POINT, GAP), (1, 8, POINT, GAP)],
)
def test_in_a_heel_row_the_yarn_hangs_at_the_working_point(sock: int, row: int, first: str, second: str):
    knitter = Knitter(practice()).knits_to(StageName.HEEL_TURN, row, sock)

    assert yarns(knitter) == {"sock-first": first, "sock-second": second}
    assert told(knitter)["marker"].key == "marker-hidden"


def test_between_the_heels_both_yarns_hang_in_the_gap():
    knitter = Knitter(practice()).knits_to(StageName.HEEL_FLAP, 13, 2)
    knitter.say(Next())

    assert yarns(knitter) == {"sock-first": GAP, "sock-second": GAP}


def test_before_the_cast_on_there_is_neither_yarn_nor_marker_nor_count():
    found = told(Knitter(practice()))

    assert (found["yarns"], found["check"], found["marker"].key) == ((), (), "marker-not-yet")


def test_a_yarn_that_was_cut_is_said_to_be():
    knitter = Knitter(practice()).knits_to(StageName.BIND_OFF)
    while "sock-first" not in shown(knitter.call) or "op-fasten" not in shown(knitter.call):
        knitter.say(Next())

    assert yarns(knitter) == {"sock-first": GAP, "sock-second": CUT}


def test_one_count_is_given_to_check_by_touch():
    knitter = Knitter(practice()).knits_to(StageName.GUSSET, 4)

    assert shown(told(knitter)["check"]) == (
        "check-count(where where-half(half half-front; sock sock-first); count 12)"
    )


@pytest.mark.parametrize("heel", [Heel.WRAPPED, Heel.GERMAN])
def test_in_the_turn_it_is_the_bare_middle(heel: Heel):
    knitter = Knitter(practice(heel)).knits_to(StageName.HEEL_TURN, 6, 1)
    middle = {Heel.WRAPPED: 7, Heel.GERMAN: 8}[heel]

    assert shown(told(knitter)["check"]) == (
        f"check-middle(where where-half(half half-back; sock sock-first); count {middle})"
    )


def test_sock_half_stage_round_and_step_are_said():
    knitter = Knitter(adult()).knits_to(StageName.HEEL_FLAP, 5, 2)
    found = told(knitter)

    assert found["pair"] == adult().name
    assert shown(found["where"]) == "where-half(half half-back; sock sock-second)"
    assert (found["stage"].key, found["round"], found["of"]) == ("stage-heel-flap", 5, 33)
    assert found["call"] == knitter.call


def test_a_finished_pair_is_said_to_be():
    knitter = Knitter(practice(), "round")
    while not knitter.finished:
        knitter.say(Next())

    assert shown(resume(knitter.plan, knitter.progress)) == f"resume-finished(pair {practice().name})"


class YarnOnTheNeedle:
    """Follows each yarn from row to row by the order on the needle: its half's end, and where that lies."""

    def __init__(self) -> None:
        self.at: dict[int, str] = {}

    def after_row(self, sock: int, half: Half, *, cast_on: bool) -> None:
        outer = (sock == 1) == (half is Half.BACK)
        self.at[sock] = EDGE if outer else GAP
        if cast_on:
            self.at[sock] = EDGE if sock == 1 else GAP


@settings(max_examples=10)
@given(pairs())
def test_yarns_hang_where_the_order_on_the_needle_puts_them(pair: Pair):
    plan, needle = pair.plan, YarnOnTheNeedle()
    knitter, last = Knitter(plan, "half"), -1
    while not knitter.finished:
        row = course(plan).row(knitter.at)
        for index in range(max(0, last), row.index):
            before = plan.rows[index]
            if not _frees(before):
                needle.after_row(before.sock, before.half, cast_on=before.stage is StageName.CAST_ON)
        last = row.index
        for name, where in yarns(knitter).items():
            sock = 1 if name == "sock-first" else 2
            inside = _inside(plan, knitter.at) and sock == row.sock and not _frees(row)
            if where != CUT:
                assert where == (POINT if inside else needle.at[sock])
        knitter.say(Next())


def _frees(row: Row) -> bool:
    """Whether a row puts the front of a toe of short rows on the needle; its yarn waits at the back."""
    return row.stage is StageName.TOE and any(group.op is Op.FREE for group in row.ops)


def _inside(plan: Plan, at: int) -> bool:
    """Stitches of this row lie behind, or the row before lay on the same half of the same sock."""
    prepared = course(plan)
    row = prepared.row(at)
    begun = any(step.groups for step in prepared.steps[prepared.starts[row.index] : at])
    before = plan.rows[row.index - 1]
    goes_on = row.index > 0 and not _frees(before)
    return begun or (goes_on and (before.sock, before.half) == (row.sock, row.half))
