"""The true order of rows and acts for a pair on one long circular needle.

At the start the fronts face, the first sock nearest the tips. One round is the front of the first sock, the
front of the second, turn, the back of the second, the back of the first, turn ("Two toe-up socks on the magic
loop", faithknitter.com, 2008; where each yarn hangs: derived). The heel stands in the back pass: the whole
heel of the second sock, then the whole heel of the first.
"""

from collections.abc import Iterable
from typing import NamedTuple

from plans.pattern import Act, BindOff, Half, Row, Sock, StageName
from plans.rows.rounds import Pass, Round

Acts = tuple[Act, ...]

_FITTING = (Act.LIFELINE, Act.TRY_ON, Act.MEASURE)
_STOPS: dict[StageName, Acts] = {
    StageName.FOOT: _FITTING,
    StageName.GUSSET: _FITTING,
    StageName.HEEL_TURN: _FITTING,
    StageName.LEG: (Act.LIFELINE,),
    StageName.CUFF: _FITTING,
    StageName.BIND_OFF: (Act.LIFELINE,),
}
"""What is done before the first row of a stage: a lifeline always, and where a length is due, a fitting."""

_BOTH_TIPS = (Act.PREPARE_TIPS, Act.SECURE_TAIL)


class Around(NamedTuple):
    """The acts of one round of the pair.

    Attributes:
        stops: before the round.
        snug: at the start of each half.
        tail: after each front.
        cut: after each back.
        end: after the last turn.
    """

    stops: Acts
    snug: Acts
    tail: Acts
    cut: Acts
    end: Acts


def pair_rows(cast_on: Round, rounds: Iterable[Round], bind_off: BindOff) -> tuple[Row, ...]:
    """All rows of both socks, with every act at its place.

    Args:
        cast_on: one sock's cast-on; the sock that lies further from the tips comes first.
        rounds: one sock's rounds from the toe to the bind-off.
        bind_off: tells when the yarn is cut: a sewn edge is sewn with the cut tail.
    """
    line = _Line()
    _write_cast_on(line, cast_on)
    listed = tuple(rounds)
    for place, work in enumerate(listed, start=1):
        _write_round(line, work, _acts(work, place, len(listed), bind_off))
    return tuple(line.rows)


def _acts(work: Round, place: int, rounds: int, bind_off: BindOff) -> Around:
    """The acts of the round that stands at `place` of all, counted from 1."""
    stage, number = work.front.stage, work.front.number
    last, sewn = place == rounds, bind_off is BindOff.SEWN
    cut = (Act.CUT,) if last and not sewn else (Act.CUT_LONG,) if sewn and place == rounds - 1 else ()
    stops = _STOPS.get(stage, ()) if number == 1 else ()
    return Around(
        stops=(*stops, Act.MARKER) if place == 2 else stops,
        snug=() if last else (Act.SNUG,),
        tail=(Act.PULL_TAIL,) if place == 1 else (),
        cut=cut,
        end=(Act.WEAVE_IN, Act.WASH) if last else (),
    )


def _write_cast_on(line: "_Line", work: Round) -> None:
    line.write(2, Half.FRONT, work.front, _Placed(before=_BOTH_TIPS))
    line.write(2, Half.BACK, work.back[0], _Placed(after=(Act.SLIDE_AWAY,)))
    line.write(1, Half.FRONT, work.front, _Placed(before=_BOTH_TIPS))
    line.write(1, Half.BACK, work.back[0], _Placed(after=(Act.READY_TO_KNIT,)))


def _write_round(line: "_Line", work: Round, acts: Around) -> None:
    line.write(1, Half.FRONT, work.front, _Placed(acts.stops, acts.snug, acts.tail))
    line.write(2, Half.FRONT, work.front, _Placed((), acts.snug, (*acts.tail, line.turn())))
    _write_back(line, 2, work, acts.snug, acts.cut)
    _write_back(line, 1, work, acts.snug, (*acts.cut, line.turn(), *acts.end))


def _write_back(line: "_Line", sock: Sock, work: Round, snug: Acts, after: Acts) -> None:
    for number, one in enumerate(work.back):
        acts = _Placed((), () if number else snug, (Act.TURN,) if one.turns else after)
        line.write(sock, Half.BACK, one, acts)


class _Placed(NamedTuple):
    """The acts of one row; the yarn is taken up after the stops."""

    stops: Acts = ()
    before: Acts = ()
    after: Acts = ()


class _Line:
    """The rows so far."""

    def __init__(self) -> None:
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

    def turn(self) -> Act:
        """The turn at the end of a side, by turns one way and the other, so that the yarns do not twist."""
        self._clockwise = not self._clockwise
        return Act.TURN_CLOCKWISE if self._clockwise else Act.TURN_ANTICLOCKWISE


_TURNS = {Act.TURN, Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE}
