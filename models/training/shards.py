"""Corpora on the disk: sounds one after the other in a file (Ogg Opus), and beside it a line of JSON for each."""

import hashlib
import io
import json
from collections.abc import Iterable, Iterator
from dataclasses import asdict, dataclass
from pathlib import Path

import numpy as np
import numpy.typing as npt
import soundfile

RATE_HZ = 16_000
_TUNING_SHARE = 5


@dataclass(frozen=True)
class Clip:
    """What is known of a sound: words said (none in noise), who, from where, and of which kind."""

    text: str
    speaker: str
    source: str
    kind: str
    british: bool = False
    start: int = 0
    size: int = 0


def for_tuning(speaker: str) -> bool:
    """Whether the speaker is kept out of training: one in five, by the hash of the name."""
    return int(hashlib.sha256(speaker.encode()).hexdigest(), 16) % _TUNING_SHARE == 0


class Shard:
    """A corpus being written: FILE.opus holds the sounds, FILE.jsonl the clips."""

    def __init__(self, stem: Path) -> None:
        self._sounds = stem.with_suffix(".opus").open("wb")
        self._lines = stem.with_suffix(".jsonl").open("w")
        self.seconds = 0.0

    def add(self, sound: npt.NDArray[np.float32], clip: Clip) -> None:
        """Append a sound (16 kHz, -1..1)."""
        buffer = io.BytesIO()
        peak = float(np.abs(sound).max(initial=0.0)) or 1.0
        soundfile.write(
            buffer, sound * min(0.7 / peak, 30.0), RATE_HZ, format="OGG", subtype="OPUS", compression_level=0.93
        )
        packed = buffer.getvalue()
        placed = {**asdict(clip), "start": self._sounds.tell(), "size": len(packed)}
        self._sounds.write(packed)
        self._lines.write(json.dumps(placed) + "\n")
        self.seconds += len(sound) / RATE_HZ

    def close(self) -> None:
        """Everything on the disk."""
        self._sounds.close()
        self._lines.close()


def clips(stem: Path) -> list[Clip]:
    """All clips of a corpus."""
    return [Clip(**json.loads(line)) for line in stem.with_suffix(".jsonl").read_text().splitlines()]


def sounds(stem: Path, wanted: Iterable[Clip]) -> Iterator[npt.NDArray[np.int16]]:
    """Their sounds, 16 kHz."""
    with stem.with_suffix(".opus").open("rb") as file:
        for clip in wanted:
            file.seek(clip.start)
            sound, rate = soundfile.read(io.BytesIO(file.read(clip.size)), dtype="int16")
            if rate != RATE_HZ:
                raise ValueError(f"{stem} holds sound at {rate} Hz")
            yield sound
