"""What the tape tells while a sock is knitted: her real rounds over 10 cm, from those that are whole so far."""

from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Measure, Reply, TapeSays
from plans.engine.courses import Course
from plans.engine.naming import stage_name
from plans.pattern import Direction, Row, StageName
from plans.quantities import Length

_SHORTEST = Length(Fraction(30))
"""Under this a tape's millimetre or two are too much of the length (our own bound)."""
_LIKELY = (Fraction(2, 3), Fraction(3, 2))
"""Her rounds over the planned ones; beyond this the tape, or what was heard, is wrong (our own bound)."""


class _Part(NamedTuple):
    """The stages whose rounds make the length of a part, and those in which something is still to be changed."""

    counted: frozenset[StageName]
    still_open: frozenset[StageName]


_UPPER = frozenset({StageName.LEG, StageName.CUFF})
_LEG = _Part(_UPPER, _UPPER)
_FROM_THE_HEEL = frozenset({StageName.GUSSET, StageName.FOOT})
_PARTS = {
    (Direction.TOE_UP, "foot"): _Part(
        frozenset({StageName.TOE, StageName.FOOT}), frozenset({StageName.TOE, StageName.FOOT})
    ),
    (Direction.CUFF_DOWN, "foot"): _Part(_FROM_THE_HEEL, _FROM_THE_HEEL),
    (Direction.TOE_UP, "leg"): _LEG,
    (Direction.CUFF_DOWN, "leg"): _LEG,
}
"""From the tip of the toe or the back of the heel; the leg from the heel's top or the cuff's edge."""


def part_name(command: TapeSays) -> Reply:
    """What was measured."""
    return stage_name(StageName.FOOT if command.part == "foot" else StageName.LEG)


def real_rounds(the_course: Course, at: int, command: TapeSays) -> Fraction | Reply:
    """Rounds over 10 cm, or why they tell nothing."""
    row, part = the_course.row(at), _PARTS[the_course.plan.construction.direction, command.part]
    if row.stage not in part.still_open or the_course.is_cup(row.index):
        key = "tape-too-early" if _lies_ahead(the_course, row, part) else "tape-too-late"
        return Reply.of(key, part=part_name(command))
    done = _done(the_course, row, part, command)
    if command.length < _SHORTEST or done == 0:
        return Reply.of("tape-too-early", part=part_name(command))
    rounds, planned = done * 100 / command.length.mm, the_course.plan.gauge.rounds_per_10cm
    if not _LIKELY[0] <= rounds / planned <= _LIKELY[1]:
        lengths = {"length": measure(command.length), "planned": measure(Length(done * 100 / planned))}
        return Reply.of("tape-unlikely", part=part_name(command), **lengths)
    return Fraction(round(rounds * 10), 10)


def _lies_ahead(the_course: Course, row: Row, part: _Part) -> bool:
    """Whether the sock in hand, or the pair, is still to come to where something can be changed."""
    ahead = the_course.plan.rows[row.index :]
    return any(one.stage in part.still_open and _is_of(the_course, row, one) for one in ahead)


def _is_of(the_course: Course, row: Row, other: Row) -> bool:
    """Whether another row belongs to what the tape lies on: the sock in hand where there is just the one."""
    return not the_course.one_sock or other.sock == row.sock


def _done(the_course: Course, row: Row, part: _Part, command: TapeSays) -> int:
    """Whole rounds of the length measured; a toe or a heel of short rows adds those that it makes.

    From the cuff down the foot begins with its heel, whose depth has the round that picks the gusset up.
    """
    rows = the_course.plan.rows
    whole = [rows[run.first] for run in the_course.rounds if run.end <= row.index]
    found = [
        one for one in whole
        if one.stage in part.counted and _is_of(the_course, row, one) and not the_course.is_cup(one.index)
    ]  # fmt: skip
    if command.part == "leg":
        return len(found)
    if the_course.plan.cuff_down:
        picked_up = any(one.stage is StageName.GUSSET for one in found)
        return len(found) + the_course.plan.heel_depth - picked_up
    return len(found) + the_course.cup


def measure(length: Length) -> Measure:
    """As it is said."""
    return Measure(tenths_mm=round(length.mm * 10))
