"""Statements worked one after the other, with the loops there are, into rows in the order of the needle."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import pairwise

from plans.charts import parted
from plans.pattern import Act, Chart, ChartRow, Facing, Half, Row, Sock, StageName
from plans.rows.dividing import divided
from plans.stitches import JOINS, Op
from plans.written.reading.counting import Scope, Unit, gains, grouped, loops_taken
from plans.written.reading.cursor import Wrong
from plans.written.reading.drafts import Draft, finished
from plans.written.reading.numbering import Numbering
from plans.written.reading.tokens import Token
from plans.written.reading.tree import (
    Acts,
    Aside,
    BindOff,
    CastOn,
    Do,
    Item,
    Part,
    Repeat,
    Rounds,
    Segment,
    Statement,
    ToEnd,
    Who,
    Whose,
)
from plans.written.reading.whose import Lie, Piece, Place, both, told_of

MOST_ROWS = 20_000
_BOTH = Who()
_FIRST_LOOP = {Op.SEW_BO: Op.SL_WYIB}
"""How the first loop is brought to wait in a bind-off; otherwise it is knitted."""


@dataclass
class Work:
    """What one place of a round gets."""

    units: list[Unit] = field(default_factory=list)
    before: list[Act] = field(default_factory=list)
    after: list[Act] = field(default_factory=list)
    follows: ChartRow | None = None
    exactly: tuple[Act, ...] | None = None


class Needle:
    """The rows so far, and the loops on each half.

    Attributes:
        loops: by place.
    """

    def __init__(self, lie: Lie, charts: Mapping[str, Chart]) -> None:
        self.lie = lie
        self.loops: dict[Place, int] = {}
        self._markers: dict[Place, list[int]] = {}
        self._charts = charts
        self._drafts: list[Draft] = []
        self._stage: StageName | None = None
        self._numbering = Numbering()
        self._whose = _BOTH
        self._strip: tuple[StageName | None, list[Statement]] | None = None
        self._acts: list[Act] = []
        self._heel_follows = False
        self._piece: Piece | None = None

    def rows(self) -> tuple[Row, ...]:
        """All rows."""
        rows = finished(self._drafts, halves=self.lie.halves, turned=not self.lie.needles.pointed)
        return divided(rows, _back_and_forth(rows), self.lie.needles)

    def work(self, statements: list[Statement], end: Token) -> None:
        """Work all of them.

        Raises:
            Wrong: a count does not come out, a round is missing, and whatever else cannot be.
        """
        self._each(statements)
        self._numbering.close(end)

    def _each(self, statements: list[Statement]) -> None:
        for statement, following in pairwise([*statements, None]):
            if statement is None:
                continue
            self._heel_follows = isinstance(following, Whose) and following.who.half is not None
            piece = self._piece
            self._work(statement)
            if self._strip is not None and not isinstance(statement, Whose):
                self._strip[1].append(statement)
            if piece is not None and piece is self._piece:
                piece.statements.append(statement)

    def _work(self, statement: Statement) -> None:
        if isinstance(statement, Rounds):
            self._told(self._numbering.take(statement), statement)
            return
        self._numbering.close(_at(statement))
        match statement:
            case Part(stage=stage):
                self._begin(stage)
            case CastOn():
                self._cast_on(statement)
            case BindOff():
                self._bind_off(statement)
            case Repeat():
                self._told(self._numbering.again(statement), statement)
            case Acts(acts=acts):
                self._aside(acts)
            case Whose():
                self._change(statement)

    def _told(self, due: Iterator[tuple[int, Rounds]], statement: Rounds | Repeat) -> None:
        for number, rounds in due:
            self._round(rounds, number)
        self._check(statement.count)

    def _begin(self, stage: StageName) -> None:
        self._stage = stage
        self._numbering = Numbering()

    def _change(self, whose: Whose) -> None:
        """From here on another sock or half; or the same once more, as the one before."""
        sock, piece = whose.who.sock, self._piece
        if whose.same and whose.who.half is None and piece is not None and sock not in (None, piece.sock):
            self._again(piece, whose.who)
            return
        if whose.who.half is None and (piece is None or piece.sock != sock):
            self._piece = Piece(sock, self._stage, []) if sock is not None else None
        self._whose = whose.who
        self._numbering = Numbering.of_other_sock()
        if not whose.same:
            self._strip = (self._stage, [])
            return
        if self._strip is None:
            raise Wrong("written-nothing-same", whose.at)
        stage, statements = self._strip
        self._stage = stage
        self._strip = None
        for statement in statements:
            self._work(statement)

    def _again(self, piece: Piece, who: Who) -> None:
        """A whole piece once more, as the one before: its heading, its heel and all."""
        self._whose, self._stage, self._piece, self._strip = who, piece.stage, None, None
        self._numbering = Numbering.of_other_sock()
        self._each([told_of(who.sock, statement) for statement in piece.statements])

    def _aside(self, acts: tuple[Aside, ...]) -> None:
        for aside in acts:
            if not aside.act.follows:
                self._acts.append(aside.act)
            elif self._drafts:
                self._drafts[-1].acts.append(aside.act)
            else:
                raise Wrong("written-act-in-the-way", aside.at, act=str(aside.act))

    # --- cast-on and bind-off ----------------------------------------------------------------------------------

    def _cast_on(self, statement: CastOn) -> None:
        """An open cast-on; with halves the first of each piece is the front, and the further piece comes first."""
        self._begin(StageName.CAST_ON)
        pieces: tuple[Sock, ...] = (2, 1) if self.lie.pieces == 2 else (1,)
        if self._whose.sock is not None:
            pieces = (self._whose.sock,)
        for sock in pieces:
            shares = self._shares(statement.loops)
            for half, loops in shares.items():
                unit = Unit(Op.CO, statement.at, 0)
                self._write((sock, half), Work([unit] * loops), 1, Facing.RS)
        self._stage = None

    def _shares(self, loops: int) -> dict[Half, int]:
        if not self.lie.halves:
            return {Half.FRONT: loops}
        return {Half.FRONT: loops - loops // 2, Half.BACK: loops // 2}

    def _bind_off(self, statement: BindOff) -> None:
        self._begin(StageName.BIND_OFF)
        work: tuple[Item, ...] = (Do(statement.op, ToEnd(), statement.at),)
        if statement.op is not Op.GATHER:
            first = _FIRST_LOOP.get(statement.op, Op.K)
            work = (Do(first, 1, statement.at), *work, Do(Op.FASTEN, 1, statement.at))
        self._round(Rounds((), (Segment(_BOTH, work, statement.at),), statement.at), 1)

    # --- rounds ------------------------------------------------------------------------------------------------

    def _round(self, rounds: Rounds, number: int) -> None:
        if self._stage is None:
            self._stage = StageName.BODY
        if len(self._drafts) > MOST_ROWS:
            raise Wrong("written-too-long", rounds.at, round=number, most=MOST_ROWS)
        chart = _ChartRows(self._charts, self._numbering)
        told = any(segment.who.sock is not None for segment in rounds.segments)
        works: dict[Place, Work] = {}
        for segment in rounds.segments:
            who = both(self._whose, segment.who)
            works.update(self._segment(segment, who, rounds, number, chart, works))
        order = tuple(works) if told else self.lie.round_of(self._whose)
        for place in order:
            if place in works:
                self._write(place, works[place], number, rounds.facing)
        missing = [place for place in order if place not in works]
        joins = any(unit.op in JOINS for work in works.values() for unit in work.units)
        if missing and not told and not joins and not self._heel_follows:
            raise Wrong("written-half-missing", rounds.at, round=number, half=str(missing[0][1]))

    def _segment(  # noqa: PLR0913, PLR0917 (what a round is made of)
        self, segment: Segment, who: Who, rounds: Rounds, number: int, chart: "_ChartRows", known: Mapping[Place, Work]
    ) -> dict[Place, Work]:
        places = self.lie.round_of(who)
        if not places or any(place in known for place in places):
            raise Wrong("written-half-twice", segment.at, round=number)
        whole = who.half is None and self.lie.halves
        found: dict[Place, Work] = {}
        socks: dict[Sock, None] = dict.fromkeys(place[0] for place in places)
        for sock in socks:
            if whole:
                found |= self._whole(sock, segment, rounds, number, chart)
            else:
                for place in (each for each in places if each[0] == sock):
                    scope = self._scope((place,), segment, rounds, number, chart)
                    found[place] = _work(scope, segment)
        return found

    def _scope(
        self, places: tuple[Place, ...], segment: Segment, rounds: Rounds, number: int, chart: "_ChartRows"
    ) -> Scope:
        before, markers = 0, []
        for place in places:
            markers += [before + marker for marker in self._markers.get(place, [])]
            before += self.loops.get(place, 0)
        scope = Scope(before, markers, number, chart.due)
        scope.work(segment.work)
        scope.finish(whole=self._is_whole(scope), at=rounds.at)
        self._hang(places, scope, scope.hung)
        return scope

    def _is_whole(self, scope: Scope) -> bool:
        """Short rows leave loops: those that are turned, and those on one half of one sock."""
        wraps = bool(scope.units) and scope.units[-1].op is Op.WRAP_TURN
        return self._whose.half is None and Act.TURN not in scope.after and not wraps

    def _hang(self, places: tuple[Place, ...], scope: Scope, markers: list[int]) -> None:
        """Where the markers hang now, half by half."""
        at = 0
        for place in places:
            units = _units_of(scope.units, places, place, self.loops)
            after = self.loops.get(place, 0) + gains(units)
            mine = [marker - at for marker in markers if at <= marker <= at + after]
            markers = [marker for marker in markers if not at <= marker <= at + after]
            self._markers[place] = mine
            at += after

    def _whole(
        self, sock: Sock, segment: Segment, rounds: Rounds, number: int, chart: "_ChartRows"
    ) -> dict[Place, Work]:
        """A round told as one, cut where the halves meet."""
        places: tuple[Place, ...] = ((sock, Half.FRONT), (sock, Half.BACK))
        front = self.loops.get(places[0], 0)
        scope = self._scope(places, segment, rounds, number, chart)
        whole = _work(scope, segment)
        for one, following in zip(scope.units, scope.units[1:], strict=False):
            if one.taken < front < following.taken:
                raise Wrong("written-across-halves", one.at, round=number)
        works: dict[Place, Work] = {place: Work(_units_of(scope.units, places, place, self.loops)) for place in places}
        works[places[0]].before, works[places[1]].after = whole.before, whole.after
        for work in works.values():
            work.follows, work.exactly = whole.follows, whole.exactly
        return works

    def _write(self, place: Place, work: Work, number: int, facing: Facing) -> None:
        after = self.loops.get(place, 0) + gains(work.units)
        if after < 0:
            other = (place[0], Half.BACK if place[1] is Half.FRONT else Half.FRONT)
            self.loops[other] = self.loops.get(other, 0) + after
            after = 0
        self.loops[place] = after
        acts, self._acts = [*self._acts, *work.before, *work.after], []
        stage = self._stage or StageName.BODY
        self._drafts.append(
            Draft(stage, number, *place, facing, grouped(work.units), after, acts, work.exactly, work.follows)
        )

    def _check(self, count: tuple[int, Token] | None) -> None:
        """What the pattern says there are now, on the first piece."""
        sock = self._whose.sock or 1
        now = sum(loops for place, loops in self.loops.items() if place[0] == sock)
        if count is not None and count[0] != now:
            raise Wrong("written-count-differs", count[1], stated=count[0], found=now)


class _ChartRows:
    """The rows of charts that are due in one round."""

    def __init__(self, charts: Mapping[str, Chart], numbering: Numbering) -> None:
        self._charts = charts
        self._numbering = numbering
        self._due: dict[str, int] = {}

    def due(self, name: str, at: Token) -> tuple[tuple[tuple[Unit, ...], ...], ChartRow]:
        """First edge, what repeats and last edge; the same row all through the round."""
        chart = self._charts.get(name)
        if chart is None:
            raise Wrong("written-no-chart", at, name=name, names=", ".join(self._charts))
        if name not in self._due:
            self._due[name] = self._numbering.chart_row(name)
        row = self._due[name] % len(chart.rows)
        parts = (tuple(Unit(cell.op, at, 0, colour=cell.colour) for cell in part) for part in parted(chart.rows[row]))
        return tuple(parts), ChartRow(name=name, row=row + 1, of=len(chart.rows))


def _work(scope: Scope, segment: Segment) -> Work:
    return Work(scope.units, scope.before, scope.after, scope.follows, segment.exactly)


def _units_of(
    units: list[Unit], places: tuple[Place, ...], place: Place, loops: Mapping[Place, int]
) -> list[Unit]:
    """Those units that are worked on one of the places; what takes no loop where two meet belongs to the first."""
    if len(places) == 1:
        return units
    front = loops.get(places[0], 0)
    cut = next((at for at, unit in enumerate(units) if unit.taken >= front and loops_taken(unit.op)), len(units))
    return units[:cut] if place == places[0] else units[cut:]


def _back_and_forth(rows: tuple[Row, ...]) -> frozenset[StageName]:
    """The parts in which rows of a back follow each other."""
    backs = ((one, other) for one, other in pairwise(rows) if one.half is other.half is Half.BACK)
    return frozenset(one.stage for one, other in backs if (one.sock, one.stage) == (other.sock, other.stage))


def _at(statement: Statement) -> Token:
    return statement.acts[0].at if isinstance(statement, Acts) else statement.at
