"""Knits all rows from the operations alone, and follows which side and which half face."""

from collections.abc import Iterator
from typing import NamedTuple

from plans.alike import OfOps
from plans.pattern import Act, Facing, Group, Half, Needles, Order, Plan, Row, StageName
from plans.proof.findings import Finding, found
from plans.proof.knitting import SETS_UP, Knitted, Moves, knit_row, moves
from plans.proof.loops import BACK_HALF, CASTS_ON, NEXT_LOOP, SECOND_SOCK, Needle
from plans.rows.heels import heel
from plans.rows.toes import toe
from plans.stitches import JOINS, Op

_HEEL = frozenset({StageName.HEEL_TURN, StageName.HEEL_FLAP, StageName.HEEL})


class Story:
    """The knitting of a pair, row after row, until one cannot be knitted."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self.needle = Needle(two=plan.construction.needles is Needles.TWO_CIRCULARS)
        self.side = Facing.RS
        self.half = Half.FRONT
        self.knitted: list[Knitted] = []
        self.findings: list[Finding] = []
        name, toe_name = plan.construction.heel, plan.construction.toe
        self._turned_back = frozenset() if name is not None and heel(name).made_last else _HEEL
        if toe_name is not None and toe(toe_name).cup:
            self._turned_back |= {StageName.TOE}
        self._halves = plan.construction.needles is not Needles.ONE_CIRCULAR
        self._turns = not plan.construction.needles.pointed
        self._alone = plan.construction.order is Order.ONE_AFTER_THE_OTHER
        self._began = 0
        self._kind = OfOps(_kind)

    def tell(self) -> None:
        """Knit the plan; what is wrong is gathered on the way."""
        for place, row in enumerate(self.plan.rows):
            if Act.BRING_LOOP in row.acts and not self.needle.bring(row.sock - 1):
                self.findings.append(found(place, "nothing-to-pass-over", sock=row.sock))
            if self._alone:
                self.findings.extend(self._begun(place, row))
            kind = self._kind(row.ops)
            came = knit_row(self.needle, row, self.side, kind.moves)
            self.knitted.append(came)
            if came.faults:
                self.findings.extend(Finding(place, key, values) for key, values in came.faults)
            if row.facing is not self.side or row.half is not self.half:
                self.findings.extend(self._facing(place, row, kind))
            if came.stopped:
                return
            left = not came.whole and not self._may_wait(row)
            due = self._turn(row, came, kind)
            if left or came.after != row.stitches_after or due is not row.turn_after:
                self.findings.extend(_ended(place, row, came, turn=due, left=left))
            if left:
                return
        if self.needle.number:
            self.findings.append(found(None, "loops-at-end", loops=self.needle.number))

    def _begun(self, place: int, row: Row) -> Iterator[Finding]:
        """One after the other: where a sock is cast on, the other is off the needle."""
        other = SECOND_SOCK - (row.sock - 1)
        left = self.needle.counts[other] + self.needle.counts[other + BACK_HALF]
        begins = not self.needle.counts[row.sock - 1] and any(group.op in CASTS_ON for group in row.ops)
        if left and begins:
            yield found(place, "other-sock-on-needle", sock=3 - row.sock, loops=left)

    def _may_wait(self, row: Row) -> bool:
        """Whether a row may leave loops of its half unworked."""
        return row.half is Half.BACK and row.stage in self._turned_back

    def _facing(self, place: int, row: Row, kind: "_Kind") -> Iterator[Finding]:
        """Side and half against what faces."""
        if row.facing is not self.side:
            yield found(place, "wrong-side", found=str(row.facing), wanted=str(self.side))
        if row.half is not self.half and not kind.sets_up:
            yield found(place, "wrong-half", found=str(row.half), wanted=str(self.half))

    def _turn(self, row: Row, came: Knitted, kind: "_Kind") -> bool:
        """Whether the work must be turned now; if so, it is.

        A right-side row over a whole half, unless it is plainly turned back, is followed by what lies next at the
        tip: the other sock's half on the same side of the needle, or the other side, for which the whole work is
        turned, but not on double-pointed needles. After any other row the same half is worked back. A graft takes
        both halves off and ends there.
        """
        if kind.sets_up:
            self._began = self.needle.fresh
            self.half = row.half if kind.over_waste else Half.FRONT
            return False
        if came.whole and not self._halves:
            self._began = self.needle.fresh
            return False
        if came.whole and self.side is Facing.RS and self._is_cup(row):
            return False
        if kind.joins:
            return False
        if came.whole and self.side is Facing.RS and Act.TURN not in row.acts:
            following = self._following(row)
            turns, self.half = following is not self.half, following
            self._began = self.needle.fresh if turns else self._began
            return turns and self._turns
        self.side = Facing.WS if self.side is Facing.RS else Facing.RS
        return True

    def _is_cup(self, row: Row) -> bool:
        """Whether the sock's other half still hangs on waste yarn: the work is turned only to free it."""
        return row.half is Half.BACK and self.needle.is_cup(row.sock - 1)

    def _following(self, row: Row) -> Half:
        """The half that comes next: the one at the tip, unless it was worked since the last turn."""
        line = self.needle.backs if row.half is Half.BACK else self.needle.loops
        if not line or (self.needle.two and line[0] // NEXT_LOOP >= self._began // NEXT_LOOP):
            return _other(self.half)
        return _half_of(line[0])


def _ended(place: int, row: Row, came: Knitted, *, turn: bool, left: bool) -> Iterator[Finding]:
    """Count, loops left that may not wait unworked, and the turn after a row that was knitted."""
    if came.after != row.stitches_after:
        yield found(place, "count-wrong", found=came.after, stated=row.stitches_after)
    if left:
        values = {"sock": row.sock, "half": str(row.half), "loops": came.beyond}
        yield found(place, "loops-not-worked", **values)
    if turn is not row.turn_after:
        yield found(place, "turn-missing" if turn else "turn-not-due")


class _Kind(NamedTuple):
    """What a row is for the needle.

    Attributes:
        moves: its operations, as the hands do them.
        sets_up: it puts loops on the needle where its half had none.
        over_waste: these are cast on over waste yarn.
        joins: it takes both halves off.
    """

    moves: Moves
    sets_up: bool
    over_waste: bool
    joins: bool


def _kind(ops: tuple[Group, ...]) -> _Kind:
    used = {group.op for group in ops}
    return _Kind(moves(ops), bool(used) and used <= SETS_UP, Op.CO_WASTE in used, not used.isdisjoint(JOINS))


def _half_of(loop: int) -> Half:
    return Half.BACK if loop & BACK_HALF else Half.FRONT


def _other(half: Half) -> Half:
    return Half.FRONT if half is Half.BACK else Half.BACK
