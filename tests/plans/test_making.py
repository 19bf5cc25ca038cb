"""Wishes of every size come to a proven pair or to a refusal of the sizes; never to an unproven plan."""

from collections import Counter
from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given, settings

from plans.conversation import Problem
from plans.making import Made, make_plan
from plans.pattern import Toe
from plans.proof import prove
from plans.proof.sayings import PROOF_SAYINGS
from plans.quantities import Length
from plans.sizing.sayings import SIZING_SAYINGS
from plans.wishes import Swatch, Wishes
from tests.plans.made_up_wishes import absurd_wishes, wishes
from tests.strategies import UP_BIND_OFFS, UP_HEELS

YARNS = {"bulky": (12, 17), "worsted": (18, 25), "DK": (22, 30), "sport": (25, 35), "sock": (30, 42), "lace": (40, 56)}


def _is_proven_or_refused(made):
    if isinstance(made, Made):
        assert not prove(made.plan)
        return
    assert made
    for problem in made:
        assert problem.key in SIZING_SAYINGS
        assert problem.key not in PROOF_SAYINGS


def _causes(made):
    return ["made"] if isinstance(made, Made) else [problem.key for problem in made]


@pytest.mark.parametrize("examples", [60, pytest.param(10_000, marks=pytest.mark.nightly)])
def test_whatever_is_wished_is_proven_or_refused(examples):
    """Each cause is shown to be truly impossible in test_sizing_refusals."""
    causes: Counter[str] = Counter()

    @given(wishes())
    @settings(max_examples=examples)
    def make(wished):
        made = make_plan(wished)
        _is_proven_or_refused(made)
        causes.update(_causes(made))

    make()
    print("\n", dict(causes.most_common()))

    assert causes["made"] > examples // 10


@given(absurd_wishes())
@settings(max_examples=60)
def test_nothing_wished_raises(wished):
    _is_proven_or_refused(make_plan(wished))


_USUAL_PAIRS = [("wrapped", "wedge"), ("german", "rounded"), ("short-row-german", "wide"), ("forethought", "anatomic")]


@pytest.mark.parametrize(
    ("heel", "toe"),
    [pytest.param(*each, marks=() if each in _USUAL_PAIRS else pytest.mark.nightly) for each in product(UP_HEELS, Toe)],
)
def test_every_shoe_from_infant_to_fifty_in_every_yarn_is_proven_or_too_small_for_the_yarn(heel, toe):
    causes: Counter[str] = Counter()
    for size in range(16, 51):
        for stitches, rounds in YARNS.values():
            made = make_plan(_by_shoe(f"EU {size}", stitches, rounds, heel, toe))
            _is_proven_or_refused(made)
            causes.update(_causes(made))
    print(f"\n{heel}, {toe}:", dict(causes))

    assert causes["made"] >= 120
    assert set(causes) <= {"made", "foot-too-short", "too-few-stitches"}


def _by_shoe(shoe, stitches, rounds, heel, toe):
    return Wishes(swatch=Swatch(stitches=Fraction(stitches), rounds=Fraction(rounds)), shoe=shoe, heel=heel, toe=toe)


@pytest.mark.parametrize("bind_off", UP_BIND_OFFS)
@pytest.mark.parametrize("through_back_loop", [False, True])
def test_finished_measures_are_as_aimed_at(bind_off, through_back_loop):
    wished = Wishes(
        swatch=Swatch(stitches=Fraction(30), rounds=Fraction(42)),
        foot_length=Length.parse("24.5cm"),
        ball=Length.parse("23.7cm"),
        leg=Length.parse("15cm"),
        bind_off=bind_off,
        through_back_loop=through_back_loop,
    )
    made = make_plan(wished)

    assert isinstance(made, Made)
    assert made.plan.around == 64
    assert abs(made.plan.finished.circumference_cm - Fraction("23.7") * Fraction(9, 10)) <= Fraction(2 * 10, 30)
    assert abs(made.plan.finished.foot_length_cm - Fraction("23.5")) <= Fraction(10, 42)
    assert abs(made.plan.finished.leg_cm - 15) <= Fraction(10, 42)


def test_a_refusal_is_problems_not_a_plan():
    made = make_plan(Wishes(swatch=Swatch(stitches=Fraction(0), rounds=Fraction(42))))

    assert isinstance(made, tuple)
    assert all(isinstance(problem, Problem) for problem in made)
