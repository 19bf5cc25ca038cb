"""A sock on a set of five double-pointed needles: two hold the front, two the back, the fifth knits.

A quarter of the stitches on each of four needles; of a set of four needles one holds the front, two the back, and the
fourth knits (both common practice). Each needle's stitches are knitted onto the free
one, so what a needle gains or loses stays on it; stitches that the next operation would take from two needles at once
are slipped on to the second of them. A heel worked back and forth lies on one needle.
"""

from typing import NamedTuple

from plans.pattern import Group, Half, Needles, Row, Sock, StageName
from plans.stitches import BIND_OFFS, JOINS, Op, makes, takes

FEWEST = 4
"""Loops of a half that are divided; fewer stay together."""

_NOT_ROUND = BIND_OFFS | JOINS | {Op.CO, Op.CO_WASTE, Op.FREE, Op.PICK_UP, Op.GRAFT_RIB, Op.FASTEN, Op.GATHER}


class _Cut(NamedTuple):
    """A place between two operations: loops taken and made before it."""

    taken: int
    made: int


def divided(rows: tuple[Row, ...], back_and_forth: frozenset[StageName], needles: Needles) -> tuple[Row, ...]:
    """The rows with what each leaves on which needle, if these are double-pointed.

    Args:
        rows: of both socks, one sock after the other.
        back_and_forth: the stages in which backs are worked so.
        needles: of a set of four, a front lies on one.
    """
    if not needles.pointed:
        return rows
    first: dict[tuple[Sock, Half], int] = {}
    found: list[Row] = []
    for row in rows:
        here = row.sock, row.half
        heel = row.half is Half.BACK and row.stage in back_and_forth
        if heel or not _NOT_ROUND.isdisjoint(group.op for group in row.ops):
            first.pop(here, None)
            found.append(row)
            continue
        alone = needles is Needles.FOUR_DOUBLE_POINTED and row.half is Half.FRONT
        cut = None if alone else _cut(row.ops, row.stitches_after, first.get(here))
        if cut is None:
            first.pop(here, None)
            found.append(row.model_copy(update={"needles": (row.stitches_after,)}))
            continue
        lie, slipped = (cut.made, row.stitches_after - cut.made), first.get(here, cut.taken) - cut.taken
        first[here] = cut.made
        found.append(row.model_copy(update={"needles": lie, "slipped": slipped}))
    return tuple(found)


def _cut(ops: tuple[Group, ...], loops: int, first: int | None) -> _Cut | None:
    """Where the next needle is taken up: at the end of the first one's loops, or in the middle if there was one only.

    None where all are worked onto one needle.
    """
    if loops < FEWEST:
        return None
    cut = _Cut(0, 0)
    for group in ops:
        for _ in range(group.times):
            following = _Cut(cut.taken + takes(group.op), cut.made + makes(group.op))
            if (2 * cut.made >= loops) if first is None else (following.taken > first):
                return cut if cut.made else None
            cut = following
    return None
