"""Fits the weights of a recogniser's confidence on a set of recordings, and shows how far it may be believed.

    python -m models.fitting --set CSV --phrases FILE.json [--vosk FOLDER] [--check CSV] [--most 0.018] [--careful]

The set is as for `models.evaluating`. The weights are those of a logistic regression: whether the best text that may
be said was said. The constant is then lowered until no more than `--most` of the recordings that hold no command are
acted on. Speakers of `--check`, who should be others, only show how the confidence holds: of what was heard with a
confidence from 0.6 to 0.7 about 65 in 100 should be right. With --careful the weights are those of the second opinion,
see `models.second_opinion.Trust`, from the utterances about which it is asked. Prints one JSON object.
"""

import argparse
import json
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from models.errors import ModelProblem
from models.evaluating import try_all
from models.following import Following
from models.phrase_book import PhraseBook, PhrasesBroken, read_phrases
from models.recordings import Recording, SetBroken, read_set
from models.second_opinion import SecondOpinion
from models.whisper_scoring import load_whisper

ACT = 0.6
_RIDGE = 1.0
_STEPS = 50
_BINS = 10

Reals = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Example:
    """One utterance: what was weighed, whether the text was right, and whether a command was said at all."""

    features: tuple[float, ...]
    right: bool
    command: bool


def examples(recogniser: Following, recordings: Iterable[Recording], book: PhraseBook) -> Iterator[Example]:
    """Of each recording that is one utterance in which a text that may be said was found, by both if there are two."""
    for recording in recordings:
        recogniser.reset()
        (trial,) = try_all(recogniser, [recording])
        found = recogniser.weighed
        if len(trial.heard) != 1 or found is None or (recogniser.second is not None and not found.by_both):
            continue
        said = book.meaning(recording.transcript) if recording.kind in {"word", "phrase"} else None
        yield Example(found.features, said is not None and said == book.meaning(found.words), said is not None)


def fit(found: Sequence[Example], most: float) -> tuple[float, ...]:
    """The constant and the weights.

    Iteratively reweighted least squares (P. McCullagh and J. Nelder, "Generalized Linear Models", 1989), with a ridge
    of 1 on all but the constant.

    Args:
        found: at least one right and one wrong.
        most: share of the utterances without a command that may be acted on.
    """
    inputs = np.array([(1.0, *example.features) for example in found])
    right = np.array([example.right for example in found], float)
    ridge = np.diag([0.0, *[_RIDGE] * (inputs.shape[1] - 1)])
    weights = np.zeros(inputs.shape[1])
    for _ in range(_STEPS):
        likely = _logistic(inputs @ weights)
        slope = inputs.T @ (right - likely) - ridge @ weights
        curve = (inputs.T * (likely * (1.0 - likely))) @ inputs + ridge
        step = np.linalg.solve(curve + 1e-9 * np.eye(len(curve)), slope)
        weights += step
        if np.abs(step).max() < 1e-8:
            break
    weights[0] -= _excess(inputs @ weights, found, most)
    return tuple(round(float(weight), 4) for weight in weights)


def _excess(odds: Reals, found: Sequence[Example], most: float) -> float:
    """By how much the constant must fall, so that at most so many without a command reach `ACT`."""
    pairs = zip(odds, found, strict=True)
    others = sorted((float(each) for each, example in pairs if not example.command), reverse=True)
    allowed = int(most * len(others))
    if allowed >= len(others):
        return 0.0
    return max(0.0, others[allowed] - float(np.log(ACT / (1.0 - ACT))) + 1e-3)


def reliability(found: Sequence[Example], weights: Sequence[float]) -> list[dict[str, float]]:
    """For each tenth of the confidence: how many, their mean confidence, and how many were right."""
    inputs = np.array([(1.0, *example.features) for example in found]).reshape(len(found), len(weights))
    likely = _logistic(inputs @ np.array(weights))
    right = np.array([example.right for example in found], bool)
    rows = []
    for number in range(_BINS):
        here = np.minimum((likely * _BINS).astype(int), _BINS - 1) == number
        if here.any():
            mean, share = float(likely[here].mean()), float(right[here].mean())
            rows.append({"n": int(here.sum()), "confidence": round(mean, 3), "right": round(share, 3)})
    return rows


def _logistic(odds: Reals) -> Reals:
    return np.asarray(1.0 / (1.0 + np.exp(-np.clip(odds, -50.0, 50.0))))


def main(arguments: Sequence[str] | None = None) -> int:
    """The command line; the exit code is 0, 1 where a model failed, 2 for bad input."""
    options = _options().parse_args(arguments)
    try:
        book = read_phrases(options.phrases)
        recogniser = _recogniser(options.vosk)
        if options.careful:
            recogniser.second = SecondOpinion(load_whisper(Path()))
        recogniser.expect(book.vocabulary)
        found = list(examples(recogniser, read_set(options.set), book))
        checked = found if options.check is None else list(examples(recogniser, read_set(options.check), book))
    except (SetBroken, PhrasesBroken) as problem:
        sys.stderr.write(f"{problem}\n")
        return 2
    except ModelProblem as problem:
        sys.stderr.write(f"{problem}\n")
        return 1
    if len({example.right for example in found}) < 2:
        sys.stderr.write(f"{options.set}: needs utterances that are heard rightly and others that are not\n")
        return 2
    weights = fit(found, options.most)
    figures = {
        "weights": weights,
        "fitted_on": len(found),
        "of_them_commands": sum(example.command for example in found),
        "checked_on": len(checked),
        "reliability": reliability(checked, weights),
    }
    sys.stdout.write(json.dumps(figures) + "\n")
    return 0


def _options() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m models.fitting", description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--set", type=Path, required=True, help="CSV: path, transcript, speaker, kind")
    parser.add_argument("--check", type=Path, help="another set, of other speakers")
    parser.add_argument("--phrases", type=Path, required=True, help="as `roundcaller phrases --json` prints them")
    parser.add_argument("--vosk", type=Path, help="folder of a Vosk model; PocketSphinx where left out")
    parser.add_argument("--most", type=float, default=0.018, help="share without a command that may be acted on")
    parser.add_argument("--careful", action="store_true", help="of the second opinion")
    return parser


def _recogniser(folder: Path | None) -> Following:
    if folder is not None:
        from models.vosk_recogniser import VoskRecogniser  # noqa: PLC0415 - only where wanted

        return VoskRecogniser(folder)
    from models.pocketsphinx_recogniser import PocketSphinxRecogniser  # noqa: PLC0415 - only where wanted

    return PocketSphinxRecogniser()


if __name__ == "__main__":
    sys.exit(main())
