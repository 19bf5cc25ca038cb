"""How many of the feet that a survey measured get a plan, and one that fits them."""

import tomllib
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from itertools import islice
from pathlib import Path

import numpy as np
import pytest

from plans.making import Made, make_plan
from plans.pattern import BindOff
from plans.quantities import Length
from plans.sizing import size_sock
from plans.wishes import SockSize, Swatch, Wishes

SURVEY = tomllib.loads((Path(__file__).parent.parent / "published" / "feet_surveyed.toml").read_text("utf-8"))
FEET = 400
COMPLAINTS = {
    "around-tight", "around-larger-than-foot", "leg-wide", "leg-tight", "heel-tight", "heel-loose", "edge-tight",
}  # fmt: skip
GAUGES = (26, 28, 30, 32, 34)


def feet(who: str) -> np.ndarray:
    """Feet drawn as the survey's are spread, in mm; always the same ones."""
    spread = np.diag(SURVEY[who]["sd_mm"]) @ np.array(SURVEY["correlations"]) @ np.diag(SURVEY[who]["sd_mm"])
    return np.random.default_rng(2012).multivariate_normal(SURVEY[who]["mean_mm"], spread, FEET)


def wished(foot: np.ndarray, stitches: int, *, only: int = 4) -> Wishes:
    """A foot measured all over, or by its first measures only."""
    mm = {name: Length(Fraction(round(float(each)))) for name, each in zip(SURVEY["order"], foot, strict=True)}
    given = {name: mm[name] for name in SURVEY["order"][:only]}
    return Wishes(swatch=Swatch(stitches=stitches, rounds=stitches * Fraction(7, 5)), bind_off=BindOff.SEWN, **given)


@cache
def sized(who: str, *, only: int = 4) -> tuple[SockSize, ...]:
    """What each foot is sized, in yarns from sport to fine sock yarn by turns."""
    found = [size_sock(wish) for wish in wishes(who, only=only)]
    assert all(isinstance(size, SockSize) for size in found)
    return tuple(size for size in found if isinstance(size, SockSize))


def wishes(who: str, *, only: int = 4) -> Iterator[Wishes]:
    """Each foot in one of those yarns."""
    return (wished(foot, GAUGES[number % len(GAUGES)], only=only) for number, foot in enumerate(feet(who)))


@pytest.mark.parametrize("who", ["men", "women"])
def test_the_feet_drawn_are_the_surveys(who):
    drawn = feet(who)[:, :2]

    for percent, expected in ((5, SURVEY[who]["percent_5_mm"]), (95, SURVEY[who]["percent_95_mm"])):
        assert np.percentile(drawn, percent, axis=0) == pytest.approx(expected, abs=3)


@pytest.mark.parametrize("who", ["men", "women"])
def test_every_foot_gets_a_sock_and_more_than_nine_in_ten_one_that_fits_at_once(who):
    """Measured at foot, ball, heel and ankle, each foot in yarns from sport to fine sock yarn."""
    told: Counter[str] = Counter()
    for size in sized(who):
        found = COMPLAINTS & {note.key for note in size.notes}
        told.update(found or ["fits"])
    print(f"\n{who}: {dict(told)} of {FEET}")

    assert told["fits"] >= 0.93 * FEET


@pytest.mark.parametrize("who", ["men", "women"])
def test_for_the_others_the_cure_is_a_cure(who):
    """Other stitches or another gusset take the complaint away; the rest are told of another needle."""
    for wish, size in zip(wishes(who), sized(who), strict=True):
        for note in size.notes:
            cure = dict(note.values).get("cure") if note.key in COMPLAINTS else None
            changes = {"cure-around": "around", "cure-gusset": "gusset"}
            if cure is not None and cure.key in changes:
                cured = size_sock(wish.model_copy(update={changes[cure.key]: dict(cure.values)["stitches"]}))
                assert isinstance(cured, SockSize)
                assert note.key not in {each.key for each in cured.notes}


@pytest.mark.parametrize("who", ["men", "women"])
def test_a_sock_by_length_alone_still_fits_the_ball_of_nine_in_ten(who):
    """Only the foot's length known: the width is a guess, and fits at 0 to 25 % smaller than the true ball."""
    fits = 0
    for foot, wish, size in zip(feet(who), wishes(who, only=1), sized(who, only=1), strict=True):
        width = 100 * size.around / float(wish.swatch.stitches)
        fits += 0.75 * foot[1] <= width <= foot[1]
    print(f"\n{who}: {fits} of {FEET}")

    assert fits >= 0.9 * FEET


@pytest.mark.parametrize("who", ["men", "women"])
def test_plans_for_surveyed_feet_are_proven(who):
    for wish in islice(wishes(who), 6):
        assert isinstance(make_plan(wish), Made)


@pytest.mark.parametrize("who", ["men", "women"])
def test_nineteen_guesses_in_twenty_are_within_what_is_told(who):
    """Ball, heel and ankle guessed from the length: the survey's own feet lie within the give or take."""
    within = dict.fromkeys(("ball", "ankle", "heel"), 0)
    for foot, size in zip(feet(who), sized(who, only=1), strict=True):
        true = dict(zip(("foot", "ball", "heel", "ankle", "calf"), foot, strict=True))
        said = {note.key: dict(note.values) for note in size.notes}
        for part in within:
            guess = said[f"{part}-estimated"]
            off = abs(guess["length"].tenths_mm / 10 - true[part])
            within[part] += off <= guess["give_or_take"].tenths_mm / 10
    print(f"\n{who}: {within} of {FEET}")

    assert all(count >= 0.9 * FEET for count in within.values())
