"""Texts as the pieces of words that a language model counts in: byte-pair encoding of words of plain letters.

R. Sennrich, B. Haddow and A. Birch, "Neural Machine Translation of Rare Words with Subword Units" (2016): the two
neighbours that were joined first when the pieces were learnt are joined first again.
"""

import json
import re
from collections.abc import Iterable, Sequence
from functools import cached_property
from itertools import pairwise
from pathlib import Path
from typing import Any

_SPACE = "\N{LATIN CAPITAL LETTER G WITH DOT ABOVE}"
"""What stands for a space before a word in the table of pieces."""
_WORDS = re.compile(r"'(?:s|t|re|ve|m|ll|d)| ?[A-Za-z]+| ?[0-9]+| ?[^\sA-Za-z0-9]+")
_NEVER = 1 << 30


class WordPieces:
    """The pieces that a `tokenizer.json` lists.

    Args:
        file: where it lies.

    Raises:
        OSError, ValueError, KeyError, TypeError: it cannot be read, or is something else.
    """

    def __init__(self, file: Path) -> None:
        found = json.loads(file.read_text(encoding="utf-8"))
        self._numbers: dict[str, int] = found["model"]["vocab"]
        self._ranks = {_pair(merge): rank for rank, merge in enumerate(found["model"]["merges"])}
        self._marks = {mark["content"]: int(mark["id"]) for mark in found["added_tokens"]}

    def mark(self, name: str) -> int:
        """The number of a special piece, as "<|startoftranscript|>"; raises KeyError."""
        return self._marks[name]

    def numbers(self, text: str) -> list[int]:
        """The pieces of a text of letters, digits and signs of ASCII.

        Raises:
            KeyError: it holds something else.
        """
        return [self._numbers[piece] for word in _WORDS.findall(text) for piece in self._joined(word)]

    def text(self, numbers: Iterable[int]) -> str:
        """What pieces say; special ones, and letters beyond ASCII, say nothing that could be used."""
        return "".join(self._pieces.get(number, "") for number in numbers).replace(_SPACE, " ")

    @cached_property
    def _pieces(self) -> dict[int, str]:
        return {number: piece for piece, number in self._numbers.items()}

    def _joined(self, word: str) -> Sequence[str]:
        pieces = list(word.replace(" ", _SPACE))
        while len(pieces) > 1:
            ranks = [self._ranks.get(pair, _NEVER) for pair in pairwise(pieces)]
            at = min(range(len(ranks)), key=ranks.__getitem__)
            if ranks[at] == _NEVER:
                break
            pieces[at : at + 2] = [pieces[at] + pieces[at + 1]]
        return pieces


def _pair(merge: Any) -> tuple[str, str]:  # noqa: ANN401 - as the file has it, in one of two forms
    first, second = merge.split(" ") if isinstance(merge, str) else merge
    return first, second
