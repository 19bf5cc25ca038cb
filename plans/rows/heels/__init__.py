"""Heels of socks, each in a module that bears its name and holds a HEEL; the gusset before them."""

from collections.abc import Iterator
from functools import cache
from typing import cast

from plans.names import load
from plans.pattern import Heel, StageName
from plans.rows.increases import increase
from plans.rows.parts import HeelPart, IncreasePart, Numbers
from plans.rows.rounds import Round, even_round, plain

__all__ = ["gusset_rounds", "heel", "heel_round"]


@cache
def heel(name: str) -> HeelPart:
    """The heel of that name."""
    return cast("HeelPart", load("heels", name, "HEEL"))


def heel_round(name: Heel, half: int, gusset: int, turned: int) -> Round:
    """The first round of a heel, in which it stands whole unless it is made last.

    Args:
        name: which.
        half: h, stitches of the front, and of the back without its gussets.
        gusset: g, gusset stitches on each side of the back.
        turned: w, stitches marked on each side; h - 2w stay unmarked in the middle.
    """
    return next(heel(name).rounds(Numbers(half, half, gusset, turned)))


def gusset_rounds(gusset: int, half: int, ways: IncreasePart | None = None) -> Iterator[Round]:
    """The 2g rounds of the gusset: an increase round, on the back only, then a plain one, g times.

    The back grows by 2 every second round from h to h + 2g; half as many stitches again on each side of the
    sole, g = h/2, is usual (gusset-arithmetic tutorial, april-klich.squarespace.com, 2015).
    """
    ways = ways or increase("make-one")
    for number in range(1, 2 * gusset + 1):
        increases = number % 2
        before = half + 2 * (number // 2)
        back = ways.ops(before, True, True) if increases else plain(before)
        yield even_round(StageName.GUSSET, number, plain(half), back, (half, before + 2 * increases))
