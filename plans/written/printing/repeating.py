"""Rounds that are alike told once, and rounds that come again told to be repeated."""

from collections.abc import Iterator
from typing import NamedTuple

from plans.pattern import Act
from plans.written.printing.abbreviations import often, stitches

_LONGEST_PERIOD = 24


class Line(NamedTuple):
    """One round, or one row of a heel.

    Attributes:
        lead, trail: acts before and after it.
        total: stitches of a piece after it; None where it is not told.
        side: "(RS)" of a row, nothing of a round.
    """

    number: int
    text: str
    lead: tuple[Act, ...]
    trail: tuple[Act, ...]
    total: int | None
    side: str = ""


def repeated(lines: list[Line], before: int | None = None) -> Iterator[str]:
    """The lines printed; the count is told where it changes.

    Args:
        lines: rounds of one part whose numbers follow each other.
        before: stitches before the first.
    """
    at = 0
    while at < len(lines):
        period, times = _best(lines, at)
        end = at + period * times
        count = lines[end - 1].total
        note = f" ({stitches(count)})" if count is not None and count != before else ""
        yield from acts_line(lines[at].lead)
        first, last = lines[at].number, lines[at + period - 1].number
        if period == 1:
            yield f"{_label(lines[at], lines[end - 1].number)}: {lines[at].text}.{note}"
        else:
            yield from repeated([line._replace(lead=(), trail=(), total=None) for line in lines[at : at + period]])
            word = "rows" if lines[at].side else "rnds"
            yield f"Repeat {word} {first}-{last}{often(times - 1) or ' once'} more.{note}"
        yield from acts_line(lines[end - 1].trail)
        before = count
        at = end


def _label(line: Line, last: int) -> str:
    word, side = ("Row", f" {line.side}") if line.side else ("Rnd", "")
    return f"{word} {line.number}{side}" if last == line.number else f"{word}s {line.number}-{last}{side}"


def acts_line(acts: tuple[Act, ...]) -> Iterator[str]:
    """Acts told by themselves; no line where there are none."""
    if acts:
        yield " ".join(f"{act.capitalize()}." for act in acts)


def _best(lines: list[Line], at: int) -> tuple[int, int]:
    """How many lines repeat from here on, and how often: what covers most, of equals the shortest."""
    best = (1, 1)
    for period in range(1, min(_LONGEST_PERIOD, len(lines) - at) + 1):
        times = 1
        while _follows(lines, at, period, times):
            times += 1
        if times > 1 and period * times > best[0] * best[1]:
            best = (period, times)
    return best


def _follows(lines: list[Line], at: int, period: int, times: int) -> bool:
    """Whether the period comes once more, with nothing to be done in between."""
    start = at + period * times
    if start + period > len(lines):
        return False
    again = all(_is_like(lines[at + step], lines[start + step]) for step in range(period))
    inside = lines[at : start + period]
    quiet = not any(line.lead for line in inside[1:]) and not any(line.trail for line in inside[:-1])
    return again and quiet


def _is_like(one: Line, other: Line) -> bool:
    return (one.text, one.side) == (other.text, other.side)
