"""Legs, each in a module that bears its name and holds a LEG; how the first round closes what the heel left."""

from collections.abc import Iterator
from functools import cache
from typing import cast

from plans.names import load
from plans.pattern import StageName
from plans.rows.parts import HeelPart, IncreasePart, LegPart, Numbers
from plans.rows.rounds import Ops, Round, even_round, groups, plain
from plans.stitches import Op

__all__ = ["CORNERS_LOOK", "corners", "leg", "leg_rounds"]

CORNERS_LOOK = r"k2tog_strand 1, (k \d+, )?ssk_strand 1"


@cache
def leg(name: str) -> LegPart:
    """The leg of that name."""
    return cast("LegPart", load("legs", name, "LEG"))


def corners(half: int) -> Ops:
    """A front whose corners are closed: a strand lifted at each, and worked together with its neighbour."""
    return groups((Op.K2TOG_STRAND, 1), (Op.K, half - 2), (Op.SSK_STRAND, 1))


def leg_rounds(rounds: int, numbers: Numbers, kind: str, heel: HeelPart, ways: IncreasePart) -> Iterator[Round]:
    """The leg below its cuff. Its first round is plain, and closes the corners.

    At each corner of the front the strand between the halves is lifted and worked together with its
    neighbour, so that no hole stays and no stitch is added (common practice). A heel made last has no corners yet:
    its stitches are kept in the back of this round. Where a calf needs room, the back widens at its centre.
    """
    half, part = numbers.half, leg(kind)
    first_back = heel.opening or heel.closing
    for number in range(1, rounds + 1):
        loops, after = (half + 2 * _pairs(numbers, before) for before in (number, number + 1))
        front = part.ops(number, 0, half)
        back = part.ops(number, half, loops) if after == loops else ways.centre(loops)
        if number == 1:
            front = plain(half) if heel.made_last else corners(half)
            back = first_back[0](numbers) if first_back else plain(half)
        yield even_round(StageName.LEG, number, front, back, (half, after))


def _pairs(numbers: Numbers, before: int) -> int:
    return numbers.calf.before(before) if numbers.calf else 0
