"""Cuffs, each in a module that bears its name and holds a CUFF."""

from collections.abc import Iterator
from functools import cache
from typing import cast

from plans.names import load
from plans.pattern import StageName
from plans.rows.parts import EITHER_WAY, UP, CuffPart
from plans.rows.ribs import rib, rib_look
from plans.rows.rounds import Round, even_round
from plans.stitches import Op

__all__ = ["cuff", "cuff_rounds", "ribbed_cuff"]


@cache
def cuff(name: str) -> CuffPart:
    """The cuff of that name."""
    return cast("CuffPart", load("cuffs", name, "CUFF"))


def cuff_rounds(rounds: int, front: int, back: int, kind: str = "rib-1x1") -> Iterator[Round]:
    """The cuff on so many stitches of front and back, of which `rounds` are to show."""
    part = cuff(kind)
    of = part.rounds(rounds)
    for number in range(1, of + 1):
        halves = part.ops(number, of, 0, front), part.ops(number, of, front, back)
        yield even_round(StageName.CUFF, number, *halves, (front, back))


def ribbed_cuff(parts: tuple[tuple[Op, int], ...], columns: str, *, folds: bool = False) -> CuffPart:
    """A rib that goes on round after round.

    Args:
        parts: operations that repeat, and how often each.
        columns: the same as letters, for the look.
        folds: it is turned down over itself.
    """
    return CuffPart(
        rounds=(lambda shown: 2 * shown) if folds else (lambda shown: shown),
        ops=lambda _, __, first, stitches: rib(parts, first, stitches),
        look=lambda _, __, first, stitches: rib_look(columns, first, stitches),
        folds=folds,
        one_by_one=all(times == 1 for _, times in parts),
        directions=frozenset({UP}) if folds else EITHER_WAY,
    )
