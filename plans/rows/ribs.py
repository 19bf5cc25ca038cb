"""Ribbing that runs on round the sock, whatever stitch a half begins with."""

from functools import cache
from itertools import groupby

from plans.rows.rounds import Ops, groups
from plans.stitches import Op


@cache
def rib(parts: tuple[tuple[Op, int], ...], first: int, stitches: int) -> Ops:
    """Some stitches of a rib.

    Args:
        parts: operations that repeat, and how often each.
        first: the place of the first stitch in the round, from 0.
        stitches: how many.
    """
    repeat = [op for op, times in parts for _ in range(times)]
    ops = (repeat[place % len(repeat)] for place in range(first, first + stitches))
    return groups(*((op, len(list(run))) for op, run in groupby(ops)))


@cache
def rib_look(columns: str, first: int, stitches: int) -> str:
    """How it looks, from the letters of its columns: "kp" is knit one, purl one; "t" is a twisted knit."""
    whole = columns * ((first + stitches) // len(columns) + 1)
    names = {"t": "ktbl"}
    runs = groupby(whole[first : first + stitches])
    return ", ".join(f"{names.get(letter, letter)} {len(list(run))}" for letter, run in runs)
