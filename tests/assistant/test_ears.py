"""From blocks of sound to utterances: gaps, new vocabularies between utterances, the end of the stream."""

from collections.abc import Iterator, Sequence

import numpy as np
import pytest

from assistant.listening.ears import Ears
from models.recognising import Block, Heard, Partial, Vocabulary
from tests.fakes import ListedSource

SIZE = 100


class SteppedRecogniser:
    """Tells, block by block, what it is told to; remembers what was asked of it.

    Args:
        found: by the number of the block: what is found in it.
        at_end: what is still found when the stream ends.
    """

    def __init__(self, found: dict[int, Sequence[Heard | Partial]] | None = None, at_end: Sequence[Heard] = ()) -> None:
        self._found = found or {}
        self._at_end = at_end
        self.asked: list[str] = []
        self._blocks = 0

    def expect(self, vocabulary: Vocabulary) -> None:
        """Remember the first phrase."""
        self.asked.append(f"expect {vocabulary.phrases[0]}")

    def accept(self, block: Block) -> Iterator[Heard | Partial]:
        """What is due."""
        self.asked.append(f"accept {block.first_sample}")
        number, self._blocks = self._blocks, self._blocks + 1
        yield from self._found.get(number, ())

    def finish(self) -> Iterator[Heard]:
        """What is due at the end."""
        self.asked.append("finish")
        yield from self._at_end

    def reset(self) -> None:
        """Remember."""
        self.asked.append("reset")


def vocabulary(phrase: str) -> Vocabulary:
    return Vocabulary((phrase,), {}, {})


def blocks(*firsts: int) -> list[Block]:
    return [Block(first, np.zeros(SIZE, np.int16)) for first in firsts]


def heard(words: str) -> Heard:
    return Heard(words=words, confidence=0.9, began=0, ended=SIZE)


def marked(block: Block) -> tuple[Block, ...]:
    return (block,)


def test_utterances_come_as_they_are_found_and_at_the_end() -> None:
    recogniser = SteppedRecogniser({1: [heard("next")], 2: [heard("undo")]}, [heard("mark")])
    ears = Ears(ListedSource(blocks(0, 100, 200, 300)), marked, recogniser)

    assert [heard("next"), heard("undo"), heard("mark")] == list(ears)


def test_a_new_vocabulary_is_taken_up_before_the_stream_and_between_utterances() -> None:
    recogniser = SteppedRecogniser({1: [heard("next")]})
    ears = Ears(ListedSource(blocks(0, 100, 200)), marked, recogniser)
    ears.expect(vocabulary("next"))
    for _ in ears:
        ears.expect(vocabulary("yes"))

    assert ["expect next", "accept 0", "accept 100", "expect yes", "accept 200", "finish"] == recogniser.asked


def test_a_new_vocabulary_is_handed_on_before_the_next_block() -> None:
    """A recogniser takes it up when no utterance goes on."""
    recogniser = SteppedRecogniser({1: [Partial(words="ne", began=0)], 2: [heard("next")]})
    ears = Ears(ListedSource(blocks(0, 100, 200, 300)), marked, recogniser,
                tell_partial=lambda _: ears.expect(vocabulary("yes")))  # fmt: skip
    list(ears)

    assert ["accept 0", "accept 100", "expect yes", "accept 200", "accept 300", "finish"] == recogniser.asked


def test_of_several_new_vocabularies_the_last_counts() -> None:
    recogniser = SteppedRecogniser()
    ears = Ears(ListedSource(blocks(0)), marked, recogniser)
    ears.expect(vocabulary("next"))
    ears.expect(vocabulary("yes"))
    list(ears)

    assert "expect yes" == recogniser.asked[0]
    assert 1 == sum(asked.startswith("expect") for asked in recogniser.asked)


@pytest.mark.parametrize(("firsts", "resets"), [
    ((0, 100, 200), 0), ((500, 600), 0), ((0, 100, 900, 1000), 1), ((0, 300, 600), 2), ((0, 100, 50), 1),
])  # fmt: skip
def test_a_gap_in_the_stream_begins_anew(firsts: tuple[int, ...], resets: int) -> None:
    recogniser = SteppedRecogniser()
    list(Ears(ListedSource(blocks(*firsts)), marked, recogniser))

    assert resets == recogniser.asked.count("reset")


def test_marks_may_come_late_or_several_at_once() -> None:
    held: list[Block] = []

    def mark(block: Block) -> tuple[Block, ...]:
        held.append(block)
        if len(held) % 2:
            return ()
        return tuple(held[-2:])

    recogniser = SteppedRecogniser()
    list(Ears(ListedSource(blocks(0, 100, 200, 300)), mark, recogniser))

    assert ["accept 0", "accept 100", "accept 200", "accept 300", "finish"] == recogniser.asked


def test_whoever_watches_sees_every_marked_block() -> None:
    seen: list[int] = []
    ears = Ears(ListedSource(blocks(0, 100)), marked, SteppedRecogniser())
    ears.watch = lambda block: seen.append(block.first_sample)
    list(ears)

    assert [0, 100] == seen


def test_words_so_far_are_told_and_are_no_utterance() -> None:
    told: list[str] = []
    recogniser = SteppedRecogniser({0: [Partial(words="where", began=0)], 1: [Partial(words="where am", began=0)]})
    ears = Ears(ListedSource(blocks(0, 100)), marked, recogniser, tell_partial=lambda part: told.append(part.words))

    assert [] == list(ears)
    assert ["where", "where am"] == told


def test_a_source_that_fails_is_told_and_what_was_heard_before_stays() -> None:
    source = ListedSource(blocks(0, 100), OSError("unplugged"))
    taken: list[Heard] = []
    with pytest.raises(OSError, match="unplugged"):
        taken.extend(Ears(source, marked, SteppedRecogniser({0: [heard("next")]})))

    assert [heard("next")] == taken


def test_closing_and_opening_the_ears_is_the_sources_business() -> None:
    source = ListedSource(blocks(0))
    ears = Ears(source, marked, SteppedRecogniser())
    ears.pause()
    ears.resume()
    ears.close()

    assert (1, 1, True) == (source.pauses, source.resumes, source.closed)
