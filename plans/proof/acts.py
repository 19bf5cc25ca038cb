"""What is done without a loop: nothing is missing, nothing is there without cause, and the order is right."""

from collections.abc import Iterator

from plans.pattern import Act, Half, Needles, Row, Stage, StageName
from plans.proof.findings import Case, Finding, found
from plans.stitches import Op

_ORDER = (
    Act.LIFELINE, Act.TRY_ON, Act.MEASURE, Act.MARKER, Act.CHANGE_YARN, Act.PREPARE_TIPS, Act.LOOSELY, Act.SECURE_TAIL,
    Act.JOIN, Act.PULL_WASTE, Act.SNIP, Act.JOIN_YARN, Act.INSIDE_OUT, Act.FIRST_NEEDLE, Act.SECOND_NEEDLE,
    Act.BRING_LOOP, Act.ONE_NEEDLE, Act.SNUG, Act.SLIDE_AWAY, Act.READY_TO_KNIT, Act.PULL_TAIL, Act.CUT, Act.CUT_LONG,
    Act.TURN, Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE, Act.SEW_HEM, Act.WEAVE_IN, Act.WASH,
)  # fmt: skip
_PLACE = {act: place for place, act in enumerate(_ORDER)}
_FITTING = (Act.LIFELINE, Act.TRY_ON, Act.MEASURE)
_FITTED = {StageName.FOOT, StageName.GUSSET, StageName.HEEL_TURN, StageName.HEEL, StageName.CUFF}


def check_acts(case: Case) -> Iterator[Finding]:
    """Compare each row's acts with those its place asks for."""
    marked = frozenset(_second_rounds(case))
    known: dict[tuple[object, ...], frozenset[Act]] = {}
    right: set[tuple[tuple[Act, ...], frozenset[Act]]] = set()
    for place, row in enumerate(case.plan.rows):
        within = _within(case, place, row)
        due = known.get(within) if within else None
        if due is None:
            due = frozenset({*_before(case, place, row), *_after(case, place, row), *_turn(case, place, row)})
            if within:
                known[within] = due
        if place in marked and case.owners[place]:
            due |= {Act.MARKER}
        if (row.acts, due) in right:
            continue
        told = tuple(_compare(place, row.acts, due))
        if not told:
            right.add((row.acts, due))
        yield from told


def _within(case: Case, place: int, row: Row) -> tuple[object, ...]:
    """All that the acts of a round well within its stage depend on; nothing where more matters.

    Something else is due only in a stage's first round and its last two, where a heel or a toe is worked back and
    forth, at the bind-off, and at the very end.
    """
    stage, number = case.owners[place], case.due[place]
    if stage is None or stage.name is StageName.BIND_OFF or not 1 < number < case.of[place] - 1:
        return ()
    if place in (0, stage.first_row, len(case.plan.rows) - 1) or case.turns_back(place):
        return ()
    changes = case.plan.rows[place - 1].yarn != row.yarn
    return stage.name, row.sock, row.half, row.turn_after, changes


def _compare(place: int, acts: tuple[Act, ...], due: frozenset[Act]) -> Iterator[Finding]:
    for act in sorted(due.difference(acts), key=_place):
        yield found(place, "act-missing", act=str(act))
    known: set[Act] = set()
    last = -1
    for act in acts:
        if act not in due or act in known:
            yield found(place, "act-not-due", act=str(act))
        elif _place(act) < last:
            yield found(place, "acts-out-of-order", act=str(act))
        known.add(act)
        last = max(last, _place(act))


def _place(act: Act) -> int:
    return _PLACE.get(act, len(_ORDER))


def _before(case: Case, place: int, row: Row) -> Iterator[Act]:
    """The yarn is changed where the ball changes, stitches are snugged where a half begins in the round."""
    stage = case.owners[place]
    if place and case.plan.rows[place - 1].yarn != row.yarn:
        yield Act.CHANGE_YARN
    if stage is None:
        return
    if case.ends_cup(place) or (stage.name is StageName.CAST_ON and case.parts.toe.cup is not None):
        yield from (Act.PULL_WASTE,) if case.ends_cup(place) else ()
        yield from _needle_of(case, row)
    elif stage.name is StageName.CAST_ON:
        prepared = (Act.LOOSELY,) if case.plan.cuff_down else (Act.PREPARE_TIPS, Act.SECURE_TAIL)
        yield from prepared if row.half is Half.FRONT else ()
    elif case.opens_heel(place):
        yield from (_opening(case), Act.JOIN_YARN) if row.half is Half.FRONT else ()
    elif not case.turns_back(place) or (case.due[place] == 1 and _begins_heel(case, stage)):
        if not case.grafts(place) and not _ends_sock(case, place):
            yield Act.SNUG
        yield from _needles(case, place, row)
        yield from _joins(case, place, row)
        yield from _inside_out(case, place)
    if place == stage.first_row and (case.alone or stage == case.named(stage.name)[0]):
        yield from _stops(case, stage)


def _joins(case: Case, place: int, row: Row) -> Iterator[Act]:
    """From the cuff down each sock is joined where its first round begins."""
    stage = case.owners[place]
    first = stage is not None and stage.name is StageName.CUFF and case.due[place] == 1
    if case.plan.cuff_down and first and row.half is Half.FRONT:
        yield Act.JOIN


def _inside_out(case: Case, place: int) -> Iterator[Act]:
    if case.parts.bind_off.inside_out and _ends_sock(case, place):
        yield Act.INSIDE_OUT


def _opening(case: Case) -> Act:
    """How the stitches of a heel made last were kept tells how it is opened."""
    opening = case.parts.heel.opening
    threaded = opening is not None and any(group.op is Op.THREAD for group in opening[0](case.numbers))
    return Act.SNIP if threaded else Act.PULL_WASTE


def _begins_heel(case: Case, stage: Stage) -> bool:
    """The first row of a heel on the back is the beginning of its half of the round."""
    return stage.name is case.parts.heel.stages[0]


def _needles(case: Case, place: int, row: Row) -> Iterator[Act]:
    """Of two circulars one is taken up where its side begins, and the loop that waits on the other is brought over.

    Off two double-pointed needles a heel that goes back and forth is slipped onto one.
    """
    if case.pointed and case.turns_back(place):
        yield Act.ONE_NEEDLE
    if case.plan.construction.needles is not Needles.TWO_CIRCULARS:
        return
    front = row.half is Half.FRONT
    if case.alone or row.sock == (1 if front else 2):
        yield from _needle_of(case, row)
    if not front and _ends_sock(case, place) and case.parts.bind_off.leaves:
        yield Act.BRING_LOOP


def _needle_of(case: Case, row: Row) -> Iterator[Act]:
    if case.plan.construction.needles is Needles.TWO_CIRCULARS:
        yield Act.FIRST_NEEDLE if row.half is Half.FRONT else Act.SECOND_NEEDLE


def _ends_sock(case: Case, place: int) -> bool:
    """Whether a row takes its half's loops off the needle at the cuff."""
    stage = case.owners[place]
    ends = len(case.parts.bind_off.rounds) + 1
    return stage is not None and stage.name is StageName.BIND_OFF and case.due[place] >= ends


def _second_rounds(case: Case) -> tuple[int, ...]:
    """The first row of each second round, where there is fabric to hang a marker in."""
    if case.plan.cuff_down:
        return tuple(stage.first_row + case.passes for stage in case.named(StageName.CUFF))
    if case.parts.toe.cup is None:
        return tuple(stage.first_row + case.passes for stage in case.named(StageName.TOE))
    toes = case.named(StageName.TOE)[-1:] if not case.alone else case.named(StageName.TOE)
    return tuple(place for toe in toes for place in _second_front(case, toe))


def _second_front(case: Case, toe: Stage) -> tuple[int, ...]:
    """Of the rows after a toe of short rows, the second front of the sock that is nearest to the tips."""
    rows = list(enumerate(case.plan.rows))[toe.last_row + 1 :]
    first = rows[0][1].sock if case.alone and rows else 1
    return tuple(place for place, row in rows if row.half is Half.FRONT and row.sock == first)[1:2]


def _stops(case: Case, stage: Stage) -> tuple[Act, ...]:
    """A lifeline before each stage that can be pulled back to, and a fitting where a length is due.

    The foot of a sock whose heel is made last is due where the leg begins.
    """
    made_last = case.parts.heel.made_last
    if case.plan.cuff_down:
        if stage.name in {StageName.HEEL_FLAP, StageName.HEEL, StageName.TOE}:
            return _FITTING
        return (Act.LIFELINE,) if stage.name in {StageName.LEG, StageName.GUSSET, StageName.FOOT} else ()
    if made_last and stage.name in {StageName.LEG, StageName.HEEL}:
        return _FITTING if stage.name is StageName.LEG else ()
    if stage.name in _FITTED:
        return _FITTING
    return (Act.LIFELINE,) if stage.name in {StageName.LEG, StageName.BIND_OFF} else ()


def _after(case: Case, place: int, row: Row) -> Iterator[Act]:
    """Tails pulled in the first round, yarns cut at the end, the pair finished after its last row."""
    stage = case.owners[place]
    name = stage.name if stage else None
    back = row.half is Half.BACK
    cup = case.parts.toe.cup is not None
    set_up = case.ends_cup(place) or (back and ((name is StageName.CAST_ON and not cup) or case.opens_heel(place)))
    if set_up and not case.pointed:
        yield Act.SLIDE_AWAY if row.sock == 2 and not case.alone else Act.READY_TO_KNIT
    if name is StageName.TOE and not back and not cup and not case.plan.cuff_down and case.due[place] == 1:
        yield Act.PULL_TAIL
    if (back or case.grafts(place)) and stage is not None:
        yield from _cut(case, place, stage)
    if place == len(case.plan.rows) - 1:
        yield from (Act.SEW_HEM,) if case.parts.cuff.hemmed else ()
        yield from (Act.WEAVE_IN, Act.WASH)


def _cut(case: Case, place: int, stage: Stage) -> Iterator[Act]:
    """The yarn is cut after the last back; where it is sewn or grafted with, after the back before, and long."""
    begins = len(case.parts.bind_off.rounds)
    if case.plan.cuff_down:
        long_tail = case.parts.bind_off.long_tail
        if stage.name is (StageName.TOE if long_tail else StageName.BIND_OFF) and case.due[place] == case.of[place]:
            yield Act.CUT_LONG if long_tail else Act.CUT
        return
    if case.parts.bind_off.long_tail:
        last_cuff = stage.name is StageName.CUFF and not begins and case.due[place] == case.of[place]
        last_begun = stage.name is StageName.BIND_OFF and case.due[place] == begins
        if last_cuff or last_begun:
            yield Act.CUT_LONG
    elif _ends_sock(case, place):
        yield Act.CUT
    made_last = case.parts.heel.made_last and stage.name is StageName.HEEL
    if made_last and case.due[place] == case.of[place] - 1:
        yield Act.CUT_LONG


def _turn(case: Case, place: int, row: Row) -> Iterator[Act]:
    """The turn due after the row: plain in a heel that goes back and forth, else one way and the other by turns.

    A side ends with fronts and with backs in turn, so all fronts end one way and all backs the other.
    """
    if not row.turn_after:
        return
    stage = case.owners[place]
    if case.turns_back(place) and stage is not None and not _ends_heel(case, place, stage):
        yield Act.TURN
    else:
        yield Act.TURN_CLOCKWISE if row.half is Half.FRONT else Act.TURN_ANTICLOCKWISE


def _ends_heel(case: Case, place: int, stage: Stage) -> bool:
    heel = case.parts.heel
    return stage.name is heel.stages[-1] and case.due[place] == len(heel.waits(stage.name, case.numbers))
