"""Answers that change nothing: where she is, how many stitches, how far, what comes after, the marks."""

from plans.conversation import PlanId, Progress, Reply, Standing
from plans.engine.apart import apart, turn_passed
from plans.engine.calling import call, call_span
from plans.engine.courses import Course, course, is_turned_by_decreases, slot
from plans.engine.marking import has_doubles, heel_state
from plans.engine.naming import half_in, half_of_row, is_whole, round_number, said, stage_name
from plans.engine.places import Span, after, in_hand, loops_to_go, span, to_go
from plans.pattern import Half, Plan, Sock, StageName


def where_am_i(plan: Plan, progress: Progress) -> Reply:
    """The step in hand: sock, half, stage, round, counts before and after; in a heel its marks too."""
    the_course, the_span = course(plan), span(plan, progress.now, progress.grain)
    if the_span.start >= the_course.end:
        return Reply.of(said(plan, "finished-already"))
    row = the_course.row(the_span.start)
    number, of = round_number(the_course, row.index)
    return Reply.of(
        "where-am-i",
        where=half_of_row(the_course, row),
        stage=stage_name(row.stage),
        round=number,
        of=of,
        apart=apart(the_course, progress.now),
        counts=_counts(the_course, the_span),
        heel=heel_part(the_course, the_span.start),
        call=call_span(the_course, the_span, turn_passed(the_course, progress.now, the_span)),
    )


def _counts(the_course: Course, the_span: Span) -> tuple[Reply, ...]:
    """Before and after for each half in the span; both socks in one where they agree."""
    before, following = the_course.counts[the_span.start], the_course.counts[the_span.end]
    worked = [the_course.row(at) for at in the_span.positions]
    halves = {(row.sock, row.half): row for row in worked}
    found: list[Reply] = []
    for half in Half:
        socks: list[Sock] = [sock for sock in (1, 2) if (sock, half) in halves]
        pairs = {(before[slot(sock, half)], following[slot(sock, half)]) for sock in socks}
        if len(socks) == 2 and len(pairs) == 1:
            ((now, then),) = pairs
            where = Reply.of("where-side", half=half_in(the_course, halves[1, half]))
            found.append(Reply.of("half-counts", where=where, before=now, after=then))
            continue
        found.extend(
            Reply.of(
                "half-counts",
                where=half_of_row(the_course, halves[sock, half]),
                before=before[slot(sock, half)],
                after=following[slot(sock, half)],
            )
            for sock in socks
        )
    return tuple(found)


def heel_part(the_course: Course, at: int) -> tuple[Reply, ...]:
    """The marked stitches on each side and the unmarked middle; in the flap the gussets still to eat."""
    row = the_course.row(at)
    if not the_course.is_row(row.index) or row.half is Half.FRONT or is_turned_by_decreases(the_course.plan):
        return ()
    state = heel_state(the_course, at)
    key = "turn-doubles" if has_doubles(the_course, row.index) else "turn-wraps"
    turn = Reply.of(key, on_right=state.marks[0], on_left=state.marks[1], unmarked=state.unmarked)
    if row.stage is not StageName.HEEL_FLAP:
        return (turn,)
    flap = Reply.of("flap-gussets", on_right=state.gussets[0], on_left=state.gussets[1])
    return (turn, flap) if any(state.marks) else (flap,)


def how_many(plan: Plan, progress: Progress) -> Reply:
    """Loops now and after the step on the half where it begins, and how many are to go on that half."""
    the_course, the_span = course(plan), span(plan, progress.now, progress.grain)
    if the_span.start >= the_course.end:
        return Reply.of(said(plan, "finished-already"))
    row = the_course.row(the_span.start)
    here = slot(row.sock, row.half)
    return Reply.of(
        "how-many-whole" if is_whole(plan) else "how-many",
        where=half_of_row(the_course, row),
        now=the_course.counts[the_span.start][here],
        after=the_course.counts[the_span.end][here],
        to_go=loops_to_go(plan, progress.now),
    )


def how_far(plan: Plan, progress: Progress) -> Reply:
    """Rounds to go in this stage and in the sock, the one in hand counted; rows where heels are ahead."""
    the_course, found = course(plan), to_go(plan, progress.now)
    at = in_hand(the_course, progress.now)
    if at >= the_course.end:
        return Reply.of(said(plan, "finished-already"))
    row = the_course.row(at)
    heels = tuple(
        Reply.of(key, rows=rows)
        for key, rows in (("toe-rows-ahead", found.toe_rows), ("heel-rows-ahead", found.heel_rows))
        if rows
    )
    stage = stage_name(row.stage)
    if the_course.is_row(row.index):
        return Reply.of(
            "how-far-in-heel", stage=stage, rows=found.in_stage, in_sock=found.rounds, heels=heels
        )
    return Reply.of(said(plan, "how-far"), stage=stage, rounds=found.in_stage, in_sock=found.rounds, heels=heels)


def what_next(plan: Plan, progress: Progress) -> Reply:
    """The step after the one in hand."""
    the_course = course(plan)
    if in_hand(the_course, progress.now) >= the_course.end:
        return Reply.of(said(plan, "finished-already"))
    following = after(plan, progress.now, progress.grain)
    return Reply.of("what-next", call=call(plan, following, progress.grain))


def marks(plan: Plan, progress: Progress) -> Reply:
    """Every mark, the oldest first."""
    if not progress.marks:
        return Reply.of("no-marks")
    now, numbered = progress.now.plan, enumerate(progress.marks, start=1)
    return Reply.of("marks", marks=tuple(_mark(plan, now, number, at) for number, at in numbered))


def _mark(plan: Plan, now: PlanId, number: int, standing: Standing) -> Reply:
    if standing.plan != now:
        return Reply.of("mark-of-other-plan", number=number)
    the_course = course(plan)
    row = the_course.row(in_hand(the_course, standing))
    rounds, of = round_number(the_course, row.index)
    where = half_of_row(the_course, row)
    return Reply.of("mark", number=number, stage=stage_name(row.stage), round=rounds, of=of, where=where)
