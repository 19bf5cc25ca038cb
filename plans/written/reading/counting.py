"""Stitches worked with the loops there are: every "to end" becomes a number, and the count must come out."""

from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import groupby
from typing import NamedTuple

from plans.pattern import Act, ChartRow, Colour, Group
from plans.stitches import JOINS, MARKERS, Op, makes, takes
from plans.written.reading.cursor import Wrong
from plans.written.reading.tokens import Token
from plans.written.reading.tree import Again, Aside, Do, FromChart, Item, OfChart, Times, ToEnd

MOST_STITCHES = 5000
"""In one round; more than any piece in rounds has."""


class Unit(NamedTuple):
    """One operation worked once, and where it is written.

    Attributes:
        taken: loops of the scope taken before it.
    """

    op: Op
    at: Token
    taken: int
    wrap: bool = False
    double: bool = False
    colour: Colour = Colour.MAIN


ChartUnits = Callable[[str, Token], tuple[tuple[tuple[Unit, ...], ...], ChartRow]]
"""By a chart's name, the row that is due as units (first edge, what repeats, last edge), and which row it is."""


@dataclass
class Scope:
    """The loops of a round, or of half of one, while they are worked.

    Attributes:
        loops: how many there are before.
        markers: how many loops lie before each marker, in order.
        number: of the round, for problems.
        chart: gives a chart's stitches.
    """

    loops: int
    markers: list[int]
    number: int
    chart: ChartUnits
    taken: int = 0
    made: int = 0
    units: list[Unit] = field(default_factory=list)
    before: list[Act] = field(default_factory=list)
    after: list[Act] = field(default_factory=list)
    follows: ChartRow | None = None
    hung: list[int] = field(default_factory=list)

    def work(self, items: tuple[Item, ...]) -> None:
        """Work all of them.

        Raises:
            Wrong: the loops do not suffice, a repeat does not come out, a marker is in the way or missing.
        """
        for item in items:
            self._work(item)

    def _work(self, item: Item) -> None:
        match item:
            case Do():
                self._do(item, self._times_of(item))
            case Again():
                for _ in range(self._passes(item.times, item.at, lambda: self._dry(item.work))):
                    self.work(item.work)
            case Aside(act=act, at=at):
                self._act(act, at)
            case OfChart(name=name, row=row, of=of):
                self.follows = ChartRow(name=name, row=row, of=of)
            case FromChart():
                self._from_chart(item)

    def _from_chart(self, item: FromChart) -> None:
        (first, repeat, last), self.follows = self.chart(item.name, item.at)
        width, edge = _width(repeat), _width(last)
        self._all(first)
        times = item.times
        if isinstance(times, ToEnd):
            times = ToEnd(times.rest + edge, marker=times.marker)
        for _ in range(self._passes(times, item.at, lambda: width)):
            self._all(repeat)
        self._all(last)

    def _all(self, units: tuple[Unit, ...]) -> None:
        for unit in units:
            self._unit(unit)

    # --- how often ---------------------------------------------------------------------------------------------

    def ahead(self, end: ToEnd, at: Token) -> int:
        """Loops up to where it says."""
        goal = self.loops
        if end.marker:
            goal = next((marker for marker in self.markers if marker >= self.taken + end.rest), -1)
            if goal < 0:
                raise Wrong("written-no-marker", at, round=self.number)
        left = goal - end.rest - self.taken
        if left < 0:
            raise self._too_many(at, self.taken + end.rest)
        return left

    def _times_of(self, item: Do) -> int:
        if isinstance(item.times, int):
            return item.times
        width = loops_taken(item.op)
        if not width:
            raise Wrong("written-never-ends", item.at)
        left = self.ahead(item.times, item.at)
        if left % width:
            raise self._uneven(item.at, left, width)
        return left // width

    def _passes(self, times: Times, at: Token, width_of: Callable[[], int]) -> int:
        if isinstance(times, int):
            return times
        left, width = self.ahead(times, at), width_of()
        if width == 0:
            raise Wrong("written-never-ends", at)
        if left % width:
            raise self._uneven(at, left, width)
        return left // width

    def _dry(self, work: tuple[Item, ...]) -> int:
        """Loops that one pass takes, tried out on a copy."""
        trial = Scope(self.loops, [*self.markers], self.number, self.chart, self.taken, self.made)
        trial.work(work)
        return trial.taken - self.taken

    def _uneven(self, at: Token, left: int, width: int) -> Wrong:
        used = self.loops - left % width
        values = {"round": self.number, "used": used, "stitches": self.loops, "width": width}
        return Wrong("written-repeat-uneven", at, **values)

    def _too_many(self, at: Token, used: int) -> Wrong:
        return Wrong("written-too-many", at, round=self.number, used=used, stitches=self.loops)

    # --- one operation -----------------------------------------------------------------------------------------

    def _do(self, item: Do, times: int) -> None:
        if len(self.units) + times > MOST_STITCHES:
            raise Wrong("written-too-long", item.at, round=self.number, most=MOST_STITCHES)
        for _ in range(times):
            self._unit(Unit(item.op, item.at, self.taken, item.wrap, item.double, item.colour))

    def _unit(self, unit: Unit) -> None:
        if self.after:
            raise Wrong("written-act-in-the-way", unit.at, act=str(self.after[-1]))
        if unit.op in MARKERS:
            self._marker(unit)
        end = self.taken + loops_taken(unit.op)
        if end > self.loops:
            raise self._too_many(unit.at, end)
        self._pass_markers(unit, end)
        self.units.append(unit._replace(taken=self.taken))
        self.taken, self.made = end, self.made + makes(unit.op)

    def _marker(self, unit: Unit) -> None:
        if unit.op is Op.PLACE_MARKER:
            self.hung.append(self.made)
            return
        if not self.markers or self.markers[0] != self.taken:
            raise Wrong("written-no-marker", unit.at, round=self.number)
        self.markers.pop(0)
        if unit.op is Op.SLIP_MARKER:
            self.hung.append(self.made)

    def _pass_markers(self, unit: Unit, end: int) -> None:
        """A marker that is passed without a word is slipped; one inside a decrease cannot be."""
        if not loops_taken(unit.op):
            return
        while self.markers and self.markers[0] < end:
            if self.markers[0] > self.taken:
                raise Wrong("written-marker-in-the-way", unit.at, round=self.number)
            self.markers.pop(0)
            self.hung.append(self.made)

    def _act(self, act: Act, at: Token) -> None:
        if self.units and not act.follows:
            raise Wrong("written-act-in-the-way", at, act=str(act))
        (self.after if self.units else self.before).append(act)

    def finish(self, *, whole: bool, at: Token) -> None:
        """Nothing more is worked.

        Raises:
            Wrong: loops are left, though the whole was to be worked.
        """
        if whole and self.taken < self.loops:
            raise Wrong("written-too-few", at, round=self.number, used=self.taken, stitches=self.loops)
        self.hung += [self.made + marker - self.taken for marker in self.markers]
        self.markers = []


def loops_taken(op: Op) -> int:
    """Loops that it takes from those still to be worked.

    The loop that is fastened is none of them, nor is the loop of the other half that one is joined to.
    """
    return 0 if op is Op.FASTEN else takes(op) - (op in JOINS)


def _width(units: tuple[Unit, ...]) -> int:
    return sum(loops_taken(unit.op) for unit in units)


def grouped(units: list[Unit]) -> tuple[Group, ...]:
    """Neighbours that are alike as one group."""
    runs = groupby(units, key=lambda unit: (unit.op, unit.wrap, unit.double, unit.colour))
    return tuple(
        Group(op=op, times=len(list(run)), wrap=wrap, double=double, colour=colour)
        for (op, wrap, double, colour), run in runs
    )


def gains(units: list[Unit]) -> int:
    """Loops more after them than before."""
    return sum(makes(unit.op) - takes(unit.op) for unit in units)

