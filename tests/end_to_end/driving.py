"""A synthesised knitter in front of the running program: she speaks into its microphone and hears its speaker.

Everything is in real time and over the software sound card; nothing is said twice.
"""

import os
import subprocess
import sys
import threading
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Self

import numpy as np

from models.loudness import dbfs
from tests.end_to_end.virtual_sound import RECORDING_HZ, VirtualSound

VOICE = ("espeak-ng", "-v", "en-us+f5", "-s", "150")
"""Not the program's own voice."""
QUIET_DBFS = -60.0
QUIET_S = 0.6
"""Longer than the pauses inside a sentence, and than the wait for the tone after it."""
PAUSE_S = 0.3
"""Longer than between two words, and shorter than between two answers."""
STARTS_S = 4.0
"""So long a sentence may take to be rendered."""


def speak(words: str, folder: Path) -> Path:
    """The words as a WAV, made once."""
    file = folder / f"{words.replace(' ', '_')}.wav"
    if not file.exists():
        subprocess.run((*VOICE, "-w", str(file), words), check=True)
    return file


def misheard(commands: list[str], heard: list[str]) -> int:
    """Edits between what was said and what was heard: wrong, missing and invented ones."""
    row = list(range(len(heard) + 1))
    for number, said in enumerate(commands, start=1):
        last, row[0] = row[0], number
        for at, words in enumerate(heard, start=1):
            last, row[at] = row[at], min(row[at] + 1, row[at - 1] + 1, last + (said != words))
    return row[-1]


@dataclass(frozen=True)
class Line:
    """A line that the program printed, and when, in seconds of `time.monotonic`."""

    text: str
    at_s: float


class Program:
    """The program at a microphone and a speaker, from its start to its end; at a terminal too, where one is given."""

    def __init__(
        self, card: VirtualSound, folder: Path, *arguments: str, terminal: int = subprocess.DEVNULL
    ) -> None:  # fmt: skip
        self.card = card
        self.folder = folder
        self.lines: list[Line] = []
        self.recording = card.record_speaker()
        command = (sys.executable, "-u", "-m", "assistant", "knit", *arguments)
        self.process = subprocess.Popen(
            command, env=card.environment, stdin=terminal, stdout=subprocess.PIPE, text=True
        )
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()

    def _read(self) -> None:
        for text in self.process.stdout or ():
            self.lines.append(Line(text.rstrip("\n"), time.monotonic()))

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.process.kill()
        self.process.wait()
        self._reader.join()
        if self.process.stdout:
            self.process.stdout.close()
        if not self.recording.samples.size:
            self.recording.stop()

    def wait_for(self, text: str, within_s: float = 90.0) -> None:
        """Until a line is printed, and spoken to its end."""
        until = time.monotonic() + within_s
        while text not in (line.text for line in self.lines):
            assert time.monotonic() < until, self.lines
            time.sleep(0.02)
        self.wait_until_silent(len(self.lines) - 1)

    def wait_until_silent(self, first: int = 0, within_s: float = 40.0) -> None:
        """Until more than `first` lines were printed and the speaker has been silent for a while."""
        until = time.monotonic() + within_s
        while len(self.lines) <= first and time.monotonic() < until:
            time.sleep(0.02)
        starting = time.monotonic() + STARTS_S
        while not self._is_speaking() and time.monotonic() < starting:
            time.sleep(0.05)
        while self._is_speaking() and time.monotonic() < until:
            time.sleep(0.05)

    def wait_until_speaking(self, first: int, within_s: float = STARTS_S) -> bool:
        """Until more than `first` lines were printed and the speaker plays; whether that came in time."""
        until = time.monotonic() + within_s
        while not (len(self.lines) > first and self._is_speaking(PAUSE_S)):
            if time.monotonic() > until:
                return False
            time.sleep(0.02)
        return True

    def wait_for_pause(self, within_s: float = 40.0) -> float:
        """When the speaker falls silent, if only between two sentences, in seconds of `time.monotonic`."""
        until = time.monotonic() + within_s
        while self._is_speaking(PAUSE_S) and time.monotonic() < until:
            time.sleep(0.02)
        return time.monotonic() - PAUSE_S

    def _is_speaking(self, for_s: float = QUIET_S) -> bool:
        count = int(for_s * RECORDING_HZ)
        raw = self.recording._raw.fileno()
        size = os.fstat(raw).st_size // 2 * 2
        tail = os.pread(raw, 2 * count, max(0, size - 2 * count))
        samples = np.frombuffer(tail, "<i2") / 32768.0
        return bool(len(samples)) and dbfs(float(np.square(samples).mean())) > QUIET_DBFS

    def say(self, words: str, wait_s: float = 2.5) -> list[Line]:
        """Say words once, and wait for the answer to be spoken to its end; the lines that came."""
        before = len(self.lines)
        self.card.say_into_microphone(speak(words, self.folder))
        until = time.monotonic() + wait_s
        while len(self.lines) == before and time.monotonic() < until:
            time.sleep(0.02)
        if len(self.lines) > before:
            self.wait_until_silent(before)
        return self.lines[before:]

    def between(self, begin_s: float, end_s: float) -> np.ndarray:
        """What the speaker played in a stretch of time; after the recording was stopped."""
        first, end = (max(0, int((at - self.recording.began_s) * RECORDING_HZ)) for at in (begin_s, end_s))
        return self.recording.samples[first:end]
