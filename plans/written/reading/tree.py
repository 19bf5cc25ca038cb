"""What a pattern says, before it is known how many stitches there are."""

from dataclasses import dataclass
from typing import Literal

from plans.pattern import Act, Colour, Facing, Half, Sock, StageName
from plans.stitches import Op
from plans.written.reading.tokens import Token


@dataclass(frozen=True, slots=True)
class ToEnd:
    """As often as it goes: up to `rest` stitches before the end, or before the next marker."""

    rest: int = 0
    marker: bool = False


Times = int | ToEnd


@dataclass(frozen=True, slots=True)
class Do:
    """One operation."""

    op: Op
    times: Times
    at: Token
    wrap: bool = False
    double: bool = False
    colour: Colour = Colour.MAIN


@dataclass(frozen=True, slots=True)
class Again:
    """Several things that repeat."""

    work: tuple["Item", ...]
    times: Times
    at: Token


@dataclass(frozen=True, slots=True)
class Aside:
    """What uses no loop."""

    act: Act
    at: Token


@dataclass(frozen=True, slots=True)
class FromChart:
    """The row of a chart that is due, across `times` of its repeats."""

    name: str
    times: Times
    at: Token


@dataclass(frozen=True, slots=True)
class OfChart:
    """Tells that the stitches written out are a chart's row."""

    name: str
    row: int
    of: int
    at: Token


Item = Do | Again | Aside | FromChart | OfChart


@dataclass(frozen=True, slots=True)
class Who:
    """On which socks and halves; None for all there are. `halves` is "each" where each half is worked alike."""

    sock: Sock | None = None
    half: Half | Literal["each"] | None = None


@dataclass(frozen=True, slots=True)
class Segment:
    """Work on one part of a round.

    Attributes:
        exactly: the acts of the row, where they are all named.
    """

    who: Who
    work: tuple[Item, ...]
    at: Token
    exactly: tuple[Act, ...] | None = None


@dataclass(frozen=True, slots=True)
class Part:
    """A heading."""

    stage: StageName
    at: Token


@dataclass(frozen=True, slots=True)
class Rounds:
    """Rounds of these numbers, all worked alike.

    Attributes:
        numbers: None where the next one is meant; none at all of a size that leaves these rounds out: "1-0 (4, 8)".
        count: stitches that the pattern says there are afterwards.
    """

    numbers: tuple[int, ...] | None
    segments: tuple[Segment, ...]
    at: Token
    facing: Facing = Facing.RS
    count: tuple[int, Token] | None = None


@dataclass(frozen=True, slots=True)
class Repeat:
    """Rounds from `first` to `last` worked again, so many times more."""

    first: int
    last: int
    times: int
    at: Token
    count: tuple[int, Token] | None = None


@dataclass(frozen=True, slots=True)
class Whose:
    """From here on one sock, or one half of it, or both again; `same` works it as the one before."""

    who: Who
    at: Token
    same: bool = False


@dataclass(frozen=True, slots=True)
class CastOn:
    """So many loops."""

    loops: int
    at: Token


@dataclass(frozen=True, slots=True)
class BindOff:
    """All stitches."""

    op: Op
    at: Token


@dataclass(frozen=True, slots=True)
class Acts:
    """Done between rounds."""

    acts: tuple[Aside, ...]


Statement = Part | Rounds | Repeat | Whose | CastOn | BindOff | Acts
