"""Cast-on, toe and the even foot: from the first loops to the full width of each half.

Each toe is a module that bears its name and holds a TOE.
"""

from collections.abc import Iterable, Iterator
from functools import cache
from typing import cast

from plans.names import load
from plans.pattern import StageName
from plans.rows.increases import increase
from plans.rows.parts import IncreasePart, Numbers, Step, ToePart
from plans.rows.rounds import Pass, Round, RoundKind, even_round, groups, plain
from plans.rows.soles import sole
from plans.stitches import Op

__all__ = [
    "both_edges", "cast_on", "cup_depth", "cup_round", "foot_rounds", "toe", "toe_height", "toe_rounds", "toe_schedule",
    "toe_steps",
]  # fmt: skip


@cache
def toe(name: str) -> ToePart:
    """The toe of that name."""
    return cast("ToePart", load("toes", name, "TOE"))


def both_edges(rounds: Iterable[bool]) -> tuple[Step, ...]:
    """Rounds that increase at both edges of a half or at neither."""
    return tuple(Step(increases, increases) for increases in rounds)


def toe_steps(name: str, cast_on_half: int, half: int) -> tuple[Step, ...]:
    """What each toe round does; the first is always plain, and of no increases it is the only one.

    Args:
        name: which toe.
        cast_on_half: loops cast on to each needle tip.
        half: stitches each half ends with; there are (half - cast_on_half) / 2 increases at each edge.

    Raises:
        ValueError: the half cannot be reached by twos.
    """
    wanted, odd = divmod(half - cast_on_half, 2)
    if odd or wanted < 0 or cast_on_half < 1:
        raise ValueError(f"{cast_on_half} loops a tip never grow to {half} a half by twos")
    return toe(name).steps(wanted) if wanted else both_edges((False,))


def toe_schedule(name: str, cast_on_half: int, half: int) -> tuple[bool, ...]:
    """Tell of each toe round whether it increases; see `toe_steps`."""
    return tuple(step.outer or step.inner for step in toe_steps(name, cast_on_half, half))


def cup_depth(name: str, half: int) -> int:
    """Rounds of the foot's length that a toe of short rows makes; 0 of any other toe."""
    cup = toe(name).cup
    return cup.depth(cup.on(Numbers(half, half, 0, 0))) if cup else 0


def toe_height(name: str, cast_on_half: int, half: int) -> int:
    """Rounds of the foot's length from the cast-on to the full width."""
    return cup_depth(name, half) or len(toe_schedule(name, cast_on_half, half))


def cup_round(name: str, numbers: Numbers) -> Round | None:
    """Cast-on and toe in one, where the toe is of short rows: the back, then the front's loops freed."""
    cup, half = toe(name).cup, numbers.half
    if cup is None:
        return None
    rows = cup.rows(StageName.TOE, cup.on(numbers))
    loops = Pass(StageName.CAST_ON, 1, groups((Op.CO_WASTE, half)), half)
    freed = groups((Op.FREE, half - 1), (Op.PICK_UP, 1))
    return Round(Pass(StageName.TOE, len(rows) + 1, freed, half), (loops, *rows), RoundKind.CUP)


def cast_on(cast_on_half: int) -> Round:
    """The closed-toe cast-on: loops lie on both tips at once, the same number on each."""
    loops = groups((Op.CO, cast_on_half))
    return even_round(StageName.CAST_ON, 1, loops, loops, (cast_on_half, cast_on_half))._replace(
        kind=RoundKind.SET_UP
    )


def toe_rounds(
    steps: Iterable[Step | bool],
    cast_on_half: int,
    second_tip: Op,
    ways: IncreasePart | None = None,
    *,
    outer_first: bool = True,
) -> Iterator[Round]:
    """The rounds of the toe.

    Args:
        steps: see `toe_steps`; a bool is for both edges.
        cast_on_half: loops on each tip before.
        second_tip: how the back's loops are worked in the first round, `k` or `ktbl`: in some ways of winding
            they sit back to front.
        ways: how it increases; make-one where left out.
        outer_first: the front begins at its outer edge, the little toe's; the back then ends there.
    """
    ways, stitches = ways or increase("make-one"), cast_on_half
    for number, step in enumerate(steps, start=1):
        outer, inner = step if isinstance(step, Step) else (step, step)
        start, end = (outer, inner) if outer_first else (inner, outer)
        front = ways.ops(stitches, start, end) if start or end else plain(stitches)
        back = ways.ops(stitches, end, start) if start or end else plain(stitches)
        back = groups((second_tip, stitches)) if number == 1 else back
        stitches += outer + inner
        yield even_round(StageName.TOE, number, front, back, (stitches, stitches))


def foot_rounds(rounds: int, half: int, kind: str = "plain") -> Iterator[Round]:
    """The even foot: the front plain, the back as its sole is."""
    part = sole(kind)
    for number in range(1, rounds + 1):
        back = part.ops(number, half)
        yield Round(
            Pass(StageName.FOOT, number, plain(half), half), (Pass(StageName.FOOT, number, back, half),)
        )
