"""A chart on every needle arrangement: proven on any foot, printed and read again, called to the end."""

from collections import Counter

import pytest
from hypothesis import HealthCheck, given, settings

from plans.charts import rows_of
from plans.conversation import Next
from plans.json_form import plan_id
from plans.making import Made, make_plan
from plans.opening import made_of
from plans.pattern import Chart, StageName
from plans.wishes import Swatch, Wishes
from plans.written.printing import print_pattern
from tests.plans.knitter import Knitter
from tests.plans.made_up_wishes import feet, swatches
from tests.plans.test_constructions import CAUSES
from tests.strategies import ARRANGEMENTS

BOTH = (StageName.FOOT, StageName.LEG)
CHARTS = {
    "lace": Chart(name="lace", rows=rows_of("||||||\n|O^O||"), on="front", stages=BOTH),
    "colours": Chart(name="colours", rows=rows_of("MMMC\nMMCC\nMCCC"), on="around", stages=BOTH),
}
ON_ANY = tuple((name, *arrangement) for name in CHARTS for arrangement in ARRANGEMENTS)
TWICE_AND_AT_NIGHT = [*((*each, 2) for each in ON_ANY),
                      *(pytest.param(*each, 500, marks=pytest.mark.nightly) for each in ON_ANY)]  # fmt: skip


@pytest.mark.parametrize(("name", "needles", "alone", "examples"), TWICE_AND_AT_NIGHT)
def test_a_chart_on_any_needles_is_proven_on_any_foot_or_too_wide_for_it(name, needles, alone, examples):
    causes: Counter[str] = Counter()

    @given(swatches(), feet())
    @settings(max_examples=examples, derandomize=True, database=None, suppress_health_check=[HealthCheck.too_slow])
    def made(swatch, foot):
        lying = {"needles": needles, "one_at_a_time": alone, "chart": CHARTS[name]}
        found = make_plan(Wishes(swatch=swatch, **foot, **lying))
        causes.update(["made"] if isinstance(found, Made) else {problem.key for problem in found})
        wide = [dict(each.values) for each in found if each.key == "chart-too-wide"] if isinstance(found, tuple) else []
        assert all(values["found"] > values["wanted"] for values in wide)

    made()
    print(f"\n{name} on {needles}, {'one at a time' if alone else 'both at once'}: {dict(causes)}")

    assert set(causes) <= CAUSES | {"chart-too-wide"}
    assert causes["made"]


@pytest.mark.parametrize(("name", "needles", "alone"), ON_ANY)
def test_a_pair_with_a_chart_is_called_to_its_end_and_comes_back_from_its_pattern(name, needles, alone):
    swatch = Swatch(stitches=22, rounds=30)
    made = make_plan(
        Wishes(swatch=swatch, practice=True, needles=needles, one_at_a_time=alone, chart=CHARTS[name])
    )
    assert isinstance(made, Made), made
    knitter = Knitter(made.plan)
    while not knitter.finished:
        knitter.say(Next())
    read = made_of(print_pattern(made.plan))

    assert isinstance(read, Made)
    assert plan_id(read.plan) == plan_id(made.plan)
