"""Hears commands with Vosk, from a model in a local folder; nothing is ever fetched here.

Vosk's run-time grammar prefers the given texts but is not closed: it is a bigram with back-off over their
words. So what comes out may be words of the vocabulary in an order that nobody may say; whoever understands
them looks.
"""

import json
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from models.errors import ModelBroken, ModelMissing, RecogniserUnavailable
from models.grammar import make_grammar
from models.recognising import (
    SAMPLE_RATE_HZ,
    UNKNOWN_WORD,
    Alternative,
    Block,
    Heard,
    Partial,
    Samples,
    Vocabulary,
)
from models.utterances import Closed, Opened, Paused, Pauses, Utterances, Went

NAME = "vosk"
_INSTALL = "pip install vosk"
_FETCH = "roundcaller models fetch"
_NEEDED = ("am/final.mdl", "conf/model.conf")


class VoskRecogniser:
    """Sound in, words out.

    Args:
        folder: of the model as unpacked, with `am/final.mdl` and `conf/model.conf` in it.
        pauses: how long silences are.
        sure: at this confidence and above a whole text is complete after a short pause.

    Raises:
        RecogniserUnavailable: the library is not installed.
        ModelMissing: the folder is not there.
        ModelBroken: a file in it is missing, or the library cannot load it.
    """

    name = NAME

    def __init__(self, folder: Path, pauses: Pauses | None = None, sure: float = 0.6) -> None:
        self._library, self._model = _load(folder)
        self._sure = sure
        self._utterances = Utterances(pauses)
        self._grammar = make_grammar(Vocabulary(()))
        self._decoder: Any = None
        self._done: list[dict[str, Any]] = []
        self._began = 0

    def expect(self, vocabulary: Vocabulary) -> None:
        """Take what may be said from now on; words that the model lacks are never heard (see `lacking`).

        Raises:
            SlotUnknown: a phrase names a slot without texts.
        """
        self._grammar = make_grammar(vocabulary)
        texts = [*self._grammar.neighbours(), UNKNOWN_WORD]
        self._decoder = self._library.KaldiRecognizer(self._model, float(SAMPLE_RATE_HZ), json.dumps(texts))
        self._decoder.SetWords(True)

    @property
    def lacking(self) -> tuple[str, ...]:
        """Words of the vocabulary that the model does not have."""
        return tuple(word for word in self._grammar.words if self._model.vosk_model_find_word(word) < 0)

    def accept(self, block: Block) -> tuple[Partial | Heard, ...]:
        """Take the next block of the stream; a gap before it ends an utterance."""
        return tuple(said for happening in self._utterances.accept(block) for said in self._follow(happening))

    def finish(self) -> tuple[Heard, ...]:
        """End of the stream: what was still open."""
        said = [said for happening in self._utterances.finish() for said in self._follow(happening)]
        return tuple(heard for heard in said if isinstance(heard, Heard))

    def reset(self) -> None:
        """Forget an utterance that has begun."""
        self._utterances.reset()
        self._done.clear()
        if self._decoder is not None:
            self._decoder.Reset()

    def _follow(self, happening: Opened | Went | Paused | Closed) -> Iterator[Partial | Heard]:
        match happening:
            case Opened(began, samples):
                self._began = began
                self._feed(samples)
            case Went(samples):
                self._feed(samples)
            case Paused():
                words = self._partial()
                if self._grammar.accepts(words):
                    self._utterances.settle()
                yield Partial(words, self._began)
            case Closed(ended, talk):
                yield self._heard(ended, talk=talk)

    def _feed(self, samples: Samples) -> None:
        if self._decoder is not None and self._decoder.AcceptWaveform(samples.tobytes()):
            self._done.append(json.loads(self._decoder.Result()))

    def _partial(self) -> str:
        if self._decoder is None:
            return UNKNOWN_WORD
        last = json.loads(self._decoder.PartialResult()).get("partial", "")
        return " ".join(text for text in (*(result.get("text", "") for result in self._done), last) if text)

    def _heard(self, ended: int, *, talk: bool) -> Heard:
        results = list(self._done)
        self._done.clear()
        if self._decoder is not None:
            results.append(json.loads(self._decoder.FinalResult()))
        words = [word for result in results for word in result.get("result", ())]
        reading = Alternative(UNKNOWN_WORD, 1.0)
        if words and not talk:
            reading = Alternative(" ".join(word["word"] for word in words), _sureness(words))
        return Heard(reading.words, reading.confidence, self._began, ended, (reading,))


def _sureness(words: Sequence[Mapping[str, Any]]) -> float:
    """Of the word that is least sure: a command is wrong as soon as one word is."""
    return max(0.0, min(1.0, *(float(word["conf"]) for word in words)))


def _load(folder: Path) -> tuple[Any, Any]:
    """The library and the model in the folder; looks first, because the library only says that it failed."""
    cure = f"{_FETCH} {folder.name}"
    if not folder.is_dir():
        raise ModelMissing(name=folder.name, cure=cure)
    for needed in _NEEDED:
        if not (folder / needed).is_file():
            raise ModelBroken(name=folder.name, what=needed, cure=cure)
    try:
        import vosk  # noqa: PLC0415 - imports the network's libraries, and only who listens with it needs it
    except (ImportError, OSError) as failure:
        raise RecogniserUnavailable(recogniser=NAME, cure=_INSTALL) from failure
    vosk.SetLogLevel(-1)
    try:
        return vosk, vosk.Model(model_path=str(folder))
    except Exception as failure:  # the library raises plain Exception
        raise ModelBroken(name=folder.name, what=str(failure), cure=cure) from failure
