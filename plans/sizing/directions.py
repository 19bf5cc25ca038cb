"""What can be knitted from the end at which a sock begins, and what cannot."""

from collections.abc import Callable, Iterator

from plans.conversation import Problem, Value
from plans.names import names
from plans.pattern import Direction
from plans.rows.bind_offs import bind_off
from plans.rows.cuffs import cuff
from plans.rows.heels import heel
from plans.rows.legs import leg
from plans.rows.parts import BindOffPart, CuffPart, HeelPart, LegPart, ToePart
from plans.rows.toes import toe
from plans.sizing.measures import field
from plans.wishes import Wishes

_PARTS: dict[str, tuple[str, Callable[[str], ToePart | HeelPart | LegPart | CuffPart | BindOffPart]]] = {
    "toe": ("toes", toe), "heel": ("heels", heel), "leg_style": ("legs", leg), "cuff_style": ("cuffs", cuff),
    "bind_off": ("bind_offs", bind_off),
}  # fmt: skip
_REFUSED = {Direction.TOE_UP: "not-toe-up", Direction.CUFF_DOWN: "not-cuff-down"}


def serving(name: str, direction: Direction) -> tuple[str, ...]:
    """The names that a field of the wishes may have in a direction."""
    kind, part = _PARTS[name]
    return tuple(each for each in names(kind).values() if direction in part(each).directions)


def check_direction(wishes: Wishes) -> Iterator[Problem]:
    """Parts that are not knitted this way, each with those that are; and what is not charted or cast on so."""
    for name in _PARTS:
        wished, choices = str(getattr(wishes, name)), serving(name, wishes.direction)
        if wished not in choices:
            values: dict[str, Value] = {"field": field(name), "name": wished, "choices": ", ".join(choices)}
            yield Problem.of(_REFUSED[wishes.direction], name, **values)
    if wishes.direction is Direction.CUFF_DOWN and wishes.chart is not None:
        yield Problem.of("chart-not-cuff-down", "chart")
    if wishes.direction is Direction.CUFF_DOWN and wishes.cast_on not in (None, wishes.around) and not wishes.practice:
        yield Problem.of("cast-on-not-cuff-down", "cast_on", loops=wishes.cast_on or 0)
