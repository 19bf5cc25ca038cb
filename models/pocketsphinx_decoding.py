"""The PocketSphinx library, wrapped: sound of one utterance in, words and log-likelihoods out.

Every decoder here scores all senones at each frame, so that scores are relative to the same best one and
those of two decoders over the same sound may be compared. The library's own lattice search after the fact
is off: it was seen to leave the grammar ("mark this" of "mark this place").
"""

import itertools
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from models.errors import ModelBroken, ModelMissing, RecogniserUnavailable, WordsUnknown
from models.grammar import Grammar
from models.recognising import Samples

NAME = "pocketsphinx"
_CURE = "pip install pocketsphinx"
_READINGS = 60
"""So many are looked through for different ones: most differ in their pauses only."""
_FEATURES = Path(__file__).with_name("pocketsphinx_features.txt")


@dataclass(frozen=True, slots=True)
class Spoken:
    """A stretch of an utterance taken for one word or phone.

    Attributes:
        word: as in the dictionary, with the number of a further pronunciation, as in "the(2)"; silence as
            "<sil>" or "SIL".
        first_frame: its first frame of 10 ms.
        end_frame: the first frame after it.
        log_likelihood: of its sound, natural logarithm, relative to the best senone at each frame.
    """

    word: str
    first_frame: int
    end_frame: int
    log_likelihood: float

    @property
    def frames(self) -> int:
        """Its length."""
        return self.end_frame - self.first_frame

    @property
    def is_silence(self) -> bool:
        """Whether it is a pause, breath or noise."""
        return self.word in {"<sil>", "SIL", "(NULL)"} or self.word.startswith(("[", "+"))


@dataclass(frozen=True, slots=True)
class Decoding:
    """One reading of an utterance.

    Attributes:
        text: its words; empty for phones.
        log_score: of the whole, natural logarithm.
        parts: in order, without holes.
    """

    text: str
    log_score: float
    parts: tuple[Spoken, ...]

    @property
    def words(self) -> tuple[str, ...]:
        """What was said without the pauses, as in `Spoken.word`."""
        return tuple(part.word for part in self.parts if not part.is_silence)


class Decoder:
    """One search over the wheel's English acoustic model.

    Args:
        settings: of the library, added to ours.

    Raises:
        RecogniserUnavailable: the library is not installed.
        ModelMissing, ModelBroken: its model is not there or cannot be loaded.
    """

    def __init__(self, **settings: object) -> None:
        try:
            import pocketsphinx  # noqa: PLC0415 - only who listens needs it
        except ImportError as failure:
            raise RecogniserUnavailable(recogniser=NAME, cure=_CURE) from failure
        folder = Path(pocketsphinx.get_model_path()) / "en-us"
        if not folder.is_dir():
            raise ModelMissing(name=NAME, cure=_CURE)
        self._folder = folder
        ours: dict[str, object] = {
            "hmm": str(folder / "en-us"),
            "dict": str(folder / "cmudict-en-us.dict"),
            "featparams": str(_FEATURES),
            "lm": None,
            "loglevel": "FATAL",
            "compallsen": True,
            "bestpath": False,
        }
        try:
            self._library: Any = pocketsphinx.Decoder(**(ours | settings))
        except (RuntimeError, ValueError) as failure:
            raise ModelBroken(name=NAME, what=str(failure), cure=_CURE) from failure

    def decode(self, samples: Samples) -> Decoding | None:
        """The best reading of a whole utterance; None where the search found no way through it.

        Depends on nothing that was decoded before: the library would carry its estimate of the noise over.
        """
        library = self._library
        library.reinit_feat()
        library.start_utt()
        library.process_raw(samples.tobytes(), full_utt=True)
        library.end_utt()
        best = library.hyp()
        if best is None:
            return None
        return Decoding(best.hypstr or "", _ln(best.score), tuple(self._parts()))

    def _parts(self) -> Iterator[Spoken]:
        for part in self._library.seg():
            yield Spoken(part.word, part.start_frame, part.end_frame + 1, _ln(part.ascore))


class CommandDecoder(Decoder):
    """Decodes whole texts of a grammar, and nothing else; nothing at all before it was given one.

    Args:
        settings: of the library, added to ours.

    Raises:
        RecogniserUnavailable, ModelMissing, ModelBroken: as `Decoder`.
    """

    def __init__(self, **settings: object) -> None:
        super().__init__(**settings)
        self._empty = True

    def expect(self, grammar: Grammar, pronounced: Mapping[str, str]) -> None:
        """Take another grammar.

        Args:
            grammar: what may be said.
            pronounced: phones of words that the dictionary lacks.

        Raises:
            WordsUnknown: words of the grammar stand in neither.
        """
        self._pronounce(grammar.words, pronounced)
        start, end, arcs = grammar.single_ended()
        self._empty = not arcs
        if arcs:
            moves = [(begin, target, 1.0, word) for begin, target, word in arcs]
            self._library.add_fsg("commands", self._library.create_fsg("commands", start, end, moves))
            self._library.activate_search("commands")

    def decode(self, samples: Samples) -> Decoding | None:
        """The text of the grammar that fits a whole utterance best; None where none does at all."""
        return None if self._empty else super().decode(samples)

    def likely(self, most: int) -> tuple[str, ...]:
        """Different readings of what was decoded last, the likeliest first; some may lie outside the grammar."""
        found: dict[str, None] = {}
        for reading in itertools.islice(self._library.nbest() or (), _READINGS):
            if reading is None:  # its way of saying that there are no more
                break
            found.setdefault(reading.hypstr or "")
        return tuple(found)[:most]

    def phones(self, word: str) -> tuple[str, ...]:
        """The pronunciation of a word, as the dictionary or the vocabulary has it."""
        return tuple((self._library.lookup_word(word) or "").split())

    def _pronounce(self, words: tuple[str, ...], pronounced: Mapping[str, str]) -> None:
        lacking = [word for word in words if self._library.lookup_word(word) is None]
        unknown = [word for word in lacking if word not in pronounced]
        if unknown:
            raise WordsUnknown(recogniser=NAME, words=", ".join(unknown))
        for word in lacking:
            self._library.add_word(word, pronounced[word], update=True)


class PhoneDecoder(Decoder):
    """Decodes any speech as a string of phones, likely ones in English: what competes with the commands."""

    def __init__(self, **settings: object) -> None:
        super().__init__(allphone_ci=True, **settings)
        self._library.add_allphone_file("phones", str(self._folder / "en-us-phone.lm.bin"))
        self._library.activate_search("phones")


def _ln(probability: float) -> float:
    """The library gives its whole-number logarithms as probabilities; the smallest are 0."""
    return math.log(max(probability, 1e-300))
