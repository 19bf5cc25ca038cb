"""Where short rows turn and where flap rows join: what waits unworked beyond each row's end."""

from collections.abc import Iterator

from plans.pattern import Half, Row, Stage, StageName
from plans.proof.findings import Case, Finding, found


def check_heels(case: Case) -> Iterator[Finding]:
    """Every short row turns one stitch short of the last, every flap row joins one gusset stitch."""
    gusset = case.plan.gusset
    for stage in case.plan.stages:
        if stage.name is StageName.HEEL_TURN:
            yield from _turn(case, stage)
        elif stage.name is StageName.HEEL_FLAP:
            ends = [gusset - number // 2 for number in range(2, 2 * gusset + 2)]
            yield from _compare(case, _backs(case, stage), "flap-join-wrong", [*ends, 0])


def _turn(case: Case, stage: Stage) -> Iterator[Finding]:
    """Beyond the first row of each side wait the gusset stitches, then one marked stitch more a row."""
    rows = _backs(case, stage)
    due = [case.plan.gusset + number // 2 for number in range(2 * case.plan.turned)]
    yield from _compare(case, rows, "turned-at-wrong-loop", due)


def _compare(case: Case, rows: list[tuple[int, Row]], key: str, due: list[int]) -> Iterator[Finding]:
    for (place, _), wanted in zip(rows, due, strict=False):
        if place < len(case.knitted) and not case.knitted[place].stopped:
            beyond = case.knitted[place].beyond
            if beyond != wanted:
                yield found(place, key, found=beyond, wanted=wanted)
    if len(rows) != len(due) and rows:
        yield found(rows[-1][0], key, found=len(rows), wanted=len(due))


def _backs(case: Case, stage: Stage) -> list[tuple[int, Row]]:
    rows = enumerate(case.rows(stage), start=stage.first_row)
    return [(place, row) for place, row in rows if row.half is Half.BACK]
