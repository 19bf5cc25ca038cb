"""Which phrases of different commands sound alike, by their phones. Writes the golden list:

    python -m tests.sounding_alike > tests/golden/sounding_alike_en.txt
"""

import itertools
from functools import cache
from pathlib import Path

from assistant.languages import Language, load

ALIKE = 0.34
"""Phones that differ, as a share of the longer phrase's; up to here two phrases count as alike."""


@cache
def dictionary() -> dict[str, tuple[str, ...]]:
    """Word → phones, first pronunciation, as in the dictionary that comes with the PocketSphinx wheel."""
    import pocketsphinx

    file = Path(pocketsphinx.get_model_path()) / "en-us" / "cmudict-en-us.dict"
    lines = (line.split() for line in file.read_text(encoding="utf-8").splitlines() if line)
    return {word: tuple(phones) for word, *phones in lines if "(" not in word}


def phones_of(language: Language, text: str) -> tuple[str, ...]:
    """All phones of a text; a slot counts as one phone of its own name."""
    own = {word: tuple(phones.split()) for word, phones in language.phrases.pronounced.items()}
    known = dictionary() | own
    return tuple(phone for word in text.split() for phone in known.get(word, (word,)))


def distance(one: tuple[str, ...], other: tuple[str, ...]) -> int:
    """Fewest phones added, dropped or changed (Levenshtein 1966)."""
    row = list(range(len(other) + 1))
    for at, phone in enumerate(one, 1):
        before, row[0] = row[0], at
        for column, other_phone in enumerate(other, 1):
            before, row[column] = row[column], min(
                row[column] + 1, row[column - 1] + 1, before + (phone != other_phone)
            )
    return row[-1]


def sounding_alike(language: Language) -> list[str]:
    """One line a pair: how far apart, and both phrases with their commands."""
    said = [
        (name, phrase, phones_of(language, phrase))
        for name, phrases in language.phrases.commands.items()
        for phrase in phrases
    ]
    lines = []
    for (name, phrase, phones), (other, other_phrase, other_phones) in itertools.combinations(said, 2):
        longer = max(len(phones), len(other_phones))
        if name != other and distance(phones, other_phones) <= ALIKE * longer:
            apart = distance(phones, other_phones)
            lines.append(f"{apart} of {longer}: {phrase} ({name}) / {other_phrase} ({other})")
    return sorted(lines)


if __name__ == "__main__":
    print("\n".join(sounding_alike(load("en"))))
