"""Ribbing that runs on round the sock, whatever stitch a half begins with."""

from collections.abc import Iterable
from functools import cache
from itertools import groupby

from plans.rows.rounds import Ops, groups
from plans.stitches import Op

Repeat = tuple[tuple[Op, int], ...]
"""Operations that repeat, and how often each."""


@cache
def rib(parts: Repeat, first: int, stitches: int) -> Ops:
    """Some stitches of a rib.

    Args:
        parts: what repeats.
        first: the place of the first stitch in the round, from 0.
        stitches: how many.
    """
    return in_runs(rib_ops(parts, first, stitches))


def rib_ops(parts: Repeat, first: int, stitches: int) -> list[Op]:
    """The same stitch by stitch; places below 0 are counted back from the end of the round."""
    repeat = [op for op, times in parts for _ in range(times)]
    return [repeat[place % len(repeat)] for place in range(first, first + stitches)]


def in_runs(ops: Iterable[Op]) -> Ops:
    """Stitches that are alike and side by side as one group."""
    return groups(*((op, len(list(run))) for op, run in groupby(ops)))


@cache
def rib_look(columns: str, first: int, stitches: int) -> str:
    """How it looks, from the letters of its columns: "kp" is knit one, purl one; "t" is a twisted knit."""
    return columns_look(rib_letters(columns, first, stitches))


def rib_letters(columns: str, first: int, stitches: int) -> str:
    """The letter of each stitch."""
    begins = first % len(columns)
    return (columns * ((begins + stitches) // len(columns) + 1))[begins : begins + stitches]


def columns_look(letters: str) -> str:
    """How stitches of these letters look."""
    names = {"t": "ktbl"}
    return ", ".join(f"{names.get(letter, letter)} {len(list(run))}" for letter, run in groupby(letters))
