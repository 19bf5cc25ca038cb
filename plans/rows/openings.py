"""Heels made last: an opening is kept in the round where they belong, and a tube is closed into it at the end."""

from collections.abc import Callable, Iterator

from plans.pattern import Half, StageName
from plans.rows.parts import At, HeelPart, Numbers
from plans.rows.rounds import Pass, Round, RoundKind, even_round, groups, narrowed, plain
from plans.stitches import Op

Schedule = Callable[[int], tuple[bool, ...]]
"""From the number of decrease rounds to all rounds, and whether each decreases."""


def heel_made_last(keep: Op, schedule: Schedule) -> HeelPart:
    """A heel knitted into an opening of h stitches once the sock is bound off.

    Opened, h loops stand on the sole side and h - 1 whole ones on the leg side ("Starting a forethought heel",
    cozyspirityarns.blogspot.com, 2011); at either end of these a strand is lifted, and one of them is joined at
    once. Then it narrows like a toe backwards, by four stitches a decrease round, to the loops of the toe's tip,
    and is grafted: 64 stitches to 12 a half in 10 decrease rounds, 20 rounds, 4.8 cm at 42 (derived).

    Args:
        keep: what is done to the h loops where the heel will be, `waste` or `thread`.
        schedule: the order of decrease rounds and plain ones.
    """
    return HeelPart(
        stages=(StageName.HEEL,),
        gusset=lambda _: 0,
        turned=lambda half, tip: (half - tip) // 2,
        depth=lambda numbers: 1 + len(schedule(numbers.turned)),
        rounds=lambda numbers: _rounds(schedule, numbers),
        look=lambda at: _look(schedule, at),
        waits=lambda _stage, _numbers: (),
        made_last=True,
        opening=(lambda numbers: groups((keep, numbers.half), (Op.K, numbers.half)), lambda _: rf"{keep} \d+, k \d+"),
    )


def _rounds(schedule: Schedule, numbers: Numbers) -> Iterator[Round]:
    half = numbers.half
    sole, leg = groups((Op.FREE, half)), groups((Op.PICK_UP, 1), (Op.FREE, half - 1), (Op.PICK_UP, 1))
    yield even_round(StageName.HEEL, 1, sole, leg, (half, half + 1))._replace(kind=RoundKind.SET_UP)
    closed = groups((Op.K2TOG, 1), (Op.K, half - 1))
    yield even_round(StageName.HEEL, 2, plain(half), closed, (half, half))
    stitches, number = half, 2
    for decreases in schedule(numbers.turned):
        number += 1
        ops = narrowed(stitches) if decreases else plain(stitches)
        stitches -= 2 * decreases
        yield even_round(StageName.HEEL, number, ops, ops, (stitches, stitches))
    yield Round(Pass(StageName.HEEL, number + 1, groups((Op.GRAFT, stitches)), 0), (), RoundKind.GRAFT)


NARROWED_LOOK = r"k 1, ssk 1, (k \d+, )?k2tog 1, k 1|ssk 1, k2tog 1"
"""A half that decreases at both edges."""


def _look(schedule: Schedule, at: At) -> str | None:
    if at.stage is not StageName.HEEL:
        return None
    rounds = schedule(at.numbers.turned)
    back = at.half is Half.BACK
    if at.number == 1:
        return r"pick_up 1, free \d+, pick_up 1" if back else r"free \d+"
    if at.number == 2:
        return r"k2tog 1, k \d+" if back else r"k \d+"
    if at.number > 2 + len(rounds):
        return r"graft \d+"
    return NARROWED_LOOK if rounds[at.number - 3] else r"k \d+"


def every_other(decreases: int) -> tuple[bool, ...]:
    """A wedge: decrease, plain, decrease, plain (common practice)."""
    return (True, False) * decreases


def faster_later(decreases: int) -> tuple[bool, ...]:
    """A rounder heel: every other round for the first half of the decreases, then every round (our own choice)."""
    slow = (decreases + 1) // 2
    return (True, False) * slow + (True,) * (decreases - slow)
