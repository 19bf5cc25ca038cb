"""Makes the corpora: `real` from recordings with a manifest; from voices; `kokoro` from what `phones` prepared."""

import argparse
import csv
import io
import json
import os
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


def kokoro(asked: argparse.Namespace) -> None:
    """Lines `--first` to `--first` + `--count` of the prepared phones, so many at a time as there are cores."""
    voice = voices.Kokoro(asked.model, asked.voices, asked.letters)
    lines = [json.loads(line) for line in asked.phones.read_text().splitlines()]
    shard = Shard(asked.to)

    def one(number: int) -> tuple[voices.Spoken, dict[str, str]]:
        chance = random.Random(asked.seed * 1_000_003 + number)
        return voice.say(lines[number]["phones"], lines[number]["accent"], chance), lines[number]

    with ThreadPoolExecutor(os.cpu_count()) as pool:
        for spoken, line in pool.map(one, range(asked.first, min(asked.first + asked.count, len(lines)))):
            shard.add(spoken.sound, Clip(line["text"], spoken.speaker, "kokoro", line["kind"], spoken.british))
    shard.close()
    print(f"{asked.to.name}: {shard.seconds / 3600:.2f} h")


def main() -> None:
    """The command line; README.md shows it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("what", choices=["real", "espeak", "flite", "festival", "phones", "kokoro"])
    parser.add_argument("--archive", type=Path)
    parser.add_argument("--phrases", type=Path)
    parser.add_argument("--talk", type=Path, action="append", default=[])
    parser.add_argument("--count", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--phones", type=Path, help="as `phones` wrote them")
    parser.add_argument("--first", type=int, default=0, help="line of the phones to begin with")
    parser.add_argument("--model", type=Path, help="Kokoro's ONNX file")
    parser.add_argument("--voices", type=Path, help="folder of its voices")
    parser.add_argument("--letters", type=Path, help="its vocab.json")
    parser.add_argument("--to", type=Path, required=True)
    asked = parser.parse_args()
    if asked.what == "real":
        real(asked.archive, asked.to)
        return
    if asked.what == "kokoro":
        kokoro(asked)
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
