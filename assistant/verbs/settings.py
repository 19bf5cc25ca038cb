"""`roundcaller settings`: what is remembered, and which microphones, speakers and voices there are."""

from collections.abc import Iterator
from typing import Any, Literal

import click

from assistant.device_errors import DeviceProblem
from assistant.devices import nameable
from assistant.equipment import PIECES, system_voices
from assistant.failing import Surroundings, as_problem
from assistant.rest_times import REPEAT_MINUTES
from assistant.settings import LONGEST_WORK_MINUTES, Settings, settings_file
from assistant.speaking.voices import speaking
from assistant.speaking.wording import word
from assistant.verbs.choices import remember, voice_options
from assistant.verbs.shared import language_option, remembered
from assistant.voice import OUTPUT_SAYINGS, WHILE_SPEAKING_SAYINGS
from assistant.wiring import config_dir
from plans.conversation import Problem, Reply

_KINDS: tuple[Literal["microphone", "speaker"], ...] = ("microphone", "speaker")


@click.command()
@voice_options
@click.option("--rests/--no-rests", default=None, help="Whether rests are offered.")
@click.option("--rest-after", type=click.IntRange(REPEAT_MINUTES, LONGEST_WORK_MINUTES), metavar="MINUTES",
              help="After how much knitting a rest is offered.")  # fmt: skip
@click.option("--all-voices", is_flag=True, help="List the voices of all languages.")
@language_option
def settings(all_voices: bool, language: str | None, **given: Any) -> None:  # noqa: ANN401 (what is remembered)
    """Change what is remembered; show it, and the microphones, speakers and voices that there are.

    Example: roundcaller settings --microphone headset --rate 180
    """
    memory, spoken = remembered(language)
    unwritten = remember(memory, {**given, "language": language}, spoken.name)
    if unwritten is not None:
        raise Surroundings(unwritten)
    for saying in (*_remembered(memory.settings), *_here(memory.settings.language, all_voices=all_voices)):
        click.echo(word(saying, spoken), err=isinstance(saying, Problem))


def _remembered(chosen: Settings) -> Iterator[Reply]:
    yield Reply.of("settings-are-in", path=str(settings_file(config_dir())))
    for piece in PIECES:
        name: str | None = getattr(chosen, piece)
        yield Reply.of(f"{piece}-usual") if name is None else Reply.of(f"{piece}-is", name=name)
    yield Reply.of("rate-is", words=chosen.words_a_minute)
    yield Reply.of("loudness-is", percent=chosen.loudness_percent)
    yield Reply.of(OUTPUT_SAYINGS[chosen.output])
    yield Reply.of(f"wording-{chosen.wording.value}")
    yield Reply.of("careful-on" if chosen.careful else "careful-off")
    yield Reply.of(WHILE_SPEAKING_SAYINGS[chosen.while_speaking])
    yield Reply.of("rests-are-on", minutes=chosen.rest_after_minutes) if chosen.rests else Reply.of("rests-are-off")
    yield Reply.of("language-is", name=chosen.language)


def _here(language: str, *, all_voices: bool) -> Iterator[Reply | Problem]:
    for kind in _KINDS:
        try:
            for device in nameable(kind):
                yield Reply.of(f"{kind}-here", name=device.name)
        except DeviceProblem as error:
            yield _told(error)
            break
    try:
        voices = system_voices()
    except DeviceProblem as error:
        yield _told(error)
        return
    shown = voices if all_voices else speaking(language, voices) or voices
    for voice in shown:
        yield Reply.of("voice-here", name=voice.name)
    if len(voices) > len(shown):
        yield Reply.of("voices-besides", count=len(voices) - len(shown))


def _told(error: DeviceProblem) -> Problem:
    problem = as_problem(error)
    if problem is None:
        raise error
    return problem
