"""What is wrong with a language's phrases and numbers; each finding is one sentence for whoever writes it.

The checks of its sentences stand in `assistant.languages.trying`.
"""

import itertools
import tomllib
from collections.abc import Collection, Iterator, Mapping
from typing import Any

from assistant.languages import Language
from assistant.languages.numbers import MOST, plain
from assistant.languages.phrases import NUMBER, Match, slots_in

MOST_PHRASES = 24
MOST_IN_ALL = 240
NUMBERS_TRIED = (0, 1, 2, 13, 30, 108, 999)


def unphrased(language: Language, names: Collection[str], answers: Collection[str]) -> list[str]:
    """Commands and answers without a phrase, phrases without a command, slots that nothing fills."""
    phrases = language.phrases
    found = [f"no phrase for the command {name}" for name in names if not phrases.commands.get(name)]
    found += [f"no phrase for the answer {name}" for name in answers if not phrases.answers.get(name)]
    found += [f"no such command: {name}" for name in phrases.commands if name not in names]
    found += [f"no such answer: {name}" for name in phrases.answers if name not in answers]
    found += [
        f"{name}: nothing can stand in {{{slot}}}"
        for name in (*phrases.commands, *phrases.answers)
        for phrase in phrases.of(name)
        for slot in slots_in(phrase)
        if slot != NUMBER and not phrases.slots.get(slot)
    ]
    return found


def misses_slots(language: Language, english: Language) -> list[str]:
    """Commands that cannot say just what English can: other slots, or other things that may stand there."""
    found = []
    for name, phrases in english.phrases.commands.items():
        wanted = {slot for phrase in phrases for slot in slots_in(phrase)}
        given = {slot for phrase in language.phrases.commands.get(name, ()) for slot in slots_in(phrase)}
        if wanted != given:
            found.append(f"{name} has the slots {sorted(given)} and needs {sorted(wanted)}")
    for slot in ("stage", "half", "sock"):
        wanted, given = set(english.phrases.slots[slot]), set(language.phrases.slots.get(slot, {}))
        if wanted != given:
            found.append(f"{{{slot}}} has {sorted(given)} and needs {sorted(wanted)}")
    return found


def too_many(language: Language) -> list[str]:
    """Commands with so many phrasings that a recogniser mixes them up."""
    commands = language.phrases.commands
    found = [
        f"{name} has {len(phrases)} phrases; at most {MOST_PHRASES} are useful"
        for name, phrases in commands.items()
        if len(phrases) > MOST_PHRASES
    ]
    total = sum(map(len, commands.values()))
    if total > MOST_IN_ALL:
        found.append(f"{total} phrases in all; at most {MOST_IN_ALL} are useful")
    return found


def overmatched(language: Language) -> list[str]:
    """Words that two commands claim, or a command and an answer."""
    commands, answers = language.phrases.commands, language.phrases.answers
    said = [(name, phrase) for name, phrases in (*commands.items(), *answers.items()) for phrase in phrases]
    found = {
        f"“{words}” is {name} and {other}"
        for name, phrase in said
        for words in filled(language, phrase)
        for other in commands
        if other != name and language.phrases.match(words, [other]) is not None
    }
    return sorted(found)


def filled(language: Language, phrase: str) -> Iterator[str]:
    """The phrase with some of all that may stand in its slots."""
    slots = slots_in(phrase)
    choices = [
        [language.numbers.ways(number)[0] for number in NUMBERS_TRIED]
        if slot == NUMBER
        else language.phrases.fillers(slot)
        for slot in slots
    ]
    for words in itertools.product(*choices):
        text = phrase
        for slot, word in zip(slots, words, strict=True):
            text = text.replace(f"{{{slot}}}", word, 1)
        yield text


def heard_otherwise(language: Language) -> list[str]:
    """Lines of heard.toml that are understood as something else."""
    data = tomllib.loads((language.folder / "heard.toml").read_text(encoding="utf-8"))
    found = [
        f"“{words}” should mean nothing, and is {match.name}"
        for words in data["nothing"]
        if (match := language.phrases.match(words)) is not None
    ]
    for line in data["heard"]:
        match = language.phrases.match(line["said"])
        if _as_line(match) != {name: str(value) for name, value in line.items() if name != "said"}:
            found.append(f"“{line['said']}” should be {line['means']}, and is understood as {match}")
    return found


def untried(language: Language) -> list[str]:
    """Commands that no line of heard.toml says."""
    data: Mapping[str, Any] = tomllib.loads((language.folder / "heard.toml").read_text(encoding="utf-8"))
    tried = {line["means"] for line in data["heard"]}
    return [f"heard.toml never says {name}" for name in language.phrases.commands if name not in tried]


def misunderstood_numbers(language: Language) -> list[str]:
    """Numbers from 0 to 999 that are not understood when they are said, in any form or way."""
    numbers = language.numbers
    every = range(MOST + 1)
    forms = ("", *numbers.heard_forms)
    said = [(plain(numbers.say(number, form)), number) for number in every for form in forms]
    said += [(words, number) for number in every for words in numbers.ways(number)]
    found = [f"“{words}” should be {number}" for words, number in said if numbers.understood(words) != number]
    unspelled = (number for number in every[10:] if numbers.spelled.get(numbers.spell(number)) != number)
    return [*found, *(f"digit by digit, {number} is not understood" for number in unspelled)]


def _as_line(match: Match | None) -> dict[str, str] | None:
    if match is None:
        return None
    return {"means": match.name, **{slot: str(value) for slot, value in match.slots.items()}}
