"""Where short rows turn and where flap rows join: what waits unworked beyond each row's end."""

from collections.abc import Iterator

from plans.pattern import Half, Stage, StageName
from plans.proof.findings import Case, Finding, found


def check_heels(case: Case) -> Iterator[Finding]:
    """Every short row turns one stitch short of the last, every flap row joins one gusset stitch."""
    gusset = case.plan.gusset
    for stage in case.plan.stages:
        if stage.name is StageName.HEEL_TURN:
            yield from _turn(case, stage)
        elif stage.name is StageName.HEEL_FLAP:
            ends = [gusset - number // 2 for number in range(2, 2 * gusset + 2)]
            yield from _compare(case, stage, "flap-join-wrong", [*ends, 0])


def _turn(case: Case, stage: Stage) -> Iterator[Finding]:
    """Beyond the first row of each side wait the gusset stitches, then one marked stitch more a row."""
    due = [case.plan.gusset + number // 2 for number in range(2 * case.plan.turned)]
    yield from _compare(case, stage, "turned-at-wrong-loop", due)


def _compare(case: Case, stage: Stage, key: str, due: list[int]) -> Iterator[Finding]:
    places = [place for place, row in enumerate(case.rows(stage), start=stage.first_row) if row.half is Half.BACK]
    for place, wanted in zip(places, due, strict=False):
        if place < len(case.knitted) and not case.knitted[place].stopped:
            beyond = case.knitted[place].beyond
            if beyond != wanted:
                yield found(place, key, found=beyond, wanted=wanted)
    if len(places) != len(due):
        row = min(stage.last_row + 1, len(case.plan.rows) - 1)
        yield found(row, "heel-rows-wrong", found=len(places), wanted=len(due))
