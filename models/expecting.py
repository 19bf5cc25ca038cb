"""What may be said, and how much silence shows that it was said to its end."""

from collections import deque

from models.grammar import Grammar, make_grammar
from models.recognising import Vocabulary
from models.utterances import Wait


class Expectation:
    """A vocabulary with its grammar.

    Raises:
        SlotUnknown: a phrase names a slot without texts.
    """

    def __init__(self, vocabulary: Vocabulary) -> None:
        self.vocabulary = vocabulary
        self.grammar: Grammar = make_grammar(vocabulary)
        costly = tuple(phrase for phrase in vocabulary.phrases if phrase in vocabulary.costly)
        self._costly = make_grammar(Vocabulary(costly, vocabulary.slots))
        self._begins_talk = vocabulary.begins_talk & frozenset(vocabulary.phrases)

    def wait(self, text: str) -> Wait:
        """The silence that is enough after this text."""
        if not self.grammar.accepts(text):
            return Wait.LONG
        if text in self._begins_talk:
            return Wait.HELD
        if self.grammar.goes_on(text) or self._costly.accepts(text):
            return Wait.SHORT
        return Wait.BRIEF


class Expectations:
    """Makes them; where the same few vocabularies come again and again, each is made once."""

    def __init__(self) -> None:
        self._made: deque[Expectation] = deque(maxlen=8)

    def of(self, vocabulary: Vocabulary) -> Expectation:
        """The vocabulary with its grammar.

        Raises:
            SlotUnknown: a phrase names a slot without texts.
        """
        for made in self._made:
            if made.vocabulary == vocabulary:
                return made
        expectation = Expectation(vocabulary)
        self._made.append(expectation)
        return expectation
