"""What a construction is: how its rows are made, and, told apart from that, how each of them must look.

The proof knits the rows loop by loop and compares each with its look and with the loops that its heel leaves
waiting. A look is a regular expression over the row as text, such as "k 1, m1r 1, k 12, m1l 1, k 1"; a star
after the operation says that wraps or doubles are worked with it ("k* 3").
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from plans.pattern import Calf, Direction, Facing, Half, StageName
from plans.rows.rounds import Ops, Pass, Round


class Numbers(NamedTuple):
    """One sock's numbers.

    Attributes:
        half: h, stitches on each half of foot and leg.
        tip: loops cast on to each tip.
        gusset: g, stitches added on each side of the sole.
        turned: w, stitches marked on each side of the heel; of a heel made last, its decrease rounds.
        calf: how the back of the leg widens; None where it does not.
    """

    half: int
    tip: int
    gusset: int
    turned: int
    calf: Calf | None = None

    @property
    def top(self) -> int:
        """Stitches on the back at the top of the leg."""
        return self.half + 2 * (self.calf.pairs if self.calf else 0)


class At(NamedTuple):
    """Where a row stands.

    Attributes:
        number: of its round within its stage, or of the heel's row among those on the back.
        of: the highest of these numbers.
    """

    stage: StageName
    half: Half
    facing: Facing
    number: int
    of: int
    numbers: Numbers


UP, DOWN = Direction.TOE_UP, Direction.CUFF_DOWN
EITHER_WAY = frozenset({UP, DOWN})

Look = Callable[[At], str | None]
"""A regular expression for the text of a row; None for rows of other stages."""


class Step(NamedTuple):
    """What a round of the toe does at the outer edge of a half and at the inner one, where the big toe is."""

    outer: bool
    inner: bool


@dataclass(frozen=True, slots=True)
class ToePart:
    """A toe.

    Attributes:
        steps: the rounds that bring each half from its first loops to its width by so many increases an edge.
        tip_of_half: a tip's cast-on loops are twice this fraction of a half, rounded down.
        mirrored: the second sock is the mirror image of the first.
        cup: instead of all these, short rows over a provisional cast-on of a whole half.
    """

    steps: Callable[[int], tuple[Step, ...]]
    tip_of_half: tuple[int, int]
    mirrored: bool = False
    cup: "Hourglass | None" = None

    @property
    def directions(self) -> frozenset[Direction]:
        """From the cuff a toe narrows as it would widen, alike at both edges and on both socks."""
        return frozenset({UP}) if self.cup or self.mirrored else EITHER_WAY


@dataclass(frozen=True, slots=True)
class Hourglass:
    """Short rows that narrow and widen again, on the back of one sock alone.

    Attributes:
        turned: w, the stitches marked on each side of a half of h.
        rows: all of them, in a stage, by the sock's numbers; the last goes right across.
        look: of its rows.
        waits: for each row the loops that wait beyond its end.
        depth: rounds of the foot's length that it makes.
        fewest: the fewest stitches of a half it can be knitted on.
    """

    turned: Callable[[int], int]
    rows: Callable[[StageName, Numbers], tuple[Pass, ...]]
    look: Callable[[At], str]
    waits: Callable[[Numbers], tuple[int, ...]]
    depth: Callable[[Numbers], int]
    fewest: int

    def on(self, numbers: Numbers) -> Numbers:
        """A sock's numbers as they are where this makes its toe: no gusset, and its own turns."""
        return numbers._replace(gusset=0, turned=self.turned(numbers.half))


@dataclass(frozen=True, slots=True)
class PickedUp:
    """What follows a heel from the cuff down whose flap was knitted before its gusset.

    Attributes:
        rounds: a round that picks the gusset up along the flap, then those that narrow it away again.
        look: of its backs, by their round's number.
    """

    rounds: Callable[[Numbers], Iterator[Round]]
    look: Callable[[int], str]


@dataclass(frozen=True, slots=True)
class IncreasePart:
    """A way to increase near the edges of a half, or at its centre.

    Attributes:
        ops: all stitches of a half knitted, with increases near its start, near its end or both.
        look: how such a row looks.
        centre: so many stitches of a half knitted, with a pair of increases about its two middle ones.
        centre_look: how such a row looks.
    """

    ops: Callable[[int, bool, bool], Ops]
    look: Callable[[bool, bool], str]
    centre: Callable[[int], Ops]
    centre_look: Callable[[int], str]


@dataclass(frozen=True, slots=True)
class HeelPart:
    """A heel.

    Attributes:
        stages: what it brings, in the order of knitting; without the gusset.
        gusset: g on a half of h.
        turned: w on a half of h with a tip of so many loops.
        depth: rounds of the foot's length that it makes besides the gusset.
        rounds: its rounds: one with a whole heel on the back, or, made last, a tube of its own.
        look: of its rows.
        waits: for each row on the back in a stage, the loops that wait beyond its end.
        fewest: the fewest stitches of a half it can be knitted on.
        made_last: it is knitted into an opening once the sock is bound off.
        opening: the back in the first round after the foot, where its stitches are kept, and how it looks.
        closing: the back in the first round after it, where that is not plain, and how it looks.
        directions: which way the sock may be knitted that has it.
        picked_up: its gusset, where it comes after it.
    """

    stages: tuple[StageName, ...]
    gusset: Callable[[int], int]
    turned: Callable[[int, int], int]
    depth: Callable[[Numbers], int]
    rounds: Callable[[Numbers], Iterator[Round]]
    look: Look
    waits: Callable[[StageName, Numbers], tuple[int, ...]]
    fewest: int = 4
    made_last: bool = False
    opening: tuple[Callable[[Numbers], Ops], Callable[[Numbers], str]] | None = None
    closing: tuple[Callable[[Numbers], Ops], Callable[[Numbers], str]] | None = None
    directions: frozenset[Direction] = frozenset({UP})
    picked_up: PickedUp | None = None


@dataclass(frozen=True, slots=True)
class SolePart:
    """The back of the foot: a round's number and h to its stitches, and how they look."""

    ops: Callable[[int, int], Ops]
    look: Callable[[int], str]


@dataclass(frozen=True, slots=True)
class LegPart:
    """The leg below its cuff.

    Attributes:
        ops: a round's number and the place of the half's first stitch in the round, and its stitches.
        look: the same, how the half looks.
        widens: its back is shaped at the centre where the calf needs room.
        beside: the knit stitches before and after such a shaping, as this leg works them: by the row, and the place of
            its first stitch in the round.
        beside_look: the same, how that row looks.
        directions: which way the sock may be knitted that has it.
    """

    ops: Callable[[int, int, int], Ops]
    look: Callable[[int, int, int], str]
    widens: bool = False
    beside: Callable[[Ops, int], Ops] = lambda ops, _: ops
    beside_look: Callable[[str, int], str] = lambda look, _: look
    directions: frozenset[Direction] = EITHER_WAY


@dataclass(frozen=True, slots=True)
class CuffPart:
    """The cuff.

    Attributes:
        rounds: of so many that show, how many are knitted.
        ops: a round's number, how many there are, the place of the half's first stitch in the round, and its
            stitches.
        look: the same, how the half looks.
        hemmed: it is folded to the inside and sewn down.
        folds: half of its rounds do not show.
        one_by_one: it is a rib of one and one to its edge.
        directions: which way the sock may be knitted that has it.
    """

    rounds: Callable[[int], int]
    ops: Callable[[int, int, int, int], Ops]
    look: Callable[[int, int, int, int], str]
    hemmed: bool = False
    folds: bool = False
    one_by_one: bool = False
    directions: frozenset[Direction] = frozenset({UP})


@dataclass(frozen=True, slots=True)
class BindOffPart:
    """An end.

    Attributes:
        rounds: rounds before the last, as the end begins: their halves, and how these look.
        front, back: the last round's two halves, by the loops each has.
        looks: of these two.
        leaves: loops of the front that wait after its half.
        long_tail: it is sewn with the cut yarn.
        needs_rib: it ends a rib of one and one, and nothing else.
        directions: which way the sock may be knitted that ends so.
        joins: each loop of the front is worked with one of the back, in one row.
        inside_out: the sock is turned inside out for it.
        closes_at: loops a toe is narrowed to at the most, of the whole sock; None where the toe says it.
    """

    front: Callable[[int], Ops]
    back: Callable[[int], Ops]
    looks: tuple[str, str]
    leaves: int = 1
    long_tail: bool = False
    needs_rib: bool = False
    rounds: tuple[tuple[Callable[[int], Ops], str], ...] = ()
    directions: frozenset[Direction] = frozenset({UP})
    joins: bool = False
    inside_out: bool = False
    closes_at: int | None = None
