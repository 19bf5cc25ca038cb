"""A strict reader of WebVTT, written from the syntax in the W3C's text (Candidate Recommendation, 2019).

It refuses whatever a conforming file may not hold, where a player would pass over it.
"""

import re
from typing import NamedTuple

TIME = re.compile(r"(?:(?P<hours>\d{2,}):)?(?P<minutes>[0-5]\d):(?P<seconds>[0-5]\d)\.(?P<ms>\d{3})")
TIMINGS = re.compile(r"(?P<start>\S+)[ \t]+-->[ \t]+(?P<end>\S+)(?:[ \t]+\S.*)?")
REFERENCE = re.compile(r"&(?:amp|lt|gt|lrm|rlm|nbsp|#\d+|#x[0-9a-fA-F]+);")


class Shown(NamedTuple):
    """A cue as read: times in milliseconds, text with its references resolved."""

    name: str
    began_ms: int
    ended_ms: int
    text: str


def read(text: str) -> list[Shown]:
    """All cues of a file.

    Raises:
        ValueError: it does not conform; says how.
    """
    if "\0" in text or "\r" in text:
        raise ValueError("a NUL, or a line end of a kind that this reader does not take")
    head, _, body = text.removeprefix("\ufeff").partition("\n")
    if not re.fullmatch(r"WEBVTT(?:[ \t].*)?", head):
        raise ValueError(f"not the file's first line: {head!r}")
    if body and not body.startswith("\n"):
        raise ValueError("no blank line after the first one")
    blocks = [block for block in re.split(r"\n{2,}", body.strip("\n")) if block]
    found = [_cue(block) for block in blocks if not re.match(r"NOTE(?:[ \t\n]|$)", block)]
    _in_order(found)
    return found


def _cue(block: str) -> Shown:
    lines = block.split("\n")
    name = lines.pop(0) if "-->" not in lines[0] else ""
    timings = TIMINGS.fullmatch(lines.pop(0)) if lines else None
    if timings is None:
        raise ValueError(f"no times in {block!r}")
    if not lines:
        raise ValueError(f"no text in {block!r}")
    return Shown(name, _ms(timings["start"]), _ms(timings["end"]), _plain("\n".join(lines)))


def _ms(time: str) -> int:
    found = TIME.fullmatch(time)
    if found is None:
        raise ValueError(f"not a time: {time!r}")
    minutes = 60 * int(found["hours"] or 0) + int(found["minutes"])
    return (60 * minutes + int(found["seconds"])) * 1000 + int(found["ms"])


def _plain(text: str) -> str:
    if "-->" in text:
        raise ValueError(f"an arrow in the text: {text!r}")
    if "<" in text or "&" in REFERENCE.sub("", text):
        raise ValueError(f"an unescaped sign in the text: {text!r}")
    return text.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")


def _in_order(found: list[Shown]) -> None:
    for cue in found:
        if cue.ended_ms <= cue.began_ms:
            raise ValueError(f"ends before it starts: {cue}")
    starts = [cue.began_ms for cue in found]
    if starts != sorted(starts):
        raise ValueError("starts fall")
    names = [cue.name for cue in found if cue.name]
    if len(names) != len(set(names)):
        raise ValueError("two cues of one name")
