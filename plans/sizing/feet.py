"""What some measures of a foot let us guess of the others: for what the knitter has not measured.

Adults: ANSUR II, the US Army's anthropometric survey of 2012 (public domain; 4,082 men and 1,986 women), in mm
with L = foot length: ball = 45.8 + 0.754 L, residual sd 10.6; ankle = 82.6 + 0.541 L, 13.0; round the heel and
the front of the ankle = 30.0 + 1.150 L, 10.2; calf = 168.7 + 0.826 L, 27.1; L itself 263, sd 17.4. Correlations
of the girths, men and women together: ball and heel 0.86, ball and ankle 0.71, heel and ankle 0.74. A guess is
the mean of all feet that have the measures known, as if all were jointly normal: the usual regression, whichever
measures are known (any textbook of statistics). No figure ties the calf to the other girths beyond what the
length does. A magazine's survey says ankle = ball ("Sizing guidelines", Knitty 2023); six thousand measured
adults say less.

Nobody in it has a child's foot: a foot shorter than `CHILD` is taken for one of that length made smaller in
proportion, so that nothing jumps, and the uncertainty is set to a tenth (our own caution, no source).
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import sqrt
from typing import Literal, NamedTuple

from plans.quantities import Length

Part = Literal["foot", "ball", "ankle", "heel", "calf"]
"""Foot length, and girths at ball, ankle, round heel and front of the ankle, and at the widest of the calf."""

CHILD = Length(Fraction(210))
"""Shorter feet are taken for children's; a twentieth of the survey's women have less than 226 mm."""

_MEAN_FOOT, _SD_FOOT = Fraction(263), Fraction("17.4")


class _Line(NamedTuple):
    """girth = start + slope x foot, and the standard deviation around it."""

    start: Fraction
    slope: Fraction
    sd: Fraction


_LINES: dict[Part, _Line] = {
    "foot": _Line(Fraction(0), Fraction(1), Fraction(0)),
    "ball": _Line(Fraction("45.8"), Fraction("0.754"), Fraction("10.6")),
    "ankle": _Line(Fraction("82.6"), Fraction("0.541"), Fraction("13.0")),
    "heel": _Line(Fraction("30.0"), Fraction("1.150"), Fraction("10.2")),
    "calf": _Line(Fraction("168.7"), Fraction("0.826"), Fraction("27.1")),
}
_CORRELATIONS: dict[frozenset[Part], Fraction] = {
    frozenset({"ball", "heel"}): Fraction("0.86"),
    frozenset({"ball", "ankle"}): Fraction("0.71"),
    frozenset({"heel", "ankle"}): Fraction("0.74"),
}
_CHILD_SPREAD = Fraction("0.1")
_ODDEST = Fraction(3, 5)
"""No guess is further than this from the one by length alone: measures at odds with each other are not believed."""

HEEL_OF_BALL = Fraction("1.35")
"""Front of the ankle round the back of the heel, over ball: 1.35, "Sizing guidelines", Knitty 2023.

ANSUR II gives 1.363, sd 0.049.
"""


class Estimate(NamedTuple):
    """A length, and how far off nineteen feet in twenty are at most (two standard deviations)."""

    length: Length
    give_or_take: Length


def is_childs(foot: Length) -> bool:
    """Whether a foot is shorter than the adults that were surveyed."""
    return foot < CHILD


def estimate(part: Part, known: Mapping[Part, Estimate]) -> Estimate:
    """One measure from those known, to a tenth of a millimetre.

    Args:
        part: which.
        known: at least one; what was measured is off by nothing.
    """
    scale = _scale(known)
    adult: dict[Part, Estimate] = {
        name: Estimate(each.length * scale, each.give_or_take * scale) for name, each in known.items()
    }
    mean, sd = _regression(part, adult)
    length = _tenth(mean / scale)
    if scale > 1:
        return Estimate(length, length * _CHILD_SPREAD)
    return Estimate(length, _tenth(2 * sd))


def _scale(known: Mapping[Part, Estimate]) -> Fraction:
    """By how much a child's measures are to be made larger to be those of the shortest adult foot."""
    if "foot" in known:
        return max(Fraction(1), CHILD.mm / known["foot"].length.mm)
    part, one = next(iter(known.items()))
    return max(Fraction(1), _by_length(part, CHILD.mm) / one.length.mm)


def _by_length(part: Part, foot_mm: Fraction) -> Fraction:
    line = _LINES[part]
    return line.start + line.slope * foot_mm


def _variance(one: Part, other: Part) -> Fraction:
    """Covariance of two measures; of one with itself its variance."""
    first, second = _LINES[one], _LINES[other]
    shared = first.slope * second.slope * _SD_FOOT**2
    if one == other:
        return shared + first.sd**2
    found = _CORRELATIONS.get(frozenset({one, other}))
    return shared if found is None else found * _root(_variance(one, one) * _variance(other, other))


def _regression(part: Part, known: Mapping[Part, Estimate]) -> tuple[Fraction, Fraction]:
    """Mean and standard deviation of a measure among the feet that have the known ones."""
    names = tuple(known)
    noise = {name: (each.give_or_take.mm / 2) ** 2 for name, each in known.items()}
    table = [[_variance(a, b) + (noise[a] if a == b else 0) for b in names] for a in names]
    shared = [_variance(part, name) for name in names]
    weights = _solved(table, shared)
    beyond = [known[name].length.mm - _by_length(name, _MEAN_FOOT) for name in names]
    mean = _by_length(part, _MEAN_FOOT) + sum(w * b for w, b in zip(weights, beyond, strict=True))
    left = _variance(part, part) - sum(w * s for w, s in zip(weights, shared, strict=True))
    usual = _by_length(part, known["foot"].length.mm if "foot" in known else _MEAN_FOOT)
    return min(max(mean, usual * _ODDEST), usual / _ODDEST), _root(max(left, Fraction(0)))


def _solved(table: Sequence[Sequence[Fraction]], right: Sequence[Fraction]) -> list[Fraction]:
    """The unknowns of a few equations, by elimination; no pivot is nought, the table being of covariances."""
    rows = [[*row, end] for row, end in zip(table, right, strict=True)]
    for at, pivot in enumerate(rows):
        rows[at] = [value / pivot[at] for value in pivot]
        for other, row in enumerate(rows):
            if other != at:
                rows[other] = [value - row[at] * top for value, top in zip(row, rows[at], strict=True)]
    return [row[-1] for row in rows]


def _root(number: Fraction) -> Fraction:
    return Fraction(sqrt(number)).limit_denominator(1000)


def _tenth(mm: Fraction) -> Length:
    return Length(Fraction(round(mm * 10), 10))
