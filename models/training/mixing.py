"""Mixes a set of recordings with noise, for `models.evaluating` and `models.fitting`.

    python -m models.training.mixing --set CSV --talkers CSV --below 10 --speakers festival --to FOLDER

Every other recording gets steady noise (its power falls with the frequency above 50 Hz), the others four people of the
set `--talkers` who talk at once. The noise is so many dB below the speech (root mean squares, speech without its
pauses), begins 0.3 s before it and ends 0.3 s after it. The same seed gives the same sounds. FOLDER/set.csv lists them.
"""

import argparse
import csv
from collections.abc import Iterator, Sequence
from pathlib import Path

import numpy as np
import numpy.typing as npt
import soundfile

from models.recognising import SAMPLE_RATE_HZ
from models.recordings import Recording, read_set, read_sound

_AROUND_S = 0.3
_TALKERS = 4
_PEAK = 0.5
_CORNER_HZ = 50.0
_SHORTEST_S = 0.5

Reals = npt.NDArray[np.float64]


def steady(chance: np.random.Generator, samples: int) -> Reals:
    """Noise whose power falls with the frequency."""
    spectrum = np.fft.rfft(chance.normal(size=samples))
    hertz = np.arange(len(spectrum)) * SAMPLE_RATE_HZ / samples
    return np.fft.irfft(spectrum / np.sqrt(hertz + _CORNER_HZ), samples)


def babble(chance: np.random.Generator, samples: int, talkers: Sequence[Reals]) -> Reals:
    """Four people at once, all equally loud, each from anywhere in what they say and over again."""
    drawn = (talkers[chance.integers(len(talkers))] for _ in range(_TALKERS))
    return np.sum([np.resize(np.roll(one, chance.integers(len(one))), samples) for one in drawn], axis=0)


def mixed(speech: Reals, noise: Reals, below_db: float) -> Reals:
    """Both, the noise so much softer; as loud as fits.

    Args:
        speech: exact zeros are pauses.
        noise: as long.
        below_db: how much softer.
    """
    loud = np.square(speech).sum() / max(1, np.count_nonzero(speech))
    both = speech + noise * np.sqrt(loud / np.square(noise).mean()) * 10 ** (-below_db / 20)
    return both * _PEAK / np.abs(both).max()


def _mixtures(
    recordings: Sequence[Recording], talkers: Sequence[Reals], below_db: float, seed: int
) -> Iterator[tuple[Recording, Reals]]:
    chance = np.random.default_rng(seed)
    for number, recording in enumerate(recordings):
        speech = np.pad(read_sound(recording.path) / 32768.0, round(_AROUND_S * SAMPLE_RATE_HZ))
        noise = babble(chance, len(speech), talkers) if number % 2 else steady(chance, len(speech))
        yield recording, mixed(speech, noise, below_db)


def _talkers(recordings: Sequence[Recording]) -> list[Reals]:
    sounds = [read_sound(each.path) / 32768.0 for each in recordings if each.kind in {"phrase", "talk"}]
    return [sound / np.sqrt(np.square(sound).mean()) for sound in sounds if len(sound) > _SHORTEST_S * SAMPLE_RATE_HZ]


def main() -> None:
    """The command line."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--set", type=Path, required=True, help="CSV: path, transcript, speaker, kind")
    parser.add_argument("--talkers", type=Path, required=True, help="CSV of those who talk")
    parser.add_argument("--talking", default="", help="of them only speakers whose names begin so")
    parser.add_argument("--below", type=float, required=True, help="dB")
    parser.add_argument("--speakers", default="", help="only speakers whose names begin so")
    parser.add_argument("--kind", action="append", help="only recordings of this kind; may be given several times")
    parser.add_argument("--seed", type=int, default=5)
    parser.add_argument("--to", type=Path, required=True)
    asked = parser.parse_args()
    wanted = [
        each
        for each in read_set(asked.set)
        if each.speaker.startswith(asked.speakers) and (asked.kind is None or each.kind in asked.kind)
    ]
    talkers = _talkers([each for each in read_set(asked.talkers) if each.speaker.startswith(asked.talking)])
    asked.to.mkdir(parents=True, exist_ok=True)
    with (asked.to / "set.csv").open("w", newline="", encoding="utf-8") as file:
        lines = csv.writer(file)
        lines.writerow(("path", "transcript", "speaker", "kind"))
        for number, (recording, sound) in enumerate(_mixtures(wanted, talkers, asked.below, asked.seed)):
            soundfile.write(asked.to / f"{number}.wav", sound, SAMPLE_RATE_HZ, subtype="PCM_16")
            lines.writerow((f"{number}.wav", recording.transcript, recording.speaker, recording.kind))


if __name__ == "__main__":
    main()
