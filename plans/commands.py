"""What can be asked of the engine: a closed set. A command is a wish and may be refused."""

from typing import Annotated, Literal

from pydantic import Field

from plans.pattern import Half, Sock
from plans.quantities import Length
from plans.record import Record


class Next(Record):
    """What was called is done; call the following."""

    kind: Literal["next"] = "next"


class Back(Record):
    """Go back a number of whole rounds."""

    kind: Literal["back"] = "back"
    rounds: int = 1


class Forward(Record):
    """Go on a number of whole rounds."""

    kind: Literal["forward"] = "forward"
    rounds: int = 1


class AtRound(Record):
    """Set the place: the given round of the stage in hand (asks first).

    Attributes:
        sock: the sock that is there, while the other stays where it is; None for both.
    """

    kind: Literal["at_round"] = "at_round"
    round: int
    sock: Sock | None = None


class RippedBack(Record):
    """The work was pulled out to a round of the stage in hand, or to the start of a stage (asks first).

    Attributes:
        sock: the sock that was pulled out, while the other stays where it is; None for both.
    """

    kind: Literal["ripped_back"] = "ripped_back"
    stage: str | None = None
    round: int | None = None
    sock: Sock | None = None


class WhereAmI(Record):
    """The step in hand: sock, half, stage, counts."""

    kind: Literal["where_am_i"] = "where_am_i"


class Undo(Record):
    """Take the last command back; stitches stay."""

    kind: Literal["undo"] = "undo"


class Redo(Record):
    """Take the last undo back."""

    kind: Literal["redo"] = "redo"


class Again(Record):
    """Say the last reply again."""

    kind: Literal["again"] = "again"


class HowMany(Record):
    """Stitches now and after the step, on this half."""

    kind: Literal["how_many"] = "how_many"


class HowFar(Record):
    """Rounds to go in this stage and in the sock."""

    kind: Literal["how_far"] = "how_far"


class WhatNext(Record):
    """The step after the one in hand."""

    kind: Literal["what_next"] = "what_next"


class Explain(Record):
    """How the step in hand is worked."""

    kind: Literal["explain"] = "explain"


class Finer(Record):
    """Call smaller steps."""

    kind: Literal["finer"] = "finer"


class Coarser(Record):
    """Call larger steps."""

    kind: Literal["coarser"] = "coarser"


class Mark(Record):
    """A note at this place."""

    kind: Literal["mark"] = "mark"


class Marks(Record):
    """Read the marks."""

    kind: Literal["marks"] = "marks"


class IHave(Record):
    """A count made with the fingers: compared with the plan, changes nothing.

    Attributes:
        half: None for the half in hand.
        sock: None for the sock in hand.
    """

    kind: Literal["i_have"] = "i_have"
    stitches: int
    half: Half | None = None
    sock: Sock | None = None


class TapeSays(Record):
    """What the tape measure says of the work so far, along the foot from the toe, or up the leg from the heel.

    Her real rounds follow from it; what is still to be knitted is planned anew, and offered (asks first).
    """

    kind: Literal["tape_says"] = "tape_says"
    part: Literal["foot", "leg"]
    length: Length


class YarnLeft(Record):
    """The ball was weighed.

    Attributes:
        sock: whose ball it is; None for that of the sock in hand, or for the one ball of both.
    """

    kind: Literal["yarn_left"] = "yarn_left"
    grams: int
    sock: Sock | None = None


class NewBall(Record):
    """A new ball is to be joined; None for the sock in hand."""

    kind: Literal["new_ball"] = "new_ball"
    sock: Sock | None = None


class Yes(Record):
    """The open question is affirmed."""

    kind: Literal["yes"] = "yes"


class No(Record):
    """The open question is denied."""

    kind: Literal["no"] = "no"


class Stop(Record):
    """Stop for today."""

    kind: Literal["stop"] = "stop"


Command = Annotated[
    Next | Back | Forward | AtRound | RippedBack | WhereAmI | Undo | Redo | Again | HowMany | HowFar | WhatNext
    | Explain | Finer | Coarser | Mark | Marks | IHave | TapeSays | YarnLeft | NewBall | Yes | No | Stop,
    Field(discriminator="kind"),
]  # fmt: skip
"""What the engine decides on. Commands to the surroundings (louder, pause listening, help, attention word) are the
session's and live in assistant.session."""

MOVING = frozenset({"next", "undo", "redo", "back", "forward", "at_round", "ripped_back"})
"""Kinds of commands that change the place."""

FROM_ONE = frozenset({"back", "forward", "at_round", "ripped_back"})
"""Kinds of commands whose number of rounds, or round, is never nought."""
