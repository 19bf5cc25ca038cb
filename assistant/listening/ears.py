"""From sound to utterances: voice activity marks the stream, the recogniser makes words of it."""

from collections.abc import Callable, Iterable, Iterator

from assistant.ports import AudioSource
from models.recognising import Block, Heard, Partial, Recogniser, Vocabulary


class Ears:
    """One stream of sound and what is heard in it. Iterate on one thread; the rest may be called from any.

    Args:
        source: where the sound comes from.
        mark: marks speech in a block; may hand out several blocks for one, or none yet.
        recogniser: makes words of it.
        tell_partial: is given words so far, while an utterance goes on.
    """

    def __init__(
        self,
        source: AudioSource,
        mark: Callable[[Block], Iterable[Block]],
        recogniser: Recogniser,
        tell_partial: Callable[[Partial], None] = lambda _: None,
    ) -> None:
        self._source = source
        self._mark = mark
        self._recogniser = recogniser
        self._tell_partial = tell_partial
        self.watch: Callable[[Block], None] = lambda _: None
        self._wanted: Vocabulary | None = None
        self._expected_sample: int | None = None

    def expect(self, vocabulary: Vocabulary) -> None:
        """What may be said from the next utterance on."""
        self._wanted = vocabulary

    def __iter__(self) -> Iterator[Heard]:
        """Every utterance until the stream ends."""
        self._take_up_vocabulary()
        for block in self._source.blocks():
            yield from self._hear(block)
        yield from self._recogniser.finish()

    def _hear(self, block: Block) -> Iterator[Heard]:
        if self._expected_sample is not None and block.first_sample != self._expected_sample:
            self._recogniser.reset()
        self._expected_sample = block.end_sample
        self._take_up_vocabulary()
        for marked in self._mark(block):
            self.watch(marked)
            for found in self._recogniser.accept(marked):
                if isinstance(found, Partial):
                    self._tell_partial(found)
                    continue
                yield found
                self._take_up_vocabulary()

    def _take_up_vocabulary(self) -> None:
        wanted, self._wanted = self._wanted, None
        if wanted is not None:
            self._recogniser.expect(wanted)

    def pause(self) -> None:
        """Hear nothing, as while something is spoken."""
        self._source.pause()

    def resume(self) -> None:
        """Hear again."""
        self._source.resume()

    def close(self) -> None:
        """Let the source go."""
        self._source.close()
