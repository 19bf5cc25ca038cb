"""Phrases with slots become one small automaton over words: deterministic, minimal, without cycles.

States are made from their ends towards their beginnings and shared whenever the same words can follow
(hash-consing; Daciuk and others, "Incremental Construction of Minimal Acyclic Finite-State Automata",
2000), so a slot of thousands of texts costs some tens of states at each place where something else follows
it.
"""

from collections import deque
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from models.recognising import Vocabulary

State = int
Arc = tuple[State, State, str]


@dataclass(frozen=True)
class Grammar:
    """All that may be said, as an automaton.

    Attributes:
        start: where every text begins.
        arcs: for each state the words that may follow, and the state each leads to.
        finals: states in which a text may end.
    """

    start: State
    arcs: Mapping[State, Mapping[str, State]]
    finals: frozenset[State]

    @cached_property
    def words(self) -> tuple[str, ...]:
        """Every word once, in alphabetical order."""
        return tuple(sorted({word for following in self.arcs.values() for word in following}))

    def accepts(self, text: str) -> bool:
        """Whether the whole text may be said."""
        return self._after(text) in self.finals

    def begins(self, text: str) -> bool:
        """Whether some text that may be said begins with these whole words."""
        return self._after(text) is not None

    def goes_on(self, text: str) -> bool:
        """Whether something longer that may be said begins with these whole words."""
        state = self._after(text)
        return state is not None and bool(self.arcs[state])

    def texts(self) -> Iterator[str]:
        """Every text that may be said, each once, in alphabetical order of words."""
        return (" ".join(words) for words in self._from(self.start))

    def neighbours(self) -> Iterator[str]:
        """A few texts in which every two words that may follow each other do, to count pairs of words in."""
        found: dict[str, None] = {}
        before, after = self._shortest_before, self._shortest_after
        for state, following in self.arcs.items():
            for word, target in following.items():
                here = (*before[state], word)
                if target in self.finals:
                    found[" ".join(here)] = None
                for other, beyond in self.arcs[target].items():
                    found[" ".join((*here, other, *after[beyond]))] = None
        return iter(found)

    @cached_property
    def _shortest_before(self) -> dict[State, tuple[str, ...]]:
        shortest: dict[State, tuple[str, ...]] = {self.start: ()}
        waiting = deque((self.start,))
        while waiting:
            state = waiting.popleft()
            for word, target in self.arcs[state].items():
                if target not in shortest:
                    shortest[target] = (*shortest[state], word)
                    waiting.append(target)
        return shortest

    @cached_property
    def _shortest_after(self) -> dict[State, tuple[str, ...]]:
        shortest: dict[State, tuple[str, ...]] = {}
        for state in reversed(tuple(self._shortest_before)):
            self._measure(state, shortest)
        return shortest

    def _measure(self, state: State, shortest: dict[State, tuple[str, ...]]) -> tuple[str, ...]:
        if state not in shortest:
            ways = [(word, *self._measure(target, shortest)) for word, target in self.arcs[state].items()]
            shortest[state] = () if state in self.finals else min(ways, key=len, default=())
        return shortest[state]

    def single_ended(self) -> tuple[State, State, tuple[Arc, ...]]:
        """The same texts with one end, as decoders want it.

        Returns:
            start, end, arcs (from, to, word). States count from 0; the end has no arcs out of it. A word that
            may be the last one and may also go on stands on two arcs.
        """
        numbers = {state: number for number, state in enumerate(sorted(self.arcs))}
        end = len(numbers)
        arcs: list[Arc] = []
        for state, following in sorted(self.arcs.items()):
            for word, target in sorted(following.items()):
                if target in self.finals:
                    arcs.append((numbers[state], end, word))
                if self.arcs[target]:
                    arcs.append((numbers[state], numbers[target], word))
        return numbers[self.start], end, tuple(arcs)

    def _after(self, text: str) -> State | None:
        state: State | None = self.start
        for word in text.split():
            state = None if state is None else self.arcs[state].get(word)
        return state

    def _from(self, state: State) -> Iterator[tuple[str, ...]]:
        if state in self.finals:
            yield ()
        for word, target in sorted(self.arcs[state].items()):
            for rest in self._from(target):
                yield (word, *rest)


class SlotUnknown(ValueError):
    """A phrase names a slot that has no texts."""


def make_grammar(vocabulary: Vocabulary) -> Grammar:
    """The automaton of all phrases, slots filled.

    Raises:
        SlotUnknown: a phrase names a slot that the vocabulary has no texts for.
    """
    maker = _Maker(vocabulary.slots)
    start = maker.any_of(maker.phrase(phrase) for phrase in vocabulary.phrases)
    reached = maker.reached(start)
    return Grammar(
        start=start,
        arcs={state: dict(maker.arcs[state]) for state in reached},
        finals=frozenset(state for state in reached if maker.final[state]),
    )


class _Maker:
    """Makes states, equal ones once. State 0 is the end: final, nothing follows."""

    def __init__(self, slots: Mapping[str, tuple[str, ...]]) -> None:
        self._texts = slots
        self._slots: dict[str, State] = {}
        self._numbers: dict[tuple[bool, tuple[tuple[str, State], ...]], State] = {}
        self._both: dict[tuple[State, State], State] = {}
        self._then: dict[tuple[State, State], State] = {}
        self.final: list[bool] = []
        self.arcs: list[tuple[tuple[str, State], ...]] = []
        self.end = self._state({}, final=True)

    def phrase(self, phrase: str) -> State:
        """The beginning of a phrase."""
        state = self.end
        for token in reversed(phrase.split()):
            if token.startswith("{") and token.endswith("}"):
                state = self._before(self._slot(token[1:-1]), state)
            else:
                state = self._state({token: state}, final=False)
        return state

    def any_of(self, states: Iterable[State]) -> State:
        """One state after which anything may follow that may follow one of these; pairs are joined first."""
        level = list(dict.fromkeys(states)) or [self._state({}, final=False)]
        while len(level) > 1:
            level = [self._either(*level[at : at + 2]) for at in range(0, len(level), 2)]
        return level[0]

    def reached(self, start: State) -> frozenset[State]:
        """All states that can be reached from here, this one among them."""
        found = {start}
        waiting = [start]
        while waiting:
            new = {target for _, target in self.arcs[waiting.pop()]} - found
            found |= new
            waiting.extend(new)
        return frozenset(found)

    def _state(self, following: Mapping[str, State], *, final: bool) -> State:
        arcs = tuple(sorted(following.items()))
        number = self._numbers.setdefault((final, arcs), len(self.arcs))
        if number == len(self.arcs):
            self.arcs.append(arcs)
            self.final.append(final)
        return number

    def _slot(self, name: str) -> State:
        if not self._texts.get(name):
            message = f'a phrase holds the slot "{name}", which has no texts'
            raise SlotUnknown(message)
        if name not in self._slots:
            self._slots[name] = self.any_of(self.phrase(text) for text in self._texts[name])
        return self._slots[name]

    def _either(self, one: State, other: State | None = None) -> State:
        if other is None or one == other:
            return one
        pair = (one, other)
        if pair not in self._both:
            following = dict(self.arcs[one])
            for word, target in self.arcs[other]:
                following[word] = self._either(target, following.get(word))
            self._both[pair] = self._state(following, final=self.final[one] or self.final[other])
        return self._both[pair]

    def _before(self, slot: State, then: State) -> State:
        """The slot's texts, each followed by what follows `then`."""
        pair = (slot, then)
        if pair not in self._then:
            inner = {word: self._before(target, then) for word, target in self.arcs[slot]}
            state = self._state(inner, final=False)
            self._then[pair] = self._either(state, then) if self.final[slot] else state
        return self._then[pair]
