"""Synthetic speakers from packages: espeak-ng (Debian), flite (Debian), festival (Debian), Kokoro (PyPI and npm).

Kokoro's network comes in packages for Japanese, its voices of many languages in one for JavaScript (npm: kokoro-js);
given English phones (espeak-ng's, in Kokoro's alphabet) all speak English, and any mixture of two is another speaker.
The voices awb of flite and kdl of festival are kept for the final measurement and never speak here.
"""

import io
import json
import random
import re
import subprocess
import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import soundfile
from scipy.signal import resample_poly

from models.training.shards import for_tuning

RATE_HZ = 16_000
Sound = npt.NDArray[np.float32]

_ACCENTS = ("en-us", "en-us", "en-gb", "en-gb-x-rp", "en-gb-scotland", "en-029", "en-gb-x-gbclan", "en-gb-x-gbcwmd")
_VARIANTS = [
    "m1",
    "m2",
    "m3",
    "m4",
    "m5",
    "m6",
    "m7",
    "m8",
    "f1",
    "f2",
    "f3",
    "f4",
    "f5",
    "klatt",
    "klatt2",
    "klatt3",
    "Alex",
    "Alicia",
    "Andrea",
    "Andy",
    "Annie",
    "Denis",
    "Gene",
    "Henrique",
    "Lee",
    "Marco",
    "Mario",
    "Michael",
    "Mike",
    "adam",
    "anika",
    "antonio",
    "belinda",
    "benjamin",
    "boris",
    "caleb",
    "david",
    "edward",
    "linda",
    "max",
    "michel",
    "paul",
    "pablo",
    "rob",
    "robert",
    "sandro",
    "shelby",
    "steph",
    "victor",
    "travis",
]
_FLITE = ("rms", "slt", "kal16")
_FESTIVAL = ("voice_kal_diphone", "voice_cmu_us_slt_arctic_hts")
_SECONDS = 20


@dataclass(frozen=True)
class Spoken:
    """One utterance: its sound at 16 kHz in -1..1, who spoke it, and whether with a British accent."""

    sound: Sound
    speaker: str
    british: bool


def resampled(sound: Sound, rate_hz: int) -> Sound:
    """At 16 kHz."""
    if rate_hz == RATE_HZ:
        return sound
    shared = int(np.gcd(rate_hz, RATE_HZ))
    return resample_poly(sound, RATE_HZ // shared, rate_hz // shared).astype(np.float32)


def _run(command: list[str], text: str = "") -> None:
    subprocess.run(command, input=text, text=True, check=True, capture_output=True, timeout=_SECONDS)


def _read(file: Path) -> Sound:
    sound, rate = soundfile.read(io.BytesIO(file.read_bytes()), dtype="float32")
    return resampled(sound, rate)


def espeak(text: str, chance: random.Random) -> Spoken:
    """One of several hundred made-up speakers, of eight accents."""
    accent, variant = chance.choice(_ACCENTS), chance.choice(_VARIANTS)
    with tempfile.NamedTemporaryFile(suffix=".wav") as out:
        speed, pitch = str(chance.randint(110, 195)), str(chance.randint(20, 80))
        _run(["espeak-ng", "-v", f"{accent}+{variant}", "-s", speed, "-p", pitch, "-w", out.name, text])
        return Spoken(_read(Path(out.name)), f"espeak-{accent}-{variant}", accent != "en-us")


def flite(text: str, chance: random.Random) -> Spoken:
    """Three recorded American speakers, slower and faster, higher and lower."""
    voice = chance.choice(_FLITE)
    with tempfile.NamedTemporaryFile(suffix=".wav") as out:
        stretch, pitch = (
            f"duration_stretch={chance.uniform(0.75, 1.4):.2f}",
            f"int_f0_target_mean={chance.uniform(80, 230):.0f}",
        )
        _run(["flite", "-voice", voice, "--setf", stretch, "--setf", pitch, "-t", text, "-o", out.name])
        return Spoken(_read(Path(out.name)), f"flite-{voice}", british=False)


def festival(text: str, chance: random.Random) -> Spoken:
    """Kept out of training: an engine that the model never heard."""
    voice = chance.choice(_FESTIVAL)
    with tempfile.NamedTemporaryFile(suffix=".wav") as out:
        slow = f"(Parameter.set 'Duration_Stretch {chance.uniform(0.9, 1.3):.2f})"
        _run(["text2wave", "-eval", f"({voice})", "-eval", slow, "-o", out.name], text)
        return Spoken(_read(Path(out.name)), f"festival-{voice}", british=False)


_KOKORO_LETTERS = (
    ("eɪ", "A"), ("oʊ", "O"), ("əʊ", "Q"), ("aɪ", "I"), ("aʊ", "W"), ("ɔɪ", "Y"), ("dʒ", "ʤ"), ("tʃ", "ʧ"), ("ɚ", "əɹ"),
    ("ɜː", "ɜɹ"), ("ɐ", "ə"), ("ː", ""), ("r", "ɹ"), ("e", "ɛ"), ("ᵻ", "ɪ"), ("əl", "ᵊl"), ("̩", ""),
)  # fmt: skip


def kokoro_phones(text: str, accent: str) -> str:
    """espeak-ng's phones for the text, in the letters that Kokoro was trained with."""
    said = subprocess.run(
        ["espeak-ng", "-q", "--ipa", "-v", accent, text], capture_output=True, text=True, check=True, timeout=_SECONDS
    ).stdout
    phones = " ".join(re.sub(r"\(\w+\)", "", said).split())
    letters = _KOKORO_LETTERS if accent == "en-us" else tuple(pair for pair in _KOKORO_LETTERS if pair[0] != "ɜː")
    for theirs, ours in letters:
        phones = phones.replace(theirs, ours)
    return phones


class Kokoro:
    """Speakers mixed from the voices of packages; phones in, sound out.

    Args:
        model: the ONNX file.
        voices: folder of voices, float32 of shape (510, 256) each, named after language and sex (af_NAME.bin ...).
        vocabulary: its letters (.json).
    """

    def __init__(self, model: Path, voices: Path, vocabulary: Path) -> None:
        import onnxruntime  # noqa: PLC0415 - only this voice needs it

        options = onnxruntime.SessionOptions()
        options.intra_op_num_threads = 1
        self._session: Any = onnxruntime.InferenceSession(str(model), options, providers=["CPUExecutionProvider"])
        self._styles = {file.stem: np.fromfile(file, "<f4").reshape(-1, 256) for file in sorted(voices.glob("*.bin"))}
        self._letters = json.loads(vocabulary.read_text())["vocab"]

    def _speaker(self, accent: str, chance: random.Random) -> tuple[str, npt.NDArray[np.float32]]:
        """Between two voices, or a little beyond one of them; the first is of the accent, a third of the second not."""
        ours = [name for name in self._styles if name[0] == ("a" if accent == "en-us" else "b")]
        english = [name for name in self._styles if name[0] in "ab"]
        while True:
            first = chance.choice(ours)
            second = chance.choice(
                ours if chance.random() < 0.4 else english if chance.random() < 0.5 else [*self._styles]
            )
            share = round(chance.uniform(0.4, 1.1), 2)
            name = f"kokoro-{first}-{second}-{share}"
            if not for_tuning(name):
                return name, share * self._styles[first] + (1 - share) * self._styles[second]

    def say(self, phones: str, accent: str, chance: random.Random) -> Spoken:
        """In a voice between two of the packages', at any pace."""
        name, style = self._speaker(accent, chance)
        tokens = [self._letters[letter] for letter in phones if letter in self._letters]
        sound = self._session.run(None, {
            "tokens": np.array([[0, *tokens, 0]], np.int64),
            "style": style[min(len(tokens), len(style)) - 1].reshape(1, -1).astype(np.float32),
            "speed": np.array([chance.uniform(0.75, 1.3)], np.float32),
        })[0].ravel()  # fmt: skip
        return Spoken(resampled(sound, 24_000), name, accent != "en-us")
