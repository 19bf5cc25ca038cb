"""Measures recognisers on a set of recordings, and prints the figures as JSON.

    python -m models.evaluating --set CSV --phrases FILE.json [--vocabulary FILE] [--vosk FOLDER] [--json]

Each recording is heard as from a quiet room: half a second of faint noise before it and one second after,
in blocks of 20 ms, marked by voice activity. Latency is from the end of the true last speech (the last 10
ms within 30 dB of the recording's loudest) to the end of the block in which the utterance came out, plus
what that block took to compute. Each recogniser runs in a process of its own; the default comes first.
"""

import argparse
import json
import multiprocessing
import os
import resource
import sys
import time
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from models.errors import ModelProblem
from models.phrase_book import PhraseBook, PhrasesBroken, read_entries, read_phrases
from models.recognising import SAMPLE_RATE_HZ, UNKNOWN_WORD, Block, Heard, Recogniser, Samples
from models.recordings import Recording, SetBroken, read_set, read_sound
from models.scoring import Limits, Marker, Trial, failures, score
from models.voice_activity import VoiceActivity

BLOCK_SAMPLES = SAMPLE_RATE_HZ // 50
_BEFORE_S, _AFTER_S = 0.5, 1.0
_ROOM = 4.0
"""Root mean square of the room around a recording, -78 dBFS."""
_SPEECH_DB = 30.0


class RecogniserFailed(Exception):
    """A recogniser could not be made, or cannot hear the vocabulary; the text says why."""


@dataclass(frozen=True, slots=True)
class Job:
    """What one recogniser is measured on.

    Attributes:
        recogniser: "pocketsphinx" or "vosk".
        folder: of the Vosk model.
    """

    recogniser: str
    recordings: tuple[Recording, ...]
    book: PhraseBook
    limits: Limits
    folder: Path | None = None
    list_failures: bool = False


def main(arguments: Sequence[str] | None = None) -> int:
    """The command line; the exit code is 0, 1 where a model failed, 2 for bad input."""
    options = _options().parse_args(arguments)
    try:
        book = read_phrases(options.phrases) if options.vocabulary is None else read_entries(options.vocabulary)
        recordings = read_set(options.set)
        limits = Limits(options.act, options.ask)
        jobs = [Job("pocketsphinx", recordings, book, limits, None, options.failures)]
        jobs += [Job("vosk", recordings, book, limits, folder, options.failures) for folder in options.vosk]
        figures = [_apart(job) for job in jobs]
    except (SetBroken, PhrasesBroken) as problem:
        sys.stderr.write(f"{problem}\n")
        return 2
    except RecogniserFailed as problem:
        sys.stderr.write(f"{problem}\n")
        return 1
    sys.stdout.write(json.dumps(figures, indent=None if options.json else 2) + "\n")
    return 0


def _options() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m models.evaluating", description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--set", type=Path, required=True, help="CSV: path, transcript, speaker, kind")
    parser.add_argument("--phrases", type=Path, required=True, help="as `roundcaller phrases --json` prints them")
    parser.add_argument("--vocabulary", type=Path, help="instead of the phrases: one entry a line")
    parser.add_argument("--vosk", type=Path, action="append", default=[], help="folder of a Vosk model, too")
    parser.add_argument("--act", type=float, default=Limits().act, help="confidence from which to act")
    parser.add_argument("--ask", type=float, default=Limits().ask, help="confidence from which to ask back")
    parser.add_argument("--failures", action="store_true", help="list them on standard error")
    parser.add_argument("--json", action="store_true", help="one line")
    return parser


def _apart(job: Job) -> dict[str, object]:
    """In a new process, so that its memory is its own."""
    with multiprocessing.get_context("spawn").Pool(1) as pool:
        figures, problem = pool.apply(_measure_or_say_why, (job,))
    if problem is not None:
        raise RecogniserFailed(problem)
    return figures


def _measure_or_say_why(job: Job) -> tuple[dict[str, object], str | None]:
    """Errors are passed on as text: not every one can travel between processes."""
    try:
        return measure(job), None
    except ModelProblem as problem:
        return {}, str(problem)


def measure(job: Job) -> dict[str, object]:
    """The figures of one recogniser."""
    recogniser = _make(job)
    recogniser.expect(job.book.vocabulary)
    began = time.process_time()
    trials = try_all(recogniser, job.recordings)
    spent = time.process_time() - began
    heard_s = sum(trial.seconds + _BEFORE_S + _AFTER_S for trial in trials)
    marker = Marker(job.book, job.limits)
    if job.list_failures:
        sys.stderr.writelines(f"{line}\n" for line in failures(trials, marker, _label))
    return {
        "recogniser": job.recogniser,
        **score(trials, marker, job.book.moving),
        "real_time_factor": round(spent / heard_s, 4) if heard_s else None,
        "rss_mb": round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024, 1),
    }


def _label(trial: Trial) -> str:
    return f"{trial.recording.speaker}, {os.fspath(trial.recording.path.name)}"


def _make(job: Job) -> Recogniser:
    if job.folder is not None:
        from models.vosk_recogniser import VoskRecogniser  # noqa: PLC0415 - only where wanted

        return VoskRecogniser(job.folder)
    from models.pocketsphinx_recogniser import PocketSphinxRecogniser  # noqa: PLC0415 - only where wanted

    return PocketSphinxRecogniser()


def try_all(recogniser: Recogniser, recordings: Iterable[Recording]) -> list[Trial]:
    """Every recording on its own: nothing is kept from the one before."""
    mark = VoiceActivity().mark
    first_sample = 0
    trials = []
    for recording in recordings:
        samples = read_sound(recording.path)
        heard, latencies = _hear(recogniser, mark, _in_a_room(samples), first_sample, _last_speech(samples))
        first_sample += 100 * SAMPLE_RATE_HZ + len(samples)
        trials.append(Trial(recording, heard, len(samples) / SAMPLE_RATE_HZ, latencies))
    return trials


def _hear(
    recogniser: Recogniser,
    mark: Callable[[Block], Iterable[Block]],
    samples: Samples,
    first_sample: int,
    last_speech: int,
) -> tuple[tuple[Heard, ...], tuple[float, ...]]:
    heard: list[Heard] = []
    latencies: list[float] = []
    for at in range(0, len(samples), BLOCK_SAMPLES):
        began = time.perf_counter()
        block = Block(first_sample + at, samples[at : at + BLOCK_SAMPLES])
        found = [each for marked in mark(block) for each in recogniser.accept(marked) if isinstance(each, Heard)]
        waited_s = (at + BLOCK_SAMPLES - last_speech) / SAMPLE_RATE_HZ + time.perf_counter() - began
        heard += found
        latencies += [1_000 * waited_s for each in found if UNKNOWN_WORD not in each.words]
    return (*heard, *recogniser.finish()), tuple(latencies)


def _in_a_room(samples: Samples) -> Samples:
    """With faint noise before and after, the same each time."""
    noise = np.random.default_rng(0).normal(0.0, _ROOM, round((_BEFORE_S + _AFTER_S) * SAMPLE_RATE_HZ))
    room = np.rint(noise).astype(np.int16)
    before = round(_BEFORE_S * SAMPLE_RATE_HZ)
    return np.concatenate((room[:before], samples, room[before:]))


def _last_speech(samples: Samples) -> int:
    """Where speech ends in the recording as it is heard, in samples."""
    frame = SAMPLE_RATE_HZ // 100
    frames = samples[: len(samples) - len(samples) % frame].reshape(-1, frame).astype(np.float64)
    power = np.square(frames).mean(axis=1) if len(frames) else np.zeros(1)
    loud = np.flatnonzero(power >= power.max() * 10 ** (-_SPEECH_DB / 10))
    return round(_BEFORE_S * SAMPLE_RATE_HZ) + (int(loud[-1]) + 1) * frame


if __name__ == "__main__":
    sys.exit(main())
