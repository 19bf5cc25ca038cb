"""Measures recognisers on a set of recordings, and prints the figures as JSON.

    python -m models.evaluating --set CSV --phrases FILE.json [--vocabulary FILE] [--vosk FOLDER] [--careful] [--json]

Each recording is heard as from a quiet room: half a second of faint noise before it and one second after,
in blocks of 20 ms, marked by voice activity. Latency is from the end of the true last speech (the last 10
ms within 30 dB of the recording's loudest) to the moment at which the utterance came out; blocks come in real
time from a little before that end on, where a command is said. Each recogniser runs in a process of its own,
whose helpers count for memory and time; the default comes first. With --careful each is measured again with a second
opinion where it is unsure; with --only NAME no other recogniser is measured.
"""

import argparse
import gc
import json
import multiprocessing
import os
import resource
import sys
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from models.errors import ModelProblem
from models.following import Following
from models.phrase_book import PhraseBook, PhrasesBroken, read_entries, read_phrases
from models.recognising import SAMPLE_RATE_HZ, UNKNOWN_WORD, Block, Heard, Recogniser, Samples
from models.recordings import Recording, SetBroken, read_set, read_sound
from models.scoring import Limits, Marker, Trial, failures, score
from models.second_opinion import SecondOpinion
from models.shipped import shipped_model
from models.voice_activity import VoiceActivity

BLOCK_SAMPLES = SAMPLE_RATE_HZ // 50
_BEFORE_S, _AFTER_S = 0.5, 1.0
_ROOM = 4.0
"""Root mean square of the room around a recording, -78 dBFS."""
_SPEECH_DB = 30.0
_PACED_FROM_S = 0.3


class RecogniserFailed(Exception):
    """A recogniser could not be made, or cannot hear the vocabulary; the text says why."""


@dataclass(frozen=True, slots=True)
class Job:
    """What one recogniser is measured on.

    Attributes:
        recogniser: "pocketsphinx" or "vosk".
        folder: of the Vosk model.
        careful: whether a second opinion is asked.
    """

    recogniser: str
    recordings: tuple[Recording, ...]
    book: PhraseBook
    limits: Limits
    folder: Path | None = None
    list_failures: bool = False
    careful: bool = False


def main(arguments: Sequence[str] | None = None) -> int:
    """The command line; the exit code is 0, 1 where a model failed, 2 for bad input."""
    options = _options().parse_args(arguments)
    try:
        book = read_phrases(options.phrases) if options.vocabulary is None else read_entries(options.vocabulary)
        recordings = read_set(options.set)
        limits = Limits(options.act, options.ask)
        figures = [
            _apart(Job(name, recordings, book, limits, folder, options.failures, careful))
            for name, folder in _recognisers(options.vosk)
            if options.only is None or name == options.only
            for careful in ((False, True) if options.careful else (False,))
        ]
    except (SetBroken, PhrasesBroken) as problem:
        sys.stderr.write(f"{problem}\n")
        return 2
    except RecogniserFailed as problem:
        sys.stderr.write(f"{problem}\n")
        return 1
    sys.stdout.write(json.dumps(figures, indent=None if options.json else 2) + "\n")
    return 0


def _recognisers(folders: Iterable[Path]) -> Iterator[tuple[str, Path | None]]:
    """The default first."""
    ours = shipped_model()
    if ours is not None:
        yield "vosk", ours
    yield "pocketsphinx", None
    for folder in folders:
        yield f"vosk {folder.name}", folder


def _options() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m models.evaluating", description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--set", type=Path, required=True, help="CSV: path, transcript, speaker, kind")
    parser.add_argument("--phrases", type=Path, required=True, help="as `roundcaller phrases --json` prints them")
    parser.add_argument("--vocabulary", type=Path, help="instead of the phrases: one entry a line")
    parser.add_argument("--vosk", type=Path, action="append", default=[], help="folder of a Vosk model, too")
    parser.add_argument("--only", help="the recogniser of this name alone, as it stands in the figures")
    parser.add_argument("--careful", action="store_true", help="also with a second opinion")
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
    trials = try_all(recogniser, job.recordings, paced=True)
    spent = time.process_time() - began
    del recogniser
    gc.collect()  # its helpers end, and what they used is known
    helpers = resource.getrusage(resource.RUSAGE_CHILDREN)
    spent += helpers.ru_utime + helpers.ru_stime
    rss_kb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss + helpers.ru_maxrss
    heard_s = sum(trial.seconds + _BEFORE_S + _AFTER_S for trial in trials)
    marker = Marker(job.book, job.limits)
    if job.list_failures:
        sys.stderr.writelines(f"{line}\n" for line in failures(trials, marker, _label))
    return {
        "recogniser": f"{job.recogniser}, careful" if job.careful else job.recogniser,
        **score(trials, marker, job.book.moving),
        "real_time_factor": round(spent / heard_s, 4) if heard_s else None,
        "rss_mb": round(rss_kb / 1024, 1),
    }


def _label(trial: Trial) -> str:
    return f"{trial.recording.speaker}, {os.fspath(trial.recording.path.name)}"


def _make(job: Job) -> Recogniser:
    recogniser = _made(job)
    if job.careful:
        from models.whisper_scoring import load_whisper  # noqa: PLC0415 - only where wanted

        recogniser.second = SecondOpinion(load_whisper(Path()))
    return recogniser


def _made(job: Job) -> Following:
    if job.folder is not None:
        from models.vosk_recogniser import VoskRecogniser  # noqa: PLC0415 - only where wanted

        return VoskRecogniser(job.folder)
    from models.pocketsphinx_recogniser import PocketSphinxRecogniser  # noqa: PLC0415 - only where wanted

    return PocketSphinxRecogniser()


def try_all(recogniser: Recogniser, recordings: Iterable[Recording], *, paced: bool = False) -> list[Trial]:
    """Every recording on its own: nothing is kept from the one before.

    Args:
        recogniser: has its vocabulary.
        recordings: to be heard in turn.
        paced: ends of words and phrases in real time, so that latencies are true.
    """
    mark = VoiceActivity().mark
    first_sample = 0
    trials = []
    for recording in recordings:
        samples = read_sound(recording.path)
        stream = Stream(_in_a_room(samples), first_sample, _last_speech(samples))
        heard, latencies = _hear(recogniser, mark, stream, paced=paced and recording.kind in {"word", "phrase"})
        first_sample += 100 * SAMPLE_RATE_HZ + len(samples)
        trials.append(Trial(recording, heard, len(samples) / SAMPLE_RATE_HZ, latencies))
    return trials


@dataclass(frozen=True, slots=True)
class Stream:
    """A recording as it is heard.

    Attributes:
        samples: with the room around.
        first_sample: its number in the stream of all recordings.
        last_speech: where speech ends in `samples`.
    """

    samples: Samples
    first_sample: int
    last_speech: int

    def blocks(self) -> Iterator[Block]:
        """In order."""
        for at in range(0, len(self.samples), BLOCK_SAMPLES):
            yield Block(self.first_sample + at, self.samples[at : at + BLOCK_SAMPLES])

    def after_speech_s(self, block: Block) -> float:
        """How long after the last speech a block ends; below 0 before."""
        return (block.end_sample - self.first_sample - self.last_speech) / SAMPLE_RATE_HZ


def _hear(
    recogniser: Recogniser, mark: Callable[[Block], Iterable[Block]], stream: Stream, *, paced: bool
) -> tuple[tuple[Heard, ...], tuple[float, ...]]:
    heard: list[Heard] = []
    latencies: list[float] = []
    ended_s: float | None = None
    for block in stream.blocks():
        after_s = stream.after_speech_s(block)
        if not paced or latencies or after_s < -_PACED_FROM_S or ended_s is None:
            ended_s = time.perf_counter() - after_s
        else:
            time.sleep(max(0.0, ended_s + after_s - time.perf_counter()))
        found = [each for marked in mark(block) for each in recogniser.accept(marked) if isinstance(each, Heard)]
        heard += found
        latencies += [1_000 * (time.perf_counter() - ended_s) for each in found if UNKNOWN_WORD not in each.words]
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
