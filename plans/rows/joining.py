"""From the numbers of one sock to the rows of the pair; nothing is proven here."""

from collections.abc import Iterator
from fractions import Fraction

from plans.pattern import (
    Construction,
    Direction,
    Finished,
    Half,
    Order,
    Pairing,
    Plan,
    PlanGauge,
    Row,
    Stage,
    StageName,
)
from plans.quantities import Gauge
from plans.rows.bind_offs import bind_off, bind_off_rounds
from plans.rows.charting import charted
from plans.rows.cuffs import cuff, cuff_rounds
from plans.rows.from_the_cuff import rounds_from_the_cuff
from plans.rows.heels import gusset_rounds, heel
from plans.rows.increases import increase
from plans.rows.legs import leg_rounds
from plans.rows.needles import Placing, pair_rows
from plans.rows.parts import Numbers
from plans.rows.rounds import Round
from plans.rows.toes import cast_on, cup_round, foot_rounds, toe, toe_rounds, toe_steps
from plans.stitches import Op
from plans.wishes import SockSize, Wishes


def join(wishes: Wishes, size: SockSize, gauge: Gauge) -> Plan:
    """The whole pair as rows."""
    numbers = numbers_of(size)
    mirrored = toe(wishes.toe).mirrored
    first = tuple(charted(sock_rounds(wishes, size, numbers), wishes.chart))
    second = tuple(charted(sock_rounds(wishes, size, numbers, outer_first=False), wishes.chart)) if mirrored else first
    rows = pair_rows((first, second), placing(wishes, numbers))
    return Plan(
        name=wishes.name,
        socks=wishes.socks,
        construction=construction(wishes),
        gauge=PlanGauge(
            stitches_per_10cm=gauge.stitches_per_10cm, rounds_per_10cm=gauge.rounds_per_10cm
        ),
        finished=finished(wishes, size, gauge),
        around=size.around,
        multiple=size.multiple,
        cast_on=numbers.half + numbers.top if _down(wishes) else size.cast_on,
        gusset=size.gusset,
        turned=size.turned,
        heel_depth=heel(wishes.heel).depth(numbers),
        stages=stages(rows),
        rows=rows,
        charts=(wishes.chart,) if wishes.chart else (),
        calf=size.calf,
        closing=size.cast_on if _down(wishes) else 0,
    )


def _down(wishes: Wishes) -> bool:
    return wishes.direction is Direction.CUFF_DOWN


def numbers_of(size: SockSize) -> Numbers:
    """What the parts need to know."""
    return Numbers(size.around // 2, size.cast_on // 2, size.gusset, size.turned, size.calf)


def placing(wishes: Wishes, numbers: Numbers) -> Placing:
    """How the pair lies on the needles, and how it ends."""
    the_heel = heel(wishes.heel)
    opening = the_heel.opening
    return Placing(
        needles=wishes.needles,
        order=order(wishes),
        long_tail=bind_off(wishes.bind_off).long_tail,
        inside_out=bind_off(wishes.bind_off).inside_out,
        opens=opening[0](numbers)[0].op if opening else None,
        hemmed=cuff(wishes.cuff_style).hemmed,
        back_and_forth=frozenset(() if the_heel.made_last else the_heel.stages)
        | frozenset((StageName.TOE,) if toe(wishes.toe).cup else ()),
        down=_down(wishes),
    )


def order(wishes: Wishes) -> Order:
    """Whether both socks are on the needle; double-pointed ones hold one alone."""
    alone = wishes.one_at_a_time or wishes.needles.pointed
    return Order.ONE_AFTER_THE_OTHER if alone else Order.BOTH_AT_ONCE


def construction(wishes: Wishes) -> Construction:
    """What was chosen, and how the pair lies."""
    return Construction(
        toe=wishes.toe,
        heel=wishes.heel,
        bind_off=wishes.bind_off,
        direction=wishes.direction,
        needles=wishes.needles,
        pairing=Pairing.MIRRORED if toe(wishes.toe).mirrored else Pairing.IDENTICAL,
        second_tip="ktbl" if wishes.through_back_loop and not toe(wishes.toe).cup else "k",
        order=order(wishes),
        increase=wishes.increase,
        sole=wishes.sole,
        leg=wishes.leg_style,
        cuff=wishes.cuff_style,
    )


def sock_rounds(
    wishes: Wishes, size: SockSize, numbers: Numbers, *, outer_first: bool = True
) -> Iterator[Round]:
    """The rounds of one sock from the cast-on to the bind-off, and a heel made last."""
    if _down(wishes):
        yield from rounds_from_the_cuff(wishes, size, numbers)
        return
    half, tip = numbers.half, numbers.tip
    ways, the_heel = increase(wishes.increase), heel(wishes.heel)
    second_tip = Op.KTBL if wishes.through_back_loop else Op.K
    cup = cup_round(wishes.toe, numbers)
    if cup is not None:
        yield cup
    else:
        yield cast_on(tip)
        yield from toe_rounds(toe_steps(wishes.toe, tip, half), tip, second_tip, ways, outer_first=outer_first)
    yield from foot_rounds(size.even_rounds, half, wishes.sole)
    yield from gusset_rounds(size.gusset, half, ways)
    if not the_heel.made_last:
        yield from the_heel.rounds(numbers)
    yield from leg_rounds(size.leg_rounds, numbers, wishes.leg_style, the_heel, ways)
    yield from cuff_rounds(size.cuff_rounds, half, numbers.top, wishes.cuff_style)
    yield from bind_off_rounds(wishes.bind_off, half, numbers.top)
    if the_heel.made_last:
        yield from the_heel.rounds(numbers)


def finished(wishes: Wishes, size: SockSize, gauge: Gauge) -> Finished:
    """What the counts come to, relaxed, in cm; of a cuff that folds, the rounds that show."""
    depth = heel(wishes.heel).depth(numbers_of(size))
    foot = size.toe_rounds + size.even_rounds + 2 * size.gusset + depth
    return Finished(
        circumference_cm=Fraction(gauge.width(size.around).cm),
        foot_length_cm=Fraction(gauge.height(foot).cm),
        leg_cm=Fraction(gauge.height(size.leg_rounds + size.cuff_rounds).cm),
    )


def stages(rows: tuple[Row, ...]) -> tuple[Stage, ...]:
    """The runs of rows of one stage; a heel on the back of one sock is a run of its own."""
    starts = [place for place in range(len(rows)) if place == 0 or _begins(rows[place - 1], rows[place])]
    return tuple(
        Stage(name=rows[first].stage, first_row=first, last_row=end - 1)
        for first, end in zip(starts, [*starts[1:], len(rows)], strict=True)
    )


def _begins(before: Row, row: Row) -> bool:
    """Whether a row begins a stage: of another name, or the heel of the other sock after that of the one."""
    other_heel = row.stage is StageName.HEEL and row.round == 1 and before.half is row.half is Half.BACK
    return row.stage is not before.stage or other_heel
