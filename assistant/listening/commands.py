"""A matched phrase as the record that it stands for."""

from fractions import Fraction
from typing import Literal

from pydantic import TypeAdapter

from assistant.languages.phrases import NUMBER, Match
from assistant.session_commands import AnyCommand, CountGiven, LengthGiven, Snooze, Unit
from plans.conversation import AtRound, Back, Forward, IHave, NewBall, RippedBack, TapeSays, YarnLeft
from plans.pattern import Half, Sock
from plans.quantities import Length, exact_number

_RECORDS: TypeAdapter[AnyCommand] = TypeAdapter(AnyCommand)
_UNIT: TypeAdapter[Unit | None] = TypeAdapter(Unit | None)
_SOCK: TypeAdapter[Sock] = TypeAdapter(Sock)


def command_of(found: Match) -> AnyCommand:  # noqa: C901 (one case a command)
    """The command or answer, with what stood in the slots of its phrase.

    Raises:
        pydantic.ValidationError: a name, or a slot's key, that no command knows.
    """
    number = int(found.slots.get(NUMBER, 1))
    match found.name:
        case "back":
            return Back(rounds=number)
        case "forward":
            return Forward(rounds=number)
        case "at_round":
            return AtRound(round=number, sock=_sock(found))
        case "ripped_back":
            return _ripped_back(found)
        case "i_have":
            return _i_have(found)
        case "snooze" if NUMBER in found.slots:
            return Snooze(minutes=number)
        case "tape_says":
            return _tape_says(found)
        case "yarn_left":
            return YarnLeft(grams=number, sock=_sock(found))
        case "new_ball":
            return NewBall(sock=_sock(found))
        case "length_given":
            unit = _UNIT.validate_python(found.slots.get("unit"))
            return LengthGiven(number=_whole_and_part(found), unit=unit)
        case "count_given":
            return CountGiven(number=_whole_and_part(found))
        case _:
            return _RECORDS.validate_python({"kind": found.name})


def number_of(command: AnyCommand) -> int | Fraction | None:
    """The number in a command, if any."""
    match command:
        case Back() | Forward():
            return command.rounds
        case AtRound() | RippedBack():
            return command.round
        case IHave():
            return command.stitches
        case YarnLeft():
            return command.grams
        case TapeSays():
            length = command.length
            return length.cm if length.cm.denominator <= length.inches.denominator else length.inches
        case Snooze():
            return command.minutes
        case LengthGiven() | CountGiven():
            return command.number
        case _:
            return None


def _ripped_back(found: Match) -> RippedBack:
    stage, number = found.slots.get("stage"), found.slots.get(NUMBER)
    return RippedBack(
        stage=None if stage is None else str(stage), round=None if number is None else int(number), sock=_sock(found)
    )


def _tape_says(found: Match) -> TapeSays:
    part: Literal["foot", "leg"] = "leg" if found.slots["part"] == "leg" else "foot"
    return TapeSays(part=part, length=Length.parse(f"{exact_number(_whole_and_part(found))}{found.slots['unit']}"))


def _i_have(found: Match) -> IHave:
    half = found.slots.get("half")
    return IHave(
        stitches=int(found.slots[NUMBER]),
        half=None if half is None else Half(str(half)),
        sock=_sock(found),
    )


def _sock(found: Match) -> Sock | None:
    sock = found.slots.get("sock")
    return None if sock is None else _SOCK.validate_python(int(sock))


def _whole_and_part(found: Match) -> Fraction:
    """The whole number and what is said after it, such as "and a half"; or the part alone."""
    parts = (found.slots.get(slot) for slot in (NUMBER, "fraction", "fraction_alone"))
    return sum((Fraction(part) for part in parts if part is not None), Fraction(0))
