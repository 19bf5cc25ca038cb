"""What stands in a heel: wraps or double stitches on each side, the bare middle, gusset stitches to go."""

from dataclasses import dataclass

from plans.engine.courses import Course
from plans.pattern import Group
from plans.stitches import Op, makes, takes

_SLIPS = frozenset({Op.SL_WYIB, Op.SL_WYIF})


_HEEL, _GUSSET, _MARKED = 0, 1, 2
"""What a loop is, as bits of a number: a turn has thousands of them to move in a thousandth of a second."""


@dataclass(frozen=True, slots=True)
class HeelState:
    """Counts along the heel half, sides as she sees them with the row in hand facing her.

    Attributes:
        marks: wrapped or double stitches on her right and on her left.
        unmarked: heel stitches in the middle that carry none.
        gussets: gusset stitches not yet eaten, on her right and on her left.
    """

    marks: tuple[int, int]
    unmarked: int
    gussets: tuple[int, int]


def heel_state(the_course: Course, at: int) -> HeelState:
    """The heel before the step at a position in it, knitted from its first row on.

    The tips are two stacks; a turn swaps them. Loops at either end, `plan.gusset` of them, are the gussets.
    """
    first, last = _heel_start(the_course, the_course.row_of[at]), the_course.row_of[at]
    opening = the_course.plan.rows[first]
    loops = the_course.counts[the_course.starts[first]][1 if opening.sock == 1 else 3]
    gusset = 0 if the_course.is_cup(first) else min(the_course.plan.gusset, loops // 2)
    to_work = [_GUSSET] * gusset + [_HEEL] * (loops - 2 * gusset) + [_GUSSET] * gusset
    worked: list[int] = []
    for index in range(first, last + 1):
        for position in range(the_course.starts[index], min(at, the_course.starts[index + 1])):
            step = the_course.steps[position]
            for group in step.groups * step.times:
                _work(group, to_work, worked)
        if index < last and the_course.plan.rows[index].turn_after:
            to_work, worked = worked, to_work
    return _state(worked + to_work[::-1])


def has_doubles(the_course: Course, row_index: int) -> bool:
    """Whether the heel's turns are marked by double stitches or twins, not by wraps."""
    stage = the_course.stages[the_course.stage_of[row_index]]
    first = _heel_start(the_course, row_index)
    rows = the_course.plan.rows[first : stage.end]
    return any(group.op in {Op.DS, Op.TWIN} for row in rows for group in row.ops)


def _heel_start(the_course: Course, row_index: int) -> int:
    rows, sock = the_course.plan.rows, the_course.plan.rows[row_index].sock
    while row_index > 0 and the_course.is_row(row_index - 1) and rows[row_index - 1].sock == sock:
        row_index -= 1
    return row_index


def _work(group: Group, to_work: list[int], worked: list[int]) -> None:
    if group.op in {Op.WRAP_TURN, Op.TWIN}:
        to_work[-1] |= _MARKED
    elif (takes(group.op), makes(group.op)) == (1, 1):
        taken = to_work[: -group.times - 1 : -1]
        del to_work[-group.times :]
        worked.extend(loop if group.op in _SLIPS else loop & _GUSSET | _mark(group.op) for loop in taken)
    else:
        for _ in range(group.times):
            joined = [to_work.pop() for _ in range(min(takes(group.op), len(to_work)))]
            worked.extend([_GUSSET if joined and all(loop & _GUSSET for loop in joined) else _HEEL] * makes(group.op))


def _mark(op: Op) -> int:
    return _MARKED if op is Op.DS else 0


def _state(loops: list[int]) -> HeelState:
    heel = [index for index, loop in enumerate(loops) if not loop & _GUSSET]
    middle = [index for index in heel if not loops[index] & _MARKED]
    marks = [index for index, loop in enumerate(loops) if loop & _MARKED]
    centre = middle[0] if middle else len(loops)
    return HeelState(
        marks=(sum(index < centre for index in marks), sum(index > centre for index in marks)),
        unmarked=len(middle),
        gussets=(heel[0], len(loops) - 1 - heel[-1]) if heel else (0, 0),
    )
