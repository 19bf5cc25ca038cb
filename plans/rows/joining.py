"""From the numbers of one sock to the rows of the pair; nothing is proven here."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import groupby

from plans.pattern import (
    Construction,
    Direction,
    Finished,
    Needles,
    Pairing,
    Plan,
    PlanGauge,
    Row,
    Stage,
)
from plans.quantities import Gauge
from plans.rows.charting import charted
from plans.rows.heels import gusset_rounds, heel_round
from plans.rows.legs import bind_off, cuff_rounds, leg_rounds
from plans.rows.needles import pair_rows
from plans.rows.rounds import Round
from plans.rows.toes import cast_on, foot_rounds, toe_rounds, toe_schedule
from plans.stitches import Op
from plans.wishes import SockSize, Wishes


def join(wishes: Wishes, size: SockSize, gauge: Gauge) -> Plan:
    """The whole pair as rows."""
    rows = pair_rows(cast_on(size.cast_on // 2), charted(sock_rounds(wishes, size), wishes.chart), wishes.bind_off)
    return Plan(
        name=wishes.name,
        socks=wishes.socks,
        construction=construction(wishes),
        gauge=PlanGauge(
            stitches_per_10cm=gauge.stitches_per_10cm, rounds_per_10cm=gauge.rounds_per_10cm
        ),
        finished=finished(size, gauge),
        around=size.around,
        multiple=size.multiple,
        cast_on=size.cast_on,
        gusset=size.gusset,
        turned=size.turned,
        stages=stages(rows),
        rows=rows,
        charts=(wishes.chart,) if wishes.chart else (),
    )


def construction(wishes: Wishes) -> Construction:
    """What was chosen, and how the pair lies."""
    return Construction(
        toe=wishes.toe,
        heel=wishes.heel,
        bind_off=wishes.bind_off,
        direction=Direction.TOE_UP,
        needles=Needles.ONE_LONG_CIRCULAR,
        pairing=Pairing.IDENTICAL,
        second_tip="ktbl" if wishes.through_back_loop else "k",
    )


def sock_rounds(wishes: Wishes, size: SockSize) -> Iterator[Round]:
    """The rounds of one sock from the first of the toe to the bind-off."""
    half, tip = size.around // 2, size.cast_on // 2
    schedule = toe_schedule(wishes.toe, tip, half)
    yield from toe_rounds(schedule, tip, Op.KTBL if wishes.through_back_loop else Op.K)
    yield from foot_rounds(size.even_rounds, half)
    yield from gusset_rounds(size.gusset, half)
    yield heel_round(wishes.heel, half, size.gusset, size.turned)
    yield from leg_rounds(size.leg_rounds, half)
    yield from cuff_rounds(size.cuff_rounds, half)
    yield bind_off(wishes.bind_off, half)


def finished(size: SockSize, gauge: Gauge) -> Finished:
    """What the counts come to, relaxed, in cm; the heel turn lies `turned` rounds deep under the foot."""
    foot = size.toe_rounds + size.even_rounds + 2 * size.gusset + size.turned
    return Finished(
        circumference_cm=Fraction(gauge.width(size.around).cm),
        foot_length_cm=Fraction(gauge.height(foot).cm),
        leg_cm=Fraction(gauge.height(size.leg_rounds + size.cuff_rounds).cm),
    )


def stages(rows: tuple[Row, ...]) -> tuple[Stage, ...]:
    """The runs of rows of one stage."""
    runs = [list(run) for _, run in groupby(rows, key=lambda row: row.stage)]
    return tuple(Stage(name=run[0].stage, first_row=run[0].index, last_row=run[-1].index) for run in runs)
