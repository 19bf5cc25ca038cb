"""What can be asked of the engine, what can happen, and what can be said: three closed sets.

A command is a wish and may be refused; an event has happened and carries its result, so that an old journal replays
the same after any change of our arithmetic. Replies are keys and values; the sentences are each language's own.
"""

from typing import Annotated, Literal

from pydantic import Field

from plans.commands import (
    Again,
    AtRound,
    Back,
    Coarser,
    Command,
    Explain,
    Finer,
    Forward,
    HowFar,
    HowMany,
    IHave,
    Mark,
    Marks,
    NewBall,
    Next,
    No,
    Redo,
    RippedBack,
    Stop,
    TapeSays,
    Undo,
    WhatNext,
    WhereAmI,
    YarnLeft,
    Yes,
)
from plans.pattern import Half, Plan, Sock
from plans.record import Record
from plans.replies import Measure, Problem, Reply, Value

__all__ = [
    "Advanced", "Again", "Answered", "Asked", "AtRound", "Back", "BallBegun", "Begun", "Coarser", "Command",
    "Counted", "Decision", "Event", "Explain", "Finer", "Forward", "Grain", "GrainSet", "HowFar", "HowMany", "IHave",
    "Mark", "Marked", "Marks", "Measure", "NewBall", "Next", "No", "Place", "PlaceSet", "PlanId", "Problem",
    "Progress", "Redo", "Redone", "Replanned", "Reply", "RippedBack", "Standing", "Stop", "Stopped",
    "TapeSays", "Undo", "Undone", "Value", "Weighed", "WhatNext", "WhereAmI", "YarnLeft", "Yes",
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
    """Another plan took over: of the plan file as it was edited, or made anew from what the tape measure said.

    Attributes:
        written: the plan of the edited file, where the one that took over has the measured rounds besides.
    """

    kind: Literal["replanned"] = "replanned"
    now: Standing
    why: Literal["edited", "measured"] = "edited"
    written: PlanId | None = None


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


class Weighed(Record):
    """A ball was weighed; `socks` it serves."""

    kind: Literal["weighed"] = "weighed"
    grams: int
    socks: tuple[Sock, ...]
    at: Standing


class BallBegun(Record):
    """A new ball was begun for a sock."""

    kind: Literal["ball_begun"] = "ball_begun"
    sock: Sock
    at: Standing


class GrainSet(Record):
    """Steps are called finer or coarser."""

    kind: Literal["grain_set"] = "grain_set"
    grain: Grain


class Asked(Record):
    """A question was put; the next yes carries it out."""

    kind: Literal["asked"] = "asked"
    wish: AtRound | RippedBack | Next | Stop | TapeSays


class Answered(Record):
    """The open question was answered or dropped."""

    kind: Literal["answered"] = "answered"
    yes: bool


class Stopped(Record):
    """The knitter stopped for the day."""

    kind: Literal["stopped"] = "stopped"


Event = Annotated[
    Begun | Advanced | PlaceSet | Replanned | Undone | Redone | Counted | Marked | Weighed | BallBegun | GrainSet
    | Asked | Answered | Stopped,
    Field(discriminator="kind"),
]  # fmt: skip


# --- state -----------------------------------------------------------------------------------------------------

class Progress(Record):
    """All the engine knows: a fold over the events.

    Attributes:
        past: what undo goes back to, oldest first.
        undone: what redo goes back to, next one last.
        question: the wish that waits for a yes.
        balls: new balls that were begun, oldest first.
    """

    now: Standing
    past: tuple[Standing, ...] = ()
    undone: tuple[Standing, ...] = ()
    grain: Grain = "follow"
    question: AtRound | RippedBack | Next | Stop | TapeSays | None = None
    marks: tuple[Standing, ...] = ()
    balls: tuple[BallBegun, ...] = ()


class Decision(Record):
    """What a command comes to: events to be written down, then the reply to be spoken.

    Attributes:
        plan: a plan that the events stand in and that is new: to be kept before them.
    """

    events: tuple[Event, ...]
    reply: Reply
    plan: Plan | None = None
