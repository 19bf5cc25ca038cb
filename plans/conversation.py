"""What can be asked of the engine, what can happen, and what can be said: three closed sets.

A command is a wish and may be refused; an event has happened and carries its result, so that an old journal replays
the same after any change of our arithmetic. Replies are keys and values; the sentences are each language's own.
"""

from typing import Annotated, Literal

from pydantic import Field

from plans.pattern import Half, Sock
from plans.record import Record
from plans.replies import Measure, Problem, Reply, Value

__all__ = [
    "Advanced", "Again", "Answered", "Asked", "AtRound", "Back", "Begun", "Coarser", "Command", "Counted",
    "Decision", "Event", "Finer", "Forward", "Grain", "GrainSet", "HowFar", "HowMany", "IHave", "Mark", "Marked",
    "Marks", "Measure", "Next", "No", "Place", "PlaceSet", "PlanId", "Problem", "Progress", "Redo", "Redone",
    "Replanned", "Reply", "RippedBack", "Standing", "Stop", "Stopped", "Undo", "Undone", "Value", "WhatNext",
    "WhereAmI", "Yes",
]  # fmt: skip

PlanId = str
"""SHA-256 of a plan's canonical JSON, in hex."""


# --- where -----------------------------------------------------------------------------------------------------

class Place(Record):
    """The next step of one sock: a row, and a step within it. Past the last row: finished."""

    row_index: int
    step_index: int = 0


class Standing(Record):
    """Where both socks are, in which plan. The step in hand begins at the earlier of the two places."""

    plan: PlanId
    first: Place
    second: Place


Grain = Literal["follow", "group", "half", "side", "round"]
"""How much one call covers; "follow" goes with the work: rows in the heel, sides in increase rounds, else rounds."""


# --- commands --------------------------------------------------------------------------------------------------

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
    | Finer | Coarser | Mark | Marks | IHave | Yes | No | Stop,
    Field(discriminator="kind"),
]  # fmt: skip
"""What the engine decides on. Commands to the surroundings (louder, pause listening, help, attention word) are the
session's and live in assistant.session."""


# --- events ----------------------------------------------------------------------------------------------------

class Begun(Record):
    """A pair was begun from a plan."""

    kind: Literal["begun"] = "begun"
    now: Standing


class Advanced(Record):
    """The step in hand was done."""

    kind: Literal["advanced"] = "advanced"
    now: Standing


class PlaceSet(Record):
    """The place was moved by back, forward, "I am at" or ripping back."""

    kind: Literal["place_set"] = "place_set"
    now: Standing
    why: Literal["back", "forward", "at_round", "ripped_back"]


class Replanned(Record):
    """Another plan took over."""

    kind: Literal["replanned"] = "replanned"
    now: Standing


class Undone(Record):
    """The last change was taken back."""

    kind: Literal["undone"] = "undone"
    now: Standing


class Redone(Record):
    """The last undo was taken back."""

    kind: Literal["redone"] = "redone"
    now: Standing


class Counted(Record):
    """A count was made and compared."""

    kind: Literal["counted"] = "counted"
    sock: Sock
    half: Half
    stitches: int
    expected: tuple[int, ...]
    right: bool


class Marked(Record):
    """A note at this place."""

    kind: Literal["marked"] = "marked"
    at: Standing


class GrainSet(Record):
    """Steps are called finer or coarser."""

    kind: Literal["grain_set"] = "grain_set"
    grain: Grain


class Asked(Record):
    """A question was put; the next yes carries it out."""

    kind: Literal["asked"] = "asked"
    wish: AtRound | RippedBack | Next | Stop


class Answered(Record):
    """The open question was answered or dropped."""

    kind: Literal["answered"] = "answered"
    yes: bool


class Stopped(Record):
    """The knitter stopped for the day."""

    kind: Literal["stopped"] = "stopped"


Event = Annotated[
    Begun | Advanced | PlaceSet | Replanned | Undone | Redone | Counted | Marked | GrainSet | Asked | Answered
    | Stopped,
    Field(discriminator="kind"),
]  # fmt: skip


# --- state -----------------------------------------------------------------------------------------------------

class Progress(Record):
    """All the engine knows: a fold over the events.

    Attributes:
        past: what undo goes back to, oldest first.
        undone: what redo goes back to, next one last.
        question: the wish that waits for a yes.
    """

    now: Standing
    past: tuple[Standing, ...] = ()
    undone: tuple[Standing, ...] = ()
    grain: Grain = "follow"
    question: AtRound | RippedBack | Next | Stop | None = None
    marks: tuple[Standing, ...] = ()


class Decision(Record):
    """What a command comes to: events to be written down, then the reply to be spoken."""

    events: tuple[Event, ...]
    reply: Reply
