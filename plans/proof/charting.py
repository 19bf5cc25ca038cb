"""Rows that follow a chart, stitch by stitch against its squares; and no row says so that does not."""

from collections.abc import Iterator

from plans.alike import OfOps
from plans.charts import SYMBOLS, Cell
from plans.pattern import Chart, ChartRow, Colour, Group, Half, Row, StageName
from plans.proof.findings import Case, Finding, found
from plans.stitches import Op, takes

_INSTEP = {StageName.FOOT, StageName.GUSSET, StageName.HEEL_TURN}


def check_charts(case: Case) -> Iterator[Finding]:
    """Fronts, and where a chart lies all around backs too, one row of it a round, from the first on."""
    chart = case.plan.charts[0] if case.plan.charts else None
    if len(case.plan.charts) > 1:
        yield found(None, "stated-wrong", name="charts", stated=len(case.plan.charts), found=1)
    fronts, coloured = {1: 0, 2: 0}, OfOps(_is_coloured)
    for place, row in enumerate(case.plan.rows):
        due = None
        if chart is not None and _is_due(case, chart, place, row):
            fronts[row.sock] += row.half is Half.FRONT
            number = (fronts[row.sock] - 1) % len(chart.rows) + 1
            due = ChartRow(name=chart.name, row=number, of=len(chart.rows))
        if row.chart != due:
            yield found(place, "chart-row-wrong")
        elif chart is not None and due is not None:
            if _unrolled(row) != _expected(chart, due.row, row.stitches_after):
                yield Finding(place, "chart-not-followed", {"row": due.row})
        elif coloured(row.ops):
            yield found(place, "chart-row-wrong")


def _is_coloured(ops: tuple[Group, ...]) -> bool:
    return any(group.colour is not Colour.MAIN for group in ops)


def _is_due(case: Case, chart: Chart, place: int, row: Row) -> bool:
    stage = case.owners[place]
    name = stage.name if stage else row.stage
    if name is StageName.LEG:
        closed = stage is not None and place >= stage.first_row + case.passes
        return StageName.LEG in chart.stages and closed and (row.half is Half.FRONT or chart.on == "around")
    on_foot = StageName.FOOT in chart.stages
    if row.half is Half.FRONT:
        return on_foot and name in _INSTEP
    return on_foot and name is StageName.FOOT and chart.on == "around"


def _unrolled(row: Row) -> list[Cell]:
    return [Cell(group.op, group.colour) for group in row.ops for _ in range(group.times)]


def _expected(chart: Chart, number: int, loops: int) -> list[Cell]:
    """The squares from the right, what stands in brackets as often as it fits, knit stitches at both sides."""
    drawn = chart.rows[number - 1]
    bare = drawn if "[" in drawn else f"[{drawn}]"
    left, middle = bare.split("[")
    middle, right = middle.split("]")
    parts = [[cell for cell in map(SYMBOLS.get, reversed(part)) if cell is not None] for part in (right, middle, left)]
    widths = [sum(takes(cell.op) for cell in part) for part in parts]
    room = loops - widths[0] - widths[2]
    spare = room % widths[1] if widths[1] else room
    squares = parts[0] + parts[1] * (room // max(1, widths[1])) + parts[2]
    return [Cell(Op.K)] * (spare // 2) + squares + [Cell(Op.K)] * (spare - spare // 2)
