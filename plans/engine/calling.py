"""The step in hand, as it is called."""

from plans.conversation import Grain, Reply, Standing
from plans.engine.apart import TURNS, turn_passed
from plans.engine.courses import Course, course, heel_stages
from plans.engine.likeness import is_told_by_number, is_told_whole
from plans.engine.naming import half_in, is_whole, round_number, row_name, said, sock_name, stage_name
from plans.engine.places import Span, span
from plans.engine.working import act_reply, kinds, makes_of, row_work
from plans.pattern import Act, Plan, StageName

_OF_ONE_SOCK = frozenset({
    Act.PREPARE_TIPS, Act.LOOSELY, Act.JOIN, Act.SECURE_TAIL, Act.SLIDE_AWAY, Act.READY_TO_KNIT, Act.PULL_TAIL,
    Act.MARKER, Act.CUT, Act.CUT_LONG, Act.PULL_WASTE, Act.SNIP, Act.JOIN_YARN,
})  # fmt: skip
_OF_BOTH_WHERE_WRITTEN = frozenset({Act.LOOSELY, Act.JOIN})
"""A pattern written by hand says once what is done to both pieces."""


def call(plan: Plan, standing: Standing, grain: Grain) -> Reply:
    """Name the step in hand, ending with the count it makes; "finished" where nothing is to go."""
    the_course, the_span = course(plan), span(plan, standing, grain)
    if is_told_whole(the_course, the_span.start, the_span.end, grain):
        number, of = round_number(the_course, the_course.row_of[the_span.start])
        return Reply.of("call-round-same", round=number, of=of)
    return call_span(the_course, the_span, turn_passed(the_course, standing, the_span))


def call_span(the_course: Course, the_span: Span, turn: tuple[Act, ...] = ()) -> Reply:
    """The same for a span, and the turn that is due after it past a sock that rests."""
    if the_span.start >= the_course.end:
        return Reply.of(said(the_course.plan, "finished"))
    first = the_course.steps[the_span.start]
    if first.alone:
        return _call_act(the_course, the_span.start)
    stage = _stage_begins(the_course, the_span.start)
    rows = list(dict.fromkeys(the_course.row_of[at] for at in the_span.positions))
    if len(rows) == 1:
        return _call_row(the_course, the_span, stage, turn)
    return _call_rows(the_course, the_span, stage, rows)


def _call_act(the_course: Course, at: int) -> Reply:
    acts = the_course.steps[at].acts
    of_one = _OF_ONE_SOCK if the_course.plan.written is None else _OF_ONE_SOCK - _OF_BOTH_WHERE_WRITTEN
    named = of_one & set(acts) and not is_whole(the_course.plan)
    where = (row_name(the_course, the_course.row(at)),) if named else ()
    return Reply.of(
        "call",
        stage=_stage_begins(the_course, at) if _begins_cast_on(the_course, at) else (),
        where=where,
        acts=(),
        work=tuple(act_reply(the_course, act, at) for act in acts if act not in TURNS),
        then=tuple(act_reply(the_course, act, at) for act in acts if act in TURNS),
        makes=(),
    )


def _call_row(the_course: Course, the_span: Span, stage: tuple[Reply, ...], turn: tuple[Act, ...]) -> Reply:
    parts = [the_course.steps[at] for at in the_span.positions]
    start = the_course.starts[the_course.row_of[the_span.start]]
    opens = not any(step.groups for step in the_course.steps[start : the_span.start])
    told = bool(stage) and is_whole(the_course.plan)
    return Reply.of(
        "call",
        stage=stage,
        where=(row_name(the_course, the_course.row(the_span.start)),) if opens and not told else (),
        acts=tuple(act_reply(the_course, act, the_span.start) for act in parts[0].before),
        work=row_work(the_course, the_span, opens=opens),
        then=tuple(act_reply(the_course, act, the_span.start) for act in (*parts[-1].after, *turn)),
        makes=makes_of(the_course, the_span),
    )


def _call_rows(the_course: Course, the_span: Span, stage: tuple[Reply, ...], row_indices: list[int]) -> Reply:
    rows = [the_course.plan.rows[index] for index in row_indices]
    run = the_course.rounds[the_course.round_of[row_indices[0]]]
    whole = row_indices == list(range(run.first, run.end)) and _is_whole(the_course, the_span)
    one_side = len({row.half for row in rows}) == 1
    number, of = round_number(the_course, row_indices[0])
    if whole and not one_side and not stage and is_told_by_number(the_course, row_indices[0]):
        one_sock = "call-round-one" if the_course.one_sock else "call-round"
        return Reply.of(one_sock if the_course.plan.written is None else "call-round-same", round=number, of=of)
    socks = {row.sock for row in rows}
    if one_side:
        where = Reply.of("where-side", half=half_in(the_course, rows[0]))
    elif len(socks) == 1 and the_span.done:
        where = Reply.of("where-sock-round", sock=sock_name(the_course.plan, rows[0].sock), round=number, of=of)
    else:
        where = Reply.of("where-round" if whole else "where-rest-of-round", round=number, of=of)
    turns = the_course.steps[the_span.end - 1].after if one_side else ()
    return Reply.of(
        "call",
        stage=stage,
        where=(where,),
        acts=(),
        work=kinds(the_course, rows),
        then=tuple(act_reply(the_course, act, the_span.start) for act in turns if act in TURNS),
        makes=makes_of(the_course, the_span),
    )


def _is_whole(the_course: Course, the_span: Span) -> bool:
    """Whether no stitch of the round was worked before the span."""
    run = the_course.rounds[the_course.round_of[the_course.row_of[the_span.start]]]
    before = the_course.steps[the_course.starts[run.first] : the_span.start]
    return not the_span.done and not any(step.groups for step in before)


def _stage_begins(the_course: Course, at: int) -> tuple[Reply, ...]:
    """The stage's name, when its first stitches are in hand; the cast-on's with its first act."""
    row_index = the_course.row_of[at]
    run = the_course.stages[the_course.stage_of[row_index]]
    row = the_course.plan.rows[row_index]
    before = the_course.steps[the_course.starts[run.first] : at]
    if any(step.groups for step in before) or (
        row.stage is StageName.CAST_ON and not _begins_cast_on(the_course, at)
    ):
        return ()
    _, of = round_number(the_course, row_index)
    name = stage_name(row.stage)
    if the_course.is_row(row_index):
        sock = sock_name(the_course.plan, row.sock)
        return (Reply.of("heel-stage-begins", stage=name, sock=sock, rows=of),)
    if row.stage in heel_stages(the_course.plan):
        return (Reply.of("heel-begins"),)
    return (Reply.of("stage-begins", stage=name, rounds=of),)


def _begins_cast_on(the_course: Course, at: int) -> bool:
    """Whether a position is the first of a cast-on."""
    row_index = the_course.row_of[at]
    run = the_course.stages[the_course.stage_of[row_index]]
    return the_course.plan.rows[row_index].stage is StageName.CAST_ON and at == the_course.starts[run.first]
