"""Rows and head put together into a plan."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from plans.pattern import (
    Chart,
    Construction,
    Direction,
    Finished,
    Half,
    Needles,
    Pairing,
    Plan,
    PlanGauge,
    Row,
    Stage,
    StageName,
    Written,
)
from plans.quantities import Length
from plans.replies import Problem

_ENDS = frozenset({StageName.CAST_ON, StageName.BIND_OFF})


@dataclass(frozen=True)
class Head:
    """What a pattern file says beside its rounds.

    Attributes:
        names: of the pieces.
        size: which of the sizes, from 0.
        swatch: stitches, rounds, and over which length (10 cm where left out).
        charts: by name.
    """

    pieces: int
    needles: Needles
    name: str = ""
    names: tuple[str, ...] = ()
    sizes: tuple[str, ...] = ()
    size: int = 0
    multiple: int = 1
    swatch: Mapping[str, Any] = field(default_factory=dict)
    yarns: tuple[str, str] | None = None
    charts: Mapping[str, Chart] = field(default_factory=dict)


def assembled(head: Head, rows: tuple[Row, ...]) -> Plan | Problem:
    """The plan of a piece written by hand; its own pattern is still to be printed into it."""
    gauge = _gauge(head)
    if isinstance(gauge, Problem):
        return gauge
    around, cast_on = widest(rows), cast_on_loops(rows)
    if cast_on % head.multiple:
        return Problem.of("written-not-a-multiple", "", stitches=cast_on, multiple=head.multiple)
    return Plan(
        name=head.name,
        socks=(head.names[0], head.names[1]) if len(head.names) == 2 else (head.names[0],),
        construction=Construction(
            toe=None,
            heel=None,
            bind_off=None,
            direction=Direction.AS_WRITTEN,
            needles=head.needles,
            pairing=Pairing.IDENTICAL,
        ),
        gauge=gauge,
        finished=Finished(
            circumference_cm=around * 10 / gauge.stitches_per_10cm,
            foot_length_cm=Fraction(0),
            leg_cm=Fraction(0),
            height_cm=rounds_high(rows) * 10 / gauge.rounds_per_10cm,
        ),
        around=around,
        multiple=head.multiple,
        cast_on=cast_on,
        gusset=0,
        turned=0,
        heel_depth=0,
        stages=stages_of(rows),
        rows=rows,
        written=Written(pattern="", yarns=head.yarns),
    )


def _gauge(head: Head) -> PlanGauge | Problem:
    over: Length = head.swatch.get("over", Length.of_cm(10))
    stitches, rounds = head.swatch["stitches"], head.swatch["rounds"]
    if over.mm <= 0 or stitches <= 0 or rounds <= 0:
        return Problem.of("written-swatch-needed", "", name="swatch")
    scale = Length.of_cm(10).mm / over.mm
    return PlanGauge(stitches_per_10cm=stitches * scale, rounds_per_10cm=rounds * scale)


def stages_of(rows: tuple[Row, ...]) -> tuple[Stage, ...]:
    """The runs of rows of one part; heels on the backs of one sock after the other are a run each."""
    begins = [at for at, row in enumerate(rows) if at == 0 or _begins(rows[at - 1], row)]
    ends = [*begins[1:], len(rows)]
    return tuple(
        Stage(name=rows[first].stage, first_row=first, last_row=end - 1)
        for first, end in zip(begins, ends[: len(begins)], strict=True)
    )


def _begins(before: Row, row: Row) -> bool:
    """Whether a row is of another part, or of another sock whose back begins to count again."""
    backs = before.half is row.half is Half.BACK
    return row.stage is not before.stage or (backs and before.sock != row.sock and row.round < before.round)


def widest(rows: tuple[Row, ...]) -> int:
    """The most stitches that the first piece has between two rounds."""
    now: dict[object, int] = {}
    most = 0
    for row in rows:
        if row.sock == 1:
            now[row.half] = row.stitches_after
            most = max(most, sum(now.values()))
    return most


def cast_on_loops(rows: tuple[Row, ...]) -> int:
    """Loops that the first piece was cast on with."""
    return sum(row.stitches_after for row in rows if row.sock == 1 and row.stage is StageName.CAST_ON)


def rounds_high(rows: tuple[Row, ...]) -> int:
    """Rounds of the first piece between cast-on and bind-off."""
    mine = [row for row in rows if row.sock == 1 and row.stage not in _ENDS]
    return len({(row.stage, row.round) for row in mine})
