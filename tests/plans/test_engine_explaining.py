"""How the step in hand is worked."""

import pytest

from plans.conversation import Explain, Next
from plans.engine.courses import course
from plans.engine.places import span
from plans.pattern import Heel, Plan, StageName
from plans.stitches import Op
from tests.plans.knitter import Knitter, shown
from tests.plans.written.pieces import COWL, made
from tests.strategies import CHOICES, practice, varied


def explained(knitter: Knitter) -> list[str]:
    """Keys of what is explained now."""
    reply = knitter.say(Explain())
    assert "explanation" == reply.key, shown(reply)
    return shown(dict(reply.values)["how"]).split()


@pytest.mark.parametrize(("stage", "number", "keys"), [
    (StageName.CAST_ON, 1, ["explain-closed-toe"]),
    (StageName.TOE, 2, ["explain-m1r", "explain-m1l"]),
    (StageName.HEEL_TURN, 2, ["explain-wrap-turn"]),
    (StageName.HEEL_FLAP, 1, ["explain-with-wraps", "explain-ssk"]),
    (StageName.HEEL_FLAP, 3, ["explain-sl-wyib", "explain-ssk"]),
    (StageName.LEG, 1, ["explain-k2tog-strand", "explain-ssk-strand"]),
    (StageName.BIND_OFF, 1, ["explain-bind-off-together"]),
])  # fmt: skip
def test_each_technique_of_the_step_is_told_once_in_its_order(stage: StageName, number: int, keys: list[str]):
    knitter = Knitter(practice()).knits_to(stage, number)

    assert keys == explained(knitter)


def test_doubles_are_made_and_worked_in_their_own_way():
    knitter = Knitter(practice(Heel.GERMAN)).knits_to(StageName.HEEL_TURN, 2)
    assert ["explain-ds"] == explained(knitter)

    knitter.knits_to(StageName.HEEL_FLAP, 1)
    assert "explain-with-doubles" in explained(knitter)


def test_acts_are_explained_where_their_name_is_not_enough():
    knitter = Knitter(practice())
    keys = explained(knitter)
    knitter.say(Next())

    assert (["explain-prepare-the-tips"], ["explain-secure-the-tail"]) == (keys, explained(knitter))


def test_plain_rounds_need_none_and_nothing_moves():
    knitter = Knitter(practice()).knits_to(StageName.FOOT, 2)
    before = knitter.progress

    assert "nothing-to-explain" == knitter.say(Explain()).key
    assert before == knitter.progress


def test_after_the_end_there_is_nothing_in_hand():
    knitter = Knitter(practice())
    while not knitter.finished:
        knitter.say(Next())

    assert "finished-already" == knitter.say(Explain()).key


def test_a_piece_written_by_hand_is_cast_on_and_bound_off_as_usual():
    knitter = Knitter(made(COWL))
    told: set[str] = set()
    while not knitter.finished:
        told |= set(shown(knitter.say(Explain())).replace("explanation(how ", "").strip(")").split())
        knitter.say(Next())

    assert {"explain-co", "explain-bo"} <= told
    assert not told & {"explain-closed-toe", "explain-bind-off-together"}


def operations_in_hand(plan: Plan, knitter: Knitter) -> set[Op]:
    the_course = course(plan)
    in_hand = span(plan, knitter.progress.now, knitter.progress.grain)
    return {group.op for at in in_hand.positions for group in the_course.steps[at].groups}


@pytest.mark.parametrize(("field", "name"), CHOICES)
def test_no_technique_of_any_construction_stays_unexplained(field: str, name: str):
    plan = varied(field, name)
    knitter, unexplained = Knitter(plan), set[Op]()
    while not knitter.finished:
        ops = operations_in_hand(plan, knitter) - {Op.K, Op.P, Op.CO, Op.BO}
        told = shown(knitter.say(Explain()))
        unexplained |= {op for op in ops if f"explain-{op.value.replace('_', '-')}" not in told}
        knitter.say(Next())

    assert set() == unexplained
