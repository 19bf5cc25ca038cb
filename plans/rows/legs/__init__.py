"""Legs, each in a module that bears its name and holds a LEG; how the first round closes what the heel left."""

from collections.abc import Iterator
from functools import cache
from typing import cast

from plans.names import load
from plans.pattern import StageName
from plans.rows.parts import HeelPart, IncreasePart, LegPart, Numbers
from plans.rows.rounds import Ops, Round, even_round, groups, plain
from plans.stitches import Op

__all__ = ["CORNERS_LOOK", "corners", "leg", "leg_rounds", "leg_rounds_down", "taken_in", "taken_in_look"]

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
        back = part.ops(number, half, loops) if after == loops else part.beside(ways.centre(loops), half)
        if number == 1:
            front = plain(half) if heel.made_last else corners(half)
            back = first_back[0](numbers) if first_back else plain(half)
        yield even_round(StageName.LEG, number, front, back, (half, after))


def leg_rounds_down(rounds: int, numbers: Numbers, kind: str) -> Iterator[Round]:
    """The leg from the cuff down to the heel; one that has gone round a calf narrows at the centre of its back."""
    half, top, part = numbers.half, numbers.top, leg(kind)
    for number in range(1, rounds + 1):
        loops, after = (top - 2 * _pairs(numbers, before) for before in (number, number + 1))
        back = part.ops(number, half, loops) if after == loops else part.beside(taken_in(loops), half)
        yield even_round(StageName.LEG, number, part.ops(number, 0, half), back, (half, after))


def _pairs(numbers: Numbers, before: int) -> int:
    return numbers.calf.before(before) if numbers.calf else 0


def taken_in(stitches: int) -> Ops:
    """A back with a pair of decreases on either side of its two middle stitches, each leaning away from them.

    Of stockings with a seam stitch "knit to within three of the seam, knit two together, knit one" and after it the
    mirror image of that is usual (common practice, for instance in Weldon's Practical Stocking Knitter, from memory).
    """
    side = stitches // 2 - 3
    return groups((Op.K, side), (Op.K2TOG, 1), (Op.K, 2), (Op.SSK, 1), (Op.K, side))


def taken_in_look(stitches: int) -> str:
    """How that looks."""
    side = f"k {stitches // 2 - 3}"
    return ", ".join([side, "k2tog 1, k 2, ssk 1", side] if stitches > 6 else ["k2tog 1, k 2, ssk 1"])
