"""The stitches of a row written short, as a pattern writer would: what repeats once, what goes on without a number."""

from typing import NamedTuple

from plans.pattern import Colour, Group
from plans.stitches import Op, takes
from plans.written.printing.abbreviations import ALL, BARE, often, stitches, written

Groups = tuple[Group, ...]
_LONGEST_PERIOD = 24


class Found(NamedTuple):
    """What repeats: `period` groups from `start` on, `times` times."""

    start: int
    period: int
    times: int

    @property
    def end(self) -> int:
        """Behind the last of it."""
        return self.start + self.period * self.times


def shortened(ops: Groups, *, whole: bool) -> str:
    """A row's stitches.

    Args:
        ops: in order.
        whole: all loops are worked, so that "to end" says how many; short rows name every number.
    """
    colours = any(group.colour is not Colour.MAIN for group in ops)
    repeat = _repeat(ops)
    if whole and repeat is not None and _is_starred(ops, repeat):
        return _starred(ops, repeat, colours=colours)
    if whole and not colours:
        long = _long_run(ops)
        if long is not None:
            return _going_on(ops, long)
    return ", ".join(_bracketed(ops, colours=colours))


def _plain(ops: Groups, *, colours: bool) -> list[str]:
    return [written(group, two_colours=colours) for group in ops]


def _taken(ops: Groups) -> int:
    return sum(group.times * takes(group.op) for group in ops if group.op is not Op.FASTEN)


def _repeat(ops: Groups) -> Found | None:
    """The repeat that covers most groups, of equals the shortest and earliest; at least two of two groups."""
    best: Found | None = None
    for start in range(len(ops)):
        for period in range(2, min(_LONGEST_PERIOD, (len(ops) - start) // 2) + 1):
            times = 1
            while ops[start : start + period] == ops[start + times * period : start + (times + 1) * period]:
                times += 1
            found = Found(start, period, times)
            if times > 1 and (best is None or period * times > best.period * best.times):
                best = found
    return best


def _is_starred(ops: Groups, found: Found) -> bool:
    """Whether "to end" or "to last … sts" tells how often: what repeats takes loops, and so does what follows."""
    tail = ops[found.end :]
    return _taken(ops[found.start : found.start + found.period]) > 0 and (not tail or _taken(tail) > 0)


def _starred(ops: Groups, found: Found, *, colours: bool) -> str:
    head, body, tail = ops[: found.start], ops[found.start : found.start + found.period], ops[found.end :]
    end = f"to last {stitches(_taken(tail))}".replace("last 1 st", "last st") if tail else "to end"
    star = f"*{', '.join(_plain(body, colours=colours))}; rep from * {end}"
    return ", ".join([*_bracketed(head, colours=colours), star, *_bracketed(tail, colours=colours)])


def _bracketed(ops: Groups, *, colours: bool) -> list[str]:
    found = _repeat(ops)
    if found is None:
        return _plain(ops, colours=colours)
    body = ", ".join(_plain(ops[found.start : found.start + found.period], colours=colours))
    return [
        *_bracketed(ops[: found.start], colours=colours),
        f"[{body}]{often(found.times)}",
        *_bracketed(ops[found.end :], colours=colours),
    ]


def _long_run(ops: Groups) -> int | None:
    """The one longest run of knit or purl stitches, where what follows it takes loops or is nothing."""
    runs = [at for at, group in enumerate(ops) if group.op in BARE and not group.wrap and not group.double]
    longest = [at for at in runs if ops[at].times == max(ops[each].times for each in runs)]
    if len(longest) != 1 or (ops[longest[0]].times < 2 and len(ops) > 1):
        return None
    tail = ops[longest[0] + 1 :]
    return longest[0] if not tail or _taken(tail) else None


def _going_on(ops: Groups, at: int) -> str:
    tail, bare = ops[at + 1 :], BARE[ops[at].op]
    if len(ops) == 1:
        return ALL[ops[at].op]
    end = f"to last {stitches(_taken(tail))}".replace("last 1 st", "last st") if tail else "to end"
    return ", ".join([*_bracketed(ops[:at], colours=False), f"{bare} {end}", *_bracketed(tail, colours=False)])
