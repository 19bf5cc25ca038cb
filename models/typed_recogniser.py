"""Typed words taken as heard: the same vocabulary, no sound."""

from collections.abc import Iterable, Iterator

from models.grammar import Grammar, make_grammar
from models.recognising import SAMPLE_RATE_HZ, UNKNOWN_WORD, Alternative, Block, Heard, Partial, Vocabulary

_CURLY = "\N{RIGHT SINGLE QUOTATION MARK}"
SAMPLES_A_WORD = SAMPLE_RATE_HZ // 2
"""A typed word takes as much of the stream as a spoken one would, so that time goes on."""


class TypedRecogniser:
    """Lines of words in, words out, with confidence 1; words outside the vocabulary stand as "[unk]"."""

    name = "typed"

    def __init__(self) -> None:
        self._grammar: Grammar = make_grammar(Vocabulary(()))
        self._at = 0

    def expect(self, vocabulary: Vocabulary) -> None:
        """Take what may be said from now on."""
        self._grammar = make_grammar(vocabulary)

    def type(self, line: str) -> Heard:
        """One line as one utterance; capitals and punctuation count for nothing."""
        words = tuple(self._known(_plain(line)))
        began, self._at = self._at, self._at + SAMPLES_A_WORD * max(1, len(words))
        text = " ".join(words)
        return Heard(text, 1.0, began, self._at, (Alternative(text, 1.0),))

    def accept(self, block: Block) -> tuple[Partial | Heard, ...]:
        """Sound says nothing to it; the stream's time goes on."""
        self._at = max(self._at, block.end_sample)
        return ()

    def finish(self) -> tuple[Heard, ...]:
        """Nothing is ever open."""
        return ()

    def reset(self) -> None:
        """Nothing is ever open."""

    def _known(self, words: Iterable[str]) -> Iterator[str]:
        return (word if word in self._grammar.words else UNKNOWN_WORD for word in words)


def _plain(line: str) -> Iterator[str]:
    """Words as a vocabulary has them: "Twenty-one, please!" is twenty one please."""
    line = line.lower().replace(_CURLY, "'")
    kept = "".join(letter if letter.isalnum() or letter == "'" else " " for letter in line)
    return (word for word in (part.strip("'") for part in kept.split()) if word)
