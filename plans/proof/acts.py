"""What is done without a loop: nothing is missing, nothing is there without cause, and the order is right."""

from collections.abc import Iterator

from plans.pattern import Act, BindOff, Half, Row, Stage, StageName
from plans.proof.findings import Case, Finding, found, in_the_round

_ORDER = (
    Act.LIFELINE, Act.TRY_ON, Act.MEASURE, Act.MARKER, Act.CHANGE_YARN, Act.PREPARE_TIPS, Act.SECURE_TAIL,
    Act.JOIN, Act.SNUG, Act.SLIDE_AWAY, Act.READY_TO_KNIT, Act.PULL_TAIL, Act.CUT, Act.CUT_LONG, Act.TURN,
    Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE, Act.WEAVE_IN, Act.WASH,
)  # fmt: skip
_PLACE = {act: place for place, act in enumerate(_ORDER)}
_FITTED = {StageName.FOOT, StageName.GUSSET, StageName.HEEL_TURN, StageName.CUFF}
_SAVED = {*_FITTED, StageName.LEG, StageName.BIND_OFF}


def check_acts(case: Case) -> Iterator[Finding]:
    """Compare each row's acts with those its place asks for."""
    for place, row in enumerate(case.plan.rows):
        due = {*_before(case, place, row), *_after(case, place, row), *_turn(case, place, row)}
        yield from _compare(place, row.acts, due)


def _compare(place: int, acts: tuple[Act, ...], due: set[Act]) -> Iterator[Finding]:
    for act in sorted(due.difference(acts), key=_PLACE.__getitem__):
        yield found(place, "act-missing", act=str(act))
    known: set[Act] = set()
    last = -1
    for act in acts:
        if act not in due or act in known:
            yield found(place, "act-not-due", act=str(act))
        elif _PLACE[act] < last:
            yield found(place, "acts-out-of-order", act=str(act))
        known.add(act)
        last = max(last, _PLACE[act])


def _before(case: Case, place: int, row: Row) -> Iterator[Act]:
    """The yarn is changed where the ball changes, stitches are snugged where a half begins in the round."""
    stage = case.owners[place]
    if place and case.plan.rows[place - 1].yarn != row.yarn:
        yield Act.CHANGE_YARN
    if stage is None:
        return
    if stage.name is StageName.CAST_ON:
        yield from (Act.PREPARE_TIPS, Act.SECURE_TAIL) if row.half is Half.FRONT else ()
    elif in_the_round(row, stage) or _begins_heel(place, row, stage):
        yield from () if stage.name is StageName.BIND_OFF else (Act.SNUG,)
    if place == stage.first_row and stage == case.named(stage.name)[0]:
        yield from _stops(stage)
    if place == _second_round(case):
        yield Act.MARKER


def _begins_heel(place: int, row: Row, stage: Stage) -> bool:
    """The first row of a heel turn is the beginning of its half of the round."""
    if stage.name is not StageName.HEEL_TURN:
        return False
    fronts = 2 if row.sock == 2 else 0
    return place == stage.first_row + fronts


def _second_round(case: Case) -> int:
    """The first row of the second round, where there is fabric to hang a marker in."""
    toe = case.named(StageName.TOE)
    return toe[0].first_row + 4 if toe else -1


def _stops(stage: Stage) -> Iterator[Act]:
    if stage.name in _SAVED:
        yield Act.LIFELINE
    if stage.name in _FITTED:
        yield from (Act.TRY_ON, Act.MEASURE)


def _after(case: Case, place: int, row: Row) -> Iterator[Act]:
    """Tails pulled in the first round, yarns cut at the end, the pair finished after its last row."""
    stage = case.owners[place]
    name = stage.name if stage else None
    if name is StageName.CAST_ON and row.half is Half.BACK:
        yield Act.SLIDE_AWAY if row.sock == 2 else Act.READY_TO_KNIT
    if name is StageName.TOE and row.half is Half.FRONT and stage and place < stage.first_row + 4:
        yield Act.PULL_TAIL
    sewn = case.plan.construction.bind_off is BindOff.SEWN
    if name is StageName.BIND_OFF and row.half is Half.BACK and not sewn:
        yield Act.CUT
    if sewn and stage and name is StageName.CUFF and place in _last_backs(stage):
        yield Act.CUT_LONG
    if place == len(case.plan.rows) - 1:
        yield from (Act.WEAVE_IN, Act.WASH)


def _last_backs(stage: Stage) -> tuple[int, int]:
    """Where the backs of the last round stand."""
    rounds = round((stage.last_row - stage.first_row + 1) / 4)
    end = stage.first_row + 4 * rounds
    return end - 2, end - 1


def _turn(case: Case, place: int, row: Row) -> Iterator[Act]:
    """The turn due after the row: plain in turn and flap, else one way and the other by turns.

    A side ends with fronts and with backs in turn, so all fronts end one way and all backs the other.
    """
    if not row.turn_after:
        return
    stage = case.owners[place]
    last = 2 * case.plan.gusset
    flap_ends = stage is not None and stage.name is StageName.HEEL_FLAP and place == stage.first_row + last
    if in_the_round(row, stage) or flap_ends:
        yield Act.TURN_CLOCKWISE if row.half is Half.FRONT else Act.TURN_ANTICLOCKWISE
    else:
        yield Act.TURN
