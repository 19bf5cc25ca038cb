"""Which of the system's voices is meant by a name."""

from collections.abc import Sequence
from typing import NamedTuple

from assistant.device_errors import NoSuchVoice, SeveralVoices
from assistant.name_matching import fitting


class ListedVoice(NamedTuple):
    """A voice as the system lists it.

    Attributes:
        identifier: the system's own name of it.
        name: what people call it.
        languages: tags of the languages it speaks, such as "en-gb".
    """

    identifier: str
    name: str
    languages: tuple[str, ...]

    def speaks(self, language: str) -> bool:
        """Whether it speaks a language, or a kind of it."""
        return any(tag == language or tag.startswith(f"{language}-") for tag in self.languages)


def speaking(language: str, listed: Sequence[ListedVoice]) -> tuple[ListedVoice, ...]:
    """The voices that speak a language."""
    return tuple(voice for voice in listed if voice.speaks(language))


def find_voice(wanted: str, listed: Sequence[ListedVoice], language: str) -> ListedVoice:
    """The voice of that identifier, name or language tag, or whose name holds all the words.

    Args:
        wanted: as a person writes it.
        listed: all there are.
        language: names of its voices are told where none fits; of all voices where none speaks it.

    Raises:
        NoSuchVoice: none fits.
        SeveralVoices: more than one does.
    """
    sought = wanted.strip().lower()
    exact = next((voice for voice in listed if sought in _own_names(voice)), None)
    tagged = exact or next(iter(speaking(sought, listed)), None)
    if tagged is not None:
        return tagged
    meant = [listed[at] for at in fitting(wanted, [voice.name for voice in listed])]
    if len(meant) == 1:
        return meant[0]
    if meant:
        raise SeveralVoices(wanted=wanted, found=_names(meant))
    raise NoSuchVoice(wanted=wanted, found=_names(speaking(language, listed) or listed))


def _own_names(voice: ListedVoice) -> set[str]:
    identifier = voice.identifier.lower()
    return {identifier, identifier.rpartition("/")[2], voice.name.lower(), *voice.languages}


def _names(voices: Sequence[ListedVoice]) -> str:
    return "; ".join(voice.name for voice in voices)
