"""What is said when she comes back: where she is, and what hangs where, so that fingers find it."""

from plans.conversation import Progress, Reply
from plans.engine.answers import heel_part
from plans.engine.apart import apart
from plans.engine.calling import call_span
from plans.engine.courses import Course, course, slot
from plans.engine.marking import heel_state
from plans.engine.naming import half_of_row, is_whole, round_number, said, sock_name, stage_name
from plans.engine.places import in_hand, span
from plans.pattern import Act, Half, Plan, Row, StageName
from plans.stitches import Op

_AT_EDGE = frozenset({(1, Half.BACK), (2, Half.FRONT)})
"""Where a half ends at the outer edge of the needle; the others end in the gap (derived)."""


def resume(plan: Plan, progress: Progress) -> Reply:
    """Sock, half, step; whether the marker faces her; which yarn hangs where; one count to check by touch."""
    the_course = course(plan)
    at = in_hand(the_course, progress.now)
    if at >= the_course.end:
        return Reply.of(said(plan, "resume-finished"), pair=plan.name)
    row = the_course.row(at)
    number, of = round_number(the_course, row.index)
    where = {} if is_whole(plan) else {"where": half_of_row(the_course, row)}
    return Reply.of(
        "resume-whole" if is_whole(plan) else "resume",
        pair=plan.name,
        **where,
        stage=stage_name(row.stage),
        round=number,
        of=of,
        apart=apart(the_course, progress.now),
        marker=_marker(the_course, at, row),
        yarns=tuple(reply for sock in _socks(plan) for reply in _yarn(the_course, at, sock)),
        check=_check(the_course, at, row),
        call=call_span(the_course, span(plan, progress.now, progress.grain)),
    )


def _socks(plan: Plan) -> tuple[int, ...]:
    """Those whose yarns can be mistaken for each other; of a single piece none."""
    return (1, 2) if len(plan.socks) == 2 else ()


def _marker(the_course: Course, at: int, row: Row) -> Reply:
    """The marker hangs on the front of the first sock: in sight while fronts are worked (common practice)."""
    steps = zip(the_course.steps[:at], the_course.row_of, strict=False)
    rows = the_course.plan.rows
    own = (step for step, index in steps if not the_course.one_sock or rows[index].sock == row.sock)
    if not any(Act.MARKER in step.acts for step in own):
        return Reply.of("marker-not-yet")
    if is_whole(the_course.plan):
        return Reply.of("marker-at-start")
    return Reply.of("marker-faces-you" if row.half is Half.FRONT else "marker-hidden")


def _yarn(the_course: Course, at: int, sock: int) -> tuple[Reply, ...]:
    """Where a sock's yarn hangs before a step: nothing to say while it is not in use yet."""
    rows = the_course.plan.rows
    here = the_course.row_of[at]
    begun = _stitches_before(the_course, here, at)
    freed = the_course.cup > 0 and StageName.TOE
    behind = [row for row in rows[: here + begun] if row.yarn == sock and (_uses_yarn(row) or row.stage is not freed)]
    if not behind:
        return ()
    name = sock_name(the_course.plan, sock)
    ahead = any(row.yarn == sock and _uses_yarn(row) for row in rows[here:])
    if not ahead or _is_cut(the_course, at, sock):
        return (Reply.of("yarn-cut", sock=name),)
    last = behind[-1]
    pointed = the_course.plan.construction.needles.pointed
    if pointed or last.index == here or _same_strip(rows, here, last):
        return (Reply.of("yarn-at-the-working-point", sock=name),)
    ends = (last.sock, Half.BACK if last.stage is StageName.CAST_ON else last.half)
    at_edge = the_course.one_sock or ends in _AT_EDGE
    return (Reply.of("yarn-at-the-edge" if at_edge else "yarn-in-the-gap", sock=name),)


def _is_cut(the_course: Course, at: int, sock: int) -> bool:
    """Whether a sock's yarn was cut, and not joined again."""
    acts = [
        act
        for step, index in zip(the_course.steps[:at], the_course.row_of, strict=False)
        if the_course.plan.rows[index].yarn == sock
        for act in step.acts
    ]
    cuts = [place for place, act in enumerate(acts) if act in {Act.CUT, Act.CUT_LONG}]
    joins = [place for place, act in enumerate(acts) if act is Act.JOIN_YARN]
    return bool(cuts) and (not joins or joins[-1] < cuts[-1])


def _uses_yarn(row: Row) -> bool:
    return any(group.op not in {Op.FREE, Op.PICK_UP} for group in row.ops)


def _stitches_before(the_course: Course, row_index: int, at: int) -> bool:
    """Whether stitches of the row lie behind and others ahead."""
    start, end = the_course.starts[row_index : row_index + 2]
    return any(step.groups for step in the_course.steps[start:at]) and end > at


def _same_strip(rows: tuple[Row, ...], here: int, last: Row) -> bool:
    """Whether the row in hand goes on where the last one turned: the same half of the same sock."""
    return last.index == here - 1 and (last.sock, last.half) == (rows[here].sock, rows[here].half)


def _check(the_course: Course, at: int, row: Row) -> tuple[Reply, ...]:
    """One count: the unmarked middle inside a turn, else the loops on the half in hand."""
    where = half_of_row(the_course, row)
    if row.stage in {StageName.TOE, StageName.HEEL_TURN, StageName.HEEL} and heel_part(the_course, at):
        return (Reply.of("check-middle", where=where, count=heel_state(the_course, at).unmarked),)
    count = the_course.counts[at][slot(row.sock, row.half)]
    return (Reply.of("check-count", where=where, count=count),) if count else ()
