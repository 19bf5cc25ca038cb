"""Which loops lie on which double-pointed needle, followed from row to row; on other needles no row says so."""

from collections.abc import Iterator
from itertools import accumulate

from plans.pattern import Half, Needles, Row
from plans.proof.findings import Case, Finding, found
from plans.proof.knitting import SETS_UP
from plans.stitches import BIND_OFFS, JOINS, Op, makes, takes

_TOGETHER = 3
"""So many loops of a half, or fewer, lie on one needle."""
_OFF = BIND_OFFS | JOINS | {Op.GRAFT_RIB, Op.FASTEN, Op.GATHER}


def check_dividing(case: Case) -> Iterator[Finding]:
    """A half lies on two needles, a needle's loops are knitted onto one other; a heel's back lies on one.

    Of a set of four needles one holds the front.
    """
    lies: dict[tuple[int, str], tuple[int, ...]] = {}
    for place, row in enumerate(case.plan.rows):
        here = (row.sock, str(row.half))
        due, slipped = _due(case, place, row, lies.get(here, ())) if case.pointed else ((), 0)
        lies[here] = due
        if (row.needles, row.slipped) != (due, slipped):
            yield found(place, "needles-wrong", found=_text(row.needles, row.slipped), wanted=_text(due, slipped))


def _due(case: Case, place: int, row: Row, lie: tuple[int, ...]) -> tuple[tuple[int, ...], int]:
    ops = [group.op for group in row.ops for _ in range(group.times)]
    if case.turns_back(place) or not (SETS_UP | _OFF).isdisjoint(ops):
        return (), 0
    whole = row.half is Half.FRONT and case.plan.construction.needles is Needles.FOUR_DOUBLE_POINTED
    if whole or row.stitches_after <= _TOGETHER:
        return (row.stitches_after,), 0
    taken, made = (list(accumulate(map(count, ops), initial=0)) for count in (takes, makes))
    if len(lie) == 2:
        at = max(number for number, loops in enumerate(taken) if loops <= lie[0])
        slipped = lie[0] - taken[at]
    else:
        at = next((number for number, loops in enumerate(made) if 2 * loops >= row.stitches_after), 0)
        slipped = 0
    if not made[at] or at == len(ops):
        return (row.stitches_after,), 0
    return (made[at], row.stitches_after - made[at]), slipped


def _text(needles: tuple[int, ...], slipped: int) -> str:
    return " + ".join(map(str, needles)) + (f" ({slipped})" if slipped else "") or "0"
