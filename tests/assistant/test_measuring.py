"""While knitting, typed as spoken: the tape, the scales and a new ball, journalled and taken up again."""

from pathlib import Path

import pytest

from assistant.journal import Journal
from assistant.journal_plans import kept_plan
from plans.conversation import BallBegun, Replanned, Weighed
from plans.json_form import plan_id
from plans.proof import prove
from tests.assistant.running import HERS, Machine
from tests.assistant.test_verbs_knit import TYPED, entries, kinds

TO_ROUND_13 = "next\n" * 60
YARN = ("--skein", "50g", "--skein-length", "210m", "--skeins", "2")


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    made = Machine(tmp_path)
    made.run("plan", *HERS, *YARN, "--out", "hers.toml")
    return made


def test_a_foot_measured_is_planned_anew_after_a_yes_and_taken_up_again(machine: Machine) -> None:
    said = machine.run("knit", "hers.toml", *TYPED, typed=f"{TO_ROUND_13}the foot is nine centimetres\nyes\nhow far\n")

    assert (0, "") == (said.code, said.err)
    assert "twenty-two rounds of foot instead of thirty-seven" in said.lines[-3]
    assert said.lines[-2].startswith("Taken. Foot, round thirteen of twenty-two.")
    assert said.lines[-1].startswith("Ten rounds to go in the foot")
    resumed = machine.run("knit", *TYPED, typed="undo\nhow far\n")
    assert "round thirteen of twenty-two" in resumed.lines[0]
    assert resumed.lines[-1].startswith("Twenty-five rounds to go in the foot")


def test_the_new_plan_stands_in_the_journal_by_its_hash_and_is_proven(machine: Machine) -> None:
    machine.run("knit", "hers.toml", *TYPED, typed=f"{TO_ROUND_13}the foot is nine centimetres\nyes\n")
    [event] = [entry.event for entry in entries(machine) if isinstance(entry.event, Replanned)]

    with Journal.read(machine.journal) as journal:
        plan = kept_plan(journal, event.now.plan)
    assert plan is not None
    assert plan_id(plan) == event.now.plan
    assert () == prove(plan)


def test_questions_answered_in_advance_take_the_new_plan_at_once(machine: Machine) -> None:
    typed = f"{TO_ROUND_13}the foot measures three and a half inches\n"
    said = machine.run("knit", "hers.toml", *TYPED, "--yes", typed=typed)

    assert said.lines[-1].startswith("Taken. Foot, round thirteen of ")
    assert 1 == kinds(machine).count("replanned")


def test_after_a_no_and_after_an_unlikely_measure_the_plan_stays(machine: Machine) -> None:
    typed = f"{TO_ROUND_13}the foot is nine centimetres\nno\nthe foot is eighteen centimetres\nhow far\n"
    said = machine.run("knit", "hers.toml", *TYPED, typed=typed)

    assert "replanned" not in kinds(machine)
    assert "measure again" in said.lines[-2]
    assert said.lines[-1].startswith("Twenty-five rounds to go in the foot")


def test_the_ball_weighed_and_a_new_one_begun_are_written_down(machine: Machine) -> None:
    typed = f"{TO_ROUND_13}forty grams left\nyarn left ten grams on the second sock\nnew ball for the second sock\n"
    said = machine.run("knit", "hers.toml", *TYPED, typed=typed)
    events = [entry.event for entry in entries(machine)]

    assert [(40, (1,)), (10, (2,))] == [(each.grams, each.socks) for each in events if isinstance(each, Weighed)]
    assert [2] == [each.sock for each in events if isinstance(each, BallBegun)]
    assert "with the bind-off kept back" in said.lines[-2]
    assert said.lines[-1].startswith("A new ball for the second sock. Join it here")
