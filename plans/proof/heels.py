"""Where the rows of a heel, or of a toe of short rows, turn or join: what waits unworked beyond each row's end."""

from collections.abc import Iterator

from plans.pattern import Half, Stage, StageName
from plans.proof.findings import Case, Finding, found


def check_heels(case: Case) -> Iterator[Finding]:
    """Every row on the back leaves as many loops waiting as its heel or toe says, and there are as many rows."""
    cup = case.parts.toe.cup
    if cup is not None:
        for stage in case.named(StageName.TOE):
            yield from _compare(case, stage, cup.waits(cup.on(case.numbers)))
    if case.parts.heel.made_last:
        yield from _rounds(case)
        return
    for stage in case.plan.stages:
        if stage.name in case.parts.heel.stages:
            yield from _compare(case, stage, case.parts.heel.waits(stage.name, case.numbers))


def _rounds(case: Case) -> Iterator[Finding]:
    """A heel made last has the round that opens it, its tube, and a graft, which takes both halves in one row."""
    due = case.passes * (case.parts.heel.depth(case.numbers) + 1) + case.passes // 2
    for stage in case.named(StageName.HEEL):
        rows = len(case.rows(stage))
        if rows != due:
            yield found(min(stage.last_row + 1, len(case.plan.rows) - 1), "heel-rows-wrong", found=rows, wanted=due)


def _compare(case: Case, stage: Stage, due: tuple[int, ...]) -> Iterator[Finding]:
    key = "flap-join-wrong" if stage.name is StageName.HEEL_FLAP else "turned-at-wrong-loop"
    places = [place for place, row in enumerate(case.rows(stage), start=stage.first_row) if row.half is Half.BACK]
    for place, wanted in zip(places, due, strict=False):
        if place < len(case.knitted) and not case.knitted[place].stopped:
            beyond = case.knitted[place].beyond
            if beyond != wanted:
                yield found(place, key, found=beyond, wanted=wanted)
    if len(places) != len(due):
        row = min(stage.last_row + 1, len(case.plan.rows) - 1)
        yield found(row, "heel-rows-wrong", found=len(places), wanted=len(due))
