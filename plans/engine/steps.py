"""A row cut into the smallest steps that are called: acts that stand alone, and groups of stitches."""

from dataclasses import dataclass, replace

from plans.pattern import Act, Colour, Group, Row
from plans.stitches import JOINS, Op, makes, takes

_PERIODS = range(2, 25)


@dataclass(frozen=True, slots=True)
class Step:
    """The smallest thing called: stitches that repeat, or one act.

    Attributes:
        before: acts to be done before the stitches.
        groups: the stitches; several groups only where they repeat as one pattern.
        times: how often the groups follow one another.
        after: acts to be done after the stitches.
        alone: an act that is called by itself at every grain.
        loops_worked: operations in all, the time it takes goes with them.
        taken: loops taken off the needle.
        made: loops left on the tip that works.
    """

    before: tuple[Act, ...] = ()
    groups: tuple[Group, ...] = ()
    times: int = 1
    after: tuple[Act, ...] = ()
    alone: bool = False
    loops_worked: int = 0
    taken: int = 0
    made: int = 0

    @property
    def gains(self) -> int:
        """Loops more on the half after the step than before; negative where it decreases."""
        return self.made - self.taken

    @property
    def ahead(self) -> int:
        """Loops taken from the tip that is worked off; each that is grafted or joined takes one of the other half."""
        return self.taken - self.times * sum(group.times for group in self.groups if group.op in JOINS)

    @property
    def acts(self) -> tuple[Act, ...]:
        """All its acts, in order."""
        return self.before + self.after


def steps(row: Row) -> tuple[Step, ...]:
    """The row's steps in order: acts that stand alone, stitches, acts that stand alone and follow.

    Any other act belongs to the step it comes before, or follows. A repeat (slip one, knit one) is one step. On
    double-pointed needles a step ends where the next needle is taken up.
    """
    onto_first, onto_second = _by_needles(row)
    waiting: tuple[Act, ...] = ()
    found: list[Step] = []
    for act in (act for act in row.acts if not act.follows):
        waiting = (*waiting, act)
        if act.stands_alone:
            found.append(Step(before=waiting, alone=True))
            waiting = ()
    waiting = (Act.NEXT_NEEDLE, *waiting) if row.needles else waiting
    found += [_stitches(groups, times) for groups, times in repeats(onto_first)]
    if onto_second:
        change = (Act.SLIP_OVER, Act.NEXT_NEEDLE) if row.slipped else (Act.NEXT_NEEDLE,)
        begins, *others = (_stitches(groups, times) for groups, times in repeats(onto_second))
        found += [replace(begins, before=change), *others]
    if waiting:
        first = next((at for at, step in enumerate(found) if step.groups), len(found))
        found[first : first + 1] = [replace(step, before=waiting) for step in found[first : first + 1]] or [
            Step(before=waiting)
        ]
    for act in (act for act in row.acts if act.follows):
        if act.stands_alone or not found:
            found.append(Step(after=(act,), alone=act.stands_alone))
        else:
            found[-1] = replace(found[-1], after=(*found[-1].after, act))
    return tuple(found)


def _by_needles(row: Row) -> tuple[tuple[Group, ...], tuple[Group, ...]]:
    """The stitches worked onto the first of two needles, and those onto the second."""
    room, onto = row.needles[0] if len(row.needles) == 2 else 0, (list[Group](), list[Group]())
    if not room:
        return row.ops, ()
    for group in row.ops:
        each = makes(group.op)
        times = min(group.times, room // each) if each else group.times * bool(room)
        room -= times * each
        for needle, number in enumerate((times, group.times - times)):
            onto[needle].extend([group.model_copy(update={"times": number})] if number else [])
    return tuple(onto[0]), tuple(onto[1])


def _stitches(groups: tuple[Group, ...], times: int) -> Step:
    return Step(
        groups=groups,
        times=times,
        loops_worked=times * sum(group.times for group in groups),
        taken=times * sum(group.times * takes(group.op) for group in groups),
        made=times * sum(group.times * makes(group.op) for group in groups),
    )


def repeats(ops: tuple[Group, ...]) -> tuple[tuple[tuple[Group, ...], int], ...]:
    """Cut operations into single groups, and patterns of several groups that come twice or more.

    From the first group on, the pattern that covers most is taken, the shortest of equals.
    """
    ops = joined(ops)
    marks = [(group.op, group.times, group.wrap, group.double, group.colour) for group in ops]
    found: list[tuple[tuple[Group, ...], int]] = []
    at = 0
    while at < len(ops):
        period, times = _longest(marks, at)
        found.append((ops[at : at + period], times))
        at += period * times
    return tuple(found)


def _longest(marks: list[tuple[Op, int, bool, bool, Colour]], at: int) -> tuple[int, int]:
    best = (1, 1)
    for period in _PERIODS:
        times = 1
        while marks[at : at + period] == marks[at + times * period : at + (times + 1) * period]:
            times += 1
        if times > 1 and period * times > best[0] * best[1]:
            best = (period, times)
    return best


def _mark(group: Group) -> tuple[object, ...]:
    return group.op, group.wrap, group.double, group.colour


def joined(ops: tuple[Group, ...]) -> tuple[Group, ...]:
    """The same operations, neighbours that are alike made one group."""
    found: list[Group] = []
    for group in ops:
        last = found[-1] if found else None
        if last is not None and _mark(last) == _mark(group):
            found[-1] = group.model_copy(update={"times": last.times + group.times})
        else:
            found.append(group)
    return tuple(found)
