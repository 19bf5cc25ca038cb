"""How well a recogniser tells commands from talk: synthetic voices, every command active.

    python -m tests.models.rejection [--all] [--pocketsphinx]

Prints one JSON object: commands right, talk acted on, and every failure. The sentences are none that anything was
tuned on. Without --all a fixed share of both; without --pocketsphinx by the one that listens where nobody says.
"""

import csv
import json
import random
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from assistant.languages import load, phrases_as_json
from assistant.wiring import make_recogniser
from models.evaluating import try_all
from models.phrase_book import read_phrases
from models.recordings import plain, read_set
from models.scoring import Limits, Marker, failures, score
from models.shipped import default_recogniser

TALK = Path(__file__).with_name("talk.txt")
ESPEAK = (
    "en-us+m1", "en-us+m5", "en-us+f4", "en-us-nyc+f1", "en-gb+f2", "en-gb-x-rp+m3", "en-gb-x-gbclan+m7", "en-029+m4",
)  # fmt: skip
FLITE = ("slt", "rms", "kal16")
COUNTS = ("three", "seven", "twelve", "sixteen", "eighteen", "twenty four", "thirty", "thirty six", "fifty two",
          "one hundred and eight")  # fmt: skip


def voices():
    """Those that are installed."""
    found = [f"espeak-ng {name}" for name in ESPEAK if shutil.which("espeak-ng")]
    return found + [f"flite {name}" for name in FLITE if shutil.which("flite")]


def speak(voice, words, path):
    program, name = voice.split()
    if program == "espeak-ng":
        command = ["espeak-ng", "-v", name, "-s", "155", "-w", str(path), words]
    else:
        command = ["flite", "-voice", name, "-t", words, "-o", str(path)]
    subprocess.run(command, check=True)


def commands(language, chance):
    """Each phrase once, its slots filled by chance."""
    vocabulary = language.vocabulary()
    for phrase in vocabulary.phrases:
        for slot, texts in vocabulary.slots.items():
            filler = chance.choice(COUNTS if slot == "number" else texts)
            phrase = phrase.replace(f"{{{slot}}}", filler)  # noqa: PLW2901 - filled slot by slot
        yield phrase


def make_set(folder, *, commands_a_voice, sentences_a_voice):
    """Sound, set.csv and phrases.json in the folder; the same each time."""
    language, chance = load("en"), random.Random(20)
    (folder / "phrases.json").write_text(json.dumps(phrases_as_json(language)))
    talk = TALK.read_text().splitlines()
    lines = []
    for voice in voices():
        phrases = sorted(commands(language, chance))
        said = [(words, "phrase") for words in chance.sample(phrases, min(commands_a_voice, len(phrases)))]
        said += [(words, "talk") for words in chance.sample(talk, min(sentences_a_voice, len(talk)))]
        for words, kind in said:
            path = folder / f"{len(lines)}.wav"
            speak(voice, words, path)
            lines.append((path.name, plain(words), voice, kind))
    with (folder / "set.csv").open("w", newline="") as file:
        csv.writer(file).writerows([("path", "transcript", "speaker", "kind"), *lines])
    return folder / "set.csv"


def measure(folder, name, **counts):
    """Figures and failures of the recogniser of this name."""
    recordings, book = read_set(make_set(folder, **counts)), read_phrases(folder / "phrases.json")
    recogniser = make_recogniser(name)
    recogniser.expect(book.vocabulary)
    trials = try_all(recogniser, recordings)
    marker = Marker(book, Limits())
    figures = score(trials, marker, book.moving)
    return figures | {"failures": failures(trials, marker, lambda trial: trial.recording.speaker)}


SHARE = {"commands_a_voice": 12, "sentences_a_voice": 20}
ALL = {"commands_a_voice": 60, "sentences_a_voice": 104}

if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as made:
        name = "pocketsphinx" if "--pocketsphinx" in sys.argv else default_recogniser()
        json.dump(measure(Path(made), name, **(ALL if "--all" in sys.argv else SHARE)), sys.stdout, indent=1)
        sys.stdout.write("\n")
