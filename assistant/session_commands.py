"""What can be asked of the surroundings rather than of the engine, and what can be answered to a question."""

from fractions import Fraction
from typing import Literal, TypeGuard, get_args

from assistant.rest_times import REPEAT_MINUTES
from plans.conversation import Command
from plans.record import Record

Unit = Literal["cm", "mm", "in"]


class Slower(Record):
    """Speak slower."""

    kind: Literal["slower"] = "slower"


class Faster(Record):
    """Speak faster."""

    kind: Literal["faster"] = "faster"


class Louder(Record):
    """Speak louder."""

    kind: Literal["louder"] = "louder"


class Softer(Record):
    """Speak more softly."""

    kind: Literal["softer"] = "softer"


class PauseListening(Record):
    """Heed nothing but "listen again"."""

    kind: Literal["pause_listening"] = "pause_listening"


class ListenAgain(Record):
    """Heed commands again."""

    kind: Literal["listen_again"] = "listen_again"


class AttentionOn(Record):
    """From now on a command counts only after the attention word."""

    kind: Literal["attention_on"] = "attention_on"


class AttentionOff(Record):
    """Commands need no attention word any more."""

    kind: Literal["attention_off"] = "attention_off"


class Attend(Record):
    """The attention word was said alone: the next command counts."""

    kind: Literal["attend"] = "attend"


class Help(Record):
    """Say what can be said."""

    kind: Literal["help"] = "help"


class HowLong(Record):
    """The time still needed at the pace so far."""

    kind: Literal["how_long"] = "how_long"


class Rest(Record):
    """Take a rest from knitting."""

    kind: Literal["rest"] = "rest"


class RestOver(Record):
    """The rest is over: what was called is in hand again."""

    kind: Literal["rest_over"] = "rest_over"


class Snooze(Record):
    """Put the offer of a rest off, by so many minutes."""

    kind: Literal["snooze"] = "snooze"
    minutes: int = REPEAT_MINUTES


class NoRestsToday(Record):
    """Offer no more rests today."""

    kind: Literal["no_rests_today"] = "no_rests_today"


class RestsOn(Record):
    """Offer rests again."""

    kind: Literal["rests_on"] = "rests_on"


class LengthGiven(Record):
    """An answer: a length as said; `unit` is None where none was said."""

    kind: Literal["length_given"] = "length_given"
    number: Fraction
    unit: Unit | None = None


class CountGiven(Record):
    """An answer: a count as said, halves and quarters included."""

    kind: Literal["count_given"] = "count_given"
    number: Fraction


class Skip(Record):
    """An answer: not known; estimate it."""

    kind: Literal["skip"] = "skip"


class FallSilent(Record):
    """Stop speaking; heard only while the voice speaks."""

    kind: Literal["fall_silent"] = "fall_silent"


SessionCommand = (
    Slower | Faster | Louder | Softer | PauseListening | ListenAgain | AttentionOn | AttentionOff | Attend
    | Help | HowLong | Rest | RestOver | Snooze | NoRestsToday | RestsOn
)  # fmt: skip
Answer = LengthGiven | CountGiven | Skip | FallSilent
AnyCommand = Command | SessionCommand | Answer

SESSION_COMMANDS = frozenset({
    "slower", "faster", "louder", "softer", "pause_listening", "listen_again", "attention_on",
    "attention_off", "help", "how_long", "rest", "rest_over", "snooze", "no_rests_today", "rests_on",
})  # fmt: skip
"""Names of the session's commands that have phrases of their own."""

ANSWERS = frozenset({"length_given", "count_given", "skip", "fall_silent"})
"""Names of the answers: heard only when they can be given, as while a question that takes them is open."""

_ENGINE_COMMANDS: tuple[type, ...] = get_args(get_args(Command)[0])


def for_engine(command: AnyCommand) -> TypeGuard[Command]:
    """Whether the engine decides on it, and not the surroundings."""
    return isinstance(command, _ENGINE_COMMANDS)
