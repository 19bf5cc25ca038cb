"""What was nearly understood: asked back once, then taken or dropped."""

from assistant.languages import Language
from assistant.listening.commands import number_of
from assistant.listening.understanding import Attention, Expecting, Understood
from assistant.manners import Manners
from assistant.session_commands import AnyCommand, for_engine
from assistant.sitting import Sitting
from models.recognising import Vocabulary
from plans.engine import decide

_CANNOT_BE = frozenset({
    "no-such-round", "not-knitted-yet", "went-back-fewer", "went-forward-fewer", "cannot-go-back", "cannot-go-forward",
    "no-rounds", "count-too-many", "count-too-few", "tape-unlikely", "yarn-left-too-much",
})  # fmt: skip


def expecting(meant: Understood | None, manners: Manners) -> Expecting:
    """What may be said now that `meant` was asked back, if anything was."""
    between = (meant.command, meant.other) if meant and meant.command and meant.other else None
    return Expecting(attention=_attention(manners), between=between)


def _attention(manners: Manners) -> Attention:
    if not manners.attention:
        return Attention.OFF
    return Attention.OPEN if manners.attending else Attention.ON


def only_possible(understood: Understood, sitting: Sitting) -> AnyCommand | None:
    """Of two numbers that sound alike the one that can be true here; None where neither or both can."""
    if understood.other is None:
        return None
    fitting = [each for each in (understood.command, understood.other) if each and _can_be(each, sitting)]
    return fitting[0] if len(fitting) == 1 else None


def _can_be(command: AnyCommand, sitting: Sitting) -> bool:
    if not for_engine(command):
        return True
    return decide(sitting.plan, sitting.progress, command).reply.key not in _CANNOT_BE


def vocabulary(meant: Understood | None, manners: Manners, language: Language) -> Vocabulary:
    """What the ears are to expect: all commands; between two numbers only these, yes and no."""
    if meant is not None and meant.other is not None:
        commands = (command for command in (meant.command, meant.other) if command is not None)
        numbers = (number for number in map(number_of, commands) if number is not None)
        return language.vocabulary_of_numbers(map(int, numbers), ("yes", "no"))
    return language.vocabulary(attention=manners.attention)
