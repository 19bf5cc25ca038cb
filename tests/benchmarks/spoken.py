"""Commands and sentences spoken by synthesisers, as 16 kHz samples, and takes made of them."""

import subprocess
import tempfile
import wave
from functools import cache
from pathlib import Path
from typing import NamedTuple

import numpy as np

from models.recordings import read_sound
from tests.models.rooms import as_int16, white

VOICE = "espeak-ng en-us+f5"
"""Not the program's own voice."""
ROOM_DBFS = -72
_SPEECH_DB = 30
_FRAME = 160


@cache
def clip(words, voice=VOICE):
    """The words at 16 kHz, as the synthesiser gives them; "espeak-ng NAME" or "flite NAME"."""
    program, name = voice.split()
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "clip.wav"
        command = {
            "espeak-ng": ("espeak-ng", "-v", name, "-s", "150", "-w", str(file), words),
            "flite": ("flite", "-voice", name, "-t", words, "-o", str(file)),
        }[program]
        subprocess.run(command, check=True)
        return read_sound(file)


def speech_end(samples):
    """First sample after the last 10 ms within 30 dB of the loudest 10 ms."""
    frames = samples[: len(samples) - len(samples) % _FRAME].reshape(-1, _FRAME).astype(float)
    power = np.square(frames).mean(axis=1)
    return (int(np.flatnonzero(power >= power.max() * 10 ** (-_SPEECH_DB / 10))[-1]) + 1) * _FRAME


class Take(NamedTuple):
    """Sound, and after which sample each of the commands in it is over."""

    samples: np.ndarray
    ends: list[int]


def take(commands, pause_s, voice=VOICE):
    """All commands, a pause before each and after the last, in a quiet room."""
    pause = np.zeros(int(16_000 * pause_s))
    parts, ends, long = [], [], 0
    for words in commands:
        samples = clip(words, voice)
        ends.append(long + len(pause) + speech_end(samples))
        parts += [pause, samples / 32_768]
        long += len(pause) + len(samples)
    sound = np.concatenate((*parts, pause))
    return Take(as_int16(sound + white(len(sound) / 16_000, ROOM_DBFS)[: len(sound)]), ends)


def save(samples, path):
    with wave.open(str(path), "wb") as file:
        file.setparams((1, 2, 16_000, 0, "NONE", ""))
        file.writeframes(samples.astype("<i2").tobytes())
    return path
