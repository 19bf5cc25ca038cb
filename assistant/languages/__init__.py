"""Languages are data: a folder each, with phrases, sentences, numbers, and what must be heard as what.

    phrases.toml    how each command may be said
    sentences.ftl   what is said for each key
    numbers.toml    how counts are said and heard
    heard.toml      test lines: what is said, and which command it is, or none

LanguageProblem
├── LanguageUnknown     language-unknown    language, known
└── LanguageBroken      language-broken     language, file, what
"""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache, cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from assistant.languages.numbers import Numbers, read_numbers
from assistant.languages.phrases import ABOVE_NOUGHT, NUMBER, Phrases, read_phrases, slots_in
from models.recognising import Vocabulary
from models.sayable import Sayable
from plans.commands import FROM_ONE, MOVING

if TYPE_CHECKING:
    from assistant.languages.sentences import Sentences

FOLDER = Path(__file__).parent


class LanguageProblem(Sayable):
    """The base of what is wrong with a language."""


class LanguageUnknown(LanguageProblem):
    """There is no language of that name; `known` are those there are."""

    key = "language-unknown"
    names = frozenset({"language", "known"})


class LanguageBroken(LanguageProblem):
    """A language's file cannot be read."""

    key = "language-broken"
    names = frozenset({"language", "file", "what"})


@dataclass(frozen=True)
class Language:
    """One language, loaded.

    Attributes:
        name: its code, as "en".
        folder: where its files are.
        phrases: what can be heard.
        numbers: how counts are said and heard.
    """

    name: str
    folder: Path
    phrases: Phrases
    numbers: Numbers

    @cached_property
    def sentences(self) -> "Sentences":
        """What can be said; read at the first use.

        Raises:
            LanguageBroken: the file is no Fluent.
        """
        from assistant.languages.sentences import Sentences  # noqa: PLC0415 (slow to import)

        file = self.folder / "sentences.ftl"
        try:
            return Sentences(self.name, file.read_text(encoding="utf-8"), self.numbers)
        except (OSError, ValueError) as error:
            raise LanguageBroken(language=self.name, file=str(file), what=str(error)) from error

    def with_socks(self, names: Iterable[str]) -> "Language":
        """The same, hearing also the knitter's own names of the two socks."""
        return replace(self, phrases=self.phrases.with_socks(names))

    def vocabulary(self, names: Iterable[str] | None = None, *, attention: bool = False) -> Vocabulary:
        """What a recogniser is to expect.

        Args:
            names: of the commands and answers that may be said now; all commands where left out.
            attention: whether each is said after the attention word, which may also be said alone; then none is costly.
        """
        wanted = self.phrases.names() if names is None else tuple(names)
        phrases = tuple(phrase for name in wanted for phrase in self.phrases.to_hear(name))
        return self.vocabulary_of(phrases, attention=attention)

    def vocabulary_of(self, phrases: tuple[str, ...], *, attention: bool = False) -> Vocabulary:
        """As `vocabulary`, for phrases of commands and answers as a recogniser is to have them."""
        moving = frozenset(phrase for name in MOVING for phrase in self.phrases.to_hear(name))
        costly = tuple(phrase for phrase in phrases if phrase in moving)
        slots = {slot: self.phrases.fillers(slot) for phrase in phrases for slot in slots_in(phrase)}
        if attention:
            words = self.phrases.attention
            phrases = (*words, *(f"{word} {phrase}" for word in words for phrase in phrases))
            costly = ()
        return Vocabulary(
            tuple(dict.fromkeys(phrases)), slots, self.phrases.pronounced, frozenset(costly),
            self.phrases.homophones, self.phrases.begins_talk,
        )  # fmt: skip

    def vocabulary_of_numbers(self, numbers: Iterable[int], names: Iterable[str] = ()) -> Vocabulary:
        """What may be said to settle which number was meant, whole or digit by digit; and some commands."""
        wanted = frozenset(numbers)
        spelled = (words for words, number in self.numbers.spelled.items() if number in wanted)
        whole = (words for number in sorted(wanted) for words in self.numbers.ways(number))
        other = self.vocabulary(names)
        phrases = (*whole, *spelled, *other.phrases)
        return Vocabulary(phrases, other.slots, other.pronounced, homophones=other.homophones)


def known_languages(folder: Path = FOLDER) -> tuple[str, ...]:
    """Codes of all languages there are."""
    return tuple(sorted(file.parent.name for file in folder.glob("*/phrases.toml")))


def load(language: str = "en", folder: Path | None = None) -> Language:
    """A language from its folder inside `folder`; one of ours, read once, where left out.

    Raises:
        LanguageUnknown: there is none of that name.
        LanguageBroken: its files cannot be read.
    """
    return _ours(language) if folder is None else _load(language, folder)


@cache
def _ours(language: str) -> Language:
    return _load(language, FOLDER)


def _load(language: str, home: Path) -> Language:
    if language not in known_languages(home):
        raise LanguageUnknown(language=language, known=", ".join(known_languages(home)))
    here = home / language
    numbers = read_numbers(language, _toml(language, here / "numbers.toml"))
    file = here / "phrases.toml"
    try:
        phrases = read_phrases(_toml(language, file), numbers)
    except (KeyError, ValueError) as error:
        raise LanguageBroken(language=language, file=str(file), what=str(error)) from error
    return Language(name=language, folder=here, phrases=phrases, numbers=numbers)


def _toml(language: str, file: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(file.read_text(encoding="utf-8"))
    except (OSError, ValueError) as error:
        raise LanguageBroken(language=language, file=str(file), what=str(error)) from error


def phrases_as_json(language: Language) -> dict[str, Any]:
    """Every command with every way to say it, numbers and names as slots; answers to questions apart.

    Returns:
        {language, commands: [{name, phrases, moves?, least?}], answers: [{name, phrases}], attention,
        slots: {slot: [text]}, values: {slot: {text: what it means}}, pronounced: {word: phones},
        homophones: [[word]], begins_talk: [phrase]}
    """
    phrases = language.phrases
    return {
        "language": language.name,
        "commands": _listed(phrases.commands),
        "answers": _listed(phrases.answers),
        "attention": list(phrases.attention),
        "slots": {slot: list(phrases.fillers(slot)) for slot in (NUMBER, ABOVE_NOUGHT, *phrases.slots)},
        "values": {NUMBER: dict(phrases.numbers.heard), **{slot: phrases.meanings(slot) for slot in phrases.slots}},
        "pronounced": dict(phrases.pronounced),
        "homophones": [list(words) for words in phrases.homophones],
        "begins_talk": sorted(phrases.begins_talk),
    }


def _listed(named: Mapping[str, tuple[str, ...]]) -> list[dict[str, Any]]:
    return [
        {"name": name, "phrases": list(phrases)}
        | ({"moves": True} if name in MOVING else {})
        | ({"least": 1} if name in FROM_ONE else {})
        for name, phrases in named.items()
    ]
