"""A chart laid over the plain rounds of foot and leg."""

from collections.abc import Iterator
from itertools import groupby
from math import lcm

from plans.charts import Cell, Fault, parted, taken
from plans.pattern import Chart, ChartRow, Group, Half, StageName
from plans.rows.rounds import Ops, Pass, Round
from plans.stitches import Op

MULTIPLE = 4
"""What a sock's stitches are a multiple of without a chart."""

_FRONT_TOO = {StageName.FOOT: (StageName.FOOT, StageName.GUSSET, StageName.HEEL_TURN)}
"""The instep goes on through gusset and heel, and so does what is centred on it."""


def multiple_of(chart: Chart | None) -> int:
    """What the sock's stitches must be a multiple of, so that what repeats comes out on each half."""
    if chart is None or chart.on == "front":
        return MULTIPLE
    return lcm(MULTIPLE, 2 * max(1, taken(parted(chart.rows[0]).repeat)))


def unfitting(chart: Chart, around: int) -> Fault | None:
    """Why a chart cannot lie on a sock of so many stitches; None where it can."""
    first, repeat, last = (taken(part) for part in parted(chart.rows[0]))
    if chart.on == "front":
        wide = first + repeat + last
        too_wide = wide > around // 2
        return ("chart-too-wide", {"name": chart.name, "found": wide, "wanted": around // 2}) if too_wide else None
    if first or last:
        return "chart-edges-around", {"name": chart.name}
    multiple = multiple_of(chart)
    if around % multiple:
        below = around - around % multiple
        bounds = {"stitches": around, "multiple": multiple, "below": below, "above": below + multiple}
        return "chart-uneven", {"name": chart.name, **bounds}
    return None


def lies_around(chart: Chart | None) -> bool:
    """Whether a chart lies all around the leg, whose stitches then stay as many as they are."""
    return chart is not None and chart.on == "around" and StageName.LEG in chart.stages


def charted(rounds: Iterator[Round], chart: Chart | None) -> Iterator[Round]:
    """The rounds with the chart's rows in place of plain stitches, one row a round, from its first row on.

    A chart on the leg begins behind the round in which the corners are closed, and goes on from where the foot
    left off.
    """
    due = 0
    for one in rounds:
        if chart is None or not follows(chart, one.front.stage, one.front.number, Half.FRONT):
            yield one
            continue
        row = ChartRow(name=chart.name, row=due % len(chart.rows) + 1, of=len(chart.rows))
        due += 1
        back = one.back
        if follows(chart, one.front.stage, one.front.number, Half.BACK):
            back = tuple(_with(each, chart, row) for each in back)
        yield Round(_with(one.front, chart, row), back)


def follows(chart: Chart, stage: StageName, number: int, half: Half) -> bool:
    """Whether a half of a round follows the chart."""
    if stage is StageName.LEG:
        return StageName.LEG in chart.stages and number > 1 and (half is Half.FRONT or chart.on == "around")
    if StageName.FOOT not in chart.stages:
        return False
    if half is Half.FRONT:
        return stage in _FRONT_TOO[StageName.FOOT]
    return stage is StageName.FOOT and chart.on == "around"


def _with(plain: Pass, chart: Chart, row: ChartRow) -> Pass:
    return plain._replace(ops=laid(chart, row.row, plain.after), chart=row)


def laid(chart: Chart, row: int, loops: int) -> Ops:
    """A row of the chart across so many loops: as often as it goes, centred between knit stitches."""
    first, repeat, last = parted(chart.rows[row - 1])
    times, rest = divmod(loops - taken(first) - taken(last), taken(repeat))
    before = (Cell(Op.K),) * (rest // 2)
    cells = (*before, *first, *repeat * times, *last, *(Cell(Op.K),) * (rest - rest // 2))
    runs = ((cell, len(list(run))) for cell, run in groupby(cells))
    return tuple(Group(op=cell.op, times=number, colour=cell.colour) for cell, number in runs)
