"""What stands in a heel: wraps or double stitches on each side, the bare middle, gusset stitches to go."""

from dataclasses import dataclass

from plans.courses import Course
from plans.pattern import Group
from plans.stitches import Op, makes, takes

_SLIPS = frozenset({Op.SL_WYIB, Op.SL_WYIF})


@dataclass(slots=True)
class _Loop:
    gusset: bool
    marked: bool = False


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
    gusset = min(the_course.plan.gusset, loops // 2)
    to_work = [_Loop(gusset=index < gusset or index >= loops - gusset) for index in range(loops)]
    worked: list[_Loop] = []
    for index in range(first, last + 1):
        for position in range(the_course.starts[index], min(at, the_course.starts[index + 1])):
            step = the_course.steps[position]
            for group in step.groups * step.times:
                _work(group, to_work, worked)
        if index < last and the_course.plan.rows[index].turn_after:
            to_work, worked = worked, to_work
    return _state(worked + to_work[::-1])


def _heel_start(the_course: Course, row_index: int) -> int:
    rows, sock = the_course.plan.rows, the_course.plan.rows[row_index].sock
    while row_index > 0 and the_course.is_heel(row_index - 1) and rows[row_index - 1].sock == sock:
        row_index -= 1
    return row_index


def _work(group: Group, to_work: list[_Loop], worked: list[_Loop]) -> None:
    for _ in range(group.times):
        if group.op in {Op.WRAP_TURN, Op.TWIN}:
            if to_work:
                to_work[-1].marked = True
            continue
        taken = [to_work.pop() for _ in range(min(takes(group.op), len(to_work)))]
        gusset = bool(taken) and all(loop.gusset for loop in taken)
        marked = group.op is Op.DS or (group.op in _SLIPS and any(loop.marked for loop in taken))
        worked.extend(_Loop(gusset, marked) for _ in range(makes(group.op)))


def _state(loops: list[_Loop]) -> HeelState:
    heel = [index for index, loop in enumerate(loops) if not loop.gusset]
    middle = [index for index in heel if not loops[index].marked]
    marks = [index for index, loop in enumerate(loops) if loop.marked]
    centre = middle[0] if middle else len(loops)
    return HeelState(
        marks=(sum(index < centre for index in marks), sum(index > centre for index in marks)),
        unmarked=len(middle),
        gussets=(heel[0], len(loops) - 1 - heel[-1]) if heel else (0, 0),
    )
