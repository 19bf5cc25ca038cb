"""A plan as data: what the knitter wishes, and every row of both socks in the order the needle gives them."""

from enum import StrEnum
from typing import Annotated, Literal

from pydantic import Field

from plans.figures import Calf, Decimal, Finished, GiveOrTake, PlanGauge
from plans.names import BindOff, Cuff, Heel, Increase, Leg, Sole, Toe
from plans.quantities import Length
from plans.record import Record
from plans.stitches import Op

SCHEMA_VERSION = 1

Sock = Literal[1, 2]
Count = Annotated[int, Field(ge=0)]


class Half(StrEnum):
    """Front is the instep, back is sole and heel."""

    FRONT = "front"
    BACK = "back"


class Facing(StrEnum):
    """Which side of the fabric faces the knitter."""

    RS = "RS"
    WS = "WS"


class StageName(StrEnum):
    """The parts of a sock, in the order they are knitted from the toe up; then those of other pieces."""

    CAST_ON = "cast-on"
    TOE = "toe"
    FOOT = "foot"
    GUSSET = "gusset"
    HEEL_TURN = "heel-turn"
    HEEL_FLAP = "heel-flap"
    HEEL = "heel"
    LEG = "leg"
    CUFF = "cuff"
    BIND_OFF = "bind-off"
    BRIM = "brim"
    BODY = "body"
    CROWN = "crown"
    HAND = "hand"
    SLEEVE = "sleeve"
    TOP = "top"


class Colour(StrEnum):
    """Which of the two yarns of a round in two colours."""

    MAIN = "main"
    CONTRAST = "contrast"


class Act(StrEnum):
    """What is done without working a loop. `follows` tells whether it comes after the row's stitches."""

    PREPARE_TIPS = "prepare the tips"          # hold both tips side by side, tail in place
    LOOSELY = "cast on loosely"                # over both tips held together, so that the cuff's edge stretches
    SECURE_TAIL = "secure the tail"            # trap the tail under the working yarn
    SLIDE_AWAY = "slide along"                 # push the cast-on sock along to make room for the other
    READY_TO_KNIT = "draw the back tip"        # rest the back loops on the cable, front facing
    JOIN = "join in the round"                 # after an open cast-on, the loops not twisted
    PULL_WASTE = "pull out the waste yarn"     # a heel made last is opened
    SNIP = "snip the heel open"                # the same where a thread holds its stitches
    JOIN_YARN = "join the yarn"
    INSIDE_OUT = "turn inside out"             # the sock, through between its needles
    FIRST_NEEDLE = "take the first needle"     # of two circulars, the fronts'
    SECOND_NEEDLE = "take the second needle"   # the backs'
    BRING_LOOP = "bring the waiting loop"      # in the bind-off, over to the second needle
    ONE_NEEDLE = "put it on one needle"         # the back, off two double-pointed ones, for the heel
    SLIP_OVER = "slip the rest over"           # to the next double-pointed needle, which works it with its own
    NEXT_NEEDLE = "take the next needle"       # of the double-pointed ones; implied by a row's needles
    CHANGE_YARN = "change yarn"
    SNUG = "snug"                              # pull the first two stitches snug
    PULL_TAIL = "pull the tail"
    MARKER = "marker"                          # hang the marker on the front of the first sock
    LIFELINE = "lifeline"
    TRY_ON = "try on"
    MEASURE = "measure"
    TURN_CLOCKWISE = "turn clockwise"
    TURN_ANTICLOCKWISE = "turn anticlockwise"
    TURN = "turn"                              # short rows and flap rows
    CUT = "cut"
    CUT_LONG = "cut a long tail"               # for sewing: three to four times the width round the cuff
    SEW_HEM = "sew the hem down"
    WEAVE_IN = "weave in"
    WASH = "wash"

    @property
    def follows(self) -> bool:
        """Whether it comes after the stitches of its row."""
        return self in _AFTER

    @property
    def stands_alone(self) -> bool:
        """Whether it is called as a step of its own at every grain, because it takes a while."""
        return self in _ALONE


_AFTER = {Act.SLIDE_AWAY, Act.READY_TO_KNIT, Act.TURN_CLOCKWISE, Act.TURN_ANTICLOCKWISE, Act.TURN, Act.CUT,
          Act.CUT_LONG, Act.SEW_HEM, Act.WEAVE_IN, Act.WASH, Act.PULL_TAIL}  # fmt: skip
_ALONE = {Act.PREPARE_TIPS, Act.LOOSELY, Act.SECURE_TAIL, Act.SLIDE_AWAY, Act.READY_TO_KNIT, Act.LIFELINE,
          Act.TRY_ON,
          Act.JOIN, Act.MEASURE, Act.CUT, Act.CUT_LONG, Act.SEW_HEM, Act.WEAVE_IN, Act.WASH, Act.MARKER, Act.PULL_TAIL,
          Act.PULL_WASTE, Act.SNIP, Act.JOIN_YARN, Act.INSIDE_OUT}  # fmt: skip


class Group(Record):
    """One operation worked `times` times in a row, as "k 14".

    Attributes:
        wrap: the wraps of the loops taken are lifted and worked with them.
        double: the loops taken are German double stitches or shadow twins.
        colour: the yarn it is worked with, where a round has two.
    """

    op: Op
    times: Annotated[int, Field(ge=1)]
    wrap: bool = False
    double: bool = False
    colour: Colour = Colour.MAIN


class ChartRow(Record):
    """The row of a chart that a row of the plan follows; rows count from 1 at the bottom."""

    name: str
    row: Annotated[int, Field(ge=1)]
    of: Annotated[int, Field(ge=1)]


class Chart(Record):
    """Rows of symbols that repeat across the stitches (see plans.charts for what each symbol means).

    Attributes:
        rows: each as drawn, its first stitch at the right end; the first row, drawn at the bottom, comes first.
        on: where it lies: centred on the front, or all around.
        stages: the parts that follow it.
        yarns: what the main and the contrasting yarn are called, where it is one of colours.
    """

    name: str
    rows: tuple[str, ...]
    on: Literal["front", "around"]
    stages: tuple[StageName, ...]
    yarns: tuple[str, str] | None = None


class Row(Record):
    """One pass across one half of one sock.

    Attributes:
        index: its place in the plan, from 0.
        round: number of the round within its stage, from 1; the cast-on is round 1 of its own stage. In the
            heel, where rows go back and forth, the row's number within the turn or the flap.
        yarn: the ball it is worked with, 1 or 2.
        turn_after: the work is turned after it.
        stitches_after: loops on this half after the row.
        acts: what uses no loop, in order; those that follow the stitches come last.
        needles: in the round on double-pointed needles, the loops that it leaves on each, one needle after the other.
        slipped: of the first of them, the loops that are slipped on to the next before that is taken up.
        chart: the row of a chart that it follows.
    """

    index: Count
    stage: StageName
    round: Annotated[int, Field(ge=1)]
    sock: Sock
    half: Half
    facing: Facing
    yarn: Sock
    ops: tuple[Group, ...]
    turn_after: bool
    stitches_after: Count
    acts: tuple[Act, ...] = ()
    needles: tuple[Count, ...] = ()
    slipped: Count = 0
    chart: ChartRow | None = None


class Stage(Record):
    """A run of rows with one name; the heel stages occur once for each sock."""

    name: StageName
    first_row: Count
    last_row: Count


class Direction(StrEnum):
    """Where the sock begins."""

    TOE_UP = "toe-up"
    CUFF_DOWN = "cuff-down"
    AS_WRITTEN = "as-written"


class Needles(StrEnum):
    """How the loops lie."""

    ONE_LONG_CIRCULAR = "one-long-circular"
    TWO_CIRCULARS = "two-circulars"            # fronts on the one, backs on the other
    DOUBLE_POINTED = "double-pointed"          # five: a half on two of them, one sock at a time
    FOUR_DOUBLE_POINTED = "double-pointed-four"  # four: the front on one of them, the back on two
    ONE_CIRCULAR = "one-circular"              # one piece, its whole round on the needle: no halves, all is front

    @property
    def pointed(self) -> bool:
        """Whether they are double-pointed: they hold one sock, and it is not turned but in a heel."""
        return self in {Needles.DOUBLE_POINTED, Needles.FOUR_DOUBLE_POINTED}


class Order(StrEnum):
    """Whether the socks are on the needle together or the second is begun when the first is done."""

    BOTH_AT_ONCE = "both-at-once"
    ONE_AFTER_THE_OTHER = "one-after-the-other"


class Pairing(StrEnum):
    """Whether the second sock is the first again or its mirror image."""

    IDENTICAL = "identical"
    MIRRORED = "mirrored"


class Construction(Record):
    """Which of the constructions, and how the pair lies on the needle.

    Attributes:
        toe, heel, bind_off: None where the rounds are written by hand.
    """

    toe: Toe | None
    heel: Heel | None
    bind_off: BindOff | None
    direction: Direction
    needles: Needles
    pairing: Pairing
    second_tip: Literal["k", "ktbl"] = "k"     # how the back's cast-on loops are worked in round 1
    order: Order = Order.BOTH_AT_ONCE
    increase: Increase = Increase("make-one")
    sole: Sole = Sole("plain")
    leg: Leg = Leg("straight")
    cuff: Cuff = Cuff("rib-1x1")


class Written(Record):
    """A piece written round by round: its pattern in the usual abbreviations, in one agreed form.

    Attributes:
        pattern: the rounds as `plans.written` prints them; the proof reads them again.
        yarns: what the main and the contrasting yarn are called, where there are two.
    """

    pattern: str
    yarns: tuple[str, str] | None = None


class Plan(Record):
    """A proven pair. Only `plans.making.make_plan` hands one out.

    Attributes:
        around: stitches of one sock's foot and leg.
        multiple: what `around` is a multiple of.
        cast_on: loops of one sock on both tips together.
        closing: of a sock from the cuff down, the loops of its toe that are grafted.
        gusset: stitches added on each side of the sole.
        turned: stitches marked on each side of the heel; of a heel made last, its decrease rounds.
        heel_depth: rounds of the foot's length that the heel makes, without a gusset.
        notes: keys of what was estimated or rounded, for a person (see plans.conversation.Reply).
        socks: their names; a single piece has one.
        charts: the charts that rows follow.
        calf: how the leg widens; None where it is straight.
        give_or_take: how far off the finished measures may be; None where no swatch was counted for them.
        wishes: the plan file that it was made from, without its comments; empty where it was made from none.
        written: the pattern of a piece written round by round; None for a sock worked out from measures.
    """

    schema_version: Literal[1] = 1
    name: str
    socks: tuple[str, str] | tuple[str]
    construction: Construction
    gauge: PlanGauge
    finished: Finished
    around: Count
    multiple: Count
    cast_on: Count
    gusset: Count
    turned: Count
    heel_depth: Count
    stages: tuple[Stage, ...]
    rows: tuple[Row, ...]
    charts: tuple[Chart, ...] = ()
    calf: Calf | None = None
    give_or_take: GiveOrTake | None = None
    wishes: str = ""
    written: Written | None = None
    closing: Count = 0

    @property
    def tip(self) -> int:
        """Loops of each half at the tip of the toe."""
        return (self.closing or self.cast_on) // 2

    @property
    def cuff_down(self) -> bool:
        """Whether it begins at the cuff."""
        return self.construction.direction is Direction.CUFF_DOWN

    @property
    def half(self) -> int:
        """Stitches on each half of foot and leg."""
        return self.around // 2


__all__ = [
    "Act", "BindOff", "Calf", "Chart", "ChartRow", "Colour", "Construction", "Cuff", "Decimal", "Direction", "Facing",
    "Finished", "GiveOrTake", "Group", "Half", "Heel", "Increase", "Leg", "Length", "Needles", "Order", "Pairing",
    "Plan", "PlanGauge", "Row", "Sock", "Sole", "Stage", "StageName", "Toe", "Written",
]  # fmt: skip
