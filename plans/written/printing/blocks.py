"""A plan's rows as the statements of a pattern: rounds, the rows of a heel, and what is done between."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from plans.pattern import Act, Group, Half, Row, Sock, StageName
from plans.stitches import JOINS, Op, makes, takes
from plans.written.printing.abbreviations import heading, stitches
from plans.written.printing.acts import Told, told
from plans.written.printing.repeating import Line, acts_line, repeated
from plans.written.printing.shortening import Groups, shortened

_ORDINAL = {1: "First", 2: "Second"}
_ORDERS: dict[int, list[tuple[Sock, Half]]] = {
    2: [(1, Half.FRONT), (2, Half.FRONT), (2, Half.BACK), (1, Half.BACK)],
    1: [(1, Half.FRONT), (1, Half.BACK)],
}


@dataclass(frozen=True)
class Block:
    """Rows that are printed together: a round, or the rows of one heel (`strip`)."""

    rows: tuple[Row, ...]
    strip: bool


class Blocks:
    """One plan's rows, with how they lie."""

    def __init__(self, rows: tuple[Row, ...], *, pieces: int, halves: bool, turned: bool) -> None:
        self._rows = rows
        self._halves = halves
        self._second = _second_begins(rows) if pieces == 2 and halves else None
        self._order = _ORDERS[pieces] if halves else _ORDERS[1][:1]
        self._told = [told(rows, at, halves=halves, turned=turned) for at in range(len(rows))]
        self._waiting: list[Line] = []
        self._known: int | None = None

    def lines(self) -> Iterator[str]:
        """The pattern, line by line; where the second piece is begun when the first is done, one after the other."""
        if self._second is None:
            yield from self._lines(0, len(self._rows))
            return
        socks: tuple[tuple[Sock, int, int], ...] = ((1, 0, self._second), (2, self._second, len(self._rows)))
        for sock, first, end in socks:
            self._order, self._known = [(sock, Half.FRONT), (sock, Half.BACK)], None
            name = f"{_ORDINAL[sock]} sock:"
            if sock == 2 and self._is_the_same(self._second):
                yield from ("", f"{name} the same.", *acts_line(_more(self._told[self._second - 1], self._told[-1])))
            else:
                yield from ("", name, *self._lines(first, end))

    def _is_the_same(self, second: int) -> bool:
        """Whether the second piece is told as the first, but for what is done to both in the end."""
        content = [self._content(row) for row in self._rows]
        one, other = self._told[second - 1], self._told[-1]
        ends = (one.before, one.exactly, None) == (other.before, other.exactly, one.exactly)
        same = content[: second - 1] == content[second:-1] and content[second - 1][:-1] == content[-1][:-1]
        return same and ends and set(one.after) <= set(other.after)

    def _lines(self, begin: int, end: int) -> Iterator[str]:
        stage: StageName | None = None
        strip: Block | None = None
        for before, block in pairwise([None, *self._blocks(begin, end)]):
            if block is None:
                continue
            if block.strip:
                yield from self._told_so_far()
                yield from self._strip(block, strip, stage)
                strip = block
            else:
                yield from self._rounds(block, stage, before)
                strip = None
            stage = block.rows[-1].stage
        yield from self._told_so_far()

    def _rounds(self, block: Block, stage: StageName | None, before: Block | None) -> Iterator[str]:
        row = block.rows[0]
        begins = row.stage is not stage or row.round == 1
        after_strip = before is not None and (before.strip or _frees(before.rows))
        if begins or after_strip:
            yield from self._told_so_far()
        if after_strip:
            socks = {each.sock for each in block.rows}
            yield "Both socks:" if len(socks) == 2 else f"{_ORDINAL[row.sock]} sock:"
        if self._is_open_cast_on(block):
            self._known = sum(each.stitches_after for each in block.rows if each.sock == self._order[0][0])
            yield f"CO {stitches(self._known)}."
            return
        if begins:
            yield from ("", heading(row.stage))
        self._waiting.append(self._round(block))

    def _told_so_far(self) -> Iterator[str]:
        """The rounds that wait, printed; nothing waits any more."""
        if self._waiting:
            waiting, known = self._waiting, self._known
            self._waiting, self._known = [], waiting[-1].total or known
            yield from repeated(waiting, known)

    # --- which rows belong together ----------------------------------------------------------------------------

    def _blocks(self, at: int, last: int) -> Iterator[Block]:
        while at < last:
            end = self._strip_end(at)
            strip = end > at + 1
            if not strip:
                end = self._round_end(at)
            yield Block(self._rows[at:end], strip)
            at = end

    def _strip_end(self, at: int) -> int:
        end, first = at + 1, self._rows[at]
        while self._halves and not _frees((first,)) and end < len(self._rows):
            if _place(self._rows[end]) != _place(first) or _frees(self._rows[end : end + 1]):
                break
            end += 1
        return end

    def _round_end(self, at: int) -> int:
        first, seen = self._rows[at], {_place(self._rows[at])}
        end = at + 1
        while end < len(self._rows):
            row = self._rows[end]
            if (row.stage, row.round) != (first.stage, first.round) or _place(row) in seen:
                break
            if self._strip_end(end) > end + 1:
                break
            seen.add(_place(row))
            end += 1
        return end

    def _is_open_cast_on(self, block: Block) -> bool:
        """Loops cast on in one go: the further piece first, each piece's front with the odd loop."""
        rows = block.rows
        if rows[0].stage is not StageName.CAST_ON or any(self._told[row.index] != Told() for row in rows):
            return False
        if any(len(row.ops) != 1 or row.ops[0].op is not Op.CO for row in rows):
            return False
        both: tuple[Sock, ...] = (2, 1)
        pieces = both if len(self._order) == 4 else (self._order[0][0],)
        halves = [Half.FRONT, Half.BACK] if self._halves else [Half.FRONT]
        if [_place(row) for row in rows] != [(sock, half) for sock in pieces for half in halves]:
            return False
        shares = {row.half: row.stitches_after for row in rows}
        even = all(shares[row.half] == row.stitches_after for row in rows)
        return even and (not self._halves or 0 <= shares[Half.FRONT] - shares[Half.BACK] <= 1)

    # --- a round -----------------------------------------------------------------------------------------------

    def _round(self, block: Block) -> Line:
        rows = block.rows
        lead, trail = self._around(rows)
        bare = {row.index: self._less(row, lead if row is rows[0] else (), trail if row is rows[-1] else ())
                for row in rows}  # fmt: skip
        text = None if _frees(rows) else self._together(rows, bare)
        whole = text is not None
        if text is None:
            who = _who if self._second is None or _frees(rows) else _half
            text = ". ".join(f"{who(row)}: {self._row(row, bare[row.index])}" for row in rows)
        ends = rows[0].stage is StageName.BIND_OFF or any(group.op in JOINS for group in rows[0].ops)
        count = self._count(rows[-1]) if whole and not ends else None
        return Line(rows[0].round, text, lead, trail, count)

    def _around(self, rows: tuple[Row, ...]) -> tuple[tuple[Act, ...], tuple[Act, ...]]:
        """What is done before and after the round: acts of its first or last row that its partner has not."""
        first, last = rows[0], rows[-1]
        lead = self._extra(first, rows, lambda told: told.before)
        trail = self._extra(last, rows, lambda told: told.after)
        return lead, tuple(act for act in trail if act is not Act.TURN)

    def _extra(self, row: Row, rows: tuple[Row, ...], side: Callable[[Told], tuple[Act, ...]]) -> tuple[Act, ...]:
        mine = side(self._told[row.index])
        others = [side(self._told[each.index]) for each in rows if each is not row and each.half == row.half]
        shared = others[0] if others else ()
        return tuple(act for act in mine if act not in shared)

    def _less(self, row: Row, *acts: tuple[Act, ...]) -> Told:
        told = self._told[row.index]
        away = {act for some in acts for act in some}
        return Told(
            tuple(act for act in told.before if act not in away),
            tuple(act for act in told.after if act not in away),
            told.exactly,
        )

    def _together(self, rows: tuple[Row, ...], bare: dict[int, Told]) -> str | None:
        """The round as told for all pieces at once; None where they differ or come in another order."""
        fronts = [place for place in self._order if place[1] is Half.FRONT]
        if [_place(row) for row in rows] not in (self._order, fronts):
            return None
        by_half = {half: [row for row in rows if row.half is half] for half in Half}
        for same in by_half.values():
            if any((row.ops, row.chart, bare[row.index], row.facing) != (same[0].ops, same[0].chart,
                   bare[same[0].index], same[0].facing) for row in same):  # fmt: skip
                return None
        halves = [same[0] for same in by_half.values() if same]
        if len(halves) == 1:
            text = self._row(halves[0], bare[halves[0].index])
            return f"Front: {text}" if self._halves else text
        front, back = halves
        texts = [self._row(row, bare[row.index]) for row in halves]
        if self._is_even(halves, bare) and bare[front.index] == Told():
            return _chart(front) + shortened(_joined((*front.ops, *back.ops)), whole=True)
        if texts[0] == texts[1]:
            return f"Each half: {texts[0]}"
        return f"Front: {texts[0]}. Back: {texts[1]}"

    @staticmethod
    def _is_even(halves: list[Row], bare: dict[int, Told]) -> bool:
        """Whether it can be told without saying where the halves meet: every stitch makes one of one."""
        front, back = halves
        groups = [group for row in halves for group in row.ops]
        simple = all((takes(group.op), makes(group.op)) == (1, 1) and not group.wrap and not group.double
                     and group.op is not Op.DS for group in groups)  # fmt: skip
        return simple and front.chart == back.chart and bare[front.index] == bare[back.index]

    def _row(self, row: Row, told: Told, *, whole: bool = True) -> str:
        exactly = "" if told.exactly is None else f"{{{'; '.join(told.exactly)}}} "
        work = [shortened(row.ops, whole=whole)] if row.ops else []
        return f"{exactly}{_chart(row)}" + ", ".join([*told.before, *work, *told.after])

    def _count(self, last: Row) -> int:
        """Stitches of the first piece after a round; of each, where they are knitted one after the other."""
        found: dict[Half, int] = {}
        for row in self._rows[: last.index + 1]:
            if row.sock == self._order[0][0]:
                found[row.half] = row.stitches_after
        return sum(found.values())

    # --- a heel ------------------------------------------------------------------------------------------------

    def _strip(self, block: Block, before: Block | None, stage: StageName | None) -> Iterator[str]:
        whose = f"{_who(block.rows[0])}:"
        if before is not None and self._is_same(before, block):
            yield f"{whose} the same."
            return
        first = block.rows[0]
        if first.stage is not stage:
            yield from ("", heading(first.stage))
        yield whose
        waiting: list[Line] = []
        stage = first.stage
        for row in block.rows:
            if row.stage is not stage:
                yield from repeated(waiting)
                yield from ("", heading(row.stage))
                waiting, stage = [], row.stage
            label = f"({row.facing.value})"
            text = self._row(row, self._told[row.index], whole=False)
            waiting.append(Line(row.round, text, (), (), None, label))
        yield from repeated(waiting)

    def _is_same(self, one: Block, other: Block) -> bool:
        if one.rows[0].sock == other.rows[0].sock or one.rows[0].half != other.rows[0].half:
            return False
        return [self._content(row) for row in one.rows] == [self._content(row) for row in other.rows]

    def _content(self, row: Row) -> tuple[object, ...]:
        return row.stage, row.round, row.facing, row.ops, row.chart, self._told[row.index]


def _second_begins(rows: tuple[Row, ...]) -> int | None:
    """The second piece's first row, where it is begun when the first is done."""
    socks = [row.sock for row in rows]
    return socks.index(2) if socks == sorted(socks) and len(set(socks)) == 2 else None


def _more(one: Told, other: Told) -> tuple[Act, ...]:
    return tuple(act for act in other.after if act not in one.after)


def _frees(rows: tuple[Row, ...]) -> bool:
    """Whether one half of one sock is set up alone: it is told whose it is."""
    return len(rows) == 1 and any(group.op is Op.FREE for group in rows[0].ops)


def _place(row: Row) -> tuple[Sock, Half]:
    return row.sock, row.half


def _who(row: Row) -> str:
    return f"{_ORDINAL[row.sock]} sock, {row.half.value}"


def _half(row: Row) -> str:
    return row.half.value.capitalize()


def _chart(row: Row) -> str:
    return f'chart "{row.chart.name}" row {row.chart.row} of {row.chart.of}: ' if row.chart else ""


def _joined(ops: Groups) -> Groups:
    """Neighbours that are alike as one."""
    found: list[Group] = []
    for group in ops:
        if found and (found[-1].op, found[-1].colour) == (group.op, group.colour):
            found[-1] = group.model_copy(update={"times": found[-1].times + group.times})
        else:
            found.append(group)
    return tuple(found)
