"""The rounds of one sock from its cuff down to its toe."""

from collections.abc import Iterator

from plans.pattern import StageName
from plans.rows.bind_offs import bind_off
from plans.rows.cuffs import cuff_rounds
from plans.rows.heels import heel
from plans.rows.legs import corners, leg_rounds_down
from plans.rows.parts import BindOffPart, Numbers
from plans.rows.rounds import Pass, Round, RoundKind, even_round, groups, narrowed, plain
from plans.rows.toes import foot_rounds, toe_schedule
from plans.stitches import Op
from plans.wishes import SockSize, Wishes


def rounds_from_the_cuff(wishes: Wishes, size: SockSize, numbers: Numbers) -> Iterator[Round]:
    """Cast-on, cuff, leg, heel, gusset, foot, and the toe narrowed as from the tip it would widen, and closed.

    A leg that goes round a calf begins as wide as it is there.
    """
    half, the_heel = numbers.half, heel(wishes.heel)
    loops = groups((Op.CO, half)), groups((Op.CO, numbers.top))
    yield even_round(StageName.CAST_ON, 1, *loops, (half, numbers.top))._replace(kind=RoundKind.SET_UP)
    yield from cuff_rounds(size.cuff_rounds, half, numbers.top, wishes.cuff_style)
    yield from leg_rounds_down(size.leg_rounds, numbers, wishes.leg_style)
    yield from the_heel.rounds(numbers)
    yield from the_heel.picked_up.rounds(numbers) if the_heel.picked_up else ()
    for work in foot_rounds(size.even_rounds, half, wishes.sole):
        closes = work.front.number == 1 and the_heel.picked_up is None
        yield work._replace(front=work.front._replace(ops=corners(half))) if closes else work
    yield from _toe(toe_schedule(wishes.toe, numbers.tip, half), half)
    yield _end(bind_off(wishes.bind_off), numbers.tip)


def _end(part: BindOffPart, tip: int) -> Round:
    """The toe is closed by a round, or by a row that takes both halves off."""
    if part.joins:
        return Round(Pass(StageName.BIND_OFF, 1, part.front(tip), 0), (), RoundKind.GRAFT)
    return even_round(StageName.BIND_OFF, 1, part.front(tip), part.back(tip), (0, 0))


def _toe(schedule: tuple[bool, ...], half: int) -> Iterator[Round]:
    for number, decreases in enumerate(reversed(schedule), start=1):
        ops = narrowed(half) if decreases else plain(half)
        half -= 2 * decreases
        yield even_round(StageName.TOE, number, ops, ops, (half, half))
