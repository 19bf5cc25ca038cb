"""Questions that wait for a yes."""

from plans.conversation import (
    Answered,
    Asked,
    AtRound,
    Decision,
    Next,
    Progress,
    Reply,
    RippedBack,
    Stop,
    Stopped,
    TapeSays,
)
from plans.engine.calling import call
from plans.engine.courses import Course, course
from plans.engine.moving import set_place, wish_reply
from plans.engine.naming import half_of_row, round_number, said, stage_name
from plans.engine.places import in_hand
from plans.engine.stepping import next_step
from plans.engine.taping import replan
from plans.pattern import Plan

Wish = AtRound | RippedBack | Next | Stop | TapeSays


def ask_next(plan: Plan, progress: Progress) -> Decision:
    """Ask whether the step that was called is done: a "next" came sooner than it could be worked."""
    reply = Reply.of("ask-next", call=call(plan, progress.now, progress.grain))
    dropped = () if progress.question is None else (Answered(yes=False),)
    return Decision(events=(*dropped, Asked(wish=Next())), reply=reply)


def ask_stop(plan: Plan, progress: Progress) -> Decision:
    """Stop; away from the end of a side ask first: a half-worked side is easily taken up the wrong way."""
    the_course = course(plan)
    at = in_hand(the_course, progress.now)
    if is_good_stop(the_course, at):
        return _stopped(plan, progress)
    row = the_course.row(at)
    reply = Reply.of("ask-stop", to_go=_to_side_end(the_course, at), where=half_of_row(the_course, row))
    return Decision(events=(Asked(wish=Stop()),), reply=reply)


def is_good_stop(the_course: Course, at: int) -> bool:
    """Whether no side is half worked: its stitches all lie ahead or all behind. In a heel a row is a side."""
    if at >= the_course.end:
        return True
    row = the_course.row(at)
    start, end = the_course.starts[row.index : row.index + 2]
    behind = any(step.groups for step in the_course.steps[start:at])
    ahead = any(step.groups for step in the_course.steps[at:end])
    opens = the_course.sides[the_course.side_of[row.index]].first == row.index
    closes = the_course.sides[the_course.side_of[row.index]].end == row.index + 1
    return (opens and not behind) or (closes and not ahead)


def _to_side_end(the_course: Course, at: int) -> int:
    side = the_course.sides[the_course.side_of[the_course.row_of[at]]]
    return sum(step.ahead for step in the_course.steps[at : the_course.starts[side.end]])


def _stopped(plan: Plan, progress: Progress) -> Decision:
    the_course = course(plan)
    at = in_hand(the_course, progress.now)
    if at >= the_course.end:
        return Decision(events=(Stopped(),), reply=Reply.of(said(plan, "stopped-finished")))
    row = the_course.row(at)
    number, of = round_number(the_course, row.index)
    where, stage = half_of_row(the_course, row), stage_name(row.stage)
    reply = Reply.of("stopped", where=where, stage=stage, round=number, of=of)
    return Decision(events=(Stopped(),), reply=reply)


def answer_yes(plan: Plan, progress: Progress) -> Decision:
    """Carry out what was asked."""
    if progress.question is None:
        return Decision(events=(), reply=Reply.of("nothing-asked"))
    decision = _carry_out(plan, progress, progress.question)
    return decision.model_copy(update={"events": (Answered(yes=True), *decision.events)})


def _carry_out(plan: Plan, progress: Progress, wish: Wish) -> Decision:
    match wish:
        case Next():
            return next_step(plan, progress)
        case Stop():
            return _stopped(plan, progress)
        case TapeSays():
            return replan(plan, progress, wish)
        case AtRound() | RippedBack():
            return set_place(plan, progress, wish)


def drop(plan: Plan, progress: Progress) -> Decision:
    """Drop the open question and say what it was."""
    if progress.question is None:
        return Decision(events=(), reply=Reply.of("nothing-asked"))
    wish = _wish_reply(plan, progress, progress.question)
    return Decision(events=(Answered(yes=False),), reply=Reply.of("dropped", wish=wish))


def _wish_reply(plan: Plan, progress: Progress, wish: Wish) -> Reply:
    match wish:
        case Next():
            return Reply.of("wish-next")
        case Stop():
            return Reply.of("wish-stop")
        case TapeSays():
            return Reply.of("wish-replan")
        case AtRound() | RippedBack():
            return wish_reply(plan, progress, wish)
