"""Stretchy ends, each in a module that bears its name and holds a BIND_OFF."""

from collections.abc import Iterator
from functools import cache
from typing import cast

from plans.names import load
from plans.pattern import StageName
from plans.rows.parts import BindOffPart
from plans.rows.rounds import Round, even_round, groups
from plans.stitches import Op

__all__ = ["bind_off", "bind_off_rounds", "passed_over"]


@cache
def bind_off(name: str) -> BindOffPart:
    """The bind-off of that name."""
    return cast("BindOffPart", load("bind_offs", name, "BIND_OFF"))


def bind_off_rounds(name: str, front: int, back: int) -> Iterator[Round]:
    """The rounds of the end, on so many stitches of front and back."""
    part, number = bind_off(name), 0
    for ops, _ in part.rounds:
        number += 1
        yield even_round(StageName.BIND_OFF, number, ops(front), ops(back), (front, back))
    yield even_round(StageName.BIND_OFF, number + 1, part.front(front), part.back(back), (part.leaves, 0))


def passed_over(first: Op, then: Op, *, long_tail: bool = False) -> BindOffPart:
    """A bind-off in an order that the needle allows (derived).

    Front: one loop waits on the working tip, each further one is worked and the waiting one passed over it
    or dropped; of n loops one waits when the front is done. Back: that loop is the first one passed over,
    so all n go, and the last loop is fastened.

    Args:
        first: how the first loop is brought to wait.
        then: how each further one replaces it.
        long_tail: the yarn is cut before, to sew with.
    """
    return BindOffPart(
        front=lambda loops: groups((first, 1), (then, loops - 1)),
        back=lambda loops: groups((then, loops), (Op.FASTEN, 1)),
        looks=(rf"{first} 1, {then} \d+", rf"{then} \d+, fasten 1"),
        long_tail=long_tail,
    )
