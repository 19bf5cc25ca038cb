"""The ways to say each command: templates of a language's phrases.toml, expanded once, looked up whole."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from assistant.languages.numbers import Numbers, plain
from plans.commands import FROM_ONE

NUMBER = "number"
"""The slot in which any number from 0 to 999 may stand."""
ABOVE_NOUGHT = "number_above_nought"
"""What recognisers are given for it where nought makes no sense: nothing is heard as it then."""


@dataclass(frozen=True, slots=True)
class Match:
    """What words mean: a command's or answer's name, and what stood in its slots (numbers as ints)."""

    name: str
    slots: Mapping[str, int | str]


@dataclass(frozen=True)
class Phrases:
    """All phrases of one language.

    Attributes:
        commands: name → phrases; a phrase may hold slots in braces.
        answers: the same for answers to questions, which are heard only while such a question is open.
        slots: slot → key → the words for it; without numbers.
        attention: the attention word, in each of its forms.
        to_teach: what is said most often, to be taught in her own voice.
        against_loudspeaker: what is heard while the voice comes from a loudspeaker: little, so that what is left of
            an echo is taken for none of it.
        pronounced: words that no pronouncing dictionary has → their phones (CMU).
        homophones: groups of words that sound the same.
        begins_talk: phrases of commands with which talk begins too.
    """

    numbers: Numbers
    commands: Mapping[str, tuple[str, ...]]
    answers: Mapping[str, tuple[str, ...]]
    slots: Mapping[str, Mapping[str, tuple[str, ...]]]
    attention: tuple[str, ...]
    to_teach: tuple[str, ...]
    against_loudspeaker: tuple[str, ...]
    pronounced: Mapping[str, str]
    homophones: tuple[tuple[str, ...], ...] = ()
    begins_talk: frozenset[str] = frozenset()

    def with_socks(self, names: Iterable[str]) -> "Phrases":
        """The same with the knitter's own names of the two socks, or of one piece, beside "first" and "second"."""
        socks = dict(self.slots["sock"])
        for (key, words), name in zip(tuple(socks.items()), names, strict=False):
            if plain(name):
                socks[key] = tuple(dict.fromkeys([*words, plain(name)]))
        return replace(self, slots={**self.slots, "sock": socks})

    def names(self) -> tuple[str, ...]:
        """Of all commands, in the order of the file."""
        return tuple(self.commands)

    def of(self, name: str) -> tuple[str, ...]:
        """The phrases of a command or answer.

        Raises:
            KeyError: there is none of that name.
        """
        return self.commands[name] if name in self.commands else self.answers[name]

    def to_hear(self, name: str) -> tuple[str, ...]:
        """The phrases of a command or answer as a recogniser is to have them.

        Raises:
            KeyError: there is none of that name.
        """
        if name not in FROM_ONE:
            return self.of(name)
        return tuple(phrase.replace(f"{{{NUMBER}}}", f"{{{ABOVE_NOUGHT}}}") for phrase in self.of(name))

    def fillers(self, slot: str) -> tuple[str, ...]:
        """Every text that may stand in a slot."""
        if slot == NUMBER:
            return tuple(self.numbers.heard)
        if slot == ABOVE_NOUGHT:
            return tuple(words for words, number in self.numbers.heard.items() if number)
        return tuple(words for ways in self.slots[slot].values() for words in ways)

    def meanings(self, slot: str) -> dict[str, str]:
        """Every text that may stand in a slot without numbers → its key."""
        return dict(self._keys[slot])

    def match(self, words: str, names: Iterable[str] | None = None) -> Match | None:
        """What the words, alone and complete, mean; among all commands, or among the given names.

        Args:
            words: as a recogniser or a keyboard gives them.
            names: of commands and answers.
        """
        said = plain(words)
        allowed = self.commands.keys() if names is None else frozenset(names)
        for name in self._exact.get(said, ()):
            if name in allowed:
                return Match(name, {})
        for name, pattern in self._patterns:
            if name in allowed and (found := pattern.fullmatch(said)) is not None:
                slots = self._read(found.groupdict())
                if slots is not None and not (name in FROM_ONE and slots.get(NUMBER) == 0):
                    return Match(name, slots)
        return None

    def _read(self, groups: Mapping[str, str]) -> dict[str, int | str] | None:
        slots: dict[str, int | str] = {}
        for slot, words in groups.items():
            value = self.numbers.understood(words) if slot == NUMBER else self._keys[slot][words]
            if value is None:
                return None
            slots[slot] = value
        return slots

    @cached_property
    def _exact(self) -> Mapping[str, tuple[str, ...]]:
        table: dict[str, tuple[str, ...]] = {}
        for name, phrase in self._all():
            if "{" not in phrase:
                table[phrase] = (*table.get(phrase, ()), name)
        return table

    @cached_property
    def _patterns(self) -> tuple[tuple[str, re.Pattern[str]], ...]:
        return tuple((name, self._pattern(phrase)) for name, phrase in self._all() if "{" in phrase)

    def _all(self) -> Iterable[tuple[str, str]]:
        for name, phrases in (*self.commands.items(), *self.answers.items()):
            for phrase in phrases:
                yield name, phrase

    def _pattern(self, phrase: str) -> re.Pattern[str]:
        def group(found: re.Match[str]) -> str:
            slot = found[1]
            if slot == NUMBER:
                return f"(?P<{slot}>.+)"
            ways = sorted(self.fillers(slot), key=len, reverse=True)
            return f"(?P<{slot}>{'|'.join(map(re.escape, ways))})"

        return re.compile(re.sub(r"\{(\w+)\}", group, phrase))

    @cached_property
    def _keys(self) -> Mapping[str, Mapping[str, str]]:
        return {
            slot: {words: key for key, ways in values.items() for words in ways}
            for slot, values in self.slots.items()
        }


def slots_in(phrase: str) -> tuple[str, ...]:
    """Names of the slots a phrase holds."""
    return tuple(re.findall(r"\{(\w+)\}", phrase))


def read_phrases(data: Mapping[str, Any], numbers: Numbers) -> Phrases:
    """From the content of a language's phrases.toml."""
    return Phrases(
        numbers=numbers,
        commands={name: _expanded(templates) for name, templates in data["commands"].items()},
        answers={name: _expanded(templates) for name, templates in data["answers"].items()},
        slots={
            slot: {key: _expanded(templates) for key, templates in values.items()}
            for slot, values in data["slots"].items()
        },
        attention=_expanded(data["attention"]),
        to_teach=_expanded(data["to_teach"]),
        against_loudspeaker=_expanded(data["against_loudspeaker"]),
        pronounced=dict(data.get("pronounced", {})),
        homophones=tuple(map(tuple, data.get("homophones", ()))),
        begins_talk=frozenset(data.get("begins_talk", ())),
    )


def _expanded(templates: Iterable[str]) -> tuple[str, ...]:
    from hassil.parse_expression import parse_sentence  # noqa: PLC0415 (slow to import)
    from hassil.sample import sample_sentence  # noqa: PLC0415

    phrases = (
        plain(phrase)
        for template in templates
        for phrase in sample_sentence(parse_sentence(template), expand_lists=False)
    )
    return tuple(dict.fromkeys(phrases))
