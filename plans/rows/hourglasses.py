"""Hourglasses: narrowed and widened again on the back alone. As heels, with or without a small gusset, and as toes."""

from plans.pattern import Facing, Half, StageName
from plans.rows.flaps import turn_look
from plans.rows.parts import EITHER_WAY, UP, At, HeelPart, Hourglass, Numbers, ToePart
from plans.rows.rounds import Ops, Pass, Round, groups, plain
from plans.rows.short_rows import Mark, Turn, across, boomerang_turns, hourglass_turns
from plans.stitches import Op


def short_row_heel(mark: Mark, *, mini_gusset: bool = False) -> HeelPart:
    """An hourglass of 4w rows and one across; w = floor(h/3), the rule of thirds (common practice).

    A small gusset of two to four stitches a side, gone again in the first round after the heel, gives room to a
    high instep (common practice; a tenth of the half is our own choice).
    """
    shape = hourglass(mark)
    return HeelPart(
        stages=(StageName.HEEL,),
        gusset=(lambda half: min(4, max(2, half // 10))) if mini_gusset else (lambda _: 0),
        turned=lambda half, _: shape.turned(half),
        depth=shape.depth,
        rounds=lambda numbers: iter((_round(shape, numbers),)),
        look=lambda at: _look(shape, at),
        waits=lambda _, numbers: shape.waits(numbers),
        fewest=shape.fewest,
        closing=(_eat_gusset, lambda _: r"ssk \d+, (k \d+, )?k2tog \d+") if mini_gusset else None,
        directions=frozenset({UP}) if mini_gusset else EITHER_WAY,
    )


def short_row_toe(mark: Mark) -> ToePart:
    """The same hourglass over a provisional cast-on of the whole back.

    With the waste yarn pulled out, the feet of its h loops make the front ("Easy toe-up sock", socknitters.com 1999;
    common practice): h - 1 whole ones, and half of one at either end, of which one is lifted for the last.
    """
    return ToePart(steps=lambda _: (), tip_of_half=(1, 2), cup=hourglass(mark))


def hourglass(mark: Mark) -> Hourglass:
    """Folded in the middle, of its 4w rows 2w lie on either side: 2w rounds of the foot's length (derived).

    With double stitches the two rows right across are two more.
    """
    return Hourglass(
        turned=lambda half: _turned(mark, half),
        rows=lambda stage, numbers: tuple(
            across(stage, numbers.half + 2 * numbers.gusset, mark, _turns(mark, numbers))
        ),
        look=lambda at: _row_look(mark, at),
        waits=lambda numbers: (*(turn.waits for turn in _turns(mark, numbers)), 0),
        depth=lambda numbers: 2 * numbers.turned + (2 if mark.first else 0),
        fewest=6 if mark.first else 4,
    )


def _turned(mark: Mark, half: int) -> int:
    """The outer thirds; with double stitches an edge stitch a side and two in the middle stay besides."""
    thirds = max(1, half // 3)
    return min(thirds, max(1, half // 2 - 2)) if mark.first else thirds


def _turns(mark: Mark, numbers: Numbers) -> tuple[Turn, ...]:
    return boomerang_turns(numbers.turned) if mark.first else hourglass_turns(numbers.turned)


def _round(shape: Hourglass, numbers: Numbers) -> Round:
    front = Pass(StageName.HEEL, 1, plain(numbers.half), numbers.half)
    return Round(front, shape.rows(StageName.HEEL, numbers))


def _eat_gusset(numbers: Numbers) -> Ops:
    """All gusset stitches at once, leaning towards the corners."""
    gusset = numbers.gusset
    return groups((Op.SSK, gusset), (Op.K, numbers.half - 2 * gusset), (Op.K2TOG, gusset))


def _look(shape: Hourglass, at: At) -> str | None:
    if at.stage is not StageName.HEEL:
        return None
    return r"k \d+" if at.half is Half.FRONT else shape.look(at)


def _row_look(mark: Mark, at: At) -> str:
    op = "p" if at.facing is Facing.WS else "k"
    if at.number <= 2 * at.numbers.turned:
        return turn_look(mark, op, opens=at.number == 1)
    return _boomerang_look(mark, op, at) if mark.first else _hourglass_look(mark, op, at)


def _hourglass_look(mark: Mark, op: str, at: At) -> str:
    """Widening, the last stitch has its mark; the last row goes right across."""
    rows = 4 * at.numbers.turned
    if at.number > rows:
        return r"k \d+"
    return rf"{op} \d+, {op}\* 1" + (f", {mark.op} 1" if at.number <= rows - 2 else "")


def _boomerang_look(mark: Mark, op: str, at: At) -> str:
    """Two rows across, the widening rows that work one double stitch and one more, the last row across."""
    row, widening = at.number - 2 * at.numbers.turned, 2 * at.numbers.turned + 2
    looks = {
        1: rf"{mark.op} 1, k \d+, k\* \d+, k 1",
        2: r"p \d+, p\* \d+, p 1",
        3: r"k \d+",
        4: rf"{mark.op} 1, p \d+",
        widening + 2: rf"{mark.op} 1, (p \d+, )?p\* 1, p 2",
        widening + 3: r"k \d+, k\* 1, k 1",
    }
    return looks.get(row, rf"{mark.op} 1, ({op} \d+, )?{op}\* 1, {op} 1")
