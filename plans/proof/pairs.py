"""Both socks are the same sock, row for row; of a mirrored pair the toes are each other's mirror image."""

from collections.abc import Iterator
from itertools import groupby, zip_longest

from plans.pattern import Group, Half, Pairing, Row, StageName
from plans.proof.findings import Case, Finding, found
from plans.stitches import Op

Passes = list[tuple[int, Row]]

_MIRRORED = {Op.M1L: Op.M1R, Op.M1R: Op.M1L, Op.LIFTED_L: Op.LIFTED_R, Op.LIFTED_R: Op.LIFTED_L}


def check_pair(case: Case) -> Iterator[Finding]:
    """Fronts against fronts, backs against backs; a difference is told at the later of the two rows."""
    for half in Half:
        first, second = _passes(case, 1, half), _passes(case, 2, half)
        for one, other in zip_longest(first, second):
            if one is None or other is None:
                yield from (found(None, "socks-differ", other_row=more[0]) for more in (one, other) if more)
                break
            if not _agree(case, one[1], other[1]):
                later, earlier = max(one[0], other[0]), min(one[0], other[0])
                yield found(later, "socks-differ", other_row=earlier)
                break


def _passes(case: Case, sock: int, half: Half) -> Passes:
    rows = enumerate(case.plan.rows)
    return [(place, row) for place, row in rows if row.sock == sock and row.half is half]


def _agree(case: Case, one: Row, other: Row) -> bool:
    if _work(one) != _work(other):
        return False
    if case.plan.construction.pairing is Pairing.MIRRORED and one.stage is StageName.TOE and one.round > 1:
        return _mirror(one.ops) == [_short(group) for group in other.ops]
    return one.ops == other.ops


def _work(row: Row) -> tuple[object, ...]:
    return row.stage, row.round, row.facing, row.stitches_after


def _mirror(ops: tuple[Group, ...]) -> list[tuple[Op, int]]:
    """The same row seen in a mirror."""
    if any(group.op is Op.KFB for group in ops):
        return _bumps_mirrored(ops)
    return [(_MIRRORED.get(group.op, group.op), group.times) for group in reversed(ops)]


def _bumps_mirrored(ops: tuple[Group, ...]) -> list[tuple[Op, int]]:
    """A kfb leaves its bump to the left of its knit: of n stitches, one in stitch i is mirrored in stitch n - 2 - i.

    Where all stitches are increased the row is its own mirror image, as near as that can be.
    """
    stitches = [group.op for group in ops for _ in range(group.times)]
    bumps = {len(stitches) - 2 - place for place, op in enumerate(stitches) if op is Op.KFB}
    if Op.K not in stitches:
        return [_short(group) for group in ops]
    mirrored = [Op.KFB if place in bumps else Op.K for place in range(len(stitches))]
    return [(op, len(list(run))) for op, run in groupby(mirrored)]


def _short(group: Group) -> tuple[Op, int]:
    return group.op, group.times
