"""Microphone, speaker and voice by their names: those asked for now, and those remembered that may be gone."""

from collections.abc import Callable, Collection
from pathlib import Path
from typing import Literal, NamedTuple

from assistant.device_errors import DeviceProblem, NoDevice, NoSuchDevice, NoSuchVoice, SeveralFit
from assistant.devices import find_device
from assistant.ports import AttemptFailed, VoiceSettings
from assistant.second_look import second_opinion
from assistant.settings import Settings
from assistant.speaking.synthesis import SystemVoice
from assistant.speaking.voices import ListedVoice, find_voice, speaking
from assistant.teaching import load_taught, taught_file
from models.second_opinion import Scorer, SecondOpinion
from models.taught import Taught
from plans.conversation import Problem

Piece = Literal["microphone", "speaker", "voice"]
PIECES: tuple[Piece, ...] = ("microphone", "speaker", "voice")

EQUIPMENT_PROBLEMS: dict[str, frozenset[str]] = {
    "microphone-gone": frozenset({"name"}),    # a remembered one is not here: the system's own is used
    "speaker-gone": frozenset({"name"}),
    "voice-gone": frozenset({"name"}),
}  # fmt: skip
"""Every key that can be said about what is gone, with the names of its values."""

_NOT_HERE = (NoSuchDevice, NoDevice, NoSuchVoice, SeveralFit)


class Present(NamedTuple):
    """Settings that can be used here and now, what of them cannot, what she has taught, and who else is asked."""

    settings: Settings
    notes: tuple[Problem, ...] = ()
    taught: Taught | None = None
    second: SecondOpinion | None = None

    def and_note(self, problem: Problem | None) -> "Present":
        """The same with one more thing to be told, if there is one."""
        return self if problem is None else self._replace(notes=(*self.notes, problem))

    def with_taught(self, folder: Path) -> "Present":
        """The same with what was taught in the language, from the folder of the program's data."""
        taught, problem = load_taught(taught_file(folder, self.settings.language))
        return self._replace(taught=taught).and_note(problem)

    def with_second_opinion(self, load: Callable[[], Scorer], *, live: bool) -> "Present":
        """The same with a second opinion, where that is wanted; see `assistant.second_look`."""
        if not self.settings.careful:
            return self
        second, problem = second_opinion(load, self.settings.language, live=live)
        return self._replace(second=second).and_note(problem)


def full_name(piece: Piece, wanted: str, language: str) -> str:
    """The whole name of the microphone, speaker or voice that is meant.

    Args:
        piece: which of the three.
        wanted: a name or a part of it.
        language: whose voices are told where none fits.

    Raises:
        DeviceProblem: there is none of that name, more than one, or none at all.
    """
    if piece != "voice":
        return find_device(piece, wanted).name
    voices = system_voices()
    if "+" in wanted and _can_speak(wanted):
        return wanted
    found = find_voice(wanted, voices, language)
    alike = [voice for voice in voices if voice.name == found.name]
    return found.name if len(alike) == 1 else found.identifier


def system_voices() -> tuple[ListedVoice, ...]:
    """All voices of this machine; raises VoiceMissing."""
    system = SystemVoice()
    try:
        return system.voices()
    finally:
        system.close()


def _can_speak(voice: str) -> bool:
    """Whether a voice that is in no list, such as a variant of one, is known all the same."""
    system = SystemVoice()
    try:
        system.attempt("a", VoiceSettings(voice=voice))
    except NoSuchVoice:
        return False
    except AttemptFailed:
        return True
    finally:
        system.close()
    return True


def present(settings: Settings, pieces: Collection[Piece]) -> Present:
    """Settings without what was remembered and is not here; that stays remembered for when it is back.

    Args:
        settings: as they are remembered.
        pieces: those that will be used.
    """
    notes: list[Problem] = []
    for piece in sorted(pieces):
        name: str | None = getattr(settings, piece)
        if name is None:
            continue
        try:
            full_name(piece, name, settings.language)
        except _NOT_HERE:
            notes.append(Problem.of(f"{piece}-gone", name=name))
            settings = settings.but(**{piece: None})
        except DeviceProblem:
            pass  # nothing of the kind works here: told when it is opened
    return Present(_in_its_language(settings, pieces), tuple(notes))


def _in_its_language(settings: Settings, pieces: Collection[Piece]) -> Settings:
    """With a voice of the language where none was chosen; the system's own speaks English."""
    if "voice" not in pieces or settings.voice is not None or settings.language == "en":
        return settings
    try:
        found = speaking(settings.language, system_voices())
    except DeviceProblem:
        return settings
    return settings.but(voice=found[0].identifier) if found else settings
