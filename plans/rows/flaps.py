"""Turned heels between gussets, and the flap that eats the gussets again."""

from collections.abc import Callable, Iterator

from plans.pattern import Facing, Half, StageName
from plans.rows.parts import At, HeelPart, Numbers
from plans.rows.rounds import Ops, Pass, Round, groups, plain
from plans.rows.short_rows import Mark, marked_with, short_rows, wedge_turns
from plans.stitches import Op

Pair = Callable[[int, int], tuple[Ops, Ops]]
"""From h and a pair's number, from 1, to its right-side and its wrong-side row; each joins one gusset stitch."""

PairLook = Callable[[int], tuple[str, str]]
"""From a pair's number to the looks of its rows, without the join at their ends."""

_STAGES = (StageName.HEEL_TURN, StageName.HEEL_FLAP)


def flap_heel(mark: Mark, pair: Pair, look: PairLook) -> HeelPart:
    """A heel turned by short rows, then a flap.

    g = h/2 a side is usual (Morgan-Oakes, Toe-Up 2-at-a-Time Socks, 2010); w = floor(h/3), the outer thirds
    (common practice). Half of the 2w rows of the turn lie under the foot (derived).
    """
    return HeelPart(
        stages=_STAGES,
        gusset=lambda half: half // 2,
        turned=lambda half, _: max(1, half // 3),
        depth=lambda numbers: numbers.turned,
        rounds=lambda numbers: iter((_round(mark, pair, numbers),)),
        look=lambda at: _look(mark, look, at),
        waits=_waits,
    )


def _round(mark: Mark, pair: Pair, numbers: Numbers) -> Round:
    """The front plain, then on the back the whole turn and flap."""
    half, gusset, turned = numbers.half, numbers.gusset, numbers.turned
    front = Pass(StageName.HEEL_TURN, 1, plain(half), half)
    turn = short_rows(StageName.HEEL_TURN, half + 2 * gusset, mark, wedge_turns(gusset, turned))
    return Round(front, (*turn, *_flap(mark, pair, numbers)))


def _flap(mark: Mark, pair: Pair, numbers: Numbers) -> Iterator[Pass]:
    """The 2g rows of the flap, in pairs, and the right-side row across that brings the round to its end.

    The first pair works the marks of the turn; each row ends by working the last heel stitch together with the
    next gusset stitch, so the sole loses one loop a row, from h + 2g to h. Derived.
    """
    half, gusset = numbers.half, numbers.gusset
    rows = [*_first_pair(mark, half, numbers.turned)]
    rows += [ops for number in range(1, gusset) for ops in pair(half, number)]
    loops = half + 2 * gusset
    for number, ops in enumerate(rows, start=1):
        facing = Facing.RS if number % 2 else Facing.WS
        yield Pass(StageName.HEEL_FLAP, number, ops, loops - number, facing, turns=True)
    yield Pass(StageName.HEEL_FLAP, len(rows) + 1, plain(half), half)


def _first_pair(mark: Mark, half: int, turned: int) -> tuple[Ops, Ops]:
    middle, marked = half - 2 * turned, turned - 1
    first = groups((mark.op, int(mark.first)), (Op.K, middle))
    second = groups((Op.SL_WYIF, 1), (Op.P, half - 1 - turned))
    right_side = (marked_with(Op.K, marked, mark),) if marked else ()
    wrong_side = (marked_with(Op.P, marked, mark),) if marked else ()
    return (
        (*first, *right_side, marked_with(Op.SSK, 1, mark)),
        (*second, *wrong_side, marked_with(Op.P2TOG, 1, mark)),
    )


def _waits(stage: StageName, numbers: Numbers) -> tuple[int, ...]:
    """Beyond the first row of each side wait the gusset stitches, then one marked stitch more a row."""
    if stage is StageName.HEEL_TURN:
        return tuple(numbers.gusset + row // 2 for row in range(2 * numbers.turned))
    return (*(numbers.gusset - row // 2 for row in range(2, 2 * numbers.gusset + 2)), 0)


def _look(mark: Mark, pair: PairLook, at: At) -> str | None:
    if at.stage not in _STAGES:
        return None
    if at.half is Half.FRONT:
        return r"k \d+"
    if at.stage is StageName.HEEL_TURN:
        return turn_look(mark, "p" if at.facing is Facing.WS else "k", opens=at.number == 1)
    if at.number == 2 * at.numbers.gusset + 1:
        return r"k \d+"
    if at.number == 1:
        return (f"{mark.op} 1, " if mark.first else "") + r"k \d+, (k\* \d+, )?ssk\* 1"
    if at.number == 2:
        return r"sl_wyif 1, p \d+, (p\* \d+, )?p2tog\* 1"
    right, wrong = pair((at.number - 1) // 2)
    return f"{right}, ssk 1" if at.facing is Facing.RS else f"{wrong}, p2tog 1"


def turn_look(mark: Mark, op: str, *, opens: bool) -> str:
    """A short row that only narrows."""
    if mark.first:
        return rf"{op} \d+" if opens else rf"{mark.op} 1, {op} \d+"
    return rf"{op} \d+, {mark.op} 1"


# --- the rows of a flap ---


def _wrong_side(half: int) -> Ops:
    return groups((Op.SL_WYIF, 1), (Op.P, half - 2), (Op.P2TOG, 1))


_WRONG_SIDE_LOOK = r"sl_wyif 1, p \d+"


def slipped(half: int, number: int) -> tuple[Ops, Ops]:  # noqa: ARG001 (all pairs are alike)
    """Right side: slip one, knit one until two heel stitches remain; wrong side: slip one, purl across."""
    right = groups(*((Op.SL_WYIB, 1), (Op.K, 1)) * (half // 2 - 1), (Op.SL_WYIB, 1), (Op.SSK, 1))
    return right, _wrong_side(half)


def slipped_look(number: int) -> tuple[str, str]:  # noqa: ARG001 (all pairs are alike)
    """Slips and knits by turns."""
    return r"(sl_wyib 1, k 1, )+sl_wyib 1", _WRONG_SIDE_LOOK


def partridge(half: int, number: int) -> tuple[Ops, Ops]:
    """Eye of partridge: the slips of every second pair stand between those of the pair before (common practice)."""
    if number % 2:
        return slipped(half, number)
    right = groups((Op.SL_WYIB, 1), (Op.K, 2), *((Op.SL_WYIB, 1), (Op.K, 1)) * (half // 2 - 2), (Op.SSK, 1))
    return right, _wrong_side(half)


def partridge_look(number: int) -> tuple[str, str]:
    """As slipped in odd pairs, shifted by a stitch in even ones."""
    return slipped_look(number) if number % 2 else (r"sl_wyib 1, k 2(, sl_wyib 1, k 1)*", _WRONG_SIDE_LOOK)


def smooth(half: int, number: int) -> tuple[Ops, Ops]:  # noqa: ARG001 (all pairs are alike)
    """A plain flap: the edge stitch slipped, all others knitted."""
    return groups((Op.SL_WYIB, 1), (Op.K, half - 2), (Op.SSK, 1)), _wrong_side(half)


def smooth_look(number: int) -> tuple[str, str]:  # noqa: ARG001 (all pairs are alike)
    """One slip, then knits."""
    return r"sl_wyib 1, k \d+", _WRONG_SIDE_LOOK
