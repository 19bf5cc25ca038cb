"""One row knitted on real loops, operation by operation."""

from collections.abc import Callable
from typing import NamedTuple

from plans.pattern import Facing, Group, Row
from plans.proof.loops import BACK_HALF, DOUBLE, MARKS, TAG, WRAP, WRAPS, Fault, Hands, Needle
from plans.stitches import TAKES_MAKES, Op


class Knitted(NamedTuple):
    """What came of a row.

    Attributes:
        whole: all loops of the half were worked.
        after: loops on the half.
        beyond: loops of the half that wait unworked ahead of the row's end, without one it has just wrapped.
        stopped: the row cannot be knitted to its end.
    """

    whole: bool
    after: int
    beyond: int
    faults: tuple[Fault, ...]
    stopped: bool = False


class _Move(NamedTuple):
    """A group to be worked its own way, or without one so many stitches that make one loop of one."""

    group: Group | None
    number: int
    way: "Callable[[Hands, Group], bool]"
    markless: bool = False


Moves = tuple[_Move, ...]


def moves(ops: tuple[Group, ...]) -> Moves:
    """What the hands do for the operations of a row: stitches that make one loop of one go together."""
    found: list[_Move] = []
    for group in ops:
        if group.op not in _SIMPLE or group.wrap or group.double:
            found.append(_Move(group, 0, _WAYS.get(group.op, _work), group.op in _MARKLESS))
        elif found and found[-1].group is None:
            found[-1] = found[-1]._replace(number=found[-1].number + group.times)
        else:
            found.append(_Move(None, group.times, _work))
    return tuple(found)


def knit_row(needle: Needle, row: Row, side: Facing, work: Moves | None = None) -> Knitted:
    """Knit one row with the given side of the work facing, by its moves; the needle is changed."""
    hands = Hands(needle, row, side)
    before = needle.counts[hands.tag]
    hands.find_yarn(row)
    stopped = not _work_all(hands, moves(row.ops) if work is None else work)
    whole = hands.took == before
    beyond = 0 if whole or stopped else hands.count_beyond()
    hands.lay_down()
    needle.sides[hands.sock] = side
    if not needle.counts[hands.sock] + needle.counts[hands.sock + BACK_HALF]:
        needle.ends[hands.sock] = -1
    return Knitted(whole, needle.counts[hands.tag], beyond, tuple(hands.faults), stopped)


def _work_all(hands: Hands, work: Moves) -> bool:
    for group, number, way, markless in work:
        if group is None:
            if not _work_simple(hands, number):
                return False
            continue
        if markless:
            _check_marks(hands, group, [], 1)
        if not way(hands, group):
            return False
    return True


def _work_simple(hands: Hands, number: int) -> bool:
    """A run of stitches that make one loop of one unmarked loop."""
    taken = hands.pick(number)
    if taken is None:
        return False
    if hands.met_marks:
        _check_marks(hands, None, taken, 1)
    hands.make(number)
    return True


def _work(hands: Hands, group: Group) -> bool:
    """Any operation that takes loops off one tip and leaves loops on the other."""
    takes, makes = TAKES_MAKES[group.op]
    if takes:
        taken = hands.pick(takes * group.times)
        if taken is None:
            return False
        _check_marks(hands, group, taken, takes)
    hands.make(makes * group.times)
    return True


def _check_marks(hands: Hands, group: Group | None, taken: list[int], takes: int) -> None:
    """Every wrap is lifted and every double joined, and none is spoken of where there is none."""
    wrap, double = (group.wrap, group.double) if group else (False, False)
    if not (wrap or double or hands.met_marks):
        return
    for marks, told, lost, invented in (
        (WRAPS, wrap, "wrap-not-lifted", "no-wrap-there"),
        (DOUBLE, double, "double-not-joined", "no-double-there"),
    ):
        if told:
            units = [taken[start : start + takes] for start in range(0, len(taken), takes)]
            bare = sum(1 for unit in units if not any(loop & marks for loop in unit))
            if bare or not units:
                hands.fault(invented, loops=bare)
        else:
            marked = sum(1 for loop in taken if loop & marks)
            if marked:
                hands.fault(lost, loops=marked)


def _cast_on(hands: Hands, group: Group) -> bool:
    """Loops on both tips at once: the front's lie at tip A, outside what is there, the back's at tip B."""
    hands.make(group.times)
    if not hands.tag & BACK_HALF:
        hands.loops.rotate(group.times)
    return True


def _cast_on_over_waste(hands: Hands, group: Group) -> bool:
    """Loops at tip A, where their own first row takes them; between the feet of n loops there are n - 1."""
    needle, number = hands.needle, group.times
    if hands.side is not Facing.RS or needle.counts[hands.tag]:
        hands.fault("nothing-kept", loops=0)
        return False
    hands.make(number)
    hands.loops.rotate(number)
    needle.kept[hands.sock] = [number - 1, 0]
    hands.room = 0
    return True


def _wrap_turn(hands: Hands, group: Group) -> bool:
    """The yarn goes round the neck of the next loop, or a twin is knitted below it; the loop stays where it is."""
    loops = hands.loops
    if group.times != 1 or hands.wrapped:
        hands.fault("mark-misplaced", op=str(group.op))
    if not loops or not hands.room or loops[hands.near] & TAG != hands.tag:
        hands.too_few()
        return False
    if group.op is Op.TWIN:
        loops[hands.near] |= DOUBLE
    else:
        loops[hands.near] += WRAP if loops[hands.near] & WRAPS != WRAPS else 0
    hands.wrapped = 1
    return True


def _double(hands: Hands, group: Group) -> bool:
    """After a turn the first loop is pulled over the needle: two legs that count as one."""
    turned = hands.needle.sides[hands.sock] is not hands.side
    if group.times != 1 or hands.took or not turned:
        hands.fault("mark-misplaced", op=str(group.op))
    taken = hands.pick(group.times)
    if taken is None:
        return False
    _check_marks(hands, group, taken, 1)
    hands.make(group.times, DOUBLE)
    return True


def _bind_off(hands: Hands, group: Group) -> bool:
    """Each loop taken replaces the one of its sock that waits on the filled tip."""
    needle, loops = hands.needle, hands.loops
    for _ in range(group.times):
        waiting = loops[hands.far] if loops else -1
        if waiting < 0 or waiting & ~MARKS != needle.ends[hands.sock]:
            hands.fault("nothing-to-pass-over", sock=hands.sock + 1)
            return False
        if len(loops) == 1:
            hands.too_few()
            return False
        taken = hands.pick(1)
        if taken is None:
            return False
        _check_marks(hands, group, taken, 1)
        _drop_waiting(hands)
        hands.make(1)
    return True


def _drop_waiting(hands: Hands) -> None:
    loops = hands.loops
    waiting = loops.pop() if hands.side is Facing.RS else loops.popleft()
    hands.needle.counts[waiting & TAG] -= 1


def _fasten(hands: Hands, group: Group) -> bool:
    """The last loop of a sock is drawn tight with the cut end."""
    needle = hands.needle
    loops = needle.counts[hands.sock] + needle.counts[hands.sock + BACK_HALF]
    if loops != 1 or group.times != 1:
        hands.fault("fastened-too-early", loops=loops)
        return False
    _drop_waiting(hands)
    needle.ends[hands.sock] = -1
    return True


def _keep(hands: Hands, group: Group) -> bool:
    """The next loops are kept by waste yarn or a thread; those on the needle afterwards are worked next.

    Opened, every loop kept stands on the sole side; of the loops drawn out of them, the feet of all but one make
    whole loops on the leg side, and half of one stands at either end.
    """
    loops, needle = hands.loops, hands.needle
    ahead = [loops[place if hands.side is Facing.RS else -1 - place] for place in range(min(group.times, len(loops)))]
    if len(ahead) < group.times or any(loop & TAG != hands.tag for loop in ahead) or hands.side is not Facing.RS:
        hands.too_few()
        return False
    if group.times != needle.counts[hands.tag]:
        hands.fault("nothing-kept", loops=group.times)
    needle.kept[hands.sock] = [group.times, group.times - 1]
    return True


def _free(hands: Hands, group: Group) -> bool:
    """Loops that were kept lie on the needle again: the sole side's as a front does, the leg side's as a back."""
    kept, side = hands.needle.kept[hands.sock], int(bool(hands.tag & BACK_HALF))
    if kept[side] < group.times:
        hands.fault("nothing-kept", loops=kept[side])
        return False
    kept[side] -= group.times
    if kept[side]:
        hands.fault("kept-loops-left", loops=kept[side])
    return _lift(hands, group)


def _lift(hands: Hands, group: Group) -> bool:
    """Loops put on the needle without yarn: on the front it stays where it hangs on the back, if it does."""
    needle, hung = hands.needle, hands.needle.ends[hands.sock]
    _ = _cast_on(hands, group)
    if hung >= 0 and not hands.tag & BACK_HALF:
        needle.ends[hands.sock] = hung
    return True


def _graft(hands: Hands, group: Group) -> bool:
    """Each loop at the one tip goes with one of the other half of its sock, at the other tip, and both are off."""
    needle, other = hands.needle, hands.tag ^ BACK_HALF
    for _ in range(group.times):
        taken = hands.pick(1)
        facing = hands.other[hands.far] if hands.other else -1
        if taken is None or facing < 0 or facing & TAG != other:
            hands.fault("nothing-to-graft-to", sock=hands.sock + 1)
            return False
        _check_marks(hands, group, [taken[0], facing], 2)
        _ = hands.other.pop() if hands.side is Facing.RS else hands.other.popleft()
        needle.counts[other] -= 1
    return True


SETS_UP = frozenset({Op.CO, Op.CO_WASTE, Op.FREE, Op.PICK_UP})
"""What puts loops on the needle where there were none."""

_WAYS: dict[Op, Callable[[Hands, Group], bool]] = {
    Op.CO: _cast_on,
    Op.CO_WASTE: _cast_on_over_waste,
    Op.PICK_UP: _lift,
    Op.WRAP_TURN: _wrap_turn,
    Op.TWIN: _wrap_turn,
    Op.WASTE: _keep,
    Op.THREAD: _keep,
    Op.FREE: _free,
    Op.GRAFT: _graft,
    Op.THREE_NEEDLE: _graft,
    Op.DS: _double,
    Op.BO: _bind_off,
    Op.YO_BO: _bind_off,
    Op.SEW_BO: _bind_off,
    Op.FASTEN: _fasten,
}
"""What is worked otherwise than by taking loops and making loops."""

_MARKLESS = frozenset({op for op, (takes, _) in TAKES_MAKES.items() if not takes} | {Op.FASTEN})
"""What takes no loop that a wrap could hang on."""

_SIMPLE = frozenset(op for op, changes in TAKES_MAKES.items() if changes == (1, 1) and op not in _WAYS)
