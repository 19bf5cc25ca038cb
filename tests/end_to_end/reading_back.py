"""Reads the program's own voice back: a recogniser that chooses among all the sentences the program can say.

Not the recogniser that hears the knitter: another grammar (whole sentences, no way out) and another search.
"""

import re
from collections.abc import Iterable

import numpy as np

from models.grammar import make_grammar
from models.pocketsphinx_decoding import CommandDecoder
from models.recognising import Vocabulary

PRONOUNCED = {
    "gusset": "G AH S AH T", "instep": "IH N S T EH P", "anticlockwise": "AE N T IY K L AA K W AY Z",
    "lifeline": "L AY F L AY N", "centimetres": "S EH N T AH M IY T ER Z", "millimetres": "M IH L AH M IY T ER Z",
    "undone": "AH N D AH N", "purl": "P ER L",
    "redone": "R IY D AH N", "knitwise": "N IH T W AY Z", "purlwise": "P ER L W AY Z",
}  # fmt: skip

CARRYING = frozenset({
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty", "thirty", "forty",
    "fifty", "sixty", "seventy", "eighty", "ninety", "hundred", "half", "point", "first", "second", "front", "back",
    "fronts", "backs", "turn", "both",
})  # fmt: skip
"""Words that must never be said or heard wrongly: numbers, sock, half, turn."""


def plain_words(sentence: str) -> str:
    """A sentence as a dictionary has its words."""
    straight = sentence.lower().replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")
    return " ".join(re.sub(r"[^a-z' ]", " ", straight).split())


def carrying(sentence: str) -> list[str]:
    """The words of a sentence that carry the place and the counts, in order."""
    return [word for word in plain_words(sentence).split() if word in CARRYING]


SECONDS_A_PHONE = 0.085
"""Of the program's voice at its usual rate, pauses left out; a sentence of another length is not considered."""
LENGTH_TOLERANCE = 0.22


class ReadingBack:
    """Which of some sentences a sound is."""

    def __init__(self, sentences: Iterable[str]) -> None:
        self._phrases = tuple(dict.fromkeys(plain_words(sentence) for sentence in sentences))
        self._decoder = CommandDecoder(beam=0, wbeam=0, pbeam=0)
        self._decoder.expect(make_grammar(Vocabulary(self._phrases)), PRONOUNCED)

    def read(self, samples: np.ndarray) -> str:
        """The sentence that the sound (16 kHz, int16) is most like."""
        wanted = speech_seconds(samples) / SECONDS_A_PHONE
        near = tuple(phrase for phrase in self._phrases if abs(self._phones(phrase) / wanted - 1) < LENGTH_TOLERANCE)
        if not near:
            return ""
        self._decoder.expect(make_grammar(Vocabulary(near)), PRONOUNCED)
        found = self._decoder.decode(samples)
        return found.text if found else ""

    def _phones(self, phrase: str) -> int:
        return sum(len(self._decoder.phones(word)) for word in phrase.split())


def speech_seconds(samples: np.ndarray) -> float:
    """How long the sound is without its pauses: frames of 20 ms within 35 dB of the loudest."""
    frames = samples[: len(samples) // 320 * 320].reshape(-1, 320).astype(float)
    power = np.square(frames).mean(axis=1)
    return float(np.count_nonzero(power > power.max(initial=1.0) * 10**-3.5)) * 0.02
