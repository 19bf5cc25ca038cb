"""How each row of turn and flap is made up, from its first operation to its last."""

from collections.abc import Iterator

from plans.pattern import Half, Heel, Stage, StageName
from plans.proof.findings import Case, Finding, found
from plans.stitches import Op

Ops = list[tuple[Op, int]]


def check_heel_rows(case: Case) -> Iterator[Finding]:
    """Every short row carries its mark, every flap row slips and joins as it should."""
    for stage in case.plan.stages:
        number = 0
        for place, row in enumerate(case.rows(stage), start=stage.first_row):
            if row.half is not Half.BACK or row.stage is not stage.name:
                continue
            ops = [(group.op, group.times) for group in row.ops]
            if not _well_made(case, stage, number, ops):
                yield found(place, "turn-broken" if stage.name is StageName.HEEL_TURN else "flap-broken")
            number += 1


def _well_made(case: Case, stage: Stage, number: int, ops: Ops) -> bool:
    if stage.name is StageName.HEEL_TURN:
        return _turn_row(case.plan.construction.heel, number, ops)
    if stage.name is StageName.HEEL_FLAP:
        return _flap_row(number, 2 * case.plan.gusset, ops)
    return True


def _turn_row(heel: Heel | None, number: int, ops: Ops) -> bool:
    """Wrapped: stitches, then a wrap. German: a double stitch in all rows but the first, then stitches."""
    marked = ops[-1:] if heel is Heel.WRAPPED else ops[:1] if number else []
    plain = ops[:-1] if heel is Heel.WRAPPED else ops[1:] if number else ops
    mark = (Op.WRAP_TURN, 1) if heel is Heel.WRAPPED else (Op.DS, 1)
    return len(plain) == 1 and plain[0][0] is (Op.P if number % 2 else Op.K) and marked in ([mark], [])


def _flap_row(number: int, joins: int, ops: Ops) -> bool:
    """Right side: slip one, knit one, to a slip before the join; wrong side: slip one, purl to the join.

    The first row knits over the marks of the turn to its join, the last knits across.
    """
    if number == joins:
        return len(ops) == 1 and ops[0][0] is Op.K
    if number % 2:
        middle = {op for op, _ in ops[1:-1]}
        return ops[:1] == [(Op.SL_WYIF, 1)] and middle == {Op.P} and ops[-1:] == [(Op.P2TOG, 1)]
    if number == 0:
        middle = {op for op, _ in ops[:-1]}
        return middle <= {Op.K, Op.DS} and ops[-1:] == [(Op.SSK, 1)]
    pattern = [(Op.SL_WYIB, 1), (Op.K, 1)] * (len(ops) // 2)
    return ops == [*pattern[: len(ops) - 1], (Op.SSK, 1)] and len(ops) % 2 == 0
