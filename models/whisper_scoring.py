"""Whisper, by CTranslate2, asked how likely given texts are in a sound, and what it would write down by itself.

The network was made for 30 s. It is given `WINDOW_FRAMES`, which holds any utterance, and takes far less time for
that. The sound is encoded once; all ways to write all texts are then scored side by side.
"""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import numpy as np

from models.catalogue import Catalogue, find
from models.errors import ModelBroken, ModelMissing, SecondOpinionMissing
from models.keeping import model_path
from models.recognising import Samples
from models.second_opinion import Scored
from models.whisper_features import log_mel
from models.word_pieces import WordPieces
from models.written_english import spoken, written

MODEL = "whisper-tiny-en"
"""Its name in the catalogue."""
LIBRARY = "ctranslate2"
WINDOW_FRAMES = 1_000
NEEDED = ("model.bin", "config.json", "tokenizer.json", "vocabulary.txt")
_INSTALL = "pip install"
_THREADS = 2
_MOST_PIECES = 24
_FAINTEST = 1e-12


class Encoded:
    """One sound, as the network has taken it in.

    Args:
        library: CTranslate2.
        network: as loaded by it.
        pieces: of words.
        sound: what the network's encoder made of it.
    """

    def __init__(self, library: Any, network: Any, pieces: WordPieces, sound: Any) -> None:  # noqa: ANN401
        self._library = library
        self._network = network
        self._pieces = pieces
        self._sound = np.array(sound)
        self._start = pieces.mark("<|startoftranscript|>")
        prompt = [self._start, pieces.mark("<|notimestamps|>")]
        (found,) = network.generate(sound, [prompt], beam_size=1, max_length=_MOST_PIECES)
        self._written: list[int] = found.sequences_ids[0]

    @property
    def words(self) -> str:
        """What it would write down by itself, in small letters, numbers in words."""
        return spoken(self._pieces.text(self._written))

    def scored(self, texts: Sequence[str]) -> tuple[float, tuple[Scored, ...]]:
        """How likely is what it would write down by itself (natural logarithm), and how likely is each text."""
        ways = [[self._pieces.numbers(way) for way in written(text)] for text in texts]
        freely, *scores = self._scores([self._written, *(way for each in ways for way in each)])
        following = iter(scores)
        return freely, tuple(_together(each, [next(following) for _ in each]) for each in ways)

    def _scores(self, rows: Sequence[Sequence[int]]) -> list[float]:
        """Of each row of pieces, without an end after it."""
        sound = self._library.StorageView.from_array(np.repeat(self._sound, len(rows), axis=0))
        found = self._network.align(sound, [self._start], [list(row) or [self._start] for row in rows], [2] * len(rows))
        return [float(np.log(np.asarray(each.text_token_probs) + _FAINTEST).sum()) for each in found]


def _together(ways: Sequence[Sequence[int]], scores: Sequence[float]) -> Scored:
    """All ways to write one text."""
    whole = float(np.logaddexp.reduce(scores))
    return Scored(whole, whole / max(map(len, ways)))


class Whisper:
    """The network and its pieces of words.

    Args:
        folder: where `NEEDED` lies.

    Raises:
        SecondOpinionMissing: the library is not installed.
        ModelBroken: a file of the model is missing or cannot be loaded.
    """

    def __init__(self, folder: Path) -> None:
        cure = find(MODEL).cure
        for needed in NEEDED:
            if not (folder / needed).is_file():
                raise ModelBroken(name=MODEL, what=needed, cure=cure)
        try:
            import ctranslate2  # noqa: PLC0415 - only who wants a second opinion has it
        except (ImportError, OSError) as failure:
            raise SecondOpinionMissing(what=LIBRARY, cure=f"{_INSTALL} {LIBRARY}") from failure
        self._library: Any = ctranslate2
        try:
            self._pieces = WordPieces(folder / "tokenizer.json")
            self._network = ctranslate2.models.Whisper(
                str(folder), device="cpu", compute_type="int8", intra_threads=_THREADS
            )
        except (RuntimeError, OSError, ValueError, KeyError, TypeError) as failure:
            raise ModelBroken(name=MODEL, what=str(failure), cure=cure) from failure

    def encode(self, sound: Samples) -> Encoded:
        """Take in a sound of up to ten seconds; what is longer is cut off."""
        looked_at = np.ascontiguousarray(log_mel(sound, WINDOW_FRAMES)[None])
        encoded = self._network.encode(self._library.StorageView.from_array(looked_at))
        return Encoded(self._library, self._network, self._pieces, encoded)


def load_whisper(data_dir: Path, among: Catalogue | None = None) -> Whisper:
    """The network with the model of the catalogue.

    Raises:
        SecondOpinionMissing: the library, or the model, is not on this machine.
        ModelBroken: a file of the model is missing or cannot be loaded.
    """
    try:
        folder = model_path(MODEL, data_dir, among)
    except ModelMissing as missing:
        raise SecondOpinionMissing(what=MODEL, cure=missing.values["cure"]) from missing
    return Whisper(folder)
