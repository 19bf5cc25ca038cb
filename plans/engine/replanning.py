"""A plan that was edited takes over from the one before."""

from plans.conversation import Decision, PlanId, Progress, Replanned, Reply
from plans.engine.calling import call
from plans.engine.courses import Course, course
from plans.engine.naming import round_number, stage_name
from plans.engine.places import in_hand, standing_at
from plans.pattern import Plan, Row


def take_over(old: Plan, new: Plan, new_id: PlanId, progress: Progress) -> Decision:
    """Go on in the new plan at the start of the half in hand, in the same round of the same stage.

    Where the new plan has fewer rounds there, at its last round of that stage; without the stage, at the
    end of what comes before it. Undo goes back to the old plan.
    """
    before, after = course(old), course(new)
    at = in_hand(before, progress.now)
    start = after.end if at >= before.end else after.starts[_same_row(before.row(at), after)]
    now = standing_at(after, new_id, start)
    row = after.row(start)
    number, of = round_number(after, row.index)
    said = call(new, now, progress.grain)
    reply = Reply.of("replanned", stage=stage_name(row.stage), round=number, of=of, call=said)
    return Decision(events=(Replanned(now=now),), reply=reply)


def _same_row(row: Row, the_course: Course) -> int:
    """The first row of the same half at or past the round, else the last row of the stage that is like it."""
    rows = the_course.plan.rows
    alike = [each for each in rows if (each.stage, each.sock, each.half) == (row.stage, row.sock, row.half)]
    at_or_past = [each.index for each in alike if each.round >= row.round]
    if at_or_past:
        return at_or_past[0]
    if alike:
        return alike[-1].index
    order = list(type(row.stage))
    earlier = [each.index for each in rows if order.index(each.stage) < order.index(row.stage)]
    return earlier[-1] if earlier else 0
