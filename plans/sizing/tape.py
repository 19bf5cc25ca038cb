"""The tape's numbers for one foot: as measured, else from the shoe, else estimated, and said to be."""

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Problem, Reply
from plans.quantities import Length
from plans.sizing.feet import Estimate, Part, estimate, is_childs
from plans.sizing.measures import measure
from plans.sizing.shoes import Shoe, parse_shoe
from plans.wishes import Wishes

_EXACT = Length(Fraction(0))
_FIELDS: dict[Part, str] = {"foot": "foot_length", "ball": "ball", "ankle": "ankle", "heel": "heel_diagonal",
                            "calf": "calf"}  # fmt: skip

_ESTIMATED: dict[Part, str] = {
    "foot": "foot-estimated", "ball": "ball-estimated", "ankle": "ankle-estimated", "heel": "heel-estimated",
    "calf": "calf-estimated",
}  # fmt: skip


class Tape(NamedTuple):
    """All measures of a foot, each with how far off it may be: by nothing where it was measured.

    Attributes:
        heel_girth: round the heel and the front of the ankle.
        notes: which of them were not measured; the calf has its own, for a leg that reaches it.
    """

    foot: Length
    ball: Length
    ankle: Length
    ankle_give_or_take: Length
    heel_girth: Estimate
    calf: Estimate
    notes: tuple[Reply, ...]
    calf_notes: tuple[Reply, ...]


def check_tape(wishes: Wishes) -> Iterator[Problem]:
    """Nothing measured at all, or a shoe size that tells no length."""
    shoe = _shoe(wishes)
    if isinstance(shoe, Problem):
        yield shoe
    elif shoe is None and all(getattr(wishes, name) is None for name in _FIELDS.values()):
        yield Problem.of("foot-missing", "foot_length")


def _shoe(wishes: Wishes) -> Shoe | Problem | None:
    """The shoe that stands in for a foot length."""
    return None if wishes.shoe is None or wishes.foot_length is not None else parse_shoe(wishes.shoe)


def read_tape(wishes: Wishes) -> Tape:
    """Fill in what was not measured. The wishes are checked: see `check_tape`."""
    known: dict[Part, Estimate] = {
        part: Estimate(length, _EXACT) for part, name in _FIELDS.items() if (length := getattr(wishes, name))
    }
    notes: list[Reply] = []
    shoe = _shoe(wishes)
    if isinstance(shoe, Shoe):
        known["foot"] = Estimate(shoe.foot, shoe.give_or_take)
        values = {"length": measure(shoe.foot), "give_or_take": measure(shoe.give_or_take)}
        notes.append(Reply.of("foot-from-shoe", shoe=str(shoe), **values))
    parts: dict[Part, Estimate] = {part: known.get(part) or estimate(part, known) for part in _FIELDS}
    guesses = list(_estimated(parts, known, "foot", "ball", "ankle", "heel"))
    if guesses and is_childs(parts["foot"].length):
        guesses.append(Reply.of("child-estimated"))
    foot, ball = parts["foot"].length, parts["ball"].length
    calf_notes = tuple(_estimated(parts, known, "calf"))
    return Tape(foot, ball, *parts["ankle"], parts["heel"], parts["calf"], (*notes, *guesses), calf_notes)


def _estimated(
    parts: dict[Part, Estimate], known: dict[Part, Estimate], *wanted: Part
) -> Iterator[Reply]:
    for part in wanted:
        if part not in known:
            guess = parts[part]
            values = {"length": measure(guess.length), "give_or_take": measure(guess.give_or_take)}
            yield Reply.of(_ESTIMATED[part], **values)
