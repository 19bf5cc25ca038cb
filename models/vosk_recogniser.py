"""Hears commands with Vosk, from a model in a local folder; nothing is ever fetched here.

Vosk's run-time grammar prefers the given texts but is not closed: it is a bigram with back-off over their words. So
its likeliest readings are held against the texts that may be said, and the best of those that may is taken:
see `models.closing`.
"""

import json
import socket
from dataclasses import replace
from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import Any

from models.closing import FILE, Hypothesis, Judging, features, joined, judged, read_judging, sayable
from models.errors import ModelBroken, ModelMissing, RecogniserUnavailable
from models.expecting import Expectation
from models.following import NOTHING_KNOWN, Caution, Following, Weighed
from models.homophones import said
from models.recognising import SAMPLE_RATE_HZ, UNKNOWN_WORD, Alternative, Readings, Samples
from models.shipped import NEEDED
from models.utterances import Pauses

NAME = "vosk"
_INSTALL = "pip install vosk"
_FETCH = "roundcaller models fetch"


class VoskRecogniser(Following):
    """Sound in, words out.

    Args:
        folder: of the model as unpacked, with `am/final.mdl` and `conf/model.conf` in it, and its own `judging.toml`
            where it was measured.
        pauses: how long silences are.
        caution: when what was heard is trusted.

    Raises:
        RecogniserUnavailable: the library is not installed.
        ModelMissing: the folder is not there.
        ModelBroken: a file in it is missing, or cannot be loaded.
    """

    name = NAME

    def __init__(self, folder: Path, pauses: Pauses | None = None, caution: Caution | None = None) -> None:
        self._library, self._model = _load(folder)
        self._judging = _judging(folder)
        self._decoder: Any = None
        self._done: list[str] = []
        self._samples = 0
        self._guessed: Readings = ()
        super().__init__(pauses, caution)

    @property
    def lacking(self) -> tuple[str, ...]:
        """Words of the vocabulary that the model does not have; they are never heard."""
        words = self._expected.grammar.words
        return tuple(word for word in words if self._model.vosk_model_find_word(word) < 0)

    def _take_up(self, expected: Expectation) -> None:
        texts = [*expected.grammar.neighbours(), UNKNOWN_WORD]
        self._decoder = self._library.KaldiRecognizer(self._model, float(SAMPLE_RATE_HZ), json.dumps(texts))
        self._decoder.SetMaxAlternatives(self._judging.alternatives)

    def _feed(self, samples: Samples) -> None:
        self._samples += len(samples)
        if self._decoder is not None and self._decoder.AcceptWaveform(samples.tobytes()):
            self._done.append(self._decoder.Result())

    def _begin_reading(self) -> None:
        """It reads as it is fed."""

    def _so_far(self) -> Alternative:
        if self._decoder is None:
            return NOTHING_KNOWN
        last = json.loads(self._decoder.PartialResult()).get("partial", "")
        before = (json.loads(result)["alternatives"][0]["text"] for result in self._done)
        words = said(" ".join((*before, last)), self._expected.grammar, self._expected.vocabulary.homophones)
        return NOTHING_KNOWN if words is None else Alternative(words, 1.0)

    def _to_end(self) -> Readings:
        if self._decoder is None:
            return (NOTHING_KNOWN,)
        pieces = [_hypotheses(result) for result in (*self._done, self._decoder.FinalResult())]
        self._done.clear()
        ways = joined(pieces, self._judging.alternatives)
        seconds = (self._samples - self._utterances.quiet_samples) / SAMPLE_RATE_HZ
        texts = sayable(ways, self._expected.grammar, self._judging.scale, self._expected.vocabulary.homophones)
        for words, share in list(texts.items())[:1]:
            self.weighed = Weighed(words, features(share, words, seconds))
            self._guessed = judged(texts, seconds, replace(self._judging, plausible=0.0))
        return judged(texts, seconds, self._judging)

    def _guess(self) -> Alternative | None:
        return self._guessed[0] if self._guessed else None

    def _other_guesses(self) -> tuple[str, ...]:
        return tuple(guess.words for guess in self._guessed[1:])

    def _drop(self) -> None:
        self._done.clear()
        self._guessed = ()
        self._samples = 0
        if self._decoder is not None:
            self._decoder.Reset()


def _hypotheses(result: str) -> tuple[Hypothesis, ...]:
    found = json.loads(result).get("alternatives", ())
    return tuple(Hypothesis(" ".join(each["text"].split()), float(each["confidence"])) for each in found)


def _load(folder: Path) -> tuple[Any, Any]:
    """The library and the model in the folder; looks first, because the library only says that it failed."""
    cure = f"{_FETCH} {folder.name}"
    if not folder.is_dir():
        raise ModelMissing(name=folder.name, cure=cure)
    for needed in NEEDED:
        if not (folder / needed).is_file():
            raise ModelBroken(name=folder.name, what=needed, cure=cure)
    try:
        vosk = _library()
    except (ImportError, OSError) as failure:
        raise RecogniserUnavailable(recogniser=NAME, cure=_INSTALL) from failure
    vosk.SetLogLevel(-1)
    try:
        return vosk, vosk.Model(model_path=str(folder))
    except Exception as failure:  # the library raises plain Exception
        raise ModelBroken(name=folder.name, what=str(failure), cure=cure) from failure


def _library() -> ModuleType:
    """Vosk, imported without a socket: it brings urllib3, which would open one to see whether there is IPv6."""
    there, socket.has_ipv6 = socket.has_ipv6, False
    try:
        return import_module(NAME)
    finally:
        socket.has_ipv6 = there


def _judging(folder: Path) -> Judging:
    try:
        return read_judging(folder)
    except (OSError, ValueError, TypeError) as failure:
        raise ModelBroken(name=folder.name, what=FILE, cure=f"{_FETCH} {folder.name}") from failure
