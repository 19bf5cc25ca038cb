"""Reads the program's own voice back: two readers choose among all the sentences the program can say.

Neither is told what was to be said, and neither is the recogniser that hears the knitter.

`ByLikeness` compares what came out of the loudspeaker with every sentence in five other voices: three of flite, which
shares nothing with the program's voice, and two of espeak-ng, the program's own synthesiser with another voice, accent
and pace. So it finds a sentence that was changed, cut, mixed up or garbled on its way; a word that espeak-ng says
wrongly in every voice it may not find, as flite's three alone are not sure enough.

`BySearch` is PocketSphinx with another grammar (whole sentences, no way out) and another search than listen to the
knitter; it has its own idea of how words sound, and takes some sentences for others that are alike.
"""

import re
import subprocess
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from models import likeness
from models.grammar import make_grammar
from models.pocketsphinx_decoding import CommandDecoder
from models.recognising import Vocabulary
from models.recordings import read_sound

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


READERS = (
    ("flite", "-voice", "slt", "-t", "{words}", "-o", "{file}"),
    ("flite", "-voice", "rms", "-t", "{words}", "-o", "{file}"),
    ("flite", "-voice", "kal16", "-t", "{words}", "-o", "{file}"),
    ("espeak-ng", "-v", "en-gb+f3", "-s", "150", "-w", "{file}", "{words}"),
    ("espeak-ng", "-v", "en-us+m3", "-s", "200", "-w", "{file}", "{words}"),
)
"""The voices that what was said is compared with."""


@cache
def _read_aloud(sentence: str) -> tuple[likeness.Features, ...]:
    """The sentence in each of the voices."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "sentence.wav"
        found = []
        for command in READERS:
            subprocess.run([part.format(words=sentence, file=file) for part in command], check=True)
            found.append(likeness.features(read_sound(file)))
    return tuple(found)


class ByLikeness:
    """Which of some sentences a sound is most like, by the sum of its distances to five other voices."""

    def __init__(self, sentences: Iterable[str]) -> None:
        self._lengths = Lengths(sentences)

    def read(self, samples: np.ndarray) -> str:
        """The sentence that the sound (16 kHz, int16) is most like; none where all are too long or too short."""
        said = likeness.features(samples)
        near = self._lengths.near(samples)
        far = {each: sum(likeness.distance(said, voice) for voice in _read_aloud(each)) for each in near}
        return plain_words(min(far, key=far.__getitem__, default=""))


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
