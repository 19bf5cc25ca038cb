"""A piece written round by round: its rows against its own pattern, read once more, and its numbers."""

from collections.abc import Iterator
from itertools import groupby, zip_longest

from plans.conversation import Measure
from plans.pattern import Row, Stage, StageName
from plans.proof.findings import Finding, Told, found
from plans.written.reading.assembling import Head
from plans.written.reading.patterns import Refused, read_rows

_ENDS = (StageName.CAST_ON, StageName.BIND_OFF)


def check_written(case: Told) -> Iterator[Finding]:
    """Every row is the one that the pattern tells of; stages, counts and measures follow from the rows."""
    yield from _against_pattern(case)
    yield from _stages(case)
    yield from _counts(case)
    yield from _measures(case)


def _against_pattern(case: Told) -> Iterator[Finding]:
    plan = case.plan
    pattern = plan.written.pattern if plan.written else ""
    told = read_rows(pattern, Head(pieces=len(plan.socks), needles=plan.construction.needles))
    if isinstance(told, Refused):
        yield found(None, "written-unread")
        return
    for place, (row, due) in enumerate(zip_longest(plan.rows, told)):
        if row is None or due is None or row != due:
            yield found(min(place, len(plan.rows) - 1), "written-otherwise")
        if row is None or due is None:
            return


def _stages(case: Told) -> Iterator[Finding]:
    """The runs of rows of one part, as the plan lists them."""
    runs = [list(run) for _, run in groupby(enumerate(case.plan.rows), key=lambda placed: placed[1].stage)]
    due = [Stage(name=run[0][1].stage, first_row=run[0][0], last_row=run[-1][0]) for run in runs]
    for stage, wanted in zip_longest(case.plan.stages, due):
        if stage != wanted:
            row = (wanted or stage or due[-1]).first_row
            names = [str(each.name) if each else "" for each in (stage, wanted)]
            yield found(row, "stage-wrong", found=names[0], wanted=names[1])
            return


def _counts(case: Told) -> Iterator[Finding]:
    plan = case.plan
    for name, stated, knitted in (
        ("cast_on", plan.cast_on, _loops(case, StageName.CAST_ON)),
        ("around", plan.around, _widest(case)),
        ("gusset", plan.gusset, 0),
        ("turned", plan.turned, 0),
        ("heel_depth", plan.heel_depth, 0),
        ("closing", plan.closing, 0),
    ):
        if stated != knitted:
            yield found(None, "stated-wrong", name=name, stated=stated, found=knitted)
    if plan.multiple < 1 or plan.cast_on % max(1, plan.multiple):
        yield found(None, "stated-wrong", name="multiple", stated=plan.multiple, found=plan.cast_on)


def _loops(case: Told, name: StageName) -> int:
    return sum(case.after(row) or 0 for row in _first_piece(case) if row.stage is name)


def _widest(case: Told) -> int:
    """The most loops that the first piece has between two rows."""
    now: dict[object, int] = {}
    most = 0
    for row in _first_piece(case):
        now[row.half] = case.after(row) or 0
        most = max(most, sum(now.values()))
    return most


def _first_piece(case: Told) -> list[Row]:
    return [row for row in case.plan.rows if row.sock == 1]


def _measures(case: Told) -> Iterator[Finding]:
    plan = case.plan
    gauge, finished = plan.gauge, plan.finished
    if not gauge.stitches_per_10cm > 0 or not gauge.rounds_per_10cm > 0:
        yield found(None, "stated-wrong", name="gauge", stated=0, found=0)
        return
    stitch, one_round = 10 / gauge.stitches_per_10cm, 10 / gauge.rounds_per_10cm
    rounds = {(row.stage, row.round) for row in _first_piece(case) if row.stage not in _ENDS}
    for key, stated, made, give in (
        ("circumference-off", finished.circumference_cm, plan.around * stitch, stitch / 2),
        ("foot-length-off", finished.foot_length_cm, 0 * stitch, one_round / 2),
        ("leg-length-off", finished.leg_cm, 0 * stitch, one_round / 2),
        ("height-off", finished.height_cm or 0 * stitch, len(rounds) * one_round, one_round / 2),
    ):
        if abs(stated - made) > give:
            values = {"found": Measure(tenths_mm=round(made * 100)), "wanted": Measure(tenths_mm=round(stated * 100))}
            yield Finding(None, key, dict(values))
