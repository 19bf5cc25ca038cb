"""From what was counted on swatches to the gauge, and how far off it may be.

A gauge is all stitches over all widths counted, so that a wide count weighs more than a narrow one. Counts of
washed swatches go before unwashed ones, those in the round before flat ones, as the socks are washed and
knitted in the round. A count is read to half a stitch; taken for two standard deviations, over ten centimetres
of 30 stitches that is one stitch in sixty ("Toe up socks with heel flap, part II", southerncrossfibre.com,
counts half stitches). The gauge is said to be off by two standard errors of the mean, of the larger of the two:
what reading leaves open, and what the counts differ.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import sqrt
from typing import NamedTuple

from plans.conversation import Reply
from plans.quantities import Gauge, Length, plain_number
from plans.wishes import Count, Swatch, Wishes, Worked

_READING_SD = Fraction(1, 4)
"""Stitches, or rounds: half of the half to which they are read."""
_NAMES = ("stitches", "rounds")
_UNLIKE = Fraction(2, 100)
"""Flat and round, washed and unwashed counts that differ by more than this are told: a stitch or so in a sock."""

Counts = Sequence[Swatch | Count]
"""What was counted, wherever."""


class Spread(NamedTuple):
    """A mean, and what share of it nineteen means in twenty are off by at most."""

    mean: Fraction
    share: Fraction
    counts: int


class Measured(NamedTuple):
    """The gauge, how far off it may be, and what is to be said of the swatches."""

    gauge: Gauge
    stitches: Spread
    rounds: Spread
    notes: tuple[Reply, ...]


def gauge_of(swatch: Swatch) -> Gauge:
    """Stitches and rounds over exactly 10 cm, from what was counted over the swatch's own width."""
    scale = Length.of_cm(10).mm / swatch.over.mm
    return Gauge(swatch.stitches * scale, swatch.rounds * scale)


def measured(wishes: Wishes) -> Measured:
    """The gauge of all counts that are like the socks; none of them is nought."""
    counts: Counts = (wishes.swatch, *wishes.counts)
    stitches, rounds = (_spread(name, _alike(name, counts)) for name in _NAMES)
    return Measured(Gauge(stitches.mean, rounds.mean), stitches, rounds, tuple(_notes(counts, stitches, rounds)))


def _counted(name: str, counts: Counts) -> Counts:
    return [each for each in counts if getattr(each, name) is not None]


def _alike(name: str, counts: Counts) -> Counts:
    """The counts that are most like the socks: washed, then in the round, where there are such."""
    found = _counted(name, counts)
    washed = [each for each in found if each.washed] or found
    return [each for each in washed if each.worked is Worked.ROUND] or washed


def _mean(name: str, counts: Counts) -> Fraction:
    total: Fraction = sum((getattr(each, name) for each in counts), Fraction(0))
    width: Fraction = sum((each.over.mm for each in counts), Fraction(0))
    return 100 * total / width


def _spread(name: str, counts: Counts) -> Spread:
    mean, amount = _mean(name, counts), len(counts)
    each = [100 * getattr(count, name) / count.over.mm for count in counts]
    reading = _READING_SD * amount / sum(getattr(count, name) for count in counts)
    between = sum(((gauge / mean - 1) ** 2 for gauge in each), Fraction(0)) / max(1, amount - 1)
    share = 2 * sqrt(max(reading**2, between) / amount)
    return Spread(mean, Fraction(round(share * 10_000), 10_000), amount)


def _notes(counts: Counts, stitches: Spread, rounds: Spread) -> Iterator[Reply]:
    if max(stitches.counts, rounds.counts) > 1:
        yield Reply.of(
            "gauge-mean", counts=max(stitches.counts, rounds.counts),
            stitches=plain_number(stitches.mean, 1), give_or_take=plain_number(stitches.mean * stitches.share, 1),
            rounds=plain_number(rounds.mean, 1), rounds_off=plain_number(rounds.mean * rounds.share, 1),
        )  # fmt: skip
    if not any(each.washed for each in counts):
        yield Reply.of("swatch-unwashed")
    if not any(each.worked is Worked.ROUND for each in counts):
        yield Reply.of("swatch-flat")
    for name in _NAMES:
        yield from _differing(name, _counted(name, counts))


_CHANGES = {
    ("washed", "stitches"): ("washing-changes-stitches-fewer", "washing-changes-stitches-more"),
    ("washed", "rounds"): ("washing-changes-rounds-fewer", "washing-changes-rounds-more"),
    ("worked", "stitches"): ("flat-differs-stitches-fewer", "flat-differs-stitches-more"),
    ("worked", "rounds"): ("flat-differs-rounds-fewer", "flat-differs-rounds-more"),
}


def _differing(name: str, counts: Counts) -> Iterator[Reply]:
    """What washing did, and how knitting in the round differs from flat knitting, in per cent.

    Only counts that are alike but for that are compared: a flat unwashed one tells nothing of a washed round one.
    """
    for kind, other, like_socks in (("washed", "worked", True), ("worked", "washed", Worked.ROUND)):
        used = [each for each in counts if getattr(each, kind) == like_socks]
        alike = {getattr(each, other) for each in used}
        unused = [each for each in counts if getattr(each, kind) != like_socks and getattr(each, other) in alike]
        change = _mean(name, used) / _mean(name, unused) - 1 if used and unused else Fraction(0)
        if abs(change) > _UNLIKE:
            yield Reply.of(_CHANGES[kind, name][change > 0], percent=plain_number(abs(change) * 100, 0))
