"""What to do where toe, gusset and heel turn together are longer than the foot: one change, computed to work.

A finer gauge is no cure of itself: it makes rounds needed and rounds there grow alike. What helps is a wider
or faster toe, fewer stitches around, or more rounds for the same stitches.
"""

from collections.abc import Iterator
from fractions import Fraction

from plans.conversation import Problem, Reply
from plans.pattern import Direction, Toe
from plans.quantities import Gauge, Length, plain_number
from plans.rows.toes import toe as toe_part
from plans.sizing.limits import GAUGES
from plans.sizing.measures import measure
from plans.sizing.proportions import (
    MULTIPLE,
    cast_on_of,
    default_cast_on,
    fewest_around,
    finished_foot,
    gusset_of,
    heel_depth,
    rounds_besides_even,
    rounds_there,
    takes_gusset,
)
from plans.sizing.shoes import LONGEST_FOOT
from plans.sizing.tape import Tape
from plans.wishes import Wishes

_FASTER = Toe("rounded")
_TIGHTEST = Fraction(75, 100)
"""Of the ball: 25 % of negative ease is the most in print (Eckman, How to Knit Socks, ch. 3)."""
_NARROWEST_GUSSET = Fraction(8, 30)
"""Of a half: 8 stitches a side on a half of 30, toe-up sock pattern, Knitty Fall 2008."""
_STEEPEST = Fraction(16, 10)
"""Rounds over stitches that no ordinary knitted fabric exceeds; usual is 1.35 to 1.45 (common practice)."""


def foot_too_short(wishes: Wishes, tape: Tape, gauge: Gauge, around: int, cast_on: int) -> Problem:
    """The refusal, with rounds needed, rounds there, and the first cure that works."""
    there = rounds_there(finished_foot(tape.foot), gauge)
    g = gusset_of(wishes, around)
    needed = rounds_besides_even(wishes.toe, cast_on, around, g, wishes.heel)
    cures = (
        _wider_or_faster_toe(wishes, cast_on, around, there - 2 * g),
        *([_narrower_gusset(around, g, g + (there - needed) // 2)] if takes_gusset(wishes.heel) else []),
        _fewer_stitches(wishes, tape, gauge, around, there),
        _more_rounds(tape, gauge, needed),
        _longer_foot(wishes, tape, gauge, needed),
    )
    cure = next((found for kind in cures for found in kind), Reply.of("cure-measure-again"))
    gusset, turn = 2 * g, heel_depth(around, cast_on, g, wishes.heel)
    parts = {"toe": needed - gusset - turn, "gusset": gusset, "turn": turn}
    where = "shoe" if wishes.foot_length is None else "foot_length"
    return Problem.of("foot-too-short", where, needed=needed, there=there, **parts, cure=cure)


def _narrower_gusset(around: int, gusset: int, room: int) -> Iterator[Reply]:
    """A gusset that is narrower, and still as wide as the narrowest in print."""
    if around // 2 * _NARROWEST_GUSSET <= room < gusset:
        yield Reply.of("cure-gusset", stitches=room)


def _wider_or_faster_toe(wishes: Wishes, cast_on: int, around: int, there: int) -> Iterator[Reply]:
    """A wider cast-on, up to half the stitches; else the rounded toe; else both. `there` leaves out the gusset."""
    toe, heel = wishes.toe, wishes.heel
    if wishes.direction is Direction.CUFF_DOWN:
        if rounds_besides_even(_FASTER, default_cast_on(around, _FASTER), around, 0, heel) <= there:
            yield Reply.of("cure-rounded-toe")
        return
    for loops in range(cast_on + MULTIPLE, around // 2 + 1, MULTIPLE):
        if rounds_besides_even(toe, loops, around, 0, heel) <= there:
            yield Reply.of("cure-cast-on", loops=loops)
    cup = toe_part(toe).cup is not None
    if cup and wishes.cast_on is not None:
        return
    usual = wishes.cast_on or default_cast_on(around, _FASTER)
    if rounds_besides_even(_FASTER, usual, around, 0, heel) <= there:
        yield Reply.of("cure-rounded-toe")
    for loops in range(usual if cup else cast_on, around // 2 + 1, MULTIPLE):
        if rounds_besides_even(_FASTER, loops, around, 0, heel) <= there:
            yield Reply.of("cure-rounded-toe-cast-on", loops=loops)


def _fewer_stitches(wishes: Wishes, tape: Tape, gauge: Gauge, around: int, there: int) -> Iterator[Reply]:
    """Fewer stitches around, as long as they still go round the foot."""
    if wishes.cast_on is not None and (toe_part(wishes.toe).cup or wishes.direction is Direction.CUFF_DOWN):
        return
    for fewer in range(around - MULTIPLE, fewest_around(wishes.heel, wishes.toe) - 1, -MULTIPLE):
        cast_on = cast_on_of(wishes, fewer)
        if gauge.width(fewer) < tape.ball * _TIGHTEST or cast_on > fewer:
            return
        if rounds_besides_even(wishes.toe, cast_on, fewer, gusset_of(wishes, fewer), wishes.heel) <= there:
            yield Reply.of("cure-around", stitches=fewer)


def _more_rounds(tape: Tape, gauge: Gauge, needed: int) -> Iterator[Reply]:
    """The round gauge at which the foot is long enough, to the next tenth up, where fabric can be so."""
    length = finished_foot(tape.foot)
    rounds = Fraction(-(-((needed - 1) * 1000) // length.mm), 10)
    if rounds <= GAUGES["rounds"][1] and rounds <= gauge.stitches_per_10cm * _STEEPEST:
        yield Reply.of("cure-gauge", rounds=plain_number(rounds))


def _longer_foot(wishes: Wishes, tape: Tape, gauge: Gauge, needed: int) -> Iterator[Reply]:
    """The foot that would do, where the stitches around do not come from the foot's length themselves."""
    if wishes.ball is None and wishes.around is None:
        return
    for mm in range(int(tape.foot.mm) + 1, int(LONGEST_FOOT.mm) + 1):
        if rounds_there(finished_foot(Length(Fraction(mm))), gauge) >= needed:
            yield Reply.of("cure-foot", length=measure(Length(Fraction(mm))))
