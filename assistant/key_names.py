"""What a terminal sends for a key, as the key's name; the same names for the codes of the Windows console.

Sequences after ECMA-48 (control functions), with the final letters and numbers that terminals customarily
send (common practice): CSI is escape and "[", SS3 is escape and "O"; function keys end in "~" after a number,
or are one letter.
"""

import codecs
import re
from collections.abc import Iterator

_ESCAPE = "\x1b"
_SEQUENCE = re.compile(
    r"\x1b(?:\[\[(?P<console>[A-E])|\[(?P<numbers>[0-?]*)[ -/]*(?P<final>[@-~])|O(?P<ss3>[ -~]))"
)
_UNFINISHED = re.compile(r"\x1b(?:\[\[?|\[[0-?]*[ -/]*|O)?\Z")

_FINALS = {
    "A": "up", "B": "down", "C": "right", "D": "left", "H": "home", "F": "end",
    "P": "f1", "Q": "f2", "R": "f3", "S": "f4", "M": "enter",
}  # fmt: skip
_NUMBERS = {
    "1": "home", "2": "insert", "3": "delete", "4": "end", "5": "page_up", "6": "page_down", "7": "home",
    "8": "end", "11": "f1", "12": "f2", "13": "f3", "14": "f4", "15": "f5", "17": "f6", "18": "f7",
    "19": "f8", "20": "f9", "21": "f10", "23": "f11", "24": "f12",
}  # fmt: skip
_CONSOLE = {"A": "f1", "B": "f2", "C": "f3", "D": "f4", "E": "f5"}
_SINGLE = {" ": "space", "\r": "enter", "\n": "enter", "\t": "tab", "\x7f": "backspace", "\b": "backspace",
           _ESCAPE: "escape"}  # fmt: skip
_WINDOWS = {
    "H": "up", "P": "down", "M": "right", "K": "left", "G": "home", "O": "end", "I": "page_up",
    "Q": "page_down", "R": "insert", "S": "delete", ";": "f1", "<": "f2", "=": "f3", ">": "f4", "?": "f5",
    "@": "f6", "A": "f7", "B": "f8", "C": "f9", "D": "f10",
}  # fmt: skip

END_OF_INPUT = "\x04"
"""Control-D, as it comes in when lines are not put together by the terminal."""


class Decoder:
    """Turns bytes from a terminal, cut anywhere, into names of keys. Keys without a name are passed over."""

    def __init__(self) -> None:
        """Begin with nothing pending."""
        self._text = codecs.getincrementaldecoder("utf-8")("ignore")
        self._pending = ""

    @property
    def is_pending(self) -> bool:
        """Whether an escape has come that may be a key of its own or the start of a sequence."""
        return bool(self._pending)

    def feed(self, data: bytes) -> tuple[str, ...]:
        """The names of the keys that the bytes complete."""
        text, self._pending = self._pending + self._text.decode(data), ""
        return tuple(self._names(text))

    def flush(self) -> tuple[str, ...]:
        """Nothing more came for a while: the escape was a key of its own."""
        pending, self._pending = self._pending, ""
        return ("escape",) if pending else ()

    def _names(self, text: str) -> Iterator[str]:
        at = 0
        while at < len(text):
            if _UNFINISHED.match(text, at):
                self._pending = text[at:]
                return
            sequence = _SEQUENCE.match(text, at)
            name = _of_sequence(sequence) if sequence else _of_character(text[at])
            at = sequence.end() if sequence else at + 1
            if name is not None:
                yield name


def _of_sequence(found: re.Match[str]) -> str | None:
    if found["console"]:
        return _CONSOLE[found["console"]]
    if found["ss3"]:
        return _FINALS.get(found["ss3"])
    if found["final"] == "~":
        return _NUMBERS.get(found["numbers"].split(";")[0])
    return _FINALS.get(found["final"])


def _of_character(character: str) -> str | None:
    if character in _SINGLE:
        return _SINGLE[character]
    return character.lower() if character.isprintable() or character == END_OF_INPUT else None


def of_windows(first: str, second: str = "") -> str | None:
    """The name of a key as the Windows console gives it: one character, or a lead character and a code."""
    return _WINDOWS.get(second) if first in ("\0", "\xe0") and second else _of_character(first)


NAMES = frozenset({*_FINALS.values(), *_NUMBERS.values(), *_SINGLE.values()})
"""Every name that is not simply the character."""
