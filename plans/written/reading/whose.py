"""Whose work a statement is: the places of a round on the needle, and one piece's told of the other."""

from dataclasses import dataclass, replace
from typing import NamedTuple

from plans.pattern import Half, Needles, Sock, StageName
from plans.written.reading.tree import Rounds, Statement, Who, Whose

Place = tuple[Sock, Half]


@dataclass(frozen=True, slots=True)
class Lie:
    """How the pieces lie on the needle: how many there are, and whether each is in two halves.

    Attributes:
        needles: what they lie on.
    """

    pieces: int
    halves: bool
    needles: Needles = Needles.ONE_LONG_CIRCULAR

    def round_of(self, who: Who) -> tuple[Place, ...]:
        """The places of a round in the order in which the needle gives them."""
        places: tuple[Place, ...]
        if who.sock is not None:
            places = ((who.sock, Half.FRONT), (who.sock, Half.BACK))
        elif self.pieces == 2:
            places = ((1, Half.FRONT), (2, Half.FRONT), (2, Half.BACK), (1, Half.BACK))
        else:
            places = ((1, Half.FRONT), (1, Half.BACK))
        if not self.halves:
            return tuple(place for place in places if place[1] is Half.FRONT)
        return tuple(place for place in places if who.half in (None, "each", place[1]))


class Piece(NamedTuple):
    """What is told of one piece knitted by itself, from the part on in which it was named."""

    sock: Sock
    stage: StageName | None
    statements: list[Statement]


def told_of(sock: Sock | None, statement: Statement) -> Statement:
    """A statement told of one piece, of another."""
    match statement:
        case Whose(who=who) if who.sock is not None:
            return replace(statement, who=replace(who, sock=sock))
        case Rounds(segments=segments):
            told = tuple(
                replace(each, who=replace(each.who, sock=sock)) if each.who.sock is not None else each
                for each in segments
            )  # fmt: skip
            return replace(statement, segments=told)
        case _:
            return statement


def both(one: Who, other: Who) -> Who:
    """What stands in a line goes before what stands above it."""
    return Who(other.sock or one.sock, other.half or one.half)
