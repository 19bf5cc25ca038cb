"""What the synthetic speakers say: commands, numbers, single words, and talk with command words in it."""

import random
import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

_SLOT = re.compile(r"\{(\w+)\}")
_SENTENCE = range(3, 13)
SHARES = (("command", 34), ("number", 12), ("word", 10), ("words", 10), ("talk", 34))
"""Kind of text, and how many of a hundred are of it."""


def fill(phrase: str, slots: Mapping[str, Sequence[str]], chance: random.Random) -> str:
    """The phrase with a random text in each slot; small numbers come more often, as they do while knitting."""

    def one(match: re.Match[str]) -> str:
        texts = slots[match[1]]
        if match[1] == "number" and chance.random() < 0.6:
            texts = [text for text in texts if "hundred" not in text]
        return chance.choice(texts)

    return _SLOT.sub(one, phrase)


def talk(folders: Sequence[Path], dictionary: Mapping[str, object]) -> list[str]:
    """Runs of three to twelve known words out of plain text files, each once."""
    found: set[str] = set()
    for file in sorted(path for folder in folders for path in folder.iterdir() if "." not in path.name):
        text = re.sub(r"\s+", " ", file.read_text(encoding="utf-8", errors="ignore").lower().replace("\u2019", "'"))
        for piece in re.split(r"[^a-z' ]+", text):
            words = piece.split()
            if len(words) in _SENTENCE and all(word in dictionary for word in words):
                found.add(" ".join(words))
    return sorted(found)


def texts(
    phrases: Mapping[str, Any], words: Sequence[str], sentences: Sequence[str], seed: int
) -> Iterator[tuple[str, str]]:
    """Kind and text, without end."""
    chance = random.Random(seed)
    commands = [phrase for command in phrases["commands"] for phrase in command["phrases"]]
    whole = [phrase for phrase in commands if "{" not in phrase]
    slots = phrases["slots"]
    mine = sorted({word for phrase in commands for word in _SLOT.sub(" ", phrase).split()})
    kinds, weights = zip(*SHARES, strict=True)
    while True:
        kind = chance.choices(kinds, weights)[0]
        match kind:
            case "command":
                yield kind, fill(chance.choice(whole if chance.random() < 0.5 else commands), slots, chance)
            case "number":
                yield kind, fill("{number}", slots, chance)
            case "word":
                yield kind, chance.choice(mine if chance.random() < 0.5 else words)
            case "words":
                yield (
                    kind,
                    " ".join(chance.choice((mine, words)[chance.random() < 0.6]) for _ in range(chance.randint(2, 4))),
                )
            case _:
                sentence = chance.choice(sentences).split()
                if chance.random() < 0.4:
                    sentence.insert(chance.randint(0, len(sentence)), chance.choice(mine))
                yield kind, " ".join(sentence)
