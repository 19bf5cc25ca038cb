"""Listens for one word at a time and takes down its cepstra; what was said it cannot tell."""

from models.expecting import Expectation
from models.following import NOTHING_KNOWN, Following
from models.recognising import Alternative, Readings, Samples


class Taker(Following):
    """Sound in; each utterance comes out as unknown words, and `taken` holds what it was like.

    Attributes:
        taken: cepstra of the last utterance, shape (frames, 25).
    """

    name = "taker"

    def __init__(self) -> None:
        super().__init__()
        self.taken = self.spoken()

    def _take_up(self, expected: Expectation) -> None:
        """Anything may be said."""

    def _feed(self, samples: Samples) -> None:
        """What is needed was kept."""

    def _begin_reading(self) -> None:
        """There is nothing to find out."""

    def _so_far(self) -> Alternative:
        return NOTHING_KNOWN

    def _to_end(self) -> Readings:
        self.taken = self.spoken()
        return (NOTHING_KNOWN,)

    def _drop(self) -> None:
        """Nothing was begun."""
