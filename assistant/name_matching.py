"""Picking one of several by a name as people write it: any case, a part of it, its words in any order."""

import unicodedata
from collections.abc import Sequence


def fitting(wanted: str, names: Sequence[str]) -> tuple[int, ...]:
    """Which names are meant, by their numbers: those that are just so, else those that hold all the words.

    A name that stands there twice counts once: one device reached in two ways.
    """
    words = _words(wanted)
    if not words:
        return ()
    same = [at for at, name in enumerate(names) if _words(name) == words]
    parts = [at for at, name in enumerate(names) if all(word in _plain(name) for word in words)]
    seen: dict[tuple[str, ...], int] = {}
    for at in same or parts:
        seen.setdefault(_words(names[at]), at)
    return tuple(seen.values())


def _plain(text: str) -> str:
    """Without case and accents."""
    folded = unicodedata.normalize("NFKD", text).upper().casefold()  # not every small letter is its capital's
    parts = unicodedata.normalize("NFKD", folded)
    return "".join(sign for sign in parts if not unicodedata.combining(sign))


def _words(text: str) -> tuple[str, ...]:
    return tuple("".join(sign if sign.isalnum() else " " for sign in _plain(text)).split())
