"""The loops of a pair on one long needle, and the two hands that work them.

The needle is a line of loops from tip A to tip B. A right-side row takes loops from the A end and puts what
it makes on the B end; a wrong-side row goes the other way. So a round, a short row and a flap need no case of
their own: what a row leaves unworked simply stays where it is. A loop is a plain integer, its identity and
marks packed, because an adult pair has tens of thousands of them.
"""

from collections import deque
from collections.abc import Callable, Iterable
from itertools import islice

from plans.conversation import Value
from plans.pattern import Facing, Half, Row
from plans.stitches import Op

SECOND_SOCK, BACK_HALF, DOUBLE, WRAP = 1, 2, 4, 8
TAG = SECOND_SOCK | BACK_HALF
WRAPS = 7 * WRAP
MARKS = DOUBLE | WRAPS
NEXT_LOOP = 64
"""Bit 0 of a loop is its sock, 1 its half, 2 whether it is double, 3 to 5 its wraps; then its identity."""

CASTS_ON = frozenset({Op.CO, Op.CO_WASTE})
"""With these a sock begins, from a ball of its own."""
_HALVES = (Half.FRONT, Half.BACK)

Fault = tuple[str, dict[str, Value]]
"""A key of the proof's sayings and its values."""

_LOW_BITS = (TAG | MARKS).__and__

Take = Callable[[], int]
Put = Callable[[Iterable[int]], None]


class Needle:
    """The needle or needles: their loops, where each sock's yarn hangs, and which ball it is.

    Attributes:
        loops: from tip A to tip B; of two needles, the fronts'.
        backs: of two needles, the backs'; of one, the same line.
        unworked: of two needles, or of a sock's first half, by tag, the loops at tip A's side of the edge where a half
            begins and ends.
        kept: by sock, loops on the sole side and on the leg side of where a heel will be opened.
        counts: loops by tag (sock and half).
        ends: by sock, the loop that was worked last; its yarn hangs there.
        sides: by sock, the side that faced when it was worked last.
        balls: by sock, the ball it was cast on with.
    """

    def __init__(self, *, two: bool = False) -> None:
        self.loops: deque[int] = deque()
        self.backs: deque[int] = deque() if two else self.loops
        self.two = two
        self.unworked = [0, 0, 0, 0]
        self.kept = [[0, 0], [0, 0]]
        self.counts = [0, 0, 0, 0]
        self.ends = [-1, -1]
        self.sides = [Facing.RS, Facing.RS]
        self.balls = [0, 0]
        self.fresh = 0

    @property
    def number(self) -> int:
        """Loops on all needles."""
        return sum(self.counts)

    def lines(self, tag: int) -> tuple[deque[int], deque[int]]:
        """The needle on which loops of a half lie, and that of the other half."""
        return (self.backs, self.loops) if tag & BACK_HALF else (self.loops, self.backs)

    def is_cup(self, sock: int) -> bool:
        """Whether a sock's front still hangs on waste yarn: its back is worked alone."""
        return self.kept[sock][0] > 0 == self.kept[sock][1] and not self.counts[sock]

    def bring(self, sock: int) -> bool:
        """Slip the loop that a sock's yarn hangs at over to the backs' needle; False where it is not at the tip."""
        end = self.loops[-1] if self.loops else -1
        if self.backs is self.loops or end < 0 or end & ~MARKS != self.ends[sock]:
            return False
        self.backs.append(self.loops.pop())
        return True


def names_of(loop: int) -> tuple[int, str]:
    """Sock number and half of a loop."""
    return (loop & SECOND_SOCK) + 1, str(_HALVES[(loop & BACK_HALF) // BACK_HALF])


class Hands:
    """The two hands in the middle of a row.

    Attributes:
        edges: whether the half may lie on its needle alone.
        room: loops that lie between the tip and the far edge of the half.
        took: loops taken so far.
        wrapped: 1 once the loop ahead was wrapped.
        met_marks: whether the loops picked last had wraps or were double.
        near, far: where in the line the next loop and the last one made lie.
    """

    __slots__ = (
        "edges", "far", "faults", "loops", "met_marks", "near", "needle", "other", "put", "room", "side", "sock",
        "tag", "take", "took", "wrapped",
    )  # fmt: skip

    def __init__(self, needle: Needle, row: Row, side: Facing) -> None:
        self.needle = needle
        self.sock = sock = row.sock - 1
        self.tag = sock + BACK_HALF if row.half is Half.BACK else sock
        self.side = side
        self.edges = needle.two or needle.is_cup(sock)
        self.room = self._room() if self.edges else len(needle.loops)
        self.took = 0
        self.wrapped = 0
        self.met_marks = False
        self.faults: list[Fault] = []
        self.loops, self.other = loops, _ = needle.lines(self.tag)
        right_side = side is Facing.RS
        self.take: Take = loops.popleft if right_side else loops.pop
        self.put: Put = loops.extend if right_side else loops.extendleft
        self.near, self.far = (0, -1) if right_side else (-1, 0)

    def _room(self) -> int:
        """Where a half lies alone, edge to edge; on one long needle other halves lie beyond the edges."""
        needle, loops = self.needle, self.needle.counts[self.tag]
        right_side = self.side is Facing.RS
        before = loops if right_side and not needle.unworked[self.tag] else needle.unworked[self.tag]
        return before if right_side else loops - before

    def lay_down(self) -> None:
        """The row is done: remember where the edge is."""
        loops = self.needle.counts[self.tag]
        self.needle.unworked[self.tag] = self.room if self.side is Facing.RS else loops - self.room

    def fault(self, key: str, **values: Value) -> None:
        """Note what is wrong and go on."""
        self.faults.append((key, values))

    def find_yarn(self, row: Row) -> None:
        """The sock's own yarn must hang where the row begins."""
        needle, sock = self.needle, self.sock
        if row.ops and row.ops[0].op in CASTS_ON and needle.balls[sock] == 0:
            needle.balls[sock] = 0 if row.yarn in needle.balls else row.yarn
        if needle.balls[sock] != row.yarn:
            self.fault("yarn-of-other-sock", sock=row.sock, yarn=row.yarn)
        elif needle.ends[sock] != self._yarn_due() and needle.ends[sock] >= 0:
            self.fault("yarn-elsewhere", sock=row.sock, yarn=row.yarn)

    def _yarn_due(self) -> int:
        """The loop at which the yarn must hang, without its marks.

        In the round that is the loop before the row's first: of this sock's loops the one nearest to the tip
        that is filled. After a turn back it is the row's first loop itself.
        """
        loops, sock = self.loops, self.sock
        if loops and self.needle.sides[sock] is not self.side:
            return loops[self.near] & ~MARKS
        hangs = self.needle.ends[sock]
        here = self._nearest(loops)
        return here if here == hangs or self.other is loops else self._nearest(self.other)

    def _nearest(self, loops: deque[int]) -> int:
        sock = self.sock
        for loop in reversed(loops) if self.side is Facing.RS else loops:
            if loop & SECOND_SOCK == sock:
                return loop & ~MARKS
        return -1

    def make(self, number: int, marks: int = 0) -> None:
        """Put new loops on the filling tip; the yarn then hangs at the last of them."""
        if not number:
            return
        needle = self.needle
        first = needle.fresh + self.tag
        needle.fresh += NEXT_LOOP * number
        self.put(range(first | marks, needle.fresh, NEXT_LOOP))
        needle.counts[self.tag] += number
        needle.ends[self.sock] = first + NEXT_LOOP * (number - 1)

    def pick(self, number: int) -> list[int] | None:
        """Take loops off the other tip: None where they are not all of this half."""
        if number > len(self.loops) or number > self.room:
            self.too_few()
            return None
        self.room -= number
        tag = self.tag
        taken = list(islice(iter(self.take, None), number))
        self.met_marks = set(map(_LOW_BITS, taken)) != {tag}
        if self.met_marks and (strange := [loop for loop in taken if loop & TAG != tag]):
            self._wrong_loops(strange[0], begun=len(strange) < number or self.took > 0)
            return None
        self.took += number
        self.needle.counts[tag] -= number
        return taken

    def too_few(self) -> None:
        """The half has no more loops on this tip."""
        sock, half = names_of(self.tag)
        self.fault("too-few-loops", sock=sock, half=half)

    def _wrong_loops(self, loop: int, *, begun: bool) -> None:
        if begun:
            self.too_few()
            return
        sock, half = names_of(self.tag)
        at_sock, at_half = names_of(loop)
        self.fault("wrong-loops-at-tip", sock=sock, half=half, at_sock=at_sock, at_half=at_half)

    def count_beyond(self) -> int:
        """Loops of this half still ahead on the tip that is worked off, without one just wrapped."""
        if self.edges:
            return self.room - self.wrapped
        loops = iter(self.loops) if self.side is Facing.RS else reversed(self.loops)
        count = 0
        for loop in loops:
            if loop & TAG != self.tag:
                break
            count += 1
        return count - self.wrapped
