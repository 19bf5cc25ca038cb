"""Keys, pedals and page-turners as an input beside the voice; what each asks for is data in keys.toml."""

import tomllib
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from importlib.resources import files
from typing import Any

from assistant.languages.phrases import NUMBER, Match
from assistant.listening.commands import command_of
from assistant.session_commands import AnyCommand


class Surface(StrEnum):
    """What a key asks of the surroundings at once, without a command."""

    OUTPUT = "output"
    SILENCE = "silence"
    NOTHING = "nothing"


Meant = AnyCommand | Surface

MOST_DIGITS = 3
NUMBER_LASTS_S = 10.0
"""How long digits wait for the key that takes them."""

_DIGIT = "digit"


@dataclass(frozen=True, slots=True)
class KeyTable:
    """What each key asks for alone, after digits, and after millimetres (the part measured); and how it is guarded.

    Attributes:
        guard_s: for most keys, in seconds.
        brief_guard_s: for the keys in `brief`.
    """

    alone: Mapping[str, str]
    after_digits: Mapping[str, str]
    after_millimetres: Mapping[str, str]
    guard_s: float
    brief_guard_s: float
    brief: frozenset[str]

    @classmethod
    def read(cls, text: str) -> "KeyTable":
        """Read keys.toml.

        Raises:
            ValueError: a key stands for two things.
        """
        form = tomllib.loads(text)
        guard = form["guard"]
        return cls(
            _turned(form["keys"]), _turned(form["after_digits"]), _turned(form["after_millimetres"]),
            guard["seconds"], guard["brief_seconds"], frozenset(guard["brief"]),
        )  # fmt: skip

    @classmethod
    def usual(cls) -> "KeyTable":
        """The one that comes with the program."""
        return cls.read(files("assistant").joinpath("keys.toml").read_text(encoding="utf-8"))

    def guard_of(self, key: str) -> float:
        """How soon a second press of this key is taken for the same, in seconds."""
        return self.brief_guard_s if key in self.brief else self.guard_s


def _turned(wishes: Mapping[str, Any]) -> dict[str, str]:
    found: dict[str, str] = {}
    for wish, keys in wishes.items():
        for key in keys:
            if found.setdefault(key, wish) != wish:
                raise ValueError(f"the key “{key}” stands for {found[key]} and for {wish}")
    return found


@dataclass(slots=True)
class Keys:
    """Follows one keyboard: guards against double strikes, puts digits together."""

    table: KeyTable = field(default_factory=KeyTable.usual)
    _last: tuple[str, float] = ("", float("-inf"))
    _digits: str = ""

    def press(self, key: str, at_s: float) -> Meant:
        """What a key press asks for; NOTHING for an unknown key, a digit, or more of the same press.

        Args:
            key: its name, as in key_names.
            at_s: when, in seconds of any steady clock. A held key goes on being the same press.
        """
        (last, last_s), self._last = self._last, (key, at_s)
        if at_s - last_s > NUMBER_LASTS_S:
            self._digits = ""
        if key == last and at_s - last_s < self.table.guard_of(key):
            return Surface.NOTHING
        wish = self.table.alone.get(key)
        if wish == _DIGIT:
            self._digits = (self._digits + key)[-MOST_DIGITS:]
            return Surface.NOTHING
        digits, self._digits = self._digits, ""
        if digits and key == "backspace":
            return Surface.NOTHING
        if digits and key in self.table.after_digits:
            return command_of(Match(self.table.after_digits[key], {NUMBER: int(digits)}))
        if digits and key in self.table.after_millimetres:
            part = self.table.after_millimetres[key]
            return command_of(Match("tape_says", {NUMBER: int(digits), "part": part, "unit": "mm"}))
        return _meant(wish)


def _meant(wish: str | None) -> Meant:
    if wish is None:
        return Surface.NOTHING
    return Surface(wish) if wish in set(Surface) else command_of(Match(wish, {}))


def presses(strokes: Iterable[str], now_s: Callable[[], float], keys: Keys | None = None) -> Iterator[Meant]:
    """What each stroke asks for, as it comes: one for every stroke, so that each can cut the voice short."""
    keys = Keys() if keys is None else keys
    for key in strokes:
        yield keys.press(key, now_s())
