"""A pattern's text, statement by statement."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from plans.pattern import Act, Facing, Half, Sock
from plans.stitches import Op
from plans.written.reading.abbreviations import ACTS, ROUNDS, STAGES, STITCHES
from plans.written.reading.cursor import Cursor, Wrong
from plans.written.reading.stitchwork import Stitchwork
from plans.written.reading.tokens import Token
from plans.written.reading.tree import (
    Acts,
    Aside,
    BindOff,
    CastOn,
    Part,
    Repeat,
    Rounds,
    Segment,
    Statement,
    Who,
    Whose,
)

if TYPE_CHECKING:
    from plans.replies import Problem

MOST_ROUNDS = 2000
"""In one statement; more than any piece has."""

_ORDINALS: dict[str, Sock] = {"first": 1, "second": 2}
_HALVES = {"front": Half.FRONT, "fronts": Half.FRONT, "back": Half.BACK, "backs": Half.BACK}
_PIECES = frozenset({"sock", "socks", "piece", "pieces", "mitten", "mittens", "sleeve", "sleeves", "one"})
_ENDINGS: dict[tuple[str, ...], Op] = {
    ("bo",): Op.BO, ("bind", "off"): Op.BO, ("sew", "off"): Op.SEW_BO, ("gather",): Op.GATHER,
    ("draw", "the", "tail", "through"): Op.GATHER, ("draw", "tail", "through"): Op.GATHER,
    ("thread", "tail", "through"): Op.GATHER, ("thread", "the", "tail", "through"): Op.GATHER,
}  # fmt: skip
_ACTS_BETWEEN = {**ACTS, ("pm",): Act.MARKER, ("place", "marker"): Act.MARKER}


class Grammar:
    """Reads all statements; what is not understood is gathered, and reading goes on at the next one."""

    def __init__(self, tokens: list[Token], sizes: int, size: int) -> None:
        self._cursor = Cursor(tokens, sizes, size)
        self._stitchwork = Stitchwork(self._cursor)
        self.problems: list[Problem] = []

    def statements(self) -> Iterator[Statement]:
        """All of them, in order."""
        cursor = self._cursor
        while cursor.here.kind != "end":
            if cursor.takes("."):
                continue
            began = cursor.at
            try:
                yield self._statement()
            except Wrong as wrong:
                if wrong.problem not in self.problems:
                    self.problems.append(wrong.problem)
                cursor.at = max(cursor.at, began + 1)
                while cursor.here.kind != "end" and not cursor.here.first:
                    cursor.step()

    def _statement(self) -> Statement:
        cursor, at = self._cursor, self._cursor.here
        if at.text in ROUNDS or (at.text == "next" and cursor.ahead(1).text in ROUNDS):
            return self._rounds()
        if at.text in ("rep", "repeat", "reps"):
            return self._repeat()
        part = self._part()
        if part is not None:
            return part
        whose = self._whose()
        if whose is not None:
            return whose
        cast_on = self._cast_on()
        if cast_on is not None:
            return cast_on
        op = cursor.phrase(_ENDINGS)
        if op is not None:
            return self._bind_off(op, at)
        acts = tuple(self._acts())
        return Acts(acts) if acts else cursor.refuse()

    # --- headings and whose ------------------------------------------------------------------------------------

    def _part(self) -> Part | None:
        cursor = self._cursor
        began, at = cursor.at, cursor.here
        stage = cursor.phrase(STAGES)
        if stage is not None:
            cursor.takes(":")
            if at.first and cursor.here.first:
                return Part(stage, at)
        cursor.at = began
        return None

    def _whose(self) -> Whose | None:
        at = self._cursor.here
        who = self._who() if at.first else None
        if who is None:
            return None
        if self._cursor.here.first:
            return Whose(who, at)
        if self._cursor.takes("the", "same") or self._cursor.takes("same"):
            self._stop()
            return Whose(who, at, same=True)
        return self._cursor.refuse()

    def _who(self) -> Who | None:
        """"First sock, back:", "Each half:", "Both socks:"; None, and nowhere gone, where none stands here."""
        cursor = self._cursor
        began = cursor.at
        sock = _ORDINALS.get(cursor.here.text)
        named = sock is not None or cursor.here.text in ("both", "each", "all")
        each = cursor.sees("each") and cursor.ahead(1).text in ("half", "side")
        if named:
            cursor.step()
        if each:
            cursor.step()
        elif named:
            cursor.takes_any(_PIECES)
            cursor.takes(",")
        half = None if each else _HALVES.get(cursor.here.text)
        if half is not None:
            cursor.step()
        if (named or half) and cursor.takes(":"):
            return Who(sock, "each" if each else half)
        cursor.at = began
        return None

    # --- beginnings and ends -----------------------------------------------------------------------------------

    def _cast_on(self) -> CastOn | None:
        cursor = self._cursor
        began, at = cursor.at, cursor.here
        found = next(iter(self._stitchwork.work()), None)
        if getattr(found, "op", None) is Op.CO and isinstance(times := getattr(found, "times", None), int):
            cursor.at = began
            self._one_stitch()
            self._stop()
            return CastOn(times, at)
        cursor.at = began
        return None

    def _one_stitch(self) -> None:
        """Go past "CO 64 (72, 80) sts" and the comma behind it."""
        cursor = self._cursor
        cursor.step()
        while cursor.here.kind in ("number", "sign") and not cursor.here.first and cursor.here.text not in ",.;":
            if cursor.sees(")"):
                cursor.step()
                break
            cursor.step()
            while cursor.sees(",") and cursor.ahead(1).kind == "number":
                cursor.step()
        cursor.takes_any(STITCHES)

    def _bind_off(self, op: Op, at: Token) -> BindOff:
        cursor = self._cursor
        while cursor.takes_any(("all", "the", "remaining", "rem", "last", *STITCHES)) or cursor.number() is not None:
            pass
        if op is Op.BO and cursor.takes("with", "yo"):
            op = Op.YO_BO
        self._stop()
        return BindOff(op, at)

    def _acts(self) -> Iterator[Aside]:
        cursor = self._cursor
        while True:
            at = cursor.here
            cursor.takes("and")
            act = cursor.phrase(_ACTS_BETWEEN)
            if act is None:
                return
            yield Aside(act, at)
            if not (cursor.takes(".") or cursor.takes(",")) and not cursor.here.first and not cursor.sees("and"):
                cursor.refuse()

    def _stop(self) -> None:
        """A stop, a comma or the end of the line."""
        cursor = self._cursor
        if not (cursor.takes(".") or cursor.takes(",") or cursor.takes(";")) and not cursor.here.first:
            cursor.refuse()

    # --- rounds ------------------------------------------------------------------------------------------------

    def _rounds(self) -> Rounds:
        cursor, at = self._cursor, self._cursor.here
        by_number = not cursor.takes("next")
        cursor.step()
        numbers = tuple(self._numbers()) if by_number else None
        facing = Facing.RS
        if cursor.takes("("):
            side = cursor.takes_any(("rs", "ws"))
            facing = Facing(side.upper()) if side else cursor.refuse()
            if not cursor.takes(")"):
                cursor.refuse()
        if not cursor.takes(":"):
            cursor.refuse()
        segments = tuple(self._segments())
        if not segments:
            raise Wrong("written-round-empty", at)
        return Rounds(numbers, segments, at, facing, self._count())

    def _numbers(self) -> Iterator[int]:
        """"1", "1-4", "1, 3 and 5"."""
        cursor = self._cursor
        while True:
            at, first = cursor.here, cursor.number()
            last = cursor.number() if cursor.takes("-") or cursor.takes("to") else first
            if first is None or last is None or not 0 < first <= last + 1:
                cursor.refuse()
            if last - first >= MOST_ROUNDS:
                raise Wrong("written-not-understood", at, text=at.text)
            yield from range(first, last + 1)
            if not (cursor.takes(",") or cursor.takes("and") or cursor.takes("&")):
                return

    def _segments(self) -> Iterator[Segment]:
        cursor = self._cursor
        while not self._begins_statement():
            at = cursor.here
            if self._at_count():
                return
            who = self._who() or Who()
            exactly = self._exactly()
            work = self._stitchwork.work()
            if not work and exactly is None:
                cursor.refuse()
            yield Segment(who, work, at, exactly)
            if self._at_count():
                return
            if not cursor.takes(".") and not cursor.takes(";") and not self._begins_statement():
                cursor.refuse()

    def _begins_statement(self) -> bool:
        """Whether this is a new line that begins something new, or the end."""
        cursor = self._cursor
        if cursor.here.kind == "end":
            return True
        if not cursor.here.first:
            return False
        began = cursor.at
        text = cursor.here.text
        begins = text in ROUNDS or text in ("next", "rep", "repeat") or self._part() is not None
        begins = begins or self._who() is not None or cursor.phrase({**_ENDINGS, **_ACTS_BETWEEN}) is not None
        cursor.at = began
        return begins or text == "co"

    def _exactly(self) -> tuple[Act, ...] | None:
        """{change yarn; snug}: these acts and no others."""
        cursor = self._cursor
        if not cursor.takes("{"):
            return None
        found: list[Act] = []
        while not cursor.takes("}"):
            act = cursor.phrase(ACTS)
            found.append(act if act is not None else cursor.refuse())
            cursor.takes(";")
        return tuple(found)

    def _at_count(self) -> bool:
        cursor = self._cursor
        step = 1 if cursor.sees("(") or cursor.sees("-") else 0
        return cursor.ahead(step).kind == "number" and any(
            cursor.ahead(ahead).text in STITCHES for ahead in range(step + 1, step + 14)
        )

    def _count(self) -> tuple[int, Token] | None:
        """(84 sts), or a sentence "84 sts."."""
        cursor = self._cursor
        if not self._at_count():
            return None
        bracket = cursor.takes("(")
        cursor.takes("-")
        at, number = cursor.here, cursor.number()
        if number is None or not cursor.takes_any(STITCHES) or (bracket and not cursor.takes(")")):
            cursor.refuse()
        if not cursor.here.first:
            self._stop()
        return number, at

    def _repeat(self) -> Repeat:
        """Repeat rnds 1-2 five times [more]; "in all" where the first time counts."""
        cursor, at = self._cursor, self._cursor.step()
        last = cursor.takes("last")
        numbers: tuple[int, ...] = ()
        if last:
            back = cursor.number() or 1
            cursor.takes_any(ROUNDS)
            numbers = (-back, -1)
        elif cursor.takes_any(ROUNDS):
            numbers = tuple(self._numbers())
        if not numbers:
            cursor.refuse()
        times = cursor.times()
        if times is None:
            raise Wrong("written-how-often", at)
        if cursor.takes("in", "all") or cursor.takes("in", "total"):
            times -= 1
        else:
            cursor.takes("more")
        if not self._at_count():
            self._stop()
        count = self._count()
        return Repeat(numbers[0], numbers[-1], times, at, count)
