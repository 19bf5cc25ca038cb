"""Indices, stages and round numbers, against their order and the plan's list of stages."""

from collections.abc import Iterator
from itertools import pairwise, zip_longest

from plans.pattern import Half, Row, Sock, Stage, StageName
from plans.proof.findings import Case, Finding, found

_BEFORE = (StageName.CAST_ON, StageName.TOE, StageName.FOOT, StageName.GUSSET)
_AFTER = (StageName.LEG, StageName.CUFF, StageName.BIND_OFF)
_DOWN = (StageName.CAST_ON, StageName.CUFF, StageName.LEG)
_DOWN_AFTER = (StageName.GUSSET, StageName.FOOT, StageName.TOE, StageName.BIND_OFF)
_SET_UP = ((2, Half.FRONT), (2, Half.BACK), (1, Half.FRONT), (1, Half.BACK))


def check_labels(case: Case) -> Iterator[Finding]:
    """Every row carries its own index, the stage that claims it, and the number of its round."""
    yield from _stages(case)
    yield from _set_up(case)
    for place, (row, stage_due) in enumerate(zip(case.plan.rows, case.owners, strict=True)):
        yield from _row(place, row, stage_due, case.due[place] or row.round)


def _row(place: int, row: Row, due: Stage | None, number: int) -> Iterator[Finding]:
    if row.index != place:
        yield found(place, "row-index-wrong", found=row.index, wanted=place)
    if due is None or row.stage is not due.name:
        yield found(place, "stage-wrong", found=str(row.stage), wanted=str(due.name) if due else "")
    if row.round != number:
        yield found(place, "round-number-wrong", found=row.round, wanted=number)


def _set_up(case: Case) -> Iterator[Finding]:
    """Of both socks the one that lies further from the tips is set up first, its front and its back together.

    So it is cast on, and so is a heel made last opened: its waste yarn comes out before any loop can be caught, and
    the yarn that was joined at the sole's first loop must hang where the next round begins.
    """
    if case.parts.toe.cup is not None:
        yield from _cups(case)
    for stage in case.named(StageName.CAST_ON) if case.parts.toe.cup is None else ():
        yield from _in_turn(case, "cast-on-out-of-order", stage, range(stage.first_row, stage.last_row + 1))
    for stage in case.named(StageName.HEEL) if case.parts.heel.made_last else ():
        yield from _in_turn(case, "opened-out-of-order", stage, range(stage.first_row, stage.first_row + case.passes))


def _cups(case: Case) -> Iterator[Finding]:
    """Over waste yarn the back is cast on, of each sock right before its toe, and the toe ends with the front."""
    cup = case.parts.toe.cup
    for number, stage in enumerate(case.named(StageName.CAST_ON)):
        sock: Sock = 2 if (number == 0) is not case.alone else 1
        due = (stage.first_row, sock, Half.BACK)
        yield from _placed(case, due, stage.last_row - stage.first_row)
    for number, stage in enumerate(case.named(StageName.TOE)):
        sock = 2 if (number == 0) is not case.alone else 1
        rows = cup.waits(cup.on(case.numbers)) if cup else ()
        yield from _placed(case, (stage.first_row + len(rows), sock, Half.FRONT), 0)


def _placed(case: Case, due: tuple[int, Sock, Half], more: int) -> Iterator[Finding]:
    place, sock, half = min(due[0], len(case.plan.rows) - 1), due[1], due[2]
    row = case.plan.rows[place]
    if more or (row.sock, row.half) != (sock, half):
        yield found(place + bool(more), "cast-on-out-of-order", sock=sock, half=str(half))


def _in_turn(case: Case, key: str, stage: Stage, places: range) -> Iterator[Finding]:
    sock = 2 if case.alone and stage != case.named(stage.name)[0] else 1
    order = ((sock, Half.FRONT), (sock, Half.BACK)) if case.alone else _SET_UP
    rows = case.plan.rows[places.start : places.stop]
    for place, (row, due) in enumerate(zip_longest(rows, order), start=places.start):
        if row is None or due is None or (row.sock, row.half) != due or row.stage is not stage.name:
            at_sock, at_half = due or order[-1]
            at = min(place, len(case.plan.rows) - 1)
            yield found(at, key, sock=at_sock, half=str(at_half))


def _due(case: Case) -> tuple[StageName, ...]:
    """All stages in their order: those of a heel once for each sock, or all of a sock before all of the other."""
    heel = case.parts.heel
    if case.plan.cuff_down:
        around_heel = heel.stages if case.alone else heel.stages * 2
        return (*_DOWN, *around_heel, *_DOWN_AFTER) * (2 if case.alone else 1)
    around_heel = heel.stages if case.alone else heel.stages * 2
    begins = (*(_BEFORE[:2] if case.alone or case.parts.toe.cup is None else _BEFORE[:2] * 2), *_BEFORE[2:])
    sock = (*begins, *_AFTER, *heel.stages) if heel.made_last else (*begins, *around_heel, *_AFTER)
    return sock * 2 if case.alone else sock


def _needed(case: Case) -> Iterator[StageName]:
    """What no such sock lacks: of toe, foot and gusset the foot may have no even rounds."""
    for name in dict.fromkeys(_due(case)):
        if name is not StageName.FOOT and (name is not StageName.GUSSET or case.parts.heel.gusset(case.plan.half)):
            yield name


def _stages(case: Case) -> Iterator[Finding]:
    """Stages follow each other without a gap, in the order of knitting."""
    stages = case.plan.stages
    for name in _needed(case):
        if not case.named(name):
            yield found(None, "rows-missing", stage=str(name))
    for one, following in pairwise(stages):
        if following.first_row != one.last_row + 1:
            yield found(following.first_row, "stage-wrong", found=str(following.name), wanted=str(one.name))
    yield from _in_order(case)
    if stages and (stages[0].first_row or stages[-1].last_row + 1 != len(case.plan.rows)):
        row = min(stages[-1].last_row + 1, len(case.plan.rows) - 1)
        yield found(row, "stage-wrong", found=str(stages[-1].name), wanted=str(_due(case)[-1]))


def _in_order(case: Case) -> Iterator[Finding]:
    """Each stage is one still to come, and none that every sock has is passed by."""
    due, needed, at = _due(case), set(_needed(case)), 0
    for stage in case.plan.stages:
        ahead = due[at:]
        skipped = ahead[: ahead.index(stage.name)] if stage.name in ahead else ahead
        if stage.name not in ahead or needed & set(skipped):
            wanted = next((name for name in skipped if name in needed), stage.name)
            yield found(stage.first_row, "stage-wrong", found=str(stage.name), wanted=str(wanted))
            return
        at += len(skipped) + 1
