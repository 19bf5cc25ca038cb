"""An independent model of the fabric, built from the plan's JSON with a graph library, agrees with the proof."""

import pytest
from hypothesis import given, settings

from plans.json_form import as_json
from plans.making import make_plan
from plans.proof import prove
from tests.plans.damages import all_damages
from tests.plans.graph_oracle import Oracle, Unknittable
from tests.plans.made_up_wishes import wishes
from tests.strategies import HEELS, SHARED, adult, practice, varied


def _agrees(plan):
    oracle = Oracle(as_json(plan)).knit()

    assert [row.stitches_after for row in plan.rows] == oracle.counts
    assert not oracle.worked_not_once()
    assert oracle.is_one_way()
    assert len(oracle.fastened | oracle.grafted | oracle.gathered) >= 2
    if plan.construction.increase != "kfb":
        columns = plan.around + (plan.cast_on if oracle.heel_last else 0) + (2 * plan.calf.pairs if plan.calf else 0)
        columns = plan.closing or columns
        assert [columns, columns] == [oracle.columns(1), oracle.columns(2)]


@pytest.mark.parametrize(("field", "name", "needles", "alone"), SHARED)
def test_the_oracle_agrees_on_every_construction_on_any_needles(field, name, needles, alone):
    _agrees(varied(field, name, needles, alone=alone))


@pytest.mark.parametrize("heel", HEELS)
def test_the_oracle_agrees_on_an_adult_pair(heel):
    _agrees(adult(heel))


@pytest.mark.parametrize("examples", [25, pytest.param(2000, marks=pytest.mark.nightly)])
def test_the_oracle_agrees_on_whatever_is_made(examples):
    agreed = []

    @given(wishes())
    @settings(max_examples=examples)
    def agree(wished):
        made = make_plan(wished)
        if not isinstance(made, tuple):
            _agrees(made.plan)
            agreed.append(made.plan.around)

    agree()

    assert len(agreed) > examples // 10


@pytest.mark.parametrize("heel", HEELS)
def test_what_the_oracle_cannot_knit_the_proof_refuses_too(heel):
    refused = 0
    for damage in list(all_damages(practice(heel)))[::11]:
        try:
            _knits_alone(damage.plan)
        except Unknittable:
            refused += 1
            assert prove(damage.plan)

    assert refused > 100


def _knits_alone(plan):
    oracle = Oracle(as_json(plan)).knit()
    if oracle.worked_not_once():
        raise Unknittable(None, "a loop hangs open")
