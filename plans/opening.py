"""From the text of a plan file, wishes or a written pattern, to a proven plan."""

from plans.conversation import Problem
from plans.files import read_wishes
from plans.making import Made, make_plan
from plans.pattern import Plan, Written
from plans.proof import prove
from plans.written.printing import pattern_text
from plans.written.reading.files import holds_pattern, read_pattern_file


def made_of(text: str) -> Made | tuple[Problem, ...]:
    """The proven plan of a plan file, or all that stands in the way."""
    if holds_pattern(text):
        return make_written(text)
    wishes = read_wishes(text)
    return wishes if isinstance(wishes, tuple) else make_plan(wishes)


def make_written(text: str) -> Made | tuple[Problem, ...]:
    """The proven plan of a file that holds a pattern; a piece of its own then carries its pattern as we print it."""
    plan = read_pattern_file(text)
    if isinstance(plan, tuple):
        return plan
    plan = with_pattern(plan)
    return prove(plan) or Made(plan=plan)


def with_pattern(plan: Plan) -> Plan:
    """The plan with its pattern printed anew; a sock worked out from measures carries none."""
    if plan.written is None:
        return plan
    return plan.model_copy(update={"written": Written(pattern=pattern_text(plan), yarns=plan.written.yarns)})
