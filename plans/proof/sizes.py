"""What the plan says of itself, against what was knitted and what the gauge makes of it."""

from collections.abc import Iterator
from fractions import Fraction

from plans.conversation import Measure
from plans.pattern import Half, Row, StageName
from plans.proof.findings import Case, Finding, found
from plans.stitches import Op

_PASSES = 4
"""Rows of a round of both socks."""


def check_sizes(case: Case) -> Iterator[Finding]:
    """Counts as stated, circumference within half the multiple, lengths within one round."""
    if case.complete:
        yield from _stated(case)
        yield from _even_ends(case)
    yield from _lengths(case)


def _stated(case: Case) -> Iterator[Finding]:
    """The numbers of the plan's head; the multiple is even, for two equal halves."""
    plan = case.plan
    numbers = (
        ("cast_on", plan.cast_on, _cast_on(case)),
        ("around", plan.around, sum(_ends(case, StageName.CUFF)) // (case.passes // 2) - _wider(case)),
        ("closing", plan.closing, sum(_ends(case, StageName.TOE)) // (case.passes // 2) if plan.cuff_down else 0),
        ("gusset", plan.gusset, _gusset(case) if plan.gusset else 0),
        ("turned", plan.turned, _turned(case)),
        ("heel_depth", plan.heel_depth, case.parts.heel.depth(case.numbers)),
    )
    for name, stated, knitted in numbers:
        if stated != knitted:
            yield found(None, "stated-wrong", name=name, stated=stated, found=knitted)
    if plan.multiple < 2 or plan.multiple % 2 or plan.around % plan.multiple:
        yield found(None, "stated-wrong", name="multiple", stated=plan.multiple, found=plan.around)


def _even_ends(case: Case) -> Iterator[Finding]:
    """Toe, foot, leg and cuff end with half of the stitches on each half, but for the backs of gusset and calf."""
    plan = case.plan
    up = not plan.cuff_down
    wide = {StageName.GUSSET: up * 2 * plan.gusset, StageName.LEG: up * _wider(case), StageName.CUFF: _wider(case)}
    tapered = () if case.parts.toe.cup or plan.cuff_down else (StageName.TOE,)
    for name in (*tapered, StageName.FOOT, StageName.GUSSET, StageName.LEG, StageName.CUFF):
        for stage in case.named(name):
            whole = (stage.last_row - stage.first_row + 1) % case.passes == 0
            for row in case.rows(stage)[-case.passes :] if whole else ():
                due = plan.half + (wide.get(name, 0) if row.half is Half.BACK else 0)
                if case.after(row) != due:
                    yield found(row.index, "count-wrong", found=case.after(row) or 0, stated=due)


def _wider(case: Case) -> int:
    """Stitches that the leg has gained at its top."""
    return case.numbers.top - case.numbers.half


def _ends(case: Case, name: StageName) -> list[int]:
    """Loops after each row of a stage's last round."""
    stages = case.named(name)
    return [case.after(row) or 0 for row in case.rows(stages[0])[-case.passes :]] if stages else [0]


def _gusset(case: Case) -> int:
    """Stitches added on each side: at the end of the gusset, or where it was picked up at its beginning."""
    stages = case.named(StageName.GUSSET)
    rows = case.rows(stages[0])[: case.passes] if stages and case.plan.cuff_down else ()
    widest = max((case.after(row) or 0 for row in rows), default=max(_ends(case, StageName.GUSSET)))
    return (widest - case.plan.half) // 2


def _cast_on(case: Case) -> int:
    """Loops of one sock; over waste yarn its back alone."""
    ends = _ends(case, StageName.CAST_ON)
    return ends[-1] if case.parts.toe.cup and ends else sum(ends) // (case.passes // 2)


def _turned(case: Case) -> int:
    """Marks on each side of a heel, where its rows turn back; of a heel made last, its decrease rounds.

    Every mark is made in a row of its own, once narrowing and, in an hourglass, once more widening.
    """
    if case.parts.heel.made_last:
        rows = tuple(row for stage in case.named(StageName.HEEL) for row in case.rows(stage))
        fronts = [row for row in rows if row.sock == 1 and row.half is Half.FRONT]
        return sum(any(group.op is Op.SSK for group in row.ops) for row in fronts)
    stages = case.named(case.parts.heel.stages[0])
    if case.parts.heel.picked_up is not None:
        turns = case.named(StageName.HEEL_TURN)
        return (len(case.rows(turns[-1])) - 1) // 2 if turns else 0
    rows = case.rows(stages[-1]) if stages else ()
    return _narrowing(tuple(row for row in rows if row.half is Half.BACK)) // 2


def _narrowing(rows: tuple[Row, ...]) -> int:
    """Rows before the first that works more stitches than the row before."""
    worked = [sum(group.times for group in row.ops if group.op in {Op.K, Op.P, Op.DS}) for row in rows]
    return next((at for at in range(1, len(worked)) if worked[at] > worked[at - 1]), len(worked))


def _lengths(case: Case) -> Iterator[Finding]:
    """Finished measures against counts and gauge; the heel turn counts as `turned` rounds."""
    plan = case.plan
    gauge, finished = plan.gauge, plan.finished
    if not gauge.stitches_per_10cm > 0 or not gauge.rounds_per_10cm > 0:
        yield found(None, "stated-wrong", name="gauge", stated=0, found=0)
        return
    stitch, one_round = 10 / gauge.stitches_per_10cm, 10 / gauge.rounds_per_10cm
    cup = case.parts.toe.cup
    toe = cup.depth(cup.on(case.numbers)) if cup else _rounds(case, StageName.TOE)
    gusset = 2 * plan.gusset if plan.cuff_down else _rounds(case, StageName.GUSSET)
    foot = toe + _rounds(case, StageName.FOOT) + gusset + plan.heel_depth
    cuff = _rounds(case, StageName.CUFF)
    leg = _rounds(case, StageName.LEG) + (cuff // 2 if case.parts.cuff.folds else cuff)
    for key, stated, made, tolerance in (
        ("circumference-off", finished.circumference_cm, plan.around * stitch, plan.multiple * stitch / 2),
        ("foot-length-off", finished.foot_length_cm, foot * one_round, one_round),
        ("leg-length-off", finished.leg_cm, leg * one_round, one_round),
    ):
        if abs(stated - made) > tolerance:
            yield found(None, key, found=_measure(made), wanted=_measure(stated))


def _rounds(case: Case, *names: StageName) -> int:
    rows = sum(len(case.rows(stage)) for name in names for stage in case.named(name))
    return rows // _PASSES


def _measure(cm: Fraction) -> Measure:
    return Measure(tenths_mm=round(cm * 100))
