"""Both socks are the same sock: row for row, operation for operation."""

from collections.abc import Iterator
from itertools import zip_longest

from plans.pattern import Half, Row
from plans.proof.findings import Case, Finding, found

Passes = list[tuple[int, Row]]


def check_pair(case: Case) -> Iterator[Finding]:
    """Fronts against fronts, backs against backs; a difference is told at the later of the two rows."""
    for half in Half:
        first, second = _passes(case, 1, half), _passes(case, 2, half)
        for one, other in zip_longest(first, second):
            if one is None or other is None:
                yield from (found(None, "socks-differ", other_row=more[0]) for more in (one, other) if more)
                break
            if _work(one[1]) != _work(other[1]):
                later, earlier = max(one[0], other[0]), min(one[0], other[0])
                yield found(later, "socks-differ", other_row=earlier)
                break


def _passes(case: Case, sock: int, half: Half) -> Passes:
    rows = enumerate(case.plan.rows)
    return [(place, row) for place, row in rows if row.sock == sock and row.half is half]


def _work(row: Row) -> tuple[object, ...]:
    return row.stage, row.round, row.facing, row.stitches_after, row.ops
