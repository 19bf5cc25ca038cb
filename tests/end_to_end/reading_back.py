"""Reads the program's own voice back: two readers choose among all the sentences the program can say.

Neither is told what was to be said, and neither is the recogniser that hears the knitter.

`ByWhisper` is the network of the second opinion, which the program in the test does without.

`BySearch` is PocketSphinx with another grammar (whole sentences, no way out) and another search than listen to the
knitter; it has its own idea of how words sound, and takes some short sentences for others that are alike.
"""

import re
from collections.abc import Iterable
from difflib import SequenceMatcher

import numpy as np

from assistant.wiring import data_dir
from models.grammar import make_grammar
from models.pocketsphinx_decoding import CommandDecoder
from models.recognising import Vocabulary
from models.whisper_scoring import load_whisper

PRONOUNCED = {
    "gusset": "G AH S AH T", "instep": "IH N S T EH P", "anticlockwise": "AE N T IY K L AA K W AY Z",
    "lifeline": "L AY F L AY N", "centimetres": "S EH N T AH M IY T ER Z", "millimetres": "M IH L AH M IY T ER Z",
    "undone": "AH N D AH N", "purl": "P ER L", "physiotherapist": "F IH Z IY OW TH EH R AH P IH S T",
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


LETTERS_A_SECOND = 13
"""Of the program's voice; a sentence half as long again as the sound, or as much shorter, is not considered."""
TOO_LONG = 1.5
CONSIDERED = 32
"""Sentences, those that are most like what Whisper would write down by itself."""


class ByWhisper:
    """Which of some sentences a sound is, by Whisper's score of each."""

    def __init__(self, sentences: Iterable[str]) -> None:
        self._sentences = sorted(map(plain_words, sentences))
        self._network = load_whisper(data_dir())

    def read(self, samples: np.ndarray) -> str:
        """The sentence that is likeliest in the sound (16 kHz, int16)."""
        sound = self._network.encode(samples)
        freely = SequenceMatcher(b=sound.words, autojunk=False)

        def alike(sentence: str) -> float:
            freely.set_seq1(sentence)
            return freely.ratio()

        letters = LETTERS_A_SECOND * speech_seconds(samples)
        fit = [each for each in self._sentences if letters / TOO_LONG < len(each.replace(" ", "")) < TOO_LONG * letters]
        near = sorted(fit or self._sentences, key=alike, reverse=True)[:CONSIDERED]
        _, scores = sound.scored(near)
        return max(zip(near, scores, strict=True), key=lambda each: each[1].score)[0]


class Lengths:
    """How many phones each sentence has, so that only those of about the right length need be considered."""

    def __init__(self, sentences: Iterable[str]) -> None:
        self.sentences = tuple({plain_words(sentence): sentence for sentence in sentences}.values())
        self.decoder = CommandDecoder(beam=0, wbeam=0, pbeam=0)
        self.decoder.expect(make_grammar(Vocabulary(tuple(map(plain_words, self.sentences)))), PRONOUNCED)
        self._phones = {
            each: sum(len(self.decoder.phones(word)) for word in plain_words(each).split()) for each in self.sentences
        }

    def near(self, samples: np.ndarray) -> tuple[str, ...]:
        """The sentences of about this length."""
        wanted = speech_seconds(samples) / SECONDS_A_PHONE
        return tuple(each for each in self.sentences if abs(self._phones[each] / wanted - 1) < LENGTH_TOLERANCE)


class BySearch:
    """Which of some sentences a sound is, by PocketSphinx."""

    def __init__(self, sentences: Iterable[str]) -> None:
        self._lengths = Lengths(sentences)

    def read(self, samples: np.ndarray) -> str:
        """The sentence that the sound (16 kHz, int16) is most like."""
        near = tuple(map(plain_words, self._lengths.near(samples)))
        if not near:
            return ""
        decoder = self._lengths.decoder
        decoder.expect(make_grammar(Vocabulary(near)), PRONOUNCED)
        found = decoder.decode(samples)
        return found.text if found else ""


def speech_seconds(samples: np.ndarray) -> float:
    """How long the sound is without its pauses: frames of 20 ms within 35 dB of the loudest."""
    frames = samples[: len(samples) // 320 * 320].reshape(-1, 320).astype(float)
    power = np.square(frames).mean(axis=1)
    return float(np.count_nonzero(power > power.max(initial=1.0) * 10**-3.5)) * 0.02
