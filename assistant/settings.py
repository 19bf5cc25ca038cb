"""What is remembered from one session to the next about microphone, speaker and voice."""

from pathlib import Path
from typing import NamedTuple

from assistant.languages.verbosity import Verbosity
from assistant.ports import VoiceSettings
from assistant.voice import Output
from assistant.writing import write_whole
from plans.conversation import Problem
from plans.record import Record

SETTINGS_PROBLEMS: dict[str, frozenset[str]] = {
    "settings-damaged": frozenset({"file", "aside"}),    # kept as `aside`; the usual ones are used
    "settings-unreadable": frozenset({"file"}),          # the usual ones are used
    "settings-unwritable": frozenset({"file"}),          # nothing will be remembered
}  # fmt: skip
"""Every key that can be said about settings, with the names of its values."""

_NAME = "settings.json"


class Settings(Record):
    """What is remembered.

    Attributes:
        microphone: its name; None for the system's own.
        speaker: its name; None for the system's own.
        voice: rate, volume, and which voice.
        verbosity: how much is said.
        attention: whether commands count only after the attention word.
        output: voice, lines, or both.
        rests: whether rests are offered.
        language: name of the language folder.
    """

    microphone: str | None = None
    speaker: str | None = None
    voice: VoiceSettings = VoiceSettings()
    verbosity: Verbosity = Verbosity.PLAIN
    attention: bool = False
    output: Output = Output.BOTH
    rests: bool = True
    language: str = "en"


class Loaded(NamedTuple):
    """Settings, and what was wrong with the file they should have come from."""

    settings: Settings
    problem: Problem | None = None


class SettingsUnwritable(Exception):
    """The settings could not be written; those on the disk are as they were.

    Attributes:
        key: of the sentence that explains it.
        values: what stands in that sentence, by name.
    """

    key = "settings-unwritable"

    def __init__(self, file: Path) -> None:
        """Take the file."""
        self.values = {"file": str(file)}
        super().__init__(f"{self.key}: {file}")


def load_settings(folder: Path) -> Loaded:
    """Read the settings in a folder; the usual ones where there are none.

    A file that cannot be understood is set aside under another name, so that nothing is lost, and reported.
    """
    file = folder / _NAME
    try:
        text = file.read_bytes()
    except FileNotFoundError:
        return Loaded(Settings())
    except OSError:
        return Loaded(Settings(), Problem.of("settings-unreadable", where=str(file), file=str(file)))
    try:
        return Loaded(Settings.model_validate_json(text))
    except ValueError:
        return Loaded(Settings(), _set_aside(file))


def _set_aside(file: Path) -> Problem:
    taken = {path.name for path in file.parent.iterdir()}
    names = (f"{_NAME}.damaged-{number}" for number in range(1, len(taken) + 2))
    aside = file.with_name(next(name for name in names if name not in taken))
    try:
        file.rename(aside)
    except OSError:
        return Problem.of("settings-unreadable", where=str(file), file=str(file))
    return Problem.of("settings-damaged", where=str(file), file=str(file), aside=str(aside))


def save_settings(folder: Path, settings: Settings) -> None:
    """Write the settings, whole or not at all.

    Raises:
        SettingsUnwritable: no room, or no right to write there; the old ones stand.
    """
    file = folder / _NAME
    text = settings.model_dump_json(indent=2) + "\n"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        write_whole(file, text)
    except OSError as error:
        raise SettingsUnwritable(file) from error
