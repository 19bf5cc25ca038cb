"""A plan small enough to count by hand: two socks of eight, then twelve loops, with two rows of heel each."""

from fractions import Fraction

from assistant.journal import Entry
from assistant.journal_events import JournalEvent
from plans.conversation import Place, Standing
from plans.pattern import (
    BindOff,
    Construction,
    Direction,
    Facing,
    Finished,
    Group,
    Half,
    Heel,
    Needles,
    Pairing,
    Plan,
    PlanGauge,
    Row,
    Stage,
    StageName,
    Toe,
)  # fmt: skip
from plans.stitches import Op
from tests.assistant.journalling import PLAN

CONSTRUCTION = Construction(
    toe=Toe.WEDGE, heel=Heel.WRAPPED, bind_off=BindOff.DECREASE, direction=Direction.TOE_UP,
    needles=Needles.ONE_LONG_CIRCULAR, pairing=Pairing.IDENTICAL,
)  # fmt: skip
ROUND = ((1, Half.FRONT), (2, Half.FRONT), (2, Half.BACK), (1, Half.BACK))
CAST_ON = ((2, Half.FRONT), (2, Half.BACK), (1, Half.FRONT), (1, Half.BACK))
HEEL_2, HEEL_1 = ((2, Half.BACK),), ((1, Half.BACK),)

_PARTS = (
    (StageName.CAST_ON, 1, CAST_ON, ((Op.CO, 4),), 4),
    (StageName.TOE, 1, ROUND, ((Op.K, 4),), 4),
    (StageName.TOE, 2, ROUND, ((Op.K, 1), (Op.M1R, 1), (Op.K, 2), (Op.M1L, 1), (Op.K, 1)), 6),
    (StageName.FOOT, 1, ROUND[:2], ((Op.K, 6),), 6),
    (StageName.HEEL_TURN, 1, HEEL_2, ((Op.K, 6),), 6),
    (StageName.HEEL_TURN, 2, HEEL_2, ((Op.P, 6),), 6),
    (StageName.HEEL_TURN, 1, HEEL_1, ((Op.K, 6),), 6),
    (StageName.HEEL_TURN, 2, HEEL_1, ((Op.P, 6),), 6),
    (StageName.LEG, 1, ROUND, ((Op.K, 6),), 6),
    (StageName.LEG, 2, ROUND, ((Op.K, 6),), 6),
    (StageName.BIND_OFF, 1, ROUND, ((Op.BO, 6),), 0),
)
STAGES = ((0, 3), (4, 11), (12, 13), (14, 15), (16, 17), (18, 25), (26, 29))


def _rows() -> tuple[Row, ...]:
    rows: list[Row] = []
    for stage, number, halves, ops, after in _PARTS:
        for sock, half in halves:
            groups = tuple(Group(op=op, times=times) for op, times in ops)
            rows.append(
                Row(index=len(rows), stage=stage, round=number, sock=sock, half=half, facing=Facing.RS,
                    yarn=sock, ops=groups, turn_after=False, stitches_after=after)
            )  # fmt: skip
    return tuple(rows)


ROWS = _rows()
SMALL = Plan(
    name="small", socks=("first", "second"), construction=CONSTRUCTION,
    gauge=PlanGauge(stitches_per_10cm=Fraction(30), rounds_per_10cm=Fraction(42)),
    finished=Finished(circumference_cm=Fraction(4), foot_length_cm=Fraction(1), leg_cm=Fraction(1)),
    around=12, multiple=4, cast_on=8, gusset=0, turned=1, heel_depth=1,
    stages=tuple(Stage(name=ROWS[a].stage, first_row=a, last_row=b) for a, b in STAGES), rows=ROWS,
)  # fmt: skip
END = len(ROWS)


def at_row(index: int, step: int = 0, plan: str = PLAN) -> Standing:
    """Both socks at their next own row from a row on; the step within that row."""
    own = {sock: next((row.index for row in ROWS[index:] if row.sock == sock), END) for sock in (1, 2)}
    places = {sock: Place(row_index=row, step_index=step if row == index else 0) for sock, row in own.items()}
    return Standing(plan=plan, first=places[1], second=places[2])


def entry(
    event: JournalEvent, at_ms: int, *, seq: int = 1, stream_ms: int | None = None, **more: str
) -> Entry:
    """A line of the pair "socks"."""
    return Entry(seq, more.get("pair", "socks"), at_ms, stream_ms, event, more.get("heard"), more.get("said"))
