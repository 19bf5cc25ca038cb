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
            if one is None or other is None or _work(one[1]) != _work(other[1]):
                places = sorted(passed[0] for passed in (one, other) if passed)
                yield found(places[-1], "socks-differ", other_row=places[0])
                break


def _passes(case: Case, sock: int, half: Half) -> Passes:
    rows = enumerate(case.plan.rows)
    return [(place, row) for place, row in rows if row.sock == sock and row.half is half]


def _work(row: Row) -> tuple[object, ...]:
    return row.stage, row.round, row.facing, row.stitches_after, row.ops
