"""How sure one may be that a text, and nothing else, was said: what two decoders found, weighed together."""

import math
from collections.abc import Sequence
from dataclasses import astuple, dataclass
from difflib import SequenceMatcher

from models.logistic import likelihood
from models.pocketsphinx_decoding import Decoding, Spoken


@dataclass(frozen=True, slots=True)
class Evidence:
    """What speaks for and against a reading; log-likelihoods are natural logarithms a second of speech.

    Attributes:
        lead: how much better the command explains the whole utterance than the best string of phones does.
        worst_word: the same for the word for which it is lowest, its frames alone.
        likeness: of the command's phones and those that were heard, 0 to 1 (Ratcliff and Obershelp, 1988).
        surplus: how many more phones were heard than the command has, as a natural logarithm of the ratio.
        skipped: share of the speech, as the phones see it, that the command takes for silence.
        hurry: how far the seconds a phone are from usual, in natural logarithm; below 0 is faster.
        phones: how many phones the command has, in natural logarithm: a short one is easily met by chance.
    """

    lead: float
    worst_word: float
    likeness: float
    surplus: float
    skipped: float
    hurry: float
    phones: float


_SECONDS_A_PHONE = 0.09
"""About the mean in our own tuning data."""
_FRAMES_A_SECOND = 100

Weights = tuple[float, ...]


def weigh(command: Decoding, expected: Sequence[str], phones: Decoding) -> Evidence:
    """The evidence for a command.

    Args:
        command: what one decoder found.
        expected: the phones of its words.
        phones: what another decoder found in the same sound, whatever it is.
    """
    known = _Levels(phones.parts)
    words = [part for part in command.parts if not part.is_silence]
    spoken = known.speech_frames(0, command.parts[-1].end_frame)
    seconds = max(1, spoken) / _FRAMES_A_SECOND
    silences = (part for part in command.parts if part.is_silence)
    skipped = sum(known.speech_frames(part.first_frame, part.end_frame) for part in silences)
    worded = sum(part.frames for part in words) / _FRAMES_A_SECOND
    heard = [part.word for part in phones.parts if not part.is_silence]
    return Evidence(
        lead=(command.log_score - phones.log_score) / seconds,
        worst_word=min((known.lead(word) for word in words), default=0.0),
        likeness=SequenceMatcher(None, expected, heard, autojunk=False).ratio(),
        surplus=math.log((len(heard) + 1) / (len(expected) + 1)),
        skipped=skipped / max(1, spoken),
        hurry=math.log(max(0.01, worded) / (_SECONDS_A_PHONE * max(1, len(expected)))),
        phones=math.log(max(1, len(expected))),
    )


def features(evidence: Evidence) -> tuple[float, ...]:
    """What is weighed: the evidence, and squares of what is suspicious both when it is low and when it is high."""
    return (*astuple(evidence), evidence.surplus**2, evidence.hurry**2)


def confidence(evidence: Evidence, weights: Weights) -> float:
    """Logistic regression.

    Args:
        evidence: what was found.
        weights: first the constant, then one for each of `features`.
    """
    return likelihood(features(evidence), weights)


class _Levels:
    """The phones' log-likelihood over any stretch of frames: even within a phone."""

    def __init__(self, parts: Sequence[Spoken]) -> None:
        self._parts = parts

    def speech_frames(self, first: int, end: int) -> int:
        return sum(self._shared(part, first, end) for part in self._parts if not part.is_silence)

    def lead(self, word: Spoken) -> float:
        """How much better, a second, the word explains its frames."""
        theirs = sum(
            part.log_likelihood * self._shared(part, word.first_frame, word.end_frame) / max(1, part.frames)
            for part in self._parts
        )
        return (word.log_likelihood - theirs) * _FRAMES_A_SECOND / max(1, word.frames)

    @staticmethod
    def _shared(part: Spoken, first: int, end: int) -> int:
        return max(0, min(end, part.end_frame) - max(first, part.first_frame))
