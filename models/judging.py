"""How sure one may be that a text, and nothing else, was said: what two decoders found, weighed together."""

import math
from collections.abc import Sequence
from dataclasses import astuple, dataclass

from models.pocketsphinx_decoding import Decoding, Spoken


@dataclass(frozen=True, slots=True)
class Evidence:
    """What speaks for and against a reading; log-likelihoods are natural logarithms a second of speech.

    Attributes:
        lead: how much better the command explains the whole utterance than the best string of phones does.
        worst_word: the same for the word for which it is lowest, its frames alone.
        skipped: share of the speech, as the phones see it, that the command takes for silence.
        hurry: how far the seconds a phone are from usual, in natural logarithm; below 0 is faster.
        phones: how many phones the command has, in natural logarithm: a short one is easily met by chance.
    """

    lead: float
    worst_word: float
    skipped: float
    hurry: float
    phones: float


_SECONDS_A_PHONE = 0.09
"""About the mean in our own tuning data."""
_FRAMES_A_SECOND = 100

Weights = tuple[float, ...]


def weigh(command: Decoding, phones: Decoding, length_in_phones: int) -> Evidence:
    """The evidence for a command, given the phones that another decoder found in the same sound."""
    known = _Levels(phones.parts)
    words = [part for part in command.parts if not part.is_silence]
    spoken = known.speech_frames(0, command.parts[-1].end_frame)
    seconds = max(1, spoken) / _FRAMES_A_SECOND
    silences = (part for part in command.parts if part.is_silence)
    skipped = sum(known.speech_frames(part.first_frame, part.end_frame) for part in silences)
    worded = sum(part.frames for part in words) / _FRAMES_A_SECOND
    return Evidence(
        lead=(command.log_score - phones.log_score) / seconds,
        worst_word=min((known.lead(word) for word in words), default=0.0),
        skipped=skipped / max(1, spoken),
        hurry=math.log(max(0.01, worded) / (_SECONDS_A_PHONE * max(1, length_in_phones))),
        phones=math.log(max(1, length_in_phones)),
    )


def confidence(evidence: Evidence, weights: Weights) -> float:
    """Logistic regression.

    Args:
        evidence: what was found.
        weights: first the constant, then one for each field of `Evidence` and for the square of its `hurry`.
    """
    values = (*astuple(evidence), evidence.hurry**2)
    total = weights[0] + sum(weight * value for weight, value in zip(weights[1:], values, strict=True))
    return 1.0 / (1.0 + math.exp(-max(-50.0, min(50.0, total))))


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
