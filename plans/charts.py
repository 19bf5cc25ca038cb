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
