"""The graph that Vosk composes a run-time grammar with: every word by its phones, silence between, and `[unk]`.

`[unk]` is any phones at all, weighed by how often one follows another, the weights that the network was trained
against: so a command is heard only where it scores better than anything else that could have been said. The graph is a
plain vector FST whose word labels stand on the first phone, so that composition needs no look-ahead.

Built in a process of its own: kaldifst and vosk cannot be imported together.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import kaldifst

from models.training.lexicon import PHONES, SILENCE, Lexicon

UNKNOWN_WORD = "[unk]"
POSITIONS = {"B": "begin", "E": "end", "I": "internal", "S": "singleton"}
PLACED = (SILENCE, *(f"{phone}_{position}" for phone in PHONES[1:] for position in POSITIONS))
"""Kaldi's phones: each phone at each position in a word. Numbered from 1."""
_NUMBER = {phone: at for at, phone in enumerate(PLACED, 1)}
PDFS = tuple((2 * PHONES.index(placed.split("_")[0]), 2 * PHONES.index(placed.split("_")[0]) + 1) for placed in PLACED)


@dataclass(frozen=True)
class Costs:
    """In negative log probabilities.

    Attributes:
        unknown: to begin unknown words.
        phone: besides, for each phone in them.
        silence: how likely a silence after a word is.
    """

    unknown: float
    phone: float = 0.0
    silence: float = 0.5


class _Builder:
    def __init__(self, costs: Costs) -> None:
        self.fst = kaldifst.StdVectorFst()
        self.start = self.fst.add_state()
        self.hub = self.fst.add_state()
        self._quiet = self.fst.add_state()
        self._with, self._without = -math.log(costs.silence), -math.log(1 - costs.silence)
        self.fst.start = self.start
        self.fst.set_final(self.hub, 0.0)
        self.word_ends_at(self.start)
        self.arc(self._quiet, 2 * _NUMBER[SILENCE] - 1, 0, 0.0, self._quiet)
        self.arc(self._quiet, 0, 0, 0.0, self.hub)

    def arc(self, begin: int, heard: int, word: int, cost: float, end: int) -> None:
        self.fst.add_arc(begin, kaldifst.StdArc(heard, word, cost, end))

    def word_ends_at(self, state: int) -> None:
        self.arc(state, 0, 0, self._without, self.hub)
        self.arc(state, 2 * _NUMBER[SILENCE], 0, self._with, self._quiet)

    def phone(self, begin: int, placed: str, word: int = 0, cost: float = 0.0) -> int:
        """Its first frame, then any number of further ones; the state after it."""
        state = self.fst.add_state()
        self.arc(begin, 2 * _NUMBER[placed], word, cost, state)
        self.arc(state, 2 * _NUMBER[placed] - 1, 0, 0.0, state)
        return state


def _placed(said: tuple[str, ...]) -> list[str]:
    if len(said) == 1:
        return [f"{said[0]}_S"]
    return [f"{said[0]}_B", *(f"{phone}_I" for phone in said[1:-1]), f"{said[-1]}_E"]


def _add_words(builder: _Builder, words: Mapping[str, int], lexicon: Lexicon) -> None:
    for word, ways in lexicon.items():
        for way in ways:
            state = builder.hub
            for at, placed in enumerate(_placed(way)):
                state = builder.phone(state, placed, words[word] if at == 0 else 0)
            builder.word_ends_at(state)


def _add_unknown(builder: _Builder, word: int, moves: list[list[float]], begin: list[float], costs: Costs) -> None:
    after = {phone: builder.fst.add_state() for phone in PHONES[1:]}
    ends = builder.fst.add_state()
    builder.word_ends_at(ends)

    def through(state: int, placed: str, cost: float, label: int = 0) -> None:
        phone, at = placed.split("_")
        builder.arc(builder.phone(state, placed, label, cost), 0, 0, 0.0, after[phone] if at in "BI" else ends)

    for number, phone in enumerate(PHONES[1:], 1):
        first = costs.unknown + costs.phone - begin[number]
        through(builder.hub, f"{phone}_B", first, word)
        through(builder.hub, f"{phone}_S", first, word)
        for other, following in enumerate(PHONES[1:], 1):
            cost = costs.phone - moves[number][other]
            through(after[phone], f"{following}_I", cost)
            through(after[phone], f"{following}_E", cost)


def build(lexicon: Lexicon, moves: list[list[float]], begin: list[float], costs: Costs, folder: Path) -> None:
    """Write graph/ of the model's folder.

    Args:
        lexicon: all words, each with its pronunciations.
        moves: log probabilities of phone after phone, as trained.
        begin: of the first phone.
        costs: see `Costs`.
        folder: of the model.
    """
    graph = folder / "graph"
    (graph / "phones").mkdir(parents=True, exist_ok=True)
    words = {word: at for at, word in enumerate(["<eps>", *sorted(lexicon), UNKNOWN_WORD])}
    builder = _Builder(costs)
    _add_words(builder, words, lexicon)
    _add_unknown(builder, words[UNKNOWN_WORD], moves, begin, costs)
    kaldifst.arcsort(builder.fst, "olabel")
    builder.fst.write(str(graph / "HCLr.fst"))
    grammar = kaldifst.StdVectorFst()
    only = grammar.add_state()
    grammar.start = only
    grammar.set_final(only, 0.0)
    for number in list(words.values())[1:]:
        grammar.add_arc(only, kaldifst.StdArc(number, number, math.log(len(words)), only))
    kaldifst.arcsort(grammar, "ilabel")
    grammar.write(str(graph / "Gr.fst"))
    (graph / "words.txt").write_text("".join(f"{word} {number}\n" for word, number in words.items()))
    (graph / "phones.txt").write_text("<eps> 0\n" + "".join(f"{phone} {number}\n" for phone, number in _NUMBER.items()))
    (graph / "disambig_tid.int").write_text(f"{2 * len(PLACED) + 1}\n")
    boundaries = (("nonword" if placed == SILENCE else POSITIONS[placed[-1]]) for placed in PLACED)
    (graph / "phones" / "word_boundary.int").write_text(
        "".join(f"{number} {boundary}\n" for number, boundary in enumerate(boundaries, 1))
    )
