"""Every single damage to a practice plan is refused, and the damaged row or the next is named."""

from collections import Counter

import pytest

from plans.pattern import BindOff, Heel
from plans.proof import prove
from plans.proof.sayings import PROOF_SAYINGS
from tests.plans.damages import Damage, all_damages
from tests.strategies import practice

KINDS = {
    "socks swapped", "halves swapped", "yarns swapped", "facing flipped", "turn lost", "turn added",
    "count one more", "count one less", "round one more", "round one less", "stage altered", "act lost",
    "act added", "acts exchanged", "turned the same way twice", "times one more", "times one less", "wrap left",
    "wrap invented", "double left", "double invented", "increase dropped", "operation dropped",
    "increase leans the wrong way", "operation mistaken", "increase moved", "row dropped", "row doubled",
    "rows exchanged", "index altered", "stage list altered", "stage dropped", "number altered", "measure altered",
    "needles altered",
}  # fmt: skip
_MARK = {Heel.WRAPPED: "double left", Heel.GERMAN: "wrap left"}


def _where(damage: Damage) -> str:
    return f"{damage.kind} at {sorted(damage.rows)}"


def _named_rightly(damage: Damage) -> bool:
    problems = prove(damage.plan)
    if not problems:
        return False
    if not damage.rows:
        return True
    return problems[0].where in {f"row {place}" for place in damage.rows}


@pytest.mark.parametrize("heel", [Heel.WRAPPED, pytest.param(Heel.GERMAN, marks=pytest.mark.nightly)])
def test_every_single_damage_at_every_place_is_refused_and_named(heel):
    done: Counter[str] = Counter()
    missed = []
    for damage in all_damages(practice(heel)):
        done[damage.kind] += 1
        if not _named_rightly(damage):
            missed.append(_where(damage))
    print(f"\n{heel}: {done.total()} damages, {len(missed)} missed")
    for kind, number in sorted(done.items()):
        print(f"  {number:5} {kind}")

    assert not missed
    assert KINDS - {_MARK[heel]} == set(done)


@pytest.mark.parametrize("bind_off", [BindOff.SEWN, BindOff.YARN_OVER])
def test_every_damage_to_the_other_bind_offs_is_refused_and_named(bind_off):
    plan = practice(Heel.WRAPPED, bind_off)
    end = frozenset(range(plan.stages[-1].first_row - 2, len(plan.rows) + 1))
    missed = [_where(damage) for damage in all_damages(plan) if damage.rows & end and not _named_rightly(damage)]

    assert not missed


def test_problems_are_registered_with_the_values_they_carry():
    for damage in all_damages(practice()):
        if damage.rows <= {5, 6} or 100 in damage.rows:
            for problem in prove(damage.plan):
                assert PROOF_SAYINGS[problem.key] == {name for name, _ in problem.values}
