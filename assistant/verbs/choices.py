"""Options for what is remembered: microphone, speaker, voice, and how it speaks."""

from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any, TypeVar

import click

from assistant.equipment import PIECES, full_name
from assistant.languages.verbosity import Verbosity
from assistant.ports import FASTEST_WPM, SLOWEST_WPM
from assistant.settings import SOFTEST_PERCENT, Memory
from assistant.voice import Output, WhileSpeaking
from assistant.wiring import make_scorer
from plans.conversation import Problem

_Command = TypeVar("_Command", bound=Callable[..., Any])

_RENAMED = {"rate": "words_a_minute", "loudness": "loudness_percent", "rest_after": "rest_after_minutes"}
_KINDS: dict[str, type[StrEnum]] = {"output": Output, "wording": Verbosity, "while_speaking": WhileSpeaking}

microphone_option = click.option("--microphone", metavar="NAME", help="The microphone whose name holds these words; "
                                 "remembered. An empty name is the system's own.")  # fmt: skip
careful_option = click.option("--careful/--no-careful", default=None, help="Ask a second opinion where it is unsure "
                              "what it heard; remembered.")  # fmt: skip
_OPTIONS = (
    microphone_option,
    careful_option,
    click.option("--speaker", metavar="NAME", help="The speaker whose name holds these words; remembered."),
    click.option("--voice", metavar="NAME", help="The voice of that name or language; remembered."),
    click.option("--rate", type=click.IntRange(SLOWEST_WPM, FASTEST_WPM), metavar="WORDS",
                 help="How fast it speaks, in words a minute; remembered."),
    click.option("--loudness", type=click.IntRange(SOFTEST_PERCENT, 100), metavar="PERCENT",
                 help="How loud it speaks; remembered."),
    click.option("--output", type=click.Choice([each.value for each in Output]),
                 help="Speak, print lines for a screen reader, or both; remembered."),
    click.option("--wording", type=click.Choice([each.value for each in Verbosity]),
                 help="Short sentences, plain ones, or longer ones for a learner; remembered."),
    click.option("--while-speaking", type=click.Choice([each.value for each in WhileSpeaking]),
                 help="Commands wait until it has spoken; or cut it short: all of them where the voice is in your "
                 "headphones, next, again and stop where it is in a loudspeaker; remembered."),
)  # fmt: skip


def voice_options(command: _Command) -> _Command:
    """All of them; what is left out comes in as None."""
    for option in reversed(_OPTIONS):
        command = option(command)
    return command


def remember(memory: Memory, given: Mapping[str, Any], language: str) -> Problem | None:
    """Find what the names mean, and remember all that was given; what is wrong where that cannot be written.

    Raises:
        DeviceProblem: a name fits nothing, or several; nothing is remembered.
        SecondOpinionMissing: one is wanted that is not on this machine; nothing is remembered.
    """
    if given.get("careful"):
        make_scorer()
    changes = {_RENAMED.get(name, name): value for name, value in given.items() if value is not None}
    for piece in PIECES:
        if wanted := changes.get(piece):
            changes[piece] = full_name(piece, wanted, language)
        elif piece in changes:
            changes[piece] = None
    for name, kind in _KINDS.items():
        if name in changes:
            changes[name] = kind(changes[name])
    return memory.change(**changes)
