"""The yarn that a plan takes, row by row and colour by colour."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from plans.alike import OfOps
from plans.pattern import Colour, Group, Plan, StageName
from plans.stitches import Op, takes
from plans.yarn.geometry import Stitch, Take, stitch, take

TAIL_MM = 200
"""Left hanging at the beginning and at the end of a yarn: 15 to 20 cm (common practice)."""

_Row = tuple[int, int, int, int, int]
"""Half loops and stitch widths of the main colour, of the contrasting one, and tails of the main one."""


@dataclass(frozen=True, slots=True)
class Use:
    """What each row takes; counted in whole numbers, and made lengths only when summed.

    Attributes:
        one: a stitch of the gauge.
        rows: a count for each row.
    """

    one: Stitch
    rows: tuple[_Row, ...] = field(repr=False)

    def of(self, indices: Iterable[int], colour: Colour = Colour.MAIN) -> Fraction:
        """Millimetres that some rows take together, in one colour."""
        rows = [self.rows[index] for index in indices]
        first = 2 if colour is Colour.CONTRAST else 0
        half_loops, widths = (sum(row[at] for row in rows) for at in (first, first + 1))
        tails = sum(row[4] for row in rows) if colour is Colour.MAIN else 0
        return half_loops * self.one.loop / 2 + widths * self.one.width + tails * TAIL_MM

    def total(self, colour: Colour = Colour.MAIN) -> Fraction:
        """Of the whole plan."""
        return self.of(range(len(self.rows)), colour)


def use_of(plan: Plan, *, washed: bool = True) -> Use:
    """What a plan takes; `washed` where its gauge was counted after washing."""
    one = stitch(plan.gauge.stitches_per_10cm, plan.gauge.rounds_per_10cm, washed=washed)
    table = {id(op): take(op, plan.construction.bind_off) for op in Op}  # by identity: an operation's hash is slow
    ends = [end for sock in (1, 2) for end in _ends(plan, sock)]
    taken = OfOps(lambda ops: _row(ops, table))
    return Use(one, tuple((*taken(row.ops), ends.count(row.index)) for row in plan.rows))


def _ends(plan: Plan, sock: int) -> tuple[int, ...]:
    own = [row.index for row in plan.rows if row.sock == sock]
    return (own[0], own[-1]) if own else ()


def _row(ops: tuple[Group, ...], table: Mapping[int, Take]) -> tuple[int, int, int, int]:
    contrast = [group for group in ops if group.colour is Colour.CONTRAST]
    main = [group for group in ops if group.colour is not Colour.CONTRAST] if contrast else ops
    half_loops, widths = _together(main, table)
    if not contrast:
        return half_loops, widths, 0, 0
    other_loops, other_widths = _together(contrast, table)
    behind = [sum(takes(group.op) * group.times for group in others) for others in (contrast, main)]
    floats = behind if main else [0, 0]  # each yarn floats behind the stitches of the other
    return half_loops, widths + floats[0], other_loops, other_widths + floats[1]


def _together(groups: Iterable[Group], table: Mapping[int, Take]) -> tuple[int, int]:
    half_loops = widths = 0
    for group in groups:
        each, times = table[id(group.op)], group.times
        half_loops += each.half_loops * times
        widths += each.widths * times
    return half_loops, widths


def bind_off_rows(plan: Plan, sock: int | None = None) -> tuple[int, ...]:
    """Rows of the bind-off, of one sock or of both."""
    return tuple(
        row.index for row in plan.rows if row.stage is StageName.BIND_OFF and sock in (None, row.sock)
    )
