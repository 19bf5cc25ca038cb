"""Words and how they are said: phones of the CMU dictionary that the PocketSphinx wheel carries, with ours beside it.

A British way to say a word stands beside the American one where rules give it: R is silent unless a vowel
follows (non-rhotic accents; Wells, "Accents of English", 1982, vol. 1, 3.2.2), and the words of the BATH set
have the vowel of PALM (the same, 2.2.7; the list here is from memory, only words that commands use).
"""

import json
import re
from collections import defaultdict
from collections.abc import Iterable, Mapping
from pathlib import Path

Pronunciation = tuple[str, ...]
Lexicon = Mapping[str, tuple[Pronunciation, ...]]

SILENCE = "SIL"
VOWELS = frozenset(["AA", "AE", "AH", "AO", "AW", "AY", "EH", "ER", "EY", "IH", "IY", "OW", "OY", "UH", "UW"])
CONSONANTS = frozenset(
    [
        "B",
        "CH",
        "D",
        "DH",
        "F",
        "G",
        "HH",
        "JH",
        "K",
        "L",
        "M",
        "N",
        "NG",
        "P",
        "R",
        "S",
        "SH",
        "T",
        "TH",
        "V",
        "W",
        "Y",
        "Z",
        "ZH",
    ]
)
PHONES = (SILENCE, *sorted(VOWELS | CONSONANTS))
"""Silence first; then the 39 phones in alphabetical order."""

_OURS = Path(__file__).with_name("more_words.txt")
_BATH = frozenset(
    [
        "half",
        "last",
        "fast",
        "faster",
        "after",
        "ask",
        "can't",
        "past",
        "pass",
        "class",
        "rather",
        "glass",
        "master",
        "answer",
    ]
)
_EVERYDAY = 4000


def general() -> dict[str, list[Pronunciation]]:
    """The whole dictionary, ours included; the first pronunciation of a word is its usual one."""
    import pocketsphinx  # noqa: PLC0415 - only for the dictionary it carries

    found: dict[str, list[Pronunciation]] = defaultdict(list)
    for line in Path(pocketsphinx.get_model_path(), "en-us", "cmudict-en-us.dict").read_text().splitlines():
        word, *phones = line.split()
        found[re.sub(r"\(\d+\)$", "", word)].append(tuple(phones))
    for line in _OURS.read_text().splitlines():
        word, *phones = line.split("#")[0].split() or [""]
        if word and tuple(phones) not in found[word]:
            found[word].append(tuple(phones))
    return dict(found)


def british(word: str, said: Pronunciation) -> Pronunciation:
    """The same in a non-rhotic accent with a long BATH vowel; unchanged where nothing differs."""
    kept: list[str] = []
    for phone, following in zip(said, (*said[1:], ""), strict=True):
        if phone == "R" and following not in VOWELS:
            continue
        if phone == "ER" and following not in VOWELS:
            kept.append("AH" if len(kept) > 1 else "ER")
        elif phone == "AE" and word in _BATH:
            kept.append("AA")
        else:
            kept.append(phone)
    return tuple(kept)


def with_accents(lexicon: Mapping[str, Iterable[Pronunciation]]) -> dict[str, tuple[Pronunciation, ...]]:
    """Every pronunciation, the British ones beside the American, each once."""
    return {
        word: tuple(dict.fromkeys([*ways, *(british(word, way) for way in ways)]))
        for word, ways in ((word, tuple(ways)) for word, ways in lexicon.items())
    }


def phrase_words(phrases: Mapping[str, object]) -> set[str]:
    """All words of a phrases file (`roundcaller phrases --json`), slots included."""
    texts = [text for command in phrases["commands"] for text in command["phrases"]]  # type: ignore[attr-defined]
    texts += [text for slot in phrases["slots"].values() for text in slot]  # type: ignore[attr-defined]
    return {word for text in texts for word in re.sub(r"\{\w+\}", " ", text).split()}


def everyday(count: int = _EVERYDAY) -> list[str]:
    """The most frequent English words, most frequent first (the wordfreq package, Speer 2022)."""
    import wordfreq  # noqa: PLC0415 - for training alone

    return [word for word in wordfreq.top_n_list("en", count) if re.fullmatch(r"[a-z']+", word)]


def for_phrases(phrases_file: Path) -> dict[str, tuple[Pronunciation, ...]]:
    """What the model knows: every word of the commands, ours, and everyday words to say no with.

    Raises:
        SystemExit: a word of a command stands in no dictionary; its line belongs in more_words.txt.
    """
    dictionary = general()
    wanted = phrase_words(json.loads(phrases_file.read_text()))
    lacking = sorted(wanted - dictionary.keys())
    if lacking:
        raise SystemExit(f"no pronunciation for {', '.join(lacking)}: write it into {_OURS.name}")
    ours = {line.split()[0] for line in _OURS.read_text().splitlines() if line and not line.startswith("#")}
    kept = wanted | ours | {word for word in everyday() if word in dictionary}
    return with_accents({word: dictionary[word] for word in sorted(kept)})
