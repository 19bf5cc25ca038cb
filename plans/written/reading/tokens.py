"""A pattern cut into words, numbers and signs, each with the place where it stands."""

import re
from typing import NamedTuple

_TOKEN = re.compile(
    r"(?P<word>[^\W\d_][\w&]*(?:-[^\W\d_][\w&]*)*)|(?P<number>\d+)|(?P<name>\"[^\"\n]*\"|“[^”\n]*”)"
    r"|(?P<space>[^\S\n]+)|(?P<sign>.)|(?P<line>\n)"
)
_DASHES = {"\N{EN DASH}": "-", "\N{EM DASH}": "-", "\N{MINUS SIGN}": "-", "\N{MULTIPLICATION SIGN}": "x"}
LONGEST_NUMBER = 5
"""Digits: no piece has a hundred thousand stitches."""


class Token(NamedTuple):
    """One word, number, name in quotes or sign; `text` in small letters.

    Attributes:
        kind: word, number, name, sign, or end (of the pattern).
        line, column: of the file, from 1.
        first: the first of its line.
    """

    kind: str
    text: str
    line: int
    column: int
    first: bool = False

    @property
    def where(self) -> str:
        """As problems name it."""
        return f"line {self.line}, column {self.column}"

    @property
    def number(self) -> int:
        """Of a number."""
        return int(self.text)


def tokens(text: str, line: int, column: int) -> list[Token]:
    """All tokens, and an end.

    Args:
        text: the pattern.
        line: of its first sign in the file.
        column: of the same.
    """
    found: list[Token] = []
    began, first = 1 - column, True
    for match in _TOKEN.finditer(text):
        kind = match.lastgroup or "sign"
        if kind == "line":
            line, began, first = line + 1, match.end(), True
        elif kind != "space":
            shown = match.group().strip('"“”') if kind == "name" else match.group().casefold()
            found.append(Token(kind, _DASHES.get(shown, shown), line, match.start() - began + 1, first))
            first = False
    return [*found, Token("end", "", line, len(text) - began + 1, first=True)]
