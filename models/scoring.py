"""Counts of what a recogniser made of a set of recordings."""

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from models.phrase_book import NUMBER, PhraseBook
from models.recognising import Heard
from models.recordings import Recording

Outcome = Literal["right", "wrong", "asked", "ignored"]


@dataclass(frozen=True, slots=True)
class Limits:
    """At which confidence a command is acted on, and from which it is asked back."""

    act: float = 0.6
    ask: float = 0.4


@dataclass(frozen=True, slots=True)
class Trial:
    """One recording, and what was heard in it.

    Attributes:
        recording: which one.
        heard: its utterances.
        seconds: its length.
        latencies_ms: for each utterance that is no unknown words, see `models.evaluating`.
    """

    recording: Recording
    heard: tuple[Heard, ...]
    seconds: float
    latencies_ms: tuple[float, ...] = ()


class Marker:
    """Says what each trial comes to.

    Args:
        book: what the texts mean.
        limits: where to act and where to ask.
    """

    def __init__(self, book: PhraseBook, limits: Limits | None = None) -> None:
        self._book = book
        self._limits = Limits() if limits is None else limits

    def is_command(self, recording: Recording) -> bool:
        """Whether a text of the vocabulary, and nothing else, is said in it."""
        return recording.kind in {"word", "phrase"} and self._book.meaning(recording.transcript) is not None

    def outcome(self, trial: Trial) -> Outcome:
        """Of a recording with a command: right only if it is acted on, once, with the same meaning."""
        meanings = [self._book.meaning(heard.words) for heard in self._from(trial, self._limits.act)]
        acted = [meaning for meaning in meanings if meaning is not None]
        if acted:
            return "right" if acted == [self._book.meaning(trial.recording.transcript)] else "wrong"
        return "asked" if self._known(trial, self._limits.ask) else "ignored"

    def false_acts(self, trial: Trial) -> tuple[str, ...]:
        """Names of the commands acted on in a recording without one; a number alone is no command."""
        return tuple(name for name in self._known(trial, self._limits.act) if name != NUMBER)

    def _from(self, trial: Trial, confidence: float) -> list[Heard]:
        return [heard for heard in trial.heard if heard.confidence >= confidence]

    def _known(self, trial: Trial, confidence: float) -> list[str]:
        meanings = (self._book.meaning(heard.words) for heard in self._from(trial, confidence))
        return [meaning[0] for meaning in meanings if meaning is not None]


def score(trials: Sequence[Trial], marker: Marker, moving: frozenset[str]) -> dict[str, object]:
    """The figures of the contract that come from outcomes, and the same for each speaker."""
    speakers = dict.fromkeys(trial.recording.speaker for trial in trials)
    of = {name: [trial for trial in trials if trial.recording.speaker == name] for name in speakers}
    return _figures(trials, marker, moving) | {
        "latency_ms_p50": percentile(trials, 50),
        "latency_ms_p95": percentile(trials, 95),
        "per_speaker": {name: _figures(theirs, marker, moving) for name, theirs in of.items()},
    }


def _figures(trials: Iterable[Trial], marker: Marker, moving: frozenset[str]) -> dict[str, object]:
    trials = list(trials)
    commands = [trial for trial in trials if marker.is_command(trial.recording)]
    others = [trial for trial in trials if not marker.is_command(trial.recording)]
    outcomes = [marker.outcome(trial) for trial in commands]
    acts = [name for trial in others for name in marker.false_acts(trial)]
    right = outcomes.count("right")
    return {
        "n": len(commands),
        "right": right,
        "wrong": outcomes.count("wrong"),
        "asked": outcomes.count("asked"),
        "ignored": outcomes.count("ignored"),
        "accuracy": round(right / len(commands), 4) if commands else None,
        "wilson_low": round(wilson_low(right, len(commands)), 4) if commands else None,
        "others": len(others),
        "talk_hours": round(sum(trial.seconds for trial in others) / 3600, 4),
        "false_acts": len(acts),
        "false_moves": sum(name in moving for name in acts),
    }


def wilson_low(successes: int, trials: int, z: float = 1.96) -> float:
    """Lower end of the Wilson score interval of a share (E. B. Wilson, 1927); z = 1.96 gives 95 %."""
    share = successes / trials
    centre = share + z * z / (2 * trials)
    spread = z * math.sqrt(share * (1 - share) / trials + z * z / (4 * trials * trials))
    return max(0.0, (centre - spread) / (1 + z * z / trials))


def percentile(trials: Iterable[Trial], percent: float) -> float | None:
    """Of all latencies, the smallest that at least so many percent do not exceed; None where there are none."""
    found = sorted(latency for trial in trials for latency in trial.latencies_ms)
    return round(found[max(0, math.ceil(len(found) * percent / 100) - 1)], 1) if found else None


def failures(trials: Iterable[Trial], marker: Marker, name: Callable[[Trial], str]) -> list[str]:
    """A line for each trial that did not go as it should."""
    lines = []
    for trial in trials:
        heard = "; ".join(f"{each.words} {each.confidence:.2f}" for each in trial.heard) or "nothing"
        if marker.is_command(trial.recording):
            outcome = marker.outcome(trial)
            bad = "" if outcome == "right" else str(outcome)
        else:
            bad = "acted on" if marker.false_acts(trial) else ""
        if bad:
            lines.append(f"{bad}: {name(trial)}: {trial.recording.transcript!r} heard as {heard}")
    return lines
