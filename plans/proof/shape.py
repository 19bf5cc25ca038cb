"""How every row is made up, from its first operation to its last, against the look its part says it has."""

import re
from collections.abc import Iterator
from functools import cache, lru_cache

from plans.alike import OfOps
from plans.pattern import Group, Half, Pairing, Row, StageName
from plans.proof.findings import Case, Finding, found
from plans.rows.legs import CORNERS_LOOK, taken_in_look
from plans.rows.openings import NARROWED_LOOK
from plans.rows.parts import At, Step
from plans.rows.toes import toe_steps

_WORDS = re.compile(r"[a-z][a-z0-9_]*")
_BROKEN = {
    StageName.TOE: "increases-not-mirrored",
    StageName.GUSSET: "increases-not-mirrored",
    StageName.HEEL_TURN: "turn-broken",
    StageName.HEEL_FLAP: "flap-broken",
    StageName.CUFF: "rib-broken",
}
_PLAIN = r"k \d+"
_DOWN = {StageName.LEG, StageName.FOOT, StageName.GUSSET, StageName.TOE}


def check_shape(case: Case) -> Iterator[Finding]:
    """Every operation belongs where it stands, and the row is made up as it should be."""
    steps, as_text = _steps(case), OfOps(text)
    mirrored = case.plan.construction.pairing is Pairing.MIRRORED
    looks: dict[tuple[object, ...], str | None] = {}
    for place, row in enumerate(case.plan.rows):
        owner = case.owners[place]
        if row.chart is not None or owner is None or owner.name is not row.stage or row.round != case.due[place]:
            continue
        where = (row.stage, row.round, case.of[place], row.half, row.facing, mirrored and row.sock)
        if where not in looks:
            looks[where] = _look(case, place, row, steps)
        look, worked = looks[where], as_text(row.ops)
        if look is not None and not _matches(look, worked):
            yield from _told(place, row, look)


def _told(place: int, row: Row, look: str) -> Iterator[Finding]:
    strange = sorted({str(group.op) for group in row.ops} - _words(look))
    for op in strange:
        yield found(place, "op-out-of-place", op=op, stage=str(row.stage))
    if not strange:
        first_leg = row.stage is StageName.LEG and row.round == 1
        yield found(place, "corner-strands-wrong" if first_leg else _BROKEN.get(row.stage, "row-broken"))


@lru_cache(maxsize=4096)
def _matches(look: str, worked: str) -> bool:
    return re.fullmatch(look, worked) is not None


@cache
def _words(look: str) -> frozenset[str]:
    return frozenset(_WORDS.findall(look.replace(r"\d", "")))


def text(ops: tuple[Group, ...]) -> str:
    """The operations of a row as looks have them; neighbours that are alike are one."""
    parts: list[tuple[str, int]] = []
    for group in ops:
        name = group.op.value + ("*" if group.wrap or group.double else "")
        if parts and parts[-1][0] == name:
            parts[-1] = (name, parts[-1][1] + group.times)
        else:
            parts.append((name, group.times))
    return ", ".join(f"{name} {times}" for name, times in parts)


def _steps(case: Case) -> tuple[Step, ...]:
    """What each round of the toe does; nothing where the head's numbers make no toe, which is said elsewhere."""
    name = case.plan.construction.toe
    try:
        return toe_steps(name, case.numbers.tip, case.numbers.half) if name is not None else ()
    except ValueError:
        return ()


def _look(case: Case, place: int, row: Row, steps: tuple[Step, ...]) -> str | None:
    parts, number, back = case.parts, row.round, row.half is Half.BACK
    first = case.numbers.half if back else 0
    if case.plan.cuff_down and row.stage in _DOWN:
        return _down_look(case, row, steps)
    match row.stage:
        case StageName.CAST_ON:
            return r"co_waste \d+" if parts.toe.cup else r"co \d+"
        case StageName.TOE:
            return _toe_look(case, row, steps)
        case StageName.FOOT:
            return parts.sole.look(number) if back else _PLAIN
        case StageName.GUSSET:
            return parts.increase.look(True, True) if back and number % 2 else _PLAIN
        case StageName.LEG if number == 1:
            return _first_leg_look(case, back=back)
        case StageName.LEG:
            return _leg_look(case, number, back=back)
        case StageName.CUFF:
            loops = case.numbers.top if back else case.numbers.half
            return parts.cuff.look(number, case.of[place], first, loops)
        case StageName.BIND_OFF:
            begins = parts.bind_off.rounds[number - 1 : number]
            return begins[0][1] if begins else parts.bind_off.looks[back]
        case _:
            return parts.heel.look(At(row.stage, row.half, row.facing, number, case.of[place], case.numbers))


def _down_look(case: Case, row: Row, steps: tuple[Step, ...]) -> str | None:
    """What is knitted otherwise from the cuff down."""
    parts, number, back = case.parts, row.round, row.half is Half.BACK
    match row.stage:
        case StageName.LEG:
            return _leg_look(case, number, back=back)
        case StageName.FOOT:
            if back:
                return parts.sole.look(number)
            return CORNERS_LOOK if number == 1 and parts.heel.picked_up is None else _PLAIN
        case StageName.GUSSET:
            return parts.heel.picked_up.look(number) if back and parts.heel.picked_up else _PLAIN
        case _:
            if number > len(steps):
                return None
            return NARROWED_LOOK if steps[len(steps) - number].outer else _PLAIN


def _toe_look(case: Case, row: Row, steps: tuple[Step, ...]) -> str | None:
    cup = case.parts.toe.cup
    if cup is not None:
        numbers = cup.on(case.numbers)
        rows = len(cup.waits(numbers))
        at = At(row.stage, row.half, row.facing, row.round, rows, numbers)
        return cup.look(at) if row.round <= rows else r"free \d+, pick_up 1"
    if row.round == 1:
        return rf"{case.plan.construction.second_tip} \d+" if row.half is Half.BACK else _PLAIN
    if row.round > len(steps):
        return None
    step = steps[row.round - 1]
    mirrored = case.plan.construction.pairing is Pairing.MIRRORED and row.sock == 2
    outer_first = (row.half is Half.FRONT) is not mirrored
    start, end = (step.outer, step.inner) if outer_first else (step.inner, step.outer)
    return case.parts.increase.look(start, end) if start or end else _PLAIN


def _leg_look(case: Case, number: int, *, back: bool) -> str:
    """The back has a pair of increases or decreases at its centre in each round that the plan's calf names."""
    half, calf, part, down = case.numbers.half, case.numbers.calf, case.parts.leg, case.plan.cuff_down
    if not back:
        return part.look(number, 0, half)
    made, then = (calf.before(at) if calf else 0 for at in (number, number + 1))
    loops = case.numbers.top - 2 * made if down else half + 2 * made
    if made == then:
        return part.look(number, half, loops)
    return part.beside_look(taken_in_look(loops) if down else case.parts.increase.centre_look(loops), half)


def _first_leg_look(case: Case, *, back: bool) -> str:
    heel = case.parts.heel
    if not back:
        return _PLAIN if heel.made_last else CORNERS_LOOK
    first_back = heel.opening or heel.closing
    return first_back[1](case.numbers) if first_back else _PLAIN
