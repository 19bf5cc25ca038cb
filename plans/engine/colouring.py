"""Rounds in two colours: each run of stitches is told with its yarn."""

from plans.conversation import Reply
from plans.pattern import Colour, Group, Plan, Row
from plans.sayings import op_key
from plans.stitches import Op

Colours = dict[Colour, str]
"""What each yarn is called; empty where they have no names of their own."""


def colours_of(plan: Plan, row: Row) -> Colours | None:
    """The names of the yarns, for a row that has stitches in the contrasting one; None for any other row."""
    if all(group.colour is Colour.MAIN for group in row.ops):
        return None
    yarns = plan.written.yarns if plan.written else next((each.yarns for each in plan.charts if each.yarns), None)
    return dict(zip((Colour.MAIN, Colour.CONTRAST), yarns, strict=True)) if yarns else {}


def in_colour(group: Group, colours: Colours) -> Reply:
    """Knit stitches as their number and yarn, "three main", any other with its name before it."""
    yarn = colours.get(group.colour)
    if group.op is not Op.K:
        work = (Reply.of(op_key(group.op), times=group.times),)
        named = Reply.of(f"work-in-{group.colour.value}", work=work)
        return named if yarn is None else Reply.of("work-in-yarn", work=work, name=yarn)
    if yarn is not None:
        return Reply.of("in-yarn", times=group.times, name=yarn)
    return Reply.of(f"in-{group.colour.value}", times=group.times)
