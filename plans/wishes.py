"""What the knitter has and wants: the content of a plan file, and the size that follows from it."""

from enum import StrEnum
from typing import Annotated, Any

from pydantic import Field, model_validator

from plans.amounts import Thread, Weight
from plans.conversation import Reply
from plans.pattern import BindOff, Calf, Chart, Cuff, Direction, Heel, Increase, Leg, Needles, Sole, Toe
from plans.quantities import Length, Number
from plans.record import Record


class Worked(StrEnum):
    """How a swatch was knitted: round and round, or back and forth, which many knit and purl unlike."""

    ROUND = "round"
    FLAT = "flat"


class Height(StrEnum):
    """How high a leg comes, by its trade name."""

    ANKLE = "ankle"
    CREW = "crew"
    KNEE = "knee"


class Swatch(Record):
    """Stitches and rounds counted over a width of the swatch, half stitches included.

    Attributes:
        washed: counted after washing and drying, as the socks will be.
    """

    stitches: Number
    rounds: Number
    over: Length = Length.parse("10cm")
    worked: Worked = Worked.ROUND
    washed: bool = True


class Count(Record):
    """One more count: stitches, rounds or both, at another place or over another width."""

    stitches: Number | None = None
    rounds: Number | None = None
    over: Length = Length.parse("10cm")
    worked: Worked = Worked.ROUND
    washed: bool = True


class Wishes(Record):
    """All that a plan file holds. What is None is estimated, and said to be.

    Attributes:
        counts: more counts of the swatch, or of other swatches in the same yarn and needles.
        foot_length: heel to longest toe, standing.
        shoe: a shoe size such as "EU 39", used where the foot length is not given.
        ball: circumference at the ball of the foot.
        ankle: circumference at the narrowest place above the ankle bones.
        heel_diagonal: from the front of the ankle round the back of the heel.
        calf: circumference at its widest.
        leg: from the top of the heel flap to the top edge, cuff included.
        leg_height: the same by name, in proportion to the foot, where no length is given.
        cuff: depth of the ribbing.
        ease_percent: how much smaller than the foot around (negative ease).
        around: the whole sock's stitches, where she wants a number of her own.
        cast_on: the whole sock's cast-on loops, both needle tips together.
        gusset: stitches added on each side of the sole.
        foot_rounds: plain rounds of the foot, between toe and gusset.
        leg_rounds: rounds of the leg below its cuff.
        cuff_rounds: rounds of ribbing.
        calf_shape: where the increases of a calf-shaped leg stand.
        needle: how thick the needle is.
        skein: what one ball weighs.
        skein_length: how long its yarn is.
        skeins: balls there are, for both socks together.
        direction: which end it begins at.
        increase: how toe and gusset become wider.
        leg_style: how the leg below its cuff is knitted.
        cuff_style: what the cuff is.
        one_at_a_time: the second sock is begun when the first is done.
        practice: the fewest stitches that still show every step.
        chart: what foot or leg follow in place of plain stitches.
    """

    schema_version: Annotated[int, Field(ge=1, le=1)] = 1
    name: str = "socks"
    socks: tuple[str, str] = ("first", "second")
    swatch: Swatch
    counts: tuple[Count, ...] = ()
    foot_length: Length | None = None
    shoe: str | None = None
    ball: Length | None = None
    ankle: Length | None = None
    heel_diagonal: Length | None = None
    calf: Length | None = None
    leg: Length | None = None
    leg_height: Height | None = None
    cuff: Length | None = None
    ease_percent: Number | None = None
    around: int | None = None
    cast_on: int | None = None
    gusset: int | None = None
    foot_rounds: int | None = None
    leg_rounds: int | None = None
    cuff_rounds: int | None = None
    calf_shape: Calf | None = None
    needle: Length | None = None
    skein: Weight | None = None
    skein_length: Thread | None = None
    skeins: int | None = None
    direction: Direction = Direction.TOE_UP
    toe: Toe = Toe("wedge")
    increase: Increase = Increase("make-one")
    sole: Sole = Sole("plain")
    heel: Heel = Heel("wrapped")
    leg_style: Leg = Leg("straight")
    cuff_style: Cuff = Cuff("rib-1x1")
    bind_off: BindOff = BindOff("decrease")
    needles: Needles = Needles.ONE_LONG_CIRCULAR
    one_at_a_time: bool = False
    through_back_loop: bool = False
    practice: bool = False
    chart: Chart | None = None

    @model_validator(mode="before")
    @classmethod
    def _usual_from_the_cuff(cls, values: Any) -> Any:  # noqa: ANN401 (whatever was handed over)
        """Heel and end that are usual from the cuff down, where none were wished for."""
        if isinstance(values, dict) and values.get("direction") == Direction.CUFF_DOWN:
            return {"heel": Heel("french"), "bind_off": BindOff("graft"), **values}
        return values


class SockSize(Record):
    """The numbers of one sock, all in stitches and rounds.

    Attributes:
        around: N, stitches of foot and leg.
        multiple: what `around` had to be a multiple of.
        cast_on: loops on both tips together (2c).
        toe_rounds: rounds from the cast-on to the full width.
        even_rounds: plain rounds of the foot before the gusset.
        gusset: g, stitches added on each side of the sole; the gusset takes 2g rounds.
        turned: w, stitches marked on each side of the heel turn; it counts as w rounds of length.
        leg_rounds: rounds of the leg without the cuff.
        cuff_rounds: rounds of ribbing.
        calf: how the leg widens; None where it does not.
        target_circumference: what was aimed at, before rounding to stitches.
        target_foot: finished length of the foot aimed at.
        target_leg: finished leg aimed at, cuff included.
        notes: what was estimated, rounded or looks doubtful, to be said.
    """

    around: int
    multiple: int
    cast_on: int
    toe_rounds: int
    even_rounds: int
    gusset: int
    turned: int
    leg_rounds: int
    cuff_rounds: int
    target_circumference: Length
    target_foot: Length
    target_leg: Length
    calf: Calf | None = None
    notes: tuple[Reply, ...] = ()
