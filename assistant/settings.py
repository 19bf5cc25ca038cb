"""What is remembered from one session to the next: microphone, speaker, voice, how it speaks, rests, language."""

import json
import tomllib
from pathlib import Path
from typing import NamedTuple

from pydantic import Field

from assistant.languages.verbosity import Verbosity
from assistant.ports import FASTEST_WPM, SLOWEST_WPM, SOFTEST, VoiceSettings
from assistant.rest_times import REPEAT_MINUTES, WORK_MINUTES
from assistant.voice import Output, WhileSpeaking
from assistant.writing import write_whole
from models.sayable import Sayable
from plans.conversation import Problem
from plans.files.toml_values import toml_value
from plans.record import Record

SETTINGS_PROBLEMS: dict[str, frozenset[str]] = {
    "settings-damaged": frozenset({"file", "aside"}),    # kept as `aside`; the usual ones are used
    "settings-unreadable": frozenset({"file"}),          # the usual ones are used
    "settings-unwritable": frozenset({"file"}),          # nothing will be remembered
}  # fmt: skip
"""Every key that can be said about the settings' file, with the names of its values."""

_NAME = "settings.toml"
SOFTEST_PERCENT = round(100 * SOFTEST)
LONGEST_WORK_MINUTES = 240


class Settings(Record):
    """What is remembered; each field is a line of the file, and one without a value is left out.

    Attributes:
        microphone: its name; None for the system's own.
        speaker: its name; None for the system's own.
        voice: its name, or the system's own name of it; None for the usual one of the language.
        words_a_minute: how fast it speaks.
        loudness_percent: of the speaker's full loudness, in amplitude.
        output: voice, lines, or both.
        wording: how much is said.
        attention_word: whether commands count only after the attention word.
        careful: whether a second opinion is asked where the ears are unsure.
        while_speaking: what is heard while the voice speaks.
        rests: whether rests are offered.
        rest_after_minutes: after how much knitting without one.
        language: name of the language folder.
    """

    microphone: str | None = None
    speaker: str | None = None
    voice: str | None = None
    words_a_minute: int = Field(default=VoiceSettings().rate_wpm, ge=SLOWEST_WPM, le=FASTEST_WPM)
    loudness_percent: int = Field(default=100, ge=SOFTEST_PERCENT, le=100)
    output: Output = Output.BOTH
    wording: Verbosity = Verbosity.PLAIN
    attention_word: bool = False
    careful: bool = False
    while_speaking: WhileSpeaking = WhileSpeaking.WAIT
    rests: bool = True
    rest_after_minutes: int = Field(default=WORK_MINUTES, ge=REPEAT_MINUTES, le=LONGEST_WORK_MINUTES)
    language: str = "en"

    @property
    def speech(self) -> VoiceSettings:
        """How to speak."""
        return VoiceSettings(rate_wpm=self.words_a_minute, volume=self.loudness_percent / 100, voice=self.voice)

    def but(self, **changes: object) -> "Settings":
        """The same with some fields changed.

        Raises:
            ValueError: a value is of the wrong kind or outside its limits.
        """
        return Settings.model_validate({**dict(self), **changes})


class Loaded(NamedTuple):
    """Settings, and what was wrong with the file they should have come from."""

    settings: Settings
    problem: Problem | None = None


class SettingsUnwritable(Sayable):
    """The settings could not be written; those on the disk are as they were."""

    key = "settings-unwritable"
    names = frozenset({"file"})


def settings_file(folder: Path) -> Path:
    """Where the settings in a folder stand."""
    return folder / _NAME


def load_settings(folder: Path) -> Loaded:
    """Read the settings in a folder; the usual ones where there are none.

    A file that cannot be understood is set aside under another name, so that nothing is lost, and reported.
    """
    file = settings_file(folder)
    try:
        content = file.read_bytes()
    except FileNotFoundError:
        return Loaded(Settings())
    except OSError:
        return Loaded(Settings(), Problem.of("settings-unreadable", where=str(file), file=str(file)))
    settings = _read(content)
    return Loaded(Settings(), _set_aside(file)) if settings is None else Loaded(settings)


def remembered_language(folder: Path) -> str | None:
    """The language in the settings; None where they cannot be read. Nothing is set aside or told."""
    try:
        settings = _read(settings_file(folder).read_bytes())
    except OSError:
        return None
    return None if settings is None else settings.language


def _read(content: bytes) -> Settings | None:
    """The settings in a file; None where it is no TOML, none of ours, or holds dates, which JSON does not know."""
    try:
        return Settings.model_validate_json(json.dumps(tomllib.loads(content.decode())))
    except (ValueError, TypeError):
        return None


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
    file = settings_file(folder)
    lines = (f"{name} = {toml_value(value)}\n" for name, value in _plain(settings).items())
    try:
        folder.mkdir(parents=True, exist_ok=True)
        write_whole(file, "".join(lines))
    except OSError as error:
        raise SettingsUnwritable(file=str(file)) from error


def _plain(settings: Settings) -> dict[str, str | int | bool]:
    return settings.model_dump(mode="json", exclude_none=True)


class Memory:
    """Settings that are written down as soon as they change.

    Args:
        folder: where they are kept; None where nothing is to be remembered.
        settings: as they are on the disk.
    """

    def __init__(self, folder: Path | None, settings: Settings) -> None:
        self._folder = folder
        self.settings = settings

    def change(self, **changes: object) -> Problem | None:
        """Change some, and remember them; where they cannot be written they hold until the end, and that is told.

        Raises:
            ValueError: a value is of the wrong kind or outside its limits.
        """
        changed = self.settings.but(**changes)
        if changed == self.settings:
            return None
        self.settings = changed
        if self._folder is None:
            return None
        try:
            save_settings(self._folder, changed)
        except SettingsUnwritable as unwritable:
            return Problem.of(unwritable.key, where=unwritable.values["file"], **unwritable.values)
        return None

    def forgetful(self) -> "Memory":
        """The same settings; changes of them are not written down."""
        return Memory(None, self.settings)
