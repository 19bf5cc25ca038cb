"""Makes the corpora: `real` from recordings with a manifest, `synthetic` from voices, `kokoro` from prepared phones."""

import argparse
import csv
import io
import json
import random
import zipfile
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from itertools import islice
from pathlib import Path
from subprocess import SubprocessError

import numpy as np
import soundfile

from models.training import lexicon, texts, voices
from models.training.shards import Clip, Shard

_POOLED = ("several", "crowd")


def _mono(stored: bytes) -> voices.Sound:
    sound, rate = soundfile.read(io.BytesIO(stored), dtype="float32")
    return voices.resampled(sound.mean(axis=1) if sound.ndim > 1 else sound, rate)


def real(archive: Path, stem: Path) -> None:
    """Every recording of the archive whose words are in the dictionary, and its noises."""
    dictionary = lexicon.general()
    shard = Shard(stem)
    with zipfile.ZipFile(archive) as packed:
        manifest = next(name for name in packed.namelist() if name.endswith("manifest.csv"))
        for row in csv.DictReader(io.TextIOWrapper(packed.open(manifest))):
            words = row["transcript"].lower().split() if row["kind"] != "noise" else []
            if all(word in dictionary for word in words):
                sound = _mono(packed.read(manifest.replace("manifest.csv", row["path"])))
                british = row["accent"].lower() in {"gb", "uk", "england", "english", "scottish", "irish"}
                shard.add(sound, Clip(" ".join(words), row["speaker"], row["source"], row["kind"], british))
    shard.close()
    print(f"{stem.name}: {shard.seconds / 3600:.2f} h")


def _prepared(phrases_file: Path, talk: list[Path], seed: int, count: int) -> list[tuple[str, str]]:
    phrases = json.loads(phrases_file.read_text())
    dictionary = lexicon.general()
    words = [word for word in lexicon.everyday() if word in dictionary]
    return list(islice(texts.texts(phrases, words, texts.talk(talk, dictionary), seed), count))


def synthetic(
    voice: Callable[[str, random.Random], voices.Spoken], said: list[tuple[str, str]], stem: Path, seed: int
) -> None:
    """Every text in the voice; two at a time."""
    shard = Shard(stem)

    def one(numbered: tuple[int, tuple[str, str]]) -> tuple[voices.Spoken, str, str] | None:
        number, (kind, text) = numbered
        try:
            return voice(text, random.Random(seed * 1_000_003 + number)), kind, text
        except (SubprocessError, soundfile.LibsndfileError):
            return None  # a voice that fails on a text leaves it out

    with ThreadPoolExecutor(2) as pool:
        for done in pool.map(one, enumerate(said)):
            if done is not None and np.abs(done[0].sound).max(initial=0) > 0:
                spoken, kind, text = done
                shard.add(spoken.sound, Clip(text, spoken.speaker, voice.__name__, kind, spoken.british))
    shard.close()
    print(f"{stem.name}: {shard.seconds / 3600:.2f} h")


def main() -> None:
    """The command line; README.md shows it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("what", choices=["real", "espeak", "flite", "festival", "phones"])
    parser.add_argument("--archive", type=Path)
    parser.add_argument("--phrases", type=Path)
    parser.add_argument("--talk", type=Path, action="append", default=[])
    parser.add_argument("--count", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--to", type=Path, required=True)
    asked = parser.parse_args()
    if asked.what == "real":
        real(asked.archive, asked.to)
        return
    said = _prepared(asked.phrases, asked.talk, asked.seed, asked.count)
    if asked.what == "phones":
        chance = random.Random(asked.seed)
        with asked.to.open("w") as lines:
            for kind, text in said:
                accent = chance.choice(("en-us", "en-us", "en-gb", "en-gb-x-rp", "en-gb-scotland"))
                phones = voices.kokoro_phones(text, accent)
                lines.write(json.dumps({"kind": kind, "text": text, "accent": accent, "phones": phones}) + "\n")
        return
    synthetic(
        {"espeak": voices.espeak, "flite": voices.flite, "festival": voices.festival}[asked.what],
        said,
        asked.to,
        asked.seed,
    )


if __name__ == "__main__":
    main()
