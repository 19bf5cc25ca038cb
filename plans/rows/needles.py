"""The true order of rows and acts for a pair, on any needles.

Both socks at once: at the start the fronts face, the first sock nearest the tips. One round is the front of the
first sock, the front of the second, turn, the back of the second, the back of the first, turn ("Two toe-up socks on
the magic loop", faithknitter.com, 2008; where each yarn hangs: derived). A heel worked back and forth stands in the
back pass: the whole heel of the second sock, then the whole heel of the first. On two circulars the fronts lie on
one and the backs on the other; order and yarns are the same. One after the other: front, turn, back, turn. On
double-pointed needles, one after the other too, nothing is turned but in a heel: see `plans.rows.dividing`.
"""

from typing import NamedTuple

from plans.pattern import Act, Half, Needles, Order, Row, Sock, StageName
from plans.rows.dividing import divided
from plans.rows.rounds import Pass, Round, RoundKind
from plans.stitches import Op

Acts = tuple[Act, ...]
Rounds = tuple[Round, ...]

_FITTING = (Act.LIFELINE, Act.TRY_ON, Act.MEASURE)
_STOPS: dict[StageName, Acts] = {
    StageName.FOOT: _FITTING,
    StageName.GUSSET: _FITTING,
    StageName.HEEL_TURN: _FITTING,
    StageName.HEEL: _FITTING,
    StageName.LEG: (Act.LIFELINE,),
    StageName.CUFF: _FITTING,
    StageName.BIND_OFF: (Act.LIFELINE,),
}
"""What is done before the first row of a stage: a lifeline always, and where a length is due, a fitting."""

_STOPS_DOWN: dict[StageName, Acts] = {
    StageName.LEG: (Act.LIFELINE,),
    StageName.HEEL_FLAP: _FITTING,
    StageName.HEEL: _FITTING,
    StageName.GUSSET: (Act.LIFELINE,),
    StageName.FOOT: (Act.LIFELINE,),
    StageName.TOE: _FITTING,
}
"""The same from the cuff down: the leg is measured before its heel, the foot before its toe."""

_OPENS = {Op.WASTE: Act.PULL_WASTE, Op.THREAD: Act.SNIP}
_TURNS = {Act.TURN, Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE}


class Placing(NamedTuple):
    """How the pair lies, and how it ends.

    Attributes:
        long_tail: the bind-off is sewn with the cut yarn.
        inside_out: the sock is turned inside out for it.
        opens: what kept the stitches of a heel made last.
        hemmed: the cuff is sewn down at the very end.
        back_and_forth: the stages of a heel that is worked so on the back.
        down: the socks begin at the cuff.
    """

    needles: Needles
    order: Order
    long_tail: bool = False
    inside_out: bool = False
    opens: Op | None = None
    hemmed: bool = False
    back_and_forth: frozenset[StageName] = frozenset()
    down: bool = False

    @property
    def pointed(self) -> bool:
        """Whether it is knitted on double-pointed needles."""
        return self.needles.pointed


def pair_rows(socks: tuple[Rounds, Rounds], placing: Placing) -> tuple[Row, ...]:
    """All rows of both socks, with every act at its place.

    Args:
        socks: the rounds of the first sock and of the second, from the cast-on; as many of each.
        placing: how they lie.
    """
    line = _Line(placing)
    if placing.order is Order.BOTH_AT_ONCE:
        _write_pair(line, socks)
    else:
        _write_alone(line, 1, socks[0])
        _write_alone(line, 2, socks[1])
    finish = (*((Act.SEW_HEM,) if placing.hemmed else ()), Act.WEAVE_IN, Act.WASH)
    line.rows[-1] = line.rows[-1].model_copy(update={"acts": (*line.rows[-1].acts, *finish)})
    return divided(tuple(line.rows), placing.back_and_forth, placing.needles)


class _Around(NamedTuple):
    """The acts of one round: before it, at the start of each half, after each front and after each back."""

    stops: Acts
    joins: Acts
    snug: Acts
    front: Acts
    back: Acts


def _around(rounds: Rounds, place: int, placing: Placing) -> _Around:
    """The acts of the round at a place in its sock, the cast-on at 0."""
    work = rounds[place]
    stage, number = work.front.stage, work.front.number
    made_last = placing.opens is not None
    last_of_all = _ends(rounds, place)
    before_sewing = place + 1 < len(rounds) and (
        placing.long_tail if _ends(rounds, place + 1) else rounds[place + 1].kind is RoundKind.GRAFT
    )
    stops = _stops(stage, placing, made_last=made_last) if number == 1 else ()
    cut = (Act.CUT,) if last_of_all and not placing.long_tail else (Act.CUT_LONG,) if before_sewing else ()
    return _Around(
        stops=(*stops, Act.MARKER) if place == 2 else stops,
        joins=(Act.JOIN,) if place == 1 and placing.down else (),
        snug=() if last_of_all else (Act.SNUG,),
        front=(Act.PULL_TAIL,) if place == 1 and rounds[0].kind is RoundKind.SET_UP and not placing.down else (),
        back=cut,
    )


def _ends(rounds: Rounds, place: int) -> bool:
    """Whether the round at a place is the one that takes the loops off the needle at the cuff."""
    following = rounds[place + 1].front.stage if place + 1 < len(rounds) else None
    return rounds[place].front.stage is StageName.BIND_OFF and following is not StageName.BIND_OFF


def _stops(stage: StageName, placing: Placing, *, made_last: bool) -> Acts:
    """A heel made last leaves the fitting of the foot to the leg's first round, and begins off the needle."""
    if placing.down:
        return _STOPS_DOWN.get(stage, ())
    if made_last and stage in {StageName.HEEL, StageName.LEG}:
        return _FITTING if stage is StageName.LEG else ()
    return _STOPS.get(stage, ())


def _write_pair(line: "_Line", socks: tuple[Rounds, Rounds]) -> None:
    for place, (first, second) in enumerate(zip(*socks, strict=True)):
        if first.kind is RoundKind.SET_UP:
            _set_up(line, 2, second, Act.SLIDE_AWAY)
            _set_up(line, 1, first, Act.READY_TO_KNIT)
            continue
        if first.kind is RoundKind.CUP:
            _cup(line, 2, second, Act.SLIDE_AWAY)
            _cup(line, 1, first, Act.READY_TO_KNIT)
            continue
        if first.kind is RoundKind.GRAFT:
            _join(line, 1, first, line.needle(Half.FRONT))
            _join(line, 2, second, ())
            continue
        acts = _around(socks[0], place, line.placing)
        start = (*acts.joins, *line.needle(Half.FRONT), *acts.snug)
        line.write(1, Half.FRONT, first.front, _Placed(acts.stops, start, acts.front))
        line.write(2, Half.FRONT, second.front, _Placed((), (*acts.joins, *acts.snug), (*acts.front, *line.turn())))
        _write_back(line, 2, second, (*line.needle(Half.BACK), *line.bring(second), *acts.snug), acts.back)
        _write_back(line, 1, first, (*line.bring(first), *acts.snug), (*acts.back, *line.turn()))


def _write_alone(line: "_Line", sock: Sock, rounds: Rounds) -> None:
    for place, work in enumerate(rounds):
        if work.kind is RoundKind.SET_UP:
            _set_up(line, sock, work, *(() if line.placing.pointed else (Act.READY_TO_KNIT,)))
            continue
        if work.kind is RoundKind.CUP:
            _cup(line, sock, work, *(() if line.placing.pointed else (Act.READY_TO_KNIT,)))
            continue
        if work.kind is RoundKind.GRAFT:
            _join(line, sock, work, line.needle(Half.FRONT))
            continue
        acts = _around(rounds, place, line.placing)
        start = (*acts.joins, *line.needle(Half.FRONT), *acts.snug)
        line.write(sock, Half.FRONT, work.front, _Placed(acts.stops, start, (*acts.front, *line.turn())))
        start = (*line.needle(Half.BACK, heel=len(work.back) > 1), *line.bring(work), *acts.snug)
        _write_back(line, sock, work, start, (*acts.back, *line.turn()))


def _set_up(line: "_Line", sock: Sock, work: Round, *after: Act) -> None:
    """Both halves of a sock put on the needle at once, in an open heel or by the closed-toe cast-on."""
    opens = line.placing.opens
    cast_on = work.front.stage is StageName.CAST_ON or opens is None
    before: Acts = (Act.LOOSELY,)
    if not line.placing.down:
        before = (Act.PREPARE_TIPS, Act.SECURE_TAIL) if cast_on or opens is None else (_OPENS[opens], Act.JOIN_YARN)
    line.write(sock, Half.FRONT, work.front, _Placed(before=before))
    line.write(sock, Half.BACK, work.back[0], _Placed(after=after))


def _join(line: "_Line", sock: Sock, work: Round, needle: Acts) -> None:
    """Both halves taken off in a row: grafted with the tail, or bound off, and the yarn cut then."""
    bound_off = work.front.stage is StageName.BIND_OFF and not line.placing.long_tail
    before = (Act.INSIDE_OUT, *needle) if line.placing.inside_out else needle
    line.write(sock, Half.FRONT, work.front, _Placed(before=before, after=(Act.CUT,) if bound_off else ()))


def _cup(line: "_Line", sock: Sock, work: Round, *after: Act) -> None:
    """A toe of short rows: the back's provisional loops, its rows, then the front's loops off the waste yarn."""
    _write_back(line, sock, work, line.needle(Half.BACK), ())
    line.write(sock, Half.FRONT, work.front, _Placed((), (Act.PULL_WASTE, *line.needle(Half.FRONT)), after))


def _write_back(line: "_Line", sock: Sock, work: Round, before: Acts, after: Acts) -> None:
    for number, one in enumerate(work.back):
        acts = _Placed((), () if number else before, (Act.TURN,) if one.turns else after)
        line.write(sock, Half.BACK, one, acts)


class _Placed(NamedTuple):
    """The acts of one row; the yarn is taken up after the stops."""

    stops: Acts = ()
    before: Acts = ()
    after: Acts = ()


class _Line:
    """The rows so far."""

    def __init__(self, placing: Placing) -> None:
        self.placing = placing
        self.rows: list[Row] = []
        self._clockwise = False

    def write(self, sock: Sock, half: Half, work: Pass, acts: _Placed) -> None:
        """Add one row, worked with the sock's own yarn."""
        changes = (Act.CHANGE_YARN,) if self.rows and self.rows[-1].yarn != sock else ()
        row = Row(
            index=len(self.rows),
            stage=work.stage,
            round=work.number,
            sock=sock,
            half=half,
            facing=work.facing,
            yarn=sock,
            ops=work.ops,
            turn_after=not _TURNS.isdisjoint(acts.after),
            stitches_after=work.after,
            acts=(*acts.stops, *changes, *acts.before, *acts.after),
            chart=work.chart,
        )
        self.rows.append(row)

    def needle(self, half: Half, *, heel: bool = False) -> Acts:
        """Of two circulars, the one to take up; a heel lies on one double-pointed needle."""
        if self.placing.pointed and heel:
            return (Act.ONE_NEEDLE,)
        if self.placing.needles is not Needles.TWO_CIRCULARS:
            return ()
        return (Act.FIRST_NEEDLE if half is Half.FRONT else Act.SECOND_NEEDLE,)

    def bring(self, work: Round) -> Acts:
        """On two circulars, the loop that waits on the front's needle is brought to the back's."""
        waits = work.front.stage is StageName.BIND_OFF and work.front.after == 1
        return (Act.BRING_LOOP,) if waits and self.placing.needles is Needles.TWO_CIRCULARS else ()

    def turn(self) -> Acts:
        """The turn at the end of a side, by turns one way and the other, so that the yarns do not twist."""
        if self.placing.pointed:
            return ()
        self._clockwise = not self._clockwise
        return (Act.TURN_CLOCKWISE if self._clockwise else Act.TURN_ANTICLOCKWISE,)
