"""How the step in hand is worked: each technique in it once, for who forgot it or never met it."""

from collections.abc import Iterator

from plans.conversation import Progress, Reply
from plans.engine.courses import Course, course
from plans.engine.naming import said
from plans.engine.places import span
from plans.pattern import Act, Direction, Group, Plan
from plans.sayings import EXPLAINED_ACTS, explanation_key
from plans.stitches import MARKERS, Op

_KNOWN = frozenset({Op.K, Op.P, *MARKERS})


def explain(plan: Plan, progress: Progress) -> Reply:
    """Each technique of the step in hand, in the order of the work; knit and purl are taken as known."""
    the_course, the_span = course(plan), span(plan, progress.now, progress.grain)
    if the_span.start >= the_course.end:
        return Reply.of(said(plan, "finished-already"))
    keys = [key for at in the_span.positions for key in _techniques(the_course, at)]
    if not keys:
        return Reply.of("nothing-to-explain")
    return Reply.of("explanation", how=tuple(Reply.of(key) for key in dict.fromkeys(keys)))


def _techniques(the_course: Course, at: int) -> Iterator[str]:
    step = the_course.steps[at]
    yield from _of_acts(step.before)
    for group in step.groups:
        yield from _of_group(the_course.plan, group)
    yield from _of_acts(step.after)


def _of_acts(acts: tuple[Act, ...]) -> Iterator[str]:
    yield from (explanation_key(act) for act in acts if act in EXPLAINED_ACTS)


def _of_group(plan: Plan, group: Group) -> Iterator[str]:
    if group.op is Op.CO and plan.construction.direction is Direction.TOE_UP:
        yield "explain-closed-toe"
    elif group.op is Op.BO and plan.written is None:
        yield "explain-bind-off-together"
    elif group.op not in _KNOWN:
        yield explanation_key(group.op)
    if group.wrap:
        yield "explain-with-wraps"
    if group.double:
        yield "explain-with-doubles"
