"""Sets of recordings to evaluate recognisers on: a CSV file, and the sound files beside it.

SetBroken    evaluation-set-broken    path, what
"""

import csv
import wave
from collections.abc import Iterator
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from typing import Any, Literal, get_args

import numpy as np
from numpy.typing import NDArray

from models.recognising import Samples
from models.resampling import Resampler, unpack

Kind = Literal["word", "phrase", "talk", "noise"]

_KINDS: dict[str, Kind] = {kind: kind for kind in get_args(Kind)}


class SetBroken(Exception):
    """The set, or a recording of it, cannot be read."""

    def __init__(self, path: Path, what: str) -> None:
        super().__init__(path, what)

    def __str__(self) -> str:
        return f"{self.args[0]}: {self.args[1]}"


@dataclass(frozen=True, slots=True)
class Recording:
    """One line of a set.

    Attributes:
        path: of the sound.
        transcript: what is said in it, in small letters without punctuation; empty where nobody knows.
        speaker: who says it.
        kind: a word or phrase is said alone; talk and noise are no commands.
    """

    path: Path
    transcript: str
    speaker: str
    kind: Kind


def read_set(path: Path) -> tuple[Recording, ...]:
    """The recordings that a CSV file lists under `path` (relative to it), `transcript`, `speaker`, `kind`.

    Raises:
        SetBroken: it cannot be read, or a line is wrong.
    """
    try:
        with path.open(encoding="utf-8", newline="") as file:
            return tuple(_recordings(path, csv.DictReader(file)))
    except (OSError, UnicodeDecodeError) as failure:
        raise SetBroken(path, f"cannot be read ({failure})") from failure


def _recordings(path: Path, lines: "csv.DictReader[str]") -> Iterator[Recording]:
    missing = {"path", "transcript", "speaker", "kind"} - set(lines.fieldnames or ())
    if missing:
        raise SetBroken(path, f"has no column {', '.join(sorted(missing))}")
    for number, line in enumerate(lines, 2):
        kind = _KINDS.get(line["kind"])
        if kind is None:
            raise SetBroken(path, f'line {number} has the kind "{line["kind"]}"; write {", ".join(_KINDS)}')
        yield Recording(path.parent / line["path"], plain(line["transcript"]), line["speaker"], kind)


def plain(text: str) -> str:
    """Words as a vocabulary has them: small letters, no punctuation but apostrophes."""
    kept = "".join(letter if letter.isalnum() or letter == "'" else " " for letter in (text or "").lower())
    return " ".join(word for word in (part.strip("'") for part in kept.split()) if word)


def read_sound(path: Path) -> Samples:
    """A sound file as 16 kHz mono: WAV by the standard library, anything else if `soundfile` is installed.

    Raises:
        SetBroken: it cannot be read.
    """
    try:
        samples, rate_hz, channels = _read_wav(path) if path.suffix.lower() == ".wav" else _read_other(path)
        resampler = Resampler(rate_hz, channels)
    except Exception as failure:  # each library raises its own
        raise SetBroken(path, f"cannot be read ({failure})") from failure
    return np.concatenate((resampler.accept(samples), resampler.finish()))


def _read_wav(path: Path) -> tuple[NDArray[np.generic], int, int]:
    try:
        with wave.open(str(path)) as sound:
            data = sound.readframes(sound.getnframes())
            return unpack(data, sound.getsampwidth()), sound.getframerate(), sound.getnchannels()
    except wave.Error:  # floating point, which the standard library does not read
        return _read_other(path)


def _read_other(path: Path) -> tuple[NDArray[np.generic], int, int]:
    try:
        soundfile = import_module("soundfile")  # optional, for FLAC and Ogg
    except ImportError as failure:
        raise SetBroken(path, "needs soundfile: pip install soundfile") from failure
    sound: Any = soundfile.read(str(path), dtype="float32", always_2d=True)
    return sound[0], int(sound[1]), sound[0].shape[1]
