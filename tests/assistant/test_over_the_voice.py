"""While the voice speaks: what is let through cuts it short, all else is left alone."""

from collections.abc import Collection, Iterator

import pytest

from assistant.clocks import StreamClock
from assistant.languages import load
from assistant.listening.ears import Ears
from assistant.listening.understanding import Expecting, Understood, understand
from assistant.over_the_voice import LetThrough, OverTheVoice, let_through
from assistant.voice import Voice, WhileSpeaking
from models.recognising import Block, Heard, Vocabulary
from tests.assistant.test_ears import SteppedRecogniser, blocks, marked
from tests.fakes import ListedSource, RememberingSink


class Obeying:
    """Understands in English, and says what may be said."""

    def understood(self, heard: Heard, names: Collection[str] | None = None) -> Understood:
        return understand(heard, load(), asked=False, expecting=Expecting(names=names))

    def vocabulary(self, phrases: tuple[str, ...]) -> Vocabulary:
        return Vocabulary(("while speaking", *phrases))


class Scene:
    """Five blocks of sound; the voice speaks during the second and the third, and something is said in the third."""

    def __init__(self, while_speaking: WhileSpeaking, said: str, confidence: float = 0.9) -> None:
        through = let_through(while_speaking, load())
        assert through is not None
        self.sink = RememberingSink()
        self.recogniser = SteppedRecogniser({2: [Heard(said, confidence, began=200, ended=300)]})
        self._voice = Voice(None, self.sink)
        self._clock = StreamClock(live=False)
        over = OverTheVoice(
            Ears(ListedSource(self._stream()), marked, self.recogniser), self._voice, self._clock, through
        )
        over.expect(Vocabulary(("while silent",)))
        self.came = [heard.words for heard in over.heard_by(Obeying())]

    def _stream(self) -> Iterator[Block]:
        first, second, third, *others = blocks(0, 100, 200, 300, 400)
        yield first
        self._voice.before()
        yield from (second, third)
        self._clock.hear(300)
        self._voice.after()
        yield from others


@pytest.mark.parametrize(("while_speaking", "said", "came", "cuts"), [
    (WhileSpeaking.HEADPHONES, "next", ["next"], 1),
    (WhileSpeaking.HEADPHONES, "where am i", ["where am i"], 1),
    (WhileSpeaking.HEADPHONES, "stop", [], 1),
    (WhileSpeaking.HEADPHONES, "[unk]", [], 0),
    (WhileSpeaking.LOUDSPEAKER, "next", ["next"], 1),
    (WhileSpeaking.LOUDSPEAKER, "again", ["again"], 1),
    (WhileSpeaking.LOUDSPEAKER, "stop", [], 1),
    (WhileSpeaking.LOUDSPEAKER, "where am i", [], 0),
    (WhileSpeaking.LOUDSPEAKER, "undo", [], 0),
])  # fmt: skip
def test_a_command_cuts_the_voice_short_and_is_obeyed(
    while_speaking: WhileSpeaking, said: str, came: list[str], cuts: int
) -> None:
    scene = Scene(while_speaking, said)

    assert (came, cuts) == (scene.came, scene.sink.cuts)


@pytest.mark.parametrize("confidence", [0.2, 0.5])
def test_what_is_unsure_does_not_interrupt(confidence: float) -> None:
    scene = Scene(WhileSpeaking.HEADPHONES, "next", confidence)

    assert ([], 0) == (scene.came, scene.sink.cuts)


def test_other_words_are_expected_while_it_speaks() -> None:
    asked = [asked for asked in Scene(WhileSpeaking.LOUDSPEAKER, "next").recogniser.asked if "expect" in asked]

    assert ["expect while silent", "expect while speaking", "expect while silent"] == asked


def test_commands_wait_where_that_is_wanted() -> None:
    assert let_through(WhileSpeaking.WAIT, load()) is None


def test_little_is_let_through_against_a_loudspeaker() -> None:
    assert let_through(WhileSpeaking.LOUDSPEAKER, load()) == LetThrough(
        frozenset({"next", "again", "fall_silent"}), ("next", "again", "stop")
    )


def test_what_was_begun_before_the_voice_fell_silent_is_still_said_over_it() -> None:
    """Its words come late: the voice has ended meanwhile."""
    through = let_through(WhileSpeaking.LOUDSPEAKER, load())
    assert through is not None
    sink, clock = RememberingSink(), StreamClock(live=False)
    voice = Voice(None, sink)
    recogniser = SteppedRecogniser({2: [Heard("undo", 0.9, began=100, ended=250)]})

    def stream() -> Iterator[Block]:
        voice.before()
        yield from blocks(0, 100)
        clock.hear(200)
        voice.after()
        yield from blocks(200)

    over = OverTheVoice(Ears(ListedSource(stream()), marked, recogniser), voice, clock, through)

    assert [] == list(over.heard_by(Obeying()))
