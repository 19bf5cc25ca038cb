"""Indices, stages and round numbers, against their order and the plan's list of stages."""

from collections.abc import Iterator
from itertools import pairwise

from plans.pattern import Half, Row, Stage, StageName
from plans.proof.findings import Case, Finding, found

_ORDER = tuple(StageName)
_NEEDED = (
    StageName.CAST_ON, StageName.TOE, StageName.GUSSET, StageName.HEEL_TURN, StageName.HEEL_FLAP,
    StageName.LEG, StageName.CUFF, StageName.BIND_OFF,
)  # fmt: skip
_CAST_ON = ((2, Half.FRONT), (2, Half.BACK), (1, Half.FRONT), (1, Half.BACK))
_PASSES = 4
"""Rows of a round of the pair: two halves of two socks."""


def check_labels(case: Case) -> Iterator[Finding]:
    """Every row carries its own index, the stage that claims it, and the number of its round."""
    yield from _stages(case)
    yield from _cast_on(case)
    second = {stage.name: False for stage in case.plan.stages}
    numbers: dict[int, int] = {}
    for stage in case.plan.stages:
        numbers.update(_numbers(stage, again=second[stage.name]))
        second[stage.name] = True
    for place, (row, stage_due) in enumerate(zip(case.plan.rows, case.owners, strict=True)):
        yield from _row(place, row, stage_due, numbers.get(place, row.round))


def _row(place: int, row: Row, due: Stage | None, number: int) -> Iterator[Finding]:
    if row.index != place:
        yield found(place, "row-index-wrong", found=row.index, wanted=place)
    if due is None or row.stage is not due.name:
        yield found(place, "stage-wrong", found=str(row.stage), wanted=str(due.name) if due else "")
    if row.round != number:
        yield found(place, "round-number-wrong", found=row.round, wanted=number)


def _numbers(stage: Stage, *, again: bool) -> Iterator[tuple[int, int]]:
    """The number due to each row: of its round, or in turn and flap of the row itself.

    The heel round begins with the two fronts, then the first sock to turn its heel begins to count.
    """
    fronts = 2 if stage.name is StageName.HEEL_TURN and not again else 0
    for index in range(stage.first_row, stage.last_row + 1):
        passed = index - stage.first_row
        if stage.name is StageName.CAST_ON:
            yield index, 1
        elif stage.name in {StageName.HEEL_TURN, StageName.HEEL_FLAP}:
            yield index, max(1, passed - fronts + 1)
        else:
            yield index, passed // _PASSES + 1


def _cast_on(case: Case) -> Iterator[Finding]:
    """The sock that lies further from the tips is cast on first, front and back together."""
    for place, (row, due) in enumerate(zip(case.plan.rows, _CAST_ON, strict=False)):
        if (row.sock, row.half) != due or row.stage is not StageName.CAST_ON:
            yield found(place, "cast-on-out-of-order", sock=due[0], half=str(due[1]))


def _stages(case: Case) -> Iterator[Finding]:
    """Stages follow each other without a gap, in the order of a sock, the heel once for each sock."""
    stages = case.plan.stages
    for name in _NEEDED:
        if not case.named(name):
            yield found(None, "rows-missing", stage=str(name))
    for one, following in pairwise(stages):
        if following.first_row != one.last_row + 1 or not _may_follow(one.name, following.name):
            yield found(following.first_row, "stage-wrong", found=str(following.name), wanted=str(one.name))
    if stages and (stages[0].first_row or stages[-1].last_row + 1 != len(case.plan.rows)):
        row = min(stages[-1].last_row + 1, len(case.plan.rows) - 1)
        yield found(row, "stage-wrong", found=str(stages[-1].name), wanted=str(StageName.BIND_OFF))


def _may_follow(one: StageName, following: StageName) -> bool:
    if (one, following) == (StageName.HEEL_FLAP, StageName.HEEL_TURN):
        return True
    return _ORDER.index(following) > _ORDER.index(one)
