"""What a text of the vocabulary means, from a phrases file: which command, and what stands in its slots."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any

from models.recognising import Vocabulary

NUMBER = "number"
"""The slot that may also be said alone, and the name under which that counts."""
ABOVE_NOUGHT = "number_above_nought"
"""The same without nought, for commands whose least number is 1."""


class PhrasesBroken(Exception):
    """A phrases file cannot be read."""


@dataclass(frozen=True)
class PhraseBook:
    """Every command with every way to say it.

    Attributes:
        commands: name → phrases, slots in braces.
        slots: slot → texts.
        pronounced: word → phones.
        values: slot → text → value, where texts of one slot may mean the same.
        homophones: groups of words that sound the same.
        begins_talk: phrases with which talk begins too.
        moving: commands that change the place; all where nobody says which.
    """

    commands: Mapping[str, tuple[str, ...]]
    slots: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    pronounced: Mapping[str, str] = field(default_factory=dict)
    values: Mapping[str, Mapping[str, object]] = field(default_factory=dict)
    moving: frozenset[str] = frozenset()
    homophones: tuple[tuple[str, ...], ...] = ()
    begins_talk: frozenset[str] = frozenset()

    @property
    def vocabulary(self) -> Vocabulary:
        """All of it."""
        phrases = dict.fromkeys(phrase for phrases in self.commands.values() for phrase in phrases)
        moving = (phrase for name, phrases in self.commands.items() if name in self.moving for phrase in phrases)
        costly = frozenset(moving)
        return Vocabulary(tuple(phrases), self.slots, self.pronounced, costly, self.homophones, self.begins_talk)

    def meaning(self, text: str) -> tuple[str, tuple[tuple[str, object], ...]] | None:
        """The command and what stands in its slots; None where it is no text of the vocabulary."""
        words = tuple(text.split())
        for name, phrase in self._tokens:
            for filled in self._matches(phrase, words):
                return name, tuple(sorted(filled.items(), key=lambda item: item[0]))
        return None

    @cached_property
    def _tokens(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        return tuple((name, tuple(phrase.split())) for name, phrases in self.commands.items() for phrase in phrases)

    @cached_property
    def _texts(self) -> Mapping[str, frozenset[tuple[str, ...]]]:
        return {slot: frozenset(tuple(text.split()) for text in texts) for slot, texts in self.slots.items()}

    def _matches(self, phrase: tuple[str, ...], words: tuple[str, ...]) -> Iterator[dict[str, object]]:
        if not phrase:
            if not words:
                yield {}
            return
        first, rest = phrase[0], phrase[1:]
        if not first.startswith("{"):
            if words[:1] == (first,):
                yield from self._matches(rest, words[1:])
            return
        slot = first[1:-1]
        for end in range(len(words), 0, -1):
            if words[:end] in self._texts.get(slot, ()):
                text = " ".join(words[:end])
                name = NUMBER if slot == ABOVE_NOUGHT else slot
                value = self.values.get(name, {}).get(text, text)
                yield from ({name: value, **others} for others in self._matches(rest, words[end:]))


def read_phrases(path: Path) -> PhraseBook:
    """The book in a JSON file.

    {commands: [{name, phrases, moves?, least?}], slots, pronounced?, values?, homophones?, begins_talk?}

    A number may also be said alone; that is no command and moves nothing.

    Raises:
        PhrasesBroken: it cannot be read.
    """
    try:
        found = json.loads(path.read_text(encoding="utf-8"))
        slots = {name: tuple(texts) for name, texts in found.get("slots", {}).items()}
        commands = {each["name"]: tuple(_phrases(each, slots)) for each in found["commands"]}
        homophones = tuple(map(tuple, found.get("homophones", ())))
        begins_talk = frozenset(found.get("begins_talk", ()))
        moving = frozenset(each["name"] for each in found["commands"] if each.get("moves"))
    except (OSError, ValueError, KeyError, TypeError) as failure:
        message = f"{path}: cannot be read ({failure!r}); write it with `roundcaller phrases --json`"
        raise PhrasesBroken(message) from failure
    moving = moving or frozenset(commands)
    if NUMBER in slots:
        commands.setdefault(NUMBER, (f"{{{NUMBER}}}",))
    pronounced, values = found.get("pronounced", {}), found.get("values", {})
    return PhraseBook(commands, slots, pronounced, values, moving, homophones, begins_talk)


def _phrases(command: Mapping[str, Any], slots: Mapping[str, object]) -> Iterator[str]:
    """As the file has them, but for a number that is never nought."""
    above = ABOVE_NOUGHT if command.get("least") and ABOVE_NOUGHT in slots else NUMBER
    return (phrase.replace(f"{{{NUMBER}}}", f"{{{above}}}") for phrase in command["phrases"])


def read_entries(path: Path) -> PhraseBook:
    """A book of which each entry, one a line, means itself.

    Raises:
        PhrasesBroken: it cannot be read.
    """
    try:
        entries = [line.strip().lower() for line in path.read_text(encoding="utf-8").splitlines()]
    except (OSError, ValueError) as failure:
        message = f"{path}: cannot be read ({failure})"
        raise PhrasesBroken(message) from failure
    commands = {entry: (entry,) for entry in entries if entry}
    return PhraseBook(commands, moving=frozenset(commands))
