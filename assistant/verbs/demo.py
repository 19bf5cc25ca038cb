"""`roundcaller demo`: an invented pair, driven by a spoken recording made on the spot."""

import tempfile
import wave
from collections.abc import Iterable, Iterator
from itertools import zip_longest
from pathlib import Path

import click

from assistant.clocks import StreamClock
from assistant.device_errors import DeviceProblem, NoSuchVoice
from assistant.equipment import present
from assistant.failing import Refused, Surroundings
from assistant.journal import Journal
from assistant.knitting import Wanted, knit_pair
from assistant.languages import Language
from assistant.ports import Sound, VoiceSettings
from assistant.rehearsal import INVENTED, KNITTER, recording, script
from assistant.session import Habits
from assistant.settings import Memory, Settings
from assistant.sittings import open_pair
from assistant.speaking.wording import word
from assistant.verbs.knit import routes_of, sound_recogniser_option
from assistant.verbs.shared import language_option, load_language
from plans.conversation import Problem, Reply
from plans.making import make_plan

FILE_WITHOUT_SPEAKER = "roundcaller-demo.wav"


@click.command()
@click.option("--to", "speak_to", default=None, metavar="speaker|FILE.wav|none", help="Where the voice goes; the "
              f"speaker, or {FILE_WITHOUT_SPEAKER} where there is none.")  # fmt: skip
@sound_recogniser_option
@language_option
def demo(speak_to: str | None, recogniser: str | None, language: str | None) -> None:
    """Hear an invented pair called from cast-on to bind-off, driven by spoken commands.

    A synthetic knitter says every command into a recording made on the spot; the recogniser hears it, the voice
    answers. Prints what was said and what was heard; exit code 1 where they differ.

    Example: roundcaller demo --to demo.wav
    """
    spoken = load_language(language)
    made = make_plan(INVENTED)
    if isinstance(made, tuple):
        raise Refused(*made)
    commands = tuple(script(made.plan))
    with tempfile.TemporaryDirectory() as folder:
        take, journal_file = Path(folder) / "take.wav", Path(folder) / "demo.sqlite"
        _write(take, _spoken(commands))
        routes = routes_of(str(take), speak_to or _speaker_or_file(), recogniser, None, language=spoken.name)
        here = present(Settings(language=spoken.name), {"voice"})
        with Journal.open(journal_file) as journal:
            opening = open_pair(journal, made)
            knit_pair(opening, spoken, Wanted(routes, Habits()), here, Memory(None, here.settings))
            heard = tuple(entry.heard for entry in journal.entries() if entry.heard is not None)
    _compare(commands, heard, spoken)


def _spoken(commands: tuple[str, ...]) -> Sound:
    from assistant.speaking.synthesis import Synthesis, SystemVoice  # noqa: PLC0415 (starts a process)

    synthesis = Synthesis(SystemVoice(), KNITTER)
    try:
        return recording(commands, synthesis)
    except NoSuchVoice:
        synthesis.settings = VoiceSettings()
        return recording(commands, synthesis)
    finally:
        synthesis.close()


def _speaker_or_file() -> str:
    from assistant.speaking.speaker import Speaker  # noqa: PLC0415 (loads the sound library)

    try:
        Speaker(StreamClock(live=False)).close()
    except DeviceProblem:
        return FILE_WITHOUT_SPEAKER
    return "speaker"


def _write(path: Path, sound: Sound) -> None:
    with wave.open(str(path), "wb") as file:
        file.setparams((1, 2, sound.rate_hz, 0, "NONE", ""))
        file.writeframes(sound.samples.astype("<i2").tobytes())


def _compare(commands: tuple[str, ...], heard: tuple[str, ...], language: Language) -> None:
    """Print every difference between what was said and what was heard; exit code 1 where there is one."""
    differing = tuple(_differences(commands, heard))
    if differing:
        raise Surroundings(*differing)
    click.echo(word(Reply.of("demo-same", commands=len(commands)), language), err=True)


def _differences(commands: Iterable[str], heard: Iterable[str]) -> Iterator[Problem]:
    for said, words in zip_longest(commands, heard, fillvalue=""):
        if said != words:
            yield Problem.of("demo-differs", said=said, heard=words)
