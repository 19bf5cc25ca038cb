"""Short rows on the back: each turns before its end, and the turn is marked so that no hole stays."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from plans.pattern import Facing, Group, StageName
from plans.rows.rounds import Ops, Pass, group
from plans.stitches import Op


class Mark(NamedTuple):
    """How a turn is marked.

    Attributes:
        op: what is done.
        first: it is the first stitch after the turn; else it is done to the next loop before the turn.
        double: the marked loop has two legs, worked as one; else it has a wrap, lifted and worked with it.
    """

    op: Op
    first: bool
    double: bool


WRAP = Mark(Op.WRAP_TURN, first=False, double=False)
GERMAN = Mark(Op.DS, first=True, double=True)
SHADOW = Mark(Op.TWIN, first=False, double=True)
"""A twin is knitted into the stitch below the next ("Shadow wrap short-rows", Interweave, 2013)."""


class Turn(NamedTuple):
    """Where a row turns: so many loops wait beyond its end, without one that is wrapped; and whether with a mark."""

    waits: int
    marked: bool = True


def marked_with(op: Op, times: int, mark: Mark) -> Group:
    """Stitches whose marks are worked with them."""
    return group(op, times, double=True) if mark.double else group(op, times, wrap=True)


def short_rows(stage: StageName, loops: int, mark: Mark, turns: Iterable[Turn]) -> Iterator[Pass]:
    """The rows that turn there, right side first, on a back of so many loops; its count does not change."""
    tape = _Tape(loops, mark)
    for number, turn in enumerate(turns, start=1):
        facing = Facing.RS if number % 2 else Facing.WS
        yield Pass(stage, number, tape.row(turn, Op.K if number % 2 else Op.P), loops, facing, turns=True)


def across(stage: StageName, loops: int, mark: Mark, turns: tuple[Turn, ...]) -> Iterator[Pass]:
    """The same rows, and the right-side row over the whole back that brings the round to its end."""
    tape = _Tape(loops, mark)
    for number, turn in enumerate((*turns, Turn(0, marked=False)), start=1):
        facing, last = Facing.RS if number % 2 else Facing.WS, number == len(turns) + 1
        yield Pass(stage, number, tape.row(turn, Op.K if number % 2 else Op.P), loops, facing, turns=not last)


class _Tape:
    """The back's loops as two stacks, the next loop last; a loop is whether it is marked."""

    def __init__(self, loops: int, mark: Mark) -> None:
        self._ahead = [False] * loops
        self._behind: list[bool] = []
        self._mark = mark
        self._begins_marked = False

    def row(self, turn: Turn, op: Op) -> Ops:
        """Work to the turn, and turn."""
        mark, made = self._mark, []
        if self._begins_marked and mark.first:
            self._ahead.pop()
            self._behind.append(True)
            made.append(group(mark.op, 1))
        wraps = turn.marked and not mark.first
        for marked, times in self._runs(len(self._ahead) - turn.waits - wraps):
            made.append(marked_with(op, times, mark) if marked else group(op, times))
        if wraps:
            self._ahead[-1] = True
            made.append(group(mark.op, 1))
        self._begins_marked = turn.marked
        self._ahead, self._behind = self._behind, self._ahead
        return tuple(made)

    def _runs(self, stitches: int) -> list[tuple[bool, int]]:
        """Marked and plain stitches by turns, as they come off the tip."""
        runs: list[tuple[bool, int]] = []
        for _ in range(stitches):
            marked = self._ahead.pop()
            times = runs.pop()[1] + 1 if runs and runs[-1][0] == marked else 1
            runs.append((marked, times))
            self._behind.append(False)
        return runs


def wedge_turns(gusset: int, turned: int) -> tuple[Turn, ...]:
    """A heel turn on h stitches between two gussets of g: 2w rows, each one stitch shorter on its side.

    Wrap and turn: row 1 works g + h - 1, row r works h - r, then the next stitch is wrapped. German: row 1
    works g + h, row r makes the first stitch a double stitch and works h - r + 1 beyond it. The same stitches
    end marked; the German row works one more ("An easier short row", wiseowlknits.com). Row counts derived;
    the rule of thirds for w is common practice.
    """
    return tuple(Turn(gusset + number // 2) for number in range(2 * turned))


def hourglass_turns(turned: int) -> tuple[Turn, ...]:
    """An hourglass of wrapped stitches or of twins: 4w rows on h stitches (common practice; rows derived).

    Narrowing, row r works h - r and marks the next, down to m = h - 2w. Widening, row j works m + j, the last
    with its mark, and marks the next once more; the last two rows mark nothing. For h 32 and w 10: 31, 30 … 12,
    then 13 … 32.
    """
    narrow = [Turn(number // 2) for number in range(2 * turned)]
    widen = [Turn(turned - 2 - number // 2) for number in range(2 * turned - 2)]
    return (*narrow, *widen, Turn(0, marked=False), Turn(0, marked=False))


def boomerang_turns(turned: int) -> tuple[Turn, ...]:
    """An hourglass of double stitches: 4w + 4 rows (common practice; rows derived).

    Narrowing, the first two rows leave the outermost stitch of their side, each further row turns before the
    double stitch of the row before last. Two rows go right across and work every double stitch. Widening, the
    first two rows turn at the middle m = h - 2w - 2, each further row works the double stitch and one more; the
    last row goes on to the edge.
    """
    narrow = [Turn(1 + number // 2) for number in range(2 * turned)]
    resolve = [Turn(0, marked=False), Turn(0, marked=False)]
    widen = [Turn(turned + 1 - number // 2) for number in range(2 * turned + 1)]
    return (*narrow, *resolve, *widen, Turn(0, marked=False))
