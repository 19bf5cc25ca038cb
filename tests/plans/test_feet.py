"""Guesses of unmeasured parts of a foot, against linear algebra of another library and against the surveys."""

from fractions import Fraction
from itertools import combinations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.quantities import Length
from plans.sizing.feet import CHILD, Estimate, estimate, is_childs

PARTS = ("foot", "ball", "ankle", "heel")
LINES = {"foot": (0, 1, 0), "ball": (45.8, 0.754, 10.6), "ankle": (82.6, 0.541, 13), "heel": (30, 1.15, 10.2)}
CORRELATIONS = {("ball", "heel"): 0.86, ("ball", "ankle"): 0.71, ("ankle", "heel"): 0.74}
SOME = [some for many in (1, 2, 3) for some in combinations(PARTS, many)]


def measured(**mm):
    return {name: Estimate(Length(Fraction(value)), Length(Fraction(0))) for name, value in mm.items()}


def survey():
    """Means and covariances of the four measures, from the published lines and correlations."""
    means = np.array([start + slope * 263 for start, slope, _ in LINES.values()])
    table = np.array([[a[1] * b[1] * 17.4**2 for b in LINES.values()] for a in LINES.values()])
    table += np.diag([sd**2 for _, _, sd in LINES.values()])
    for pair, r in CORRELATIONS.items():
        i, j = map(PARTS.index, pair)
        table[i, j] = table[j, i] = r * np.sqrt(table[i, i] * table[j, j])
    return means, table


def test_the_correlations_belong_together():
    """No combination of the measures varies by less than nothing."""
    assert min(np.linalg.eigvalsh(survey()[1])) > 0


@pytest.mark.parametrize("some", SOME, ids="-".join)
def test_a_guess_is_the_regression_on_whatever_is_known(some):
    means, table = survey()
    given_mm = {"foot": 255, "ball": 240, "ankle": 220, "heel": 325}
    known = [PARTS.index(name) for name in some]
    for at, part in enumerate(PARTS):
        if part in some:
            continue
        weights = np.linalg.solve(table[np.ix_(known, known)], table[known, at])
        mean = means[at] + weights @ (np.array([given_mm[name] for name in some]) - means[known])
        sd = np.sqrt(table[at, at] - weights @ table[known, at])
        found = estimate(part, measured(**{name: given_mm[name] for name in some}))

        assert float(found.length.mm) == pytest.approx(mean, abs=0.11)
        assert float(found.give_or_take.mm) == pytest.approx(2 * sd, abs=0.11)


def test_more_measures_never_make_a_guess_less_certain():
    few = estimate("heel", measured(foot=255)).give_or_take
    more = estimate("heel", measured(foot=255, ball=240)).give_or_take
    most = estimate("heel", measured(foot=255, ball=240, ankle=220)).give_or_take

    assert few > more > most > Length(Fraction(0))


def test_a_foot_from_a_shoe_makes_a_guess_less_certain_than_a_measured_one():
    shoe = {"foot": Estimate(Length(Fraction(250)), Length(Fraction(10, 3)))}

    assert estimate("ball", shoe).give_or_take > estimate("ball", measured(foot=250)).give_or_take


@given(st.integers(50, 400), st.sampled_from(["ball", "ankle", "heel", "calf"]))
def test_guesses_grow_with_the_foot_and_nothing_jumps_at_a_childs(foot, part):
    one, other = (estimate(part, measured(foot=mm)).length for mm in (foot, foot + 1))

    assert Length(Fraction(0)) < other - one < Length(Fraction(2))


@pytest.mark.parametrize("part", ["ball", "ankle", "heel", "calf"])
def test_a_childs_guess_is_off_by_a_tenth(part):
    found = estimate(part, measured(foot=150))

    assert is_childs(Length(Fraction(150)))
    assert not is_childs(CHILD)
    assert found.give_or_take == found.length * Fraction(1, 10)


@given(st.integers(50, 450), st.integers(50, 450), st.integers(50, 450))
def test_measures_at_odds_with_each_other_are_not_believed_beyond_reason(foot, ball, ankle):
    by_length = estimate("heel", measured(foot=foot)).length
    found = estimate("heel", measured(foot=foot, ball=ball, ankle=ankle)).length

    assert by_length * Fraction(59, 100) < found < by_length * Fraction(5, 3) + Length(Fraction(1))
