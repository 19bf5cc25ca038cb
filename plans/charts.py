"""Charts: rows of symbols, one for each stitch, and what each symbol means.

The symbols follow the standard chart symbols of the Craft Yarn Council ("Knit chart symbols", craftyarncouncil.com),
each put into a character that has its shape, as far as a round, with the right side always facing, needs them:
an upright stroke or an empty square is a knit stitch, a dash or a dot a purl stitch, O a yarn over, strokes lean as
the decrease does. A chart is read from the bottom up and each row from right to left (the same source).
"""

from functools import cache
from typing import NamedTuple

from plans.pattern import Colour
from plans.stitches import Op, makes, takes


class Cell(NamedTuple):
    """One square."""

    op: Op
    colour: Colour = Colour.MAIN


SYMBOLS: dict[str, Cell | None] = {
    "|": Cell(Op.K), " ": Cell(Op.K), "□": Cell(Op.K),
    "-": Cell(Op.P), ".": Cell(Op.P), "•": Cell(Op.P),
    "O": Cell(Op.YO), "o": Cell(Op.YO), "○": Cell(Op.YO),
    "/": Cell(Op.K2TOG), "\\": Cell(Op.SSK),
    "Λ": Cell(Op.S2KP2), "^": Cell(Op.S2KP2), "λ": Cell(Op.SK2P),
    "V": Cell(Op.SL_WYIB), "v": Cell(Op.SL_WYIF),
    "Q": Cell(Op.KTBL), "q": Cell(Op.PTBL),
    "L": Cell(Op.M1L), "R": Cell(Op.M1R),
    "M": Cell(Op.K, Colour.MAIN), "C": Cell(Op.K, Colour.CONTRAST),
    "x": None, "■": None, "▒": None,
}  # fmt: skip
"""Character → stitch; None is "no stitch", a square that is not worked.

`M` and `C` are squares of the main and the contrasting colour, from the usual MC and CC.
"""

OPENS, CLOSES = "[", "]"
"""Around what repeats; what stands outside is worked once at its edge."""


class Row(NamedTuple):
    """A row of a chart in the order in which it is worked: its first edge, what repeats, its last edge."""

    first: tuple[Cell, ...]
    repeat: tuple[Cell, ...]
    last: tuple[Cell, ...]


@cache
def parted(row: str) -> Row:
    """A row as drawn, in working order.

    Raises:
        KeyError: a symbol that is none.
        ValueError: brackets that do not pair.
    """
    left, opened, rest = row.partition(OPENS)
    middle, closed, right = rest.partition(CLOSES)
    if not opened:
        left, middle, right = "", row, ""
    if bool(opened) != bool(closed) or any(sign in left + middle + right for sign in (OPENS, CLOSES)):
        raise ValueError(row)
    return Row(*(_cells(part) for part in (right, middle, left)))


def _cells(part: str) -> tuple[Cell, ...]:
    found = (SYMBOLS[sign] for sign in reversed(part))
    return tuple(cell for cell in found if cell is not None)


def taken(part: tuple[Cell, ...]) -> int:
    """Loops that a run of squares takes."""
    return sum(takes(cell.op) for cell in part)


def made(part: tuple[Cell, ...]) -> int:
    """Loops that it leaves."""
    return sum(makes(cell.op) for cell in part)


Fault = tuple[str, dict[str, int | str]]
"""A key of `CHART_SAYINGS` and its values."""

CHART_SAYINGS: dict[str, frozenset[str]] = {
    "chart-empty": frozenset({"name"}),
    "chart-symbol-unknown": frozenset({"name", "row", "symbol"}),
    "chart-brackets": frozenset({"name", "row"}),
    "chart-rows-differ": frozenset({"name", "row", "found", "wanted"}),
    "chart-count-changes": frozenset({"name", "row", "found", "wanted"}),
    "chart-too-wide": frozenset({"name", "found", "wanted"}),
    "chart-edges-around": frozenset({"name"}),
    "chart-on-calf": frozenset({"name"}),
    "chart-uneven": frozenset({"name", "stitches", "multiple", "below", "above"}),
    "chart-wish-wrong": frozenset({"name"}),
}
"""What can be wrong with a chart. Rows count from 1 at the bottom; found and wanted are stitches."""
_MOST_ROWS = 400


def rows_of(drawn: object) -> tuple[str, ...]:
    """A chart's rows, the bottom one first, from lines of text or a list of rows as drawn; none where it is neither."""
    lines = drawn.split("\n") if isinstance(drawn, str) else drawn if isinstance(drawn, list) else []
    return tuple(reversed([line for line in lines if isinstance(line, str) and line.strip("\r\n")]))


def fault(name: str, rows: tuple[str, ...]) -> Fault | None:
    """What makes the rows no chart; None where they are one."""
    if not 0 < len(rows) <= _MOST_ROWS:
        return "chart-empty", {"name": name}
    for number, row in enumerate(rows, start=1):
        try:
            parted(row)
        except KeyError as error:
            return "chart-symbol-unknown", {"name": name, "row": number, "symbol": str(error.args[0])}
        except ValueError:
            return "chart-brackets", {"name": name, "row": number}
    return None


def fault_of_even(name: str, rows: tuple[str, ...]) -> Fault | None:
    """The same for a chart whose every row must be as wide as the first and keep the count."""
    found = fault(name, rows)
    if found is not None:
        return found
    widths = [taken(part) for part in parted(rows[0])]
    for number, row in enumerate(rows, start=1):
        for part, width in zip(parted(row), widths, strict=True):
            if taken(part) != width:
                return "chart-rows-differ", {"name": name, "row": number, "found": taken(part), "wanted": width}
            if made(part) != width:
                return "chart-count-changes", {"name": name, "row": number, "found": made(part), "wanted": width}
    return None if widths[1] else ("chart-empty", {"name": name})
