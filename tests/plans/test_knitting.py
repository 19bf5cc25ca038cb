"""One row on real loops: what is taken, what is made, where the yarn hangs, and what goes wrong."""

import pytest

from plans.pattern import Facing, Group, Half, Row, StageName
from plans.proof.knitting import knit_row
from plans.proof.loops import Needle
from plans.stitches import Op

RS, WS = Facing.RS, Facing.WS


def row(*ops, sock=1, half=Half.FRONT, yarn=None, stage=StageName.TOE):
    """A row whose labels do not matter here."""
    groups = tuple(op if isinstance(op, Group) else Group(op=op[0], times=op[1]) for op in ops)
    return Row(
        index=0, stage=stage, round=1, sock=sock, half=half, facing=RS, yarn=yarn or sock, ops=groups,
        turn_after=False, stitches_after=0,
    )  # fmt: skip


@pytest.fixture
def needle():
    """Both socks cast on, four loops a tip."""
    cast = Needle()
    for sock in (2, 1):
        for half in Half:
            knit_row(cast, row((Op.CO, 4), sock=sock, half=half), RS)
    return cast


def keys(came):
    return [key for key, _ in came.faults]


def lies(needle):
    """Sock and half of each loop from tip A to tip B."""
    return "".join("FfBb"[(loop & 2) + (loop & 1)] for loop in needle.loops)


def test_the_cast_on_lies_on_both_tips_the_first_sock_outermost(needle):
    assert lies(needle) == "FFFFffffbbbbBBBB"
    assert needle.counts == [4, 4, 4, 4]


def test_a_row_takes_from_one_tip_and_fills_the_other(needle):
    came = knit_row(needle, row((Op.K, 4)), RS)

    assert (came.whole, came.after, came.beyond, came.faults) == (True, 4, 0, ())
    assert lies(needle) == "ffffbbbbBBBBFFFF"


def test_a_row_of_the_other_sock_finds_other_loops(needle):
    came = knit_row(needle, row((Op.K, 4), sock=2), RS)

    assert came.stopped
    assert came.faults == (("wrong-loops-at-tip", {"sock": 2, "half": "front", "at_sock": 1, "at_half": "front"}),)


def test_a_row_longer_than_its_half_runs_out_of_loops(needle):
    came = knit_row(needle, row((Op.K, 5)), RS)

    assert came.stopped
    assert keys(came) == ["too-few-loops"]


def test_a_row_on_an_empty_needle_runs_out_of_loops():
    assert keys(knit_row(Needle(), row((Op.K, 1)), RS)) == ["yarn-of-other-sock", "too-few-loops"]


def test_a_shorter_row_leaves_loops_ahead(needle):
    came = knit_row(needle, row((Op.K, 3)), RS)

    assert (came.whole, came.after, came.beyond) == (False, 4, 1)


def test_the_wrong_ball_in_the_gap_is_noticed(needle):
    assert keys(knit_row(needle, row((Op.K, 4), yarn=2), RS)) == ["yarn-of-other-sock"]


def test_a_row_back_starts_where_the_yarn_hangs(needle):
    knit_row(needle, row((Op.K, 3)), RS)

    assert keys(knit_row(needle, row((Op.P, 2)), WS)) == []


def test_a_row_forward_after_a_row_left_early_finds_its_yarn_at_the_loop_last_worked(needle):
    knit_row(needle, row((Op.K, 3)), RS)

    assert keys(knit_row(needle, row((Op.K, 1)), RS)) == []


def test_turning_back_without_having_worked_leaves_the_yarn_elsewhere(needle):
    knit_row(needle, row((Op.K, 4)), RS)
    came = knit_row(needle, row((Op.P, 4), sock=1, half=Half.BACK), WS)

    assert came.stopped
    knit_row(needle, row((Op.K, 4), sock=2), RS)
    assert "yarn-elsewhere" in keys(knit_row(needle, row((Op.P, 4), sock=1), WS))


def test_a_wrapped_loop_must_be_lifted_and_is_lifted_once(needle):
    knit_row(needle, row((Op.K, 3), (Op.WRAP_TURN, 1)), RS)
    knit_row(needle, row((Op.P, 3)), WS)
    lift = Group(op=Op.K, times=1, wrap=True)
    right = knit_row(needle, row((Op.K, 3), lift), RS)

    assert right.faults == ()
    assert right.whole


def test_a_wrap_is_noticed_when_it_stays(needle):
    knit_row(needle, row((Op.K, 3), (Op.WRAP_TURN, 1)), RS)
    knit_row(needle, row((Op.P, 3)), WS)

    assert knit_row(needle, row((Op.K, 4)), RS).faults == (("wrap-not-lifted", {"loops": 1}),)


@pytest.mark.parametrize(("mark", "key"), [("wrap", "no-wrap-there"), ("double", "no-double-there")])
@pytest.mark.parametrize("op", [Op.K, Op.M1L, Op.CO])
def test_a_mark_is_noticed_where_there_is_none(needle, mark, key, op):
    came = knit_row(needle, row(Group(op=op, times=1, **{mark: True})), RS)

    assert key in keys(came)


def test_a_wrapped_row_does_not_count_the_wrapped_loop_as_beyond(needle):
    assert knit_row(needle, row((Op.K, 2), (Op.WRAP_TURN, 1)), RS).beyond == 1


def test_a_double_stitch_counts_as_one_and_must_be_joined(needle):
    knit_row(needle, row((Op.K, 3)), RS)
    came = knit_row(needle, row((Op.DS, 1), (Op.P, 2)), WS)
    missed = knit_row(needle, row((Op.K, 4)), RS)

    assert (came.faults, came.after) == ((), 4)
    assert missed.faults == (("double-not-joined", {"loops": 1}),)


@pytest.mark.parametrize("ops", [((Op.DS, 1), (Op.K, 3)), ((Op.K, 1), (Op.DS, 1))])
def test_a_double_stitch_is_the_first_after_a_turn(needle, ops):
    assert "mark-misplaced" in keys(knit_row(needle, row(*ops), RS))


def test_only_one_loop_is_wrapped_at_a_time(needle):
    assert "mark-misplaced" in keys(knit_row(needle, row((Op.K, 2), (Op.WRAP_TURN, 2)), RS))


def test_there_must_be_a_loop_to_wrap(needle):
    came = knit_row(needle, row((Op.K, 4), (Op.WRAP_TURN, 1)), RS)

    assert came.stopped
    assert keys(came) == ["too-few-loops"]


@pytest.mark.parametrize(("op", "after"), [(Op.K2TOG, 3), (Op.S2KP2, 2), (Op.KFB, 5), (Op.YO, 5), (Op.GRAFT_RIB, 2)])
def test_loops_follow_the_algebra(needle, op, after):
    assert knit_row(needle, row((op, 1)), RS).after == after


def test_the_bind_off_passes_the_loop_that_waited_round_the_corner(needle):
    front, back = row((Op.K, 1), (Op.BO, 3)), row((Op.BO, 4), (Op.FASTEN, 1), half=Half.BACK)
    waiting = knit_row(needle, front, RS)
    knit_row(needle, row((Op.K, 1), (Op.BO, 3), sock=2), RS)
    second = knit_row(needle, row((Op.BO, 4), (Op.FASTEN, 1), sock=2, half=Half.BACK), RS)
    first = knit_row(needle, back, RS)

    assert [waiting.after, second.after, first.after] == [1, 0, 0]
    assert not (waiting.faults or second.faults or first.faults)
    assert not needle.loops


def test_nothing_is_passed_over_where_no_loop_waits(needle):
    needle.loops.rotate(4)

    assert "nothing-to-pass-over" in keys(knit_row(needle, row((Op.BO, 1), half=Half.BACK), RS))


def test_a_sock_is_fastened_at_its_last_loop_only(needle):
    assert keys(knit_row(needle, row((Op.FASTEN, 1)), RS)) == ["fastened-too-early"]
