"""What is worked in a round: stitches, their repeats, charts, and what is done in between."""

import re

from plans.pattern import Act, Colour
from plans.stitches import MARKERS, Op
from plans.written.reading.abbreviations import ACTS, BEGINNINGS, COLOURS, COUNTED, OPS, PHRASES, STITCHES, TAILS
from plans.written.reading.cursor import Cursor, Wrong
from plans.written.reading.tokens import Token
from plans.written.reading.tree import Again, Aside, Do, FromChart, Item, OfChart, Times, ToEnd

_WITH_NUMBER = re.compile(r"(?P<name>[^\W\d_]+)(?P<number>\d+)")
_AND = frozenset({",", ";", "and", "then"})
_CLOSING = {"[": "]", "(": ")"}
_DEEPEST = 8
"""Repeats within repeats; more than anyone can follow."""


class Stitchwork:
    """Reads stitches off a cursor."""

    def __init__(self, cursor: Cursor) -> None:
        self._cursor = cursor
        self._depth = 0

    def work(self) -> tuple[Item, ...]:
        """Things to work, one after the other, up to a stop, a closing bracket or what is no stitch."""
        found: list[Item] = []
        while True:
            item = self._item()
            if item is None:
                return tuple(found)
            found.append(item)
            while self._cursor.takes_any(_AND):
                pass
            if self._cursor.here.first and self._cursor.here.text in BEGINNINGS:
                return tuple(found)

    def _item(self) -> Item | None:
        cursor = self._cursor
        if cursor.sees("*"):
            return self._from_star()
        if cursor.here.text in _CLOSING and cursor.ahead(1).kind != "number":
            return self._bracket()
        if cursor.sees("chart"):
            return self._chart()
        at = cursor.here
        act = self._act()
        return Aside(act, at) if act is not None else self._stitch()

    def _act(self) -> Act | None:
        cursor = self._cursor
        return None if cursor.sees("place", "marker") or self._is_stitch() else cursor.phrase(ACTS)

    def _is_stitch(self) -> bool:
        return self._cursor.here.text in OPS

    def _inside(self) -> tuple[Item, ...]:
        if self._depth == _DEEPEST:
            raise Wrong("written-too-deep", self._cursor.here, most=_DEEPEST)
        self._depth += 1
        try:
            return self.work()
        finally:
            self._depth -= 1

    def _from_star(self) -> Again:
        """*k2, p2; rep from * to end."""
        cursor = self._cursor
        at = cursor.step()
        work = self._inside()
        if not (cursor.takes("rep", "from", "*") or cursor.takes("repeat", "from", "*")):
            if not (cursor.sees(".") or cursor.here.first or cursor.sees("rep")):
                cursor.refuse()
            raise Wrong("written-star-alone", at)
        end = self.to_end()
        if end is not None:
            return Again(work, end, at)
        more = self._times_more()
        return Again(work, ToEnd() if more is None else more + 1, at)

    def _times_more(self) -> int | None:
        """How often more: "3 times", "3 times more", "3 more times", "twice more"."""
        cursor = self._cursor
        began = cursor.at
        number = cursor.number()
        if number is not None and cursor.takes("more", "times"):
            return number
        cursor.at = began
        times = cursor.times()
        cursor.takes("more")
        return times

    def _bracket(self) -> Again:
        """[k2, p2] 3 times."""
        cursor = self._cursor
        at = cursor.step()
        work = self._inside()
        if not cursor.takes(_CLOSING[at.text]):
            cursor.refuse()
        times: Times | None = cursor.times()
        if times is None:
            times = self.to_end()
        if times is None:
            raise Wrong("written-how-often", at)
        return Again(work, times, at)

    def _chart(self) -> Item:
        cursor = self._cursor
        at = cursor.step()
        name = cursor.step()
        if name.kind not in ("word", "name"):
            raise Wrong("written-not-understood", name, text=name.text or "…")
        if cursor.takes("row"):
            row = cursor.number()
            of = cursor.number() if cursor.takes("of") else None
            if not row or not of:
                cursor.refuse()
            cursor.takes(":")
            return OfChart(name.text, row, of, at)
        times: Times | None = cursor.times()
        if times is None:
            times = self.to_end() or (1 if self._depth else ToEnd())
        return FromChart(name.text, times, at)

    def _stitch(self) -> Do | None:
        cursor = self._cursor
        at = cursor.here
        named = self._name()
        if named is None:
            return None
        op, number = named
        if number is None and op in COUNTED:
            number = self._bare_number()
        cursor.takes_any(STITCHES)
        do = self._with_tails(Do(op, 1, at))
        times = self._how_often(do, number)
        return Do(do.op, times, at, do.wrap, do.double, do.colour)

    def _name(self) -> tuple[Op, int | None] | None:
        cursor = self._cursor
        phrase = cursor.phrase(PHRASES)
        if phrase is not None:
            return phrase, None
        if cursor.here.kind != "word":
            return None
        text = cursor.here.text
        if text in OPS:
            cursor.step()
            return OPS[text], None
        found = _WITH_NUMBER.fullmatch(text)
        op = OPS.get(found["name"]) if found else None
        if found is None or op not in COUNTED or op is None:
            return None
        token = cursor.step()
        shown = Token("number", found["number"], token.line, token.column + len(found["name"]))
        return op, cursor.sized(shown)

    def _bare_number(self) -> int | None:
        """A number that is no count of times: "k 12", but not "k 3 times"."""
        cursor = self._cursor
        began = cursor.at
        if cursor.times() is not None:
            cursor.at = began
            return None
        return cursor.number()

    def _with_tails(self, do: Do) -> Do:
        """Through the back loop, with the yarn in front, with wraps, in the contrasting colour."""
        cursor = self._cursor
        while True:
            at = cursor.here
            known = {tail: ops[do.op] for tail, ops in TAILS.items() if do.op in ops}
            op = cursor.phrase(known) if known else None
            if op is not None:
                do = Do(op, 1, do.at, do.wrap, do.double, do.colour)
            elif cursor.takes("with", "wrap") or cursor.takes("with", "wraps"):
                do = Do(do.op, 1, do.at, wrap=True, double=do.double, colour=do.colour)
            elif cursor.takes("with", "double") or cursor.takes("with", "doubles"):
                do = Do(do.op, 1, do.at, wrap=do.wrap, double=True, colour=do.colour)
            elif at.text in COLOURS:
                colour = Colour(COLOURS[cursor.step().text])
                do = Do(do.op, 1, do.at, do.wrap, do.double, colour)
            else:
                return do

    def _how_often(self, do: Do, number: int | None) -> Times:
        cursor = self._cursor
        end = self.to_end()
        if end is not None:
            return end
        times = cursor.times()
        if number is None and times is None and do.op in COUNTED and do.op not in (Op.SL_WYIB, Op.SL_WYIF):
            cursor.takes("all")
            cursor.takes_any(STITCHES)
            return ToEnd()
        if do.op in MARKERS and times is not None:
            raise Wrong("written-not-understood", do.at, text=do.at.text)
        return (1 if number is None else number) * (1 if times is None else times)

    def to_end(self) -> ToEnd | None:
        """"to end", "around", "to last 2 sts", "to 3 sts before m", "to m"; None where none stands here."""
        cursor = self._cursor
        if cursor.takes("around"):
            return ToEnd()
        began = cursor.at
        if not cursor.takes("to"):
            return None
        cursor.takes("the")
        if cursor.takes("end"):
            if cursor.takes("of"):
                cursor.takes("the")
                cursor.step()
            return ToEnd()
        if cursor.takes("m") or cursor.takes("marker"):
            return ToEnd(marker=True)
        last = cursor.takes("last")
        number = cursor.number()
        rest = 1 if number is None and last else number
        if rest is not None and cursor.takes_any(STITCHES):
            if last:
                return ToEnd(rest)
            if cursor.takes("before") and (cursor.takes("m") or cursor.takes("marker")):
                return ToEnd(rest, marker=True)
        cursor.at = began + 1
        return cursor.refuse()
