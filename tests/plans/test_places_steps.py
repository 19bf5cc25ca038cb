"""Rows cut into steps."""

from hypothesis import given
from hypothesis import strategies as st

from plans.engine.courses import course
from plans.engine.places import steps
from plans.engine.steps import joined, repeats
from plans.pattern import Act, Facing, Group, Half, Row, StageName
from plans.stitches import Op
from tests.strategies import Pair, pairs

K, P, SL, SSK = Op.K, Op.P, Op.SL_WYIB, Op.SSK


def ops(*parts: tuple[Op, int]) -> tuple[Group, ...]:
    return tuple(Group(op=op, times=times) for op, times in parts)


def row(*acts: Act, worked: tuple[Group, ...] = ()) -> Row:
    return Row(
        index=0, stage=StageName.TOE, round=1, sock=1, half=Half.FRONT, facing=Facing.RS, yarn=1,
        ops=worked, turn_after=False, stitches_after=4, acts=acts,
    )  # fmt: skip


def cut(*parts: tuple[Op, int]) -> list[tuple[str, int]]:
    return [
        (" ".join(f"{group.op.value}{group.times}" for group in groups), times)
        for groups, times in repeats(ops(*parts))
    ]


def test_single_groups_stay_single():
    expected = [("k1", 1), ("m1r1", 1), ("k10", 1), ("m1l1", 1), ("k1", 1)]

    assert expected == cut((K, 1), (Op.M1R, 1), (K, 10), (Op.M1L, 1), (K, 1))


def test_slipped_flap_row_is_a_repeat_and_its_closing_stitches():
    parts = [(SL, 1), (K, 1)] * 15

    assert cut(*parts, (SL, 1), (SSK, 1)) == [("sl_wyib1 k1", 15), ("sl_wyib1", 1), ("ssk1", 1)]


def test_rib_is_one_step():
    assert cut(*[(K, 1), (P, 1)] * 16) == [("k1 p1", 16)]


def test_rib_by_twos_that_begins_with_a_half_is_cut_where_it_repeats():
    expected = [("k1", 1), ("p2 k2", 3), ("p2", 1), ("k1", 1)]

    assert expected == cut((K, 1), *[(P, 2), (K, 2)] * 3, (P, 2), (K, 1))


def test_neighbours_that_are_alike_are_one_group():
    assert cut((K, 2), (K, 3)) == [("k5", 1)]


def test_wrapped_neighbours_are_not_alike():
    groups = (Group(op=K, times=4), Group(op=K, times=3, wrap=True))

    assert [((groups[0],), 1), ((groups[1],), 1)] == list(repeats(groups))


GROUPS = st.builds(
    Group, op=st.sampled_from((K, P, SL, SSK)), times=st.integers(1, 2),
    wrap=st.booleans(), double=st.just(False),
)  # fmt: skip


@given(st.lists(GROUPS, max_size=24).map(tuple))
def test_repeats_written_out_are_the_operations(groups: tuple[Group, ...]):
    written_out = tuple(group for found, times in repeats(groups) for group in found * times)

    assert joined(groups) == joined(written_out)


@given(st.lists(GROUPS, max_size=12).map(tuple), st.integers(2, 5))
def test_a_pattern_repeated_is_never_more_steps_than_groups(groups: tuple[Group, ...], times: int):
    pattern = joined(groups)[:4]

    assert len(repeats(pattern * times)) <= len(joined(pattern * times))


def test_acts_that_stand_alone_are_steps_and_others_belong_to_their_neighbours():
    acts = (Act.LIFELINE, Act.MARKER, Act.CHANGE_YARN, Act.SNUG, Act.PULL_TAIL, Act.TURN_CLOCKWISE)

    found = [
        (step.before, [group.op for group in step.groups], step.after, step.alone)
        for step in steps(row(*acts, worked=ops((K, 1), (P, 3))))
    ]

    assert found == [
        ((Act.LIFELINE,), [], (), True),
        ((Act.MARKER,), [], (), True),
        ((Act.CHANGE_YARN, Act.SNUG), [K], (), False),
        ((), [P], (), False),
        ((), [], (Act.PULL_TAIL, Act.TURN_CLOCKWISE), True),
    ]


def test_yarn_is_changed_before_the_act_it_is_changed_for():
    found = steps(row(Act.CHANGE_YARN, Act.PREPARE_TIPS, worked=ops((Op.CO, 4))))

    assert [step.before for step in found] == [(Act.CHANGE_YARN, Act.PREPARE_TIPS), ()]


def test_a_turn_after_the_stitches_belongs_to_the_last_of_them():
    found = steps(row(Act.TURN, worked=ops((K, 3), (Op.WRAP_TURN, 1))))

    assert [step.after for step in found] == [(), (Act.TURN,)]


def test_a_row_of_nothing_but_an_act_that_never_stands_alone_is_still_a_step():
    (found,) = steps(row(Act.SNUG, Act.TURN))

    assert (found.before, found.after) == ((Act.SNUG,), (Act.TURN,))


@given(pairs())
def test_steps_hold_every_act_and_every_operation_of_their_row_in_order(pair: Pair):
    plan = pair.plan
    for each in plan.rows:
        found = steps(each)
        flat = tuple(group for step in found for group in step.groups * step.times)
        acts = tuple(act for step in found for act in step.acts)

        assert joined(each.ops) == joined(flat)
        assert each.acts == acts


@given(pairs())
def test_a_course_lists_the_steps_of_every_row(pair: Pair):
    plan = pair.plan
    prepared = course(plan)

    for index, each in enumerate(plan.rows):
        start, end = prepared.starts[index : index + 2]
        assert steps(each) == prepared.steps[start:end]
        assert {index} == set(prepared.row_of[start:end])


def test_a_course_is_prepared_once_for_a_plan():
    from tests.strategies import practice

    assert course(practice()) is course(practice())
