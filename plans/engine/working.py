"""What is worked in a step, put into replies: operations, repeats, the kind of a row, acts, counts made."""

from fractions import Fraction

from plans.conversation import Measure, Reply
from plans.engine.colouring import Colours, colours_of, in_colour
from plans.engine.courses import Course, slot
from plans.engine.likeness import is_centred, is_narrowed, is_plain
from plans.engine.naming import half_in, half_of
from plans.engine.places import Span
from plans.engine.steps import Step
from plans.pattern import Act, Group, Half, Plan, Row, StageName
from plans.sayings import act_key, op_key
from plans.stitches import INCREASES, Op, makes, takes

_FOOT = frozenset({StageName.TOE, StageName.FOOT, StageName.GUSSET})
_LEG = frozenset({StageName.LEG, StageName.CUFF})
_STRANDS = frozenset({Op.K2TOG_STRAND, Op.SSK_STRAND})
_KNIT, _PURL = frozenset({Op.K, Op.KTBL}), frozenset({Op.P, Op.PTBL})
_SLIPS = frozenset({Op.SL_WYIB, Op.SL_WYIF})


def group_reply(group: Group, colours: Colours | None = None) -> Reply:
    """One operation and how often; in a round of two colours with its yarn."""
    if colours is not None:
        return in_colour(group, colours)
    said = Reply.of(op_key(group.op), times=group.times)
    if group.wrap:
        return Reply.of("with-wraps", work=(said,))
    return Reply.of("with-doubles", work=(said,)) if group.double else said


def row_work(the_course: Course, span: Span, *, opens: bool) -> tuple[Reply, ...]:
    """The stitches of a span within one row; where they open it, the row of its chart first."""
    row = the_course.row(span.start)
    colours = colours_of(the_course.plan, row)
    work: tuple[Reply, ...] = ()
    for at in span.positions:
        step = the_course.steps[at]
        between = step.before if at != span.positions[0] else ()
        work += (*(Reply.of(act_key(act)) for act in between), *step_work(step, colours))
    if row.chart is None or not opens:
        return work
    return (Reply.of("chart-row", row=row.chart.row, of=row.chart.of), *work)


def step_work(step: Step, colours: Colours | None = None) -> tuple[Reply, ...]:
    """The stitches of one step."""
    groups = tuple(group_reply(group, colours) for group in step.groups)
    return groups if step.times == 1 else (Reply.of("repeat", work=groups, times=step.times),)


_TELLING: tuple[tuple[frozenset[Op], str], ...] = (
    (frozenset({Op.CO, Op.CO_WASTE}), "work-cast-on"),
    (frozenset({Op.FREE}), "work-open-heel"),
    (frozenset({Op.PICK_UP_K}), "work-pick-up"),
    (frozenset({Op.WASTE, Op.THREAD}), "work-keep-heel"),
    (frozenset({Op.GRAFT, Op.GRAFT_RIB}), "work-graft"),
    (frozenset({Op.THREE_NEEDLE}), "work-three-needle"),
    (frozenset({Op.GATHER}), "work-gather"),
    (_STRANDS, "work-closing"),
    (frozenset({Op.YO}), "work-holes"),
)
"""Operations that tell what a whole row is."""

_INCREASES: dict[Op, str] = {
    Op.M1R: "work-increase", Op.M1L: "work-increase-left-first", Op.KFB: "work-increase-kfb",
    Op.LIFTED_R: "work-increase-lifted",
}  # fmt: skip
"""By the first of two increases in a row."""


def kind_of(row: Row) -> str:
    """The key that sums a whole row up."""
    ops = {group.op for group in row.ops}
    told = next((key for telling, key in _TELLING if ops & telling), None)
    if told is not None:
        return told
    if any(takes(op) and not makes(op) for op in ops):
        return "work-bind-off"
    gains = sum(group.times * (makes(group.op) - takes(group.op)) for group in row.ops)
    if gains > 0:
        return _increase_kind(row)
    if gains < 0:
        return "work-decrease-centre" if is_centred(row) else "work-narrow" if is_narrowed(row) else "work-decrease"
    if ops & _SLIPS and ops <= _SLIPS | _KNIT | _PURL:
        return "work-slipped"
    if not is_plain(row):
        return "work-mixed"
    return "work-rib" if ops & _KNIT and ops & _PURL else "work-plain"


def _increase_kind(row: Row) -> str:
    """How a row increases at both its edges, or that it does at one of them or at its centre."""
    if is_centred(row):
        return "work-increase-centre"
    increases = [group.op for group in row.ops if group.op in INCREASES for _ in range(group.times)]
    return _INCREASES.get(increases[0], "work-mixed") if len(increases) > 1 else "work-increase-one-edge"


def kinds(the_course: Course, rows: list[Row]) -> tuple[Reply, ...]:
    """What several rows come to: one kind, or one for each half; every kind where socks differ."""
    by_half = {half: sorted({kind_of(row) for row in rows if row.half is half}) for half in Half}
    front, back = by_half[Half.FRONT], by_half[Half.BACK]
    if not front or not back or front == back:
        return tuple(Reply.of(kind) for kind in front or back)
    return tuple(
        Reply.of("on-half", half=half_in(the_course, row), work=tuple(Reply.of(kind) for kind in by_half[half]))
        for half, row in ((half, next(row for row in rows if row.half is half)) for half in by_half)
    )


def makes_of(the_course: Course, span: Span) -> tuple[Reply, ...]:
    """The counts the step makes, in the shortest form that names each half it changes or works."""
    counts = the_course.counts[span.end]
    halves = list(dict.fromkeys((the_course.row(at).sock, the_course.row(at).half) for at in span.positions))
    found = {where: counts[slot(*where)] for where in halves}
    if len(found) == 1:
        return tuple(Reply.of("makes", count=count) for count in found.values())
    if len(set(found.values())) == 1:
        one_half = len({half for _, half in found}) == 1
        return (Reply.of("makes-each" if one_half else "makes-each-half", count=counts[slot(*halves[0])]),)
    if len(found) == 4 and counts[:2] == counts[2:]:
        return (Reply.of("makes-front-back", front=counts[0], back=counts[1]),)
    if len(found) == 2 and len({sock for sock, _ in found}) == 1:
        (sock, _), *_ = found
        front, back = (counts[slot(sock, half)] for half in Half)
        return (Reply.of("makes-front-back", front=front, back=back),)
    return tuple(
        Reply.of("makes-on", where=half_of(the_course.plan, sock, half), count=count)
        for (sock, half), count in found.items()
    )


def act_reply(the_course: Course, act: Act, at: int) -> Reply:
    """An act; where the work is measured or tried on, with the length it should have by now."""
    if act not in {Act.MEASURE, Act.TRY_ON}:
        return Reply.of(act_key(act))
    part, due = length_due(the_course, at)
    return Reply.of(f"{act_key(act)}-{part}", due=due)


def length_due(the_course: Course, at: int) -> tuple[str, Measure]:
    """"foot" or "leg", or "height" of what is no sock, and how long it is after the rounds so far.

    The foot is measured from the tip of the toe; a heel adds the rounds that lie under the foot. The leg is measured
    from the top of the heel.
    """
    plan = the_course.plan
    row_index = the_course.row_of[at]
    before = [plan.rows[run.first] for run in the_course.rounds[: the_course.round_of[row_index]]]
    firsts = [row for row in before if not the_course.one_sock or row.sock == plan.rows[row_index].sock]
    if plan.written is not None:
        return "height", _measure(plan, sum(row.stage is not StageName.CAST_ON for row in firsts))
    if plan.cuff_down:
        return _due_from_the_cuff(the_course, firsts)
    leg = sum(row.stage in _LEG for row in firsts)
    depth = plan.heel_depth if any(the_course.is_heel(row.index) for row in firsts) else 0
    in_rounds = sum(row.stage in _FOOT and not the_course.is_cup(row.index) for row in firsts)
    rounds = leg or the_course.cup + in_rounds + depth
    return "leg" if leg else "foot", _measure(plan, rounds)


def _due_from_the_cuff(the_course: Course, firsts: list[Row]) -> tuple[str, Measure]:
    """The leg up to its heel; after it the foot from the back of the heel, whose depth has the round that picks up."""
    plan = the_course.plan
    if not any(the_course.is_heel(row.index) for row in firsts):
        return "leg", _measure(plan, sum(row.stage in _LEG for row in firsts))
    picks = any(row.stage is StageName.GUSSET for row in firsts)
    return "foot", _measure(plan, sum(row.stage in _FOOT for row in firsts) + plan.heel_depth - picks)


def _measure(plan: Plan, rounds: int) -> Measure:
    return Measure(tenths_mm=round(Fraction(rounds * 1000) / plan.gauge.rounds_per_10cm))
