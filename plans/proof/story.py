"""Knits all rows from the operations alone, and follows which side and which half face."""

from collections.abc import Iterator

from plans.pattern import Facing, Half, Needles, Plan, Row, StageName
from plans.proof.findings import Finding, found
from plans.proof.knitting import Knitted, knit_row
from plans.proof.loops import BACK_HALF, Needle

_HEEL = frozenset({StageName.HEEL_TURN, StageName.HEEL_FLAP, StageName.HEEL})


class Story:
    """The knitting of a pair, row after row, until one cannot be knitted."""

    def __init__(self) -> None:
        self.needle = Needle()
        self.side = Facing.RS
        self.half = Half.FRONT
        self.turns = True
        self.knitted: list[Knitted] = []
        self.findings: list[Finding] = []

    def tell(self, plan: Plan) -> None:
        """Knit the plan; what is wrong is gathered on the way."""
        self.turns = plan.construction.needles is not Needles.ONE_CIRCULAR
        for place, row in enumerate(plan.rows):
            came = knit_row(self.needle, row, self.side)
            self.knitted.append(came)
            self.findings.extend(Finding(place, key, values) for key, values in came.faults)
            self.findings.extend(self._facing(place, row))
            if came.stopped:
                return
            self.findings.extend(self._ended(place, row, came))
            if not came.whole and (row.half is Half.FRONT or row.stage not in _HEEL):
                return
        if self.needle.loops:
            self.findings.append(found(None, "loops-at-end", loops=len(self.needle.loops)))

    def _facing(self, place: int, row: Row) -> Iterator[Finding]:
        """Side and half against what faces."""
        if row.facing is not self.side:
            yield found(place, "wrong-side", found=str(row.facing), wanted=str(self.side))
        if row.half is not self.half and row.stage is not StageName.CAST_ON:
            yield found(place, "wrong-half", found=str(row.half), wanted=str(self.half))

    def _ended(self, place: int, row: Row, came: Knitted) -> Iterator[Finding]:
        """Count, what waits unworked, and the turn after a row that was knitted."""
        if came.after != row.stitches_after:
            yield found(place, "count-wrong", found=came.after, stated=row.stitches_after)
        if not came.whole and (row.half is Half.FRONT or row.stage not in _HEEL):
            values = {"sock": row.sock, "half": str(row.half), "loops": came.beyond}
            yield found(place, "loops-not-worked", **values)
        due = self._turn(row, came)
        if due is not row.turn_after:
            yield found(place, "turn-missing" if due else "turn-not-due")

    def _turn(self, row: Row, came: Knitted) -> bool:
        """Whether the work must be turned now; if so, it is.

        A right-side row over a whole half is followed by what lies next at the tip: the other sock's half on
        the same side of the needle, or the other side, for which the whole work is turned. After any other
        row the same half is worked back.
        """
        if row.stage is StageName.CAST_ON or (came.whole and not self.turns):
            return False
        if came.whole and self.side is Facing.RS:
            loops = self.needle.loops
            following = _half_of(loops[0]) if loops else _other(self.half)
            turns, self.half = following is not self.half, following
            return turns
        self.side = Facing.WS if self.side is Facing.RS else Facing.RS
        return True


def _half_of(loop: int) -> Half:
    return Half.BACK if loop & BACK_HALF else Half.FRONT


def _other(half: Half) -> Half:
    return Half.FRONT if half is Half.BACK else Half.BACK
