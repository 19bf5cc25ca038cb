"""The voice of a session: every line printed, rendered and played, in this order, and cut short by a key."""

import sys
from collections.abc import Callable, Iterable
from enum import StrEnum
from typing import Protocol, TextIO

from assistant.device_errors import DeviceLost, DeviceRefused
from assistant.ports import AudioSink, Played, Sound, SpeechFailed, VoiceSettings


class Renders(Protocol):
    """Text in, sound out, now or ahead of time."""

    settings: VoiceSettings

    def get(self, text: str) -> Sound:
        """The spoken text, from the cache or rendered now."""
        ...

    def want(self, texts: Iterable[str]) -> None:
        """What will probably be said next."""
        ...


class Output(StrEnum):
    """Who reads the lines: our voice, a screen reader, or both."""

    BOTH = "both"
    VOICE = "voice"
    LINES = "lines"

    @property
    def following(self) -> "Output":
        """The next one, for one key that goes round."""
        order = list(Output)
        return order[(order.index(self) + 1) % len(order)]


OUTPUT_SAYINGS = {Output.VOICE: "voice-only", Output.LINES: "lines-only", Output.BOTH: "voice-and-lines"}
"""Keys of the sentences that tell who reads the lines."""


class WhileSpeaking(StrEnum):
    """What is heard while the voice speaks: nothing, all, or a few commands said against the loudspeaker."""

    WAIT = "wait"
    HEADPHONES = "headphones"
    LOUDSPEAKER = "loudspeaker"


WHILE_SPEAKING_SAYINGS = {each: f"while-speaking-{each.value}" for each in WhileSpeaking}
"""Keys of the sentences that tell what is heard while the voice speaks."""


class Voice:
    """Says sentences.

    Args:
        renders: makes sound of text; None where nothing is to be heard.
        sink: where the sound goes.
        lines: where each sentence is printed, one a line.
        output: voice, lines, or both.
    """

    def __init__(
        self, renders: Renders | None, sink: AudioSink, *, lines: TextIO | None = None, output: Output = Output.BOTH
    ) -> None:
        self._renders = renders
        self._sink = sink
        self._lines = lines or sys.stdout
        self.output = output
        self.before: Callable[[], None] = _nothing
        self.after: Callable[[], None] = _nothing
        self.closing_tone: Sound | None = None
        self.lost: DeviceLost | DeviceRefused | None = None

    def say(self, text: str) -> Played | None:
        """Print the sentence and play it to the end, or until it is cut; None where nothing was played.

        A speaker that goes away takes no sentence with it: from then on lines are printed, and `lost` says why.
        """
        self.show(text)
        if self._renders is None or self.output is Output.LINES:
            return None
        try:
            return self.play(self._renders.get(text))
        except SpeechFailed:
            self._print_instead(text)
        except (DeviceLost, DeviceRefused) as lost:
            self._print_instead(text)
            self.output, self.lost = Output.LINES, lost
        return None

    def show(self, text: str) -> None:
        """Print the sentence, unless the voice alone is wanted."""
        if self.output is not Output.VOICE or self._renders is None:
            print(text, file=self._lines, flush=True)

    def _print_instead(self, text: str) -> None:
        if self.output is Output.VOICE:
            print(text, file=self._lines, flush=True)

    def play(self, sound: Sound) -> Played:
        """Play with the ears closed, then the tone that says that they are open again."""
        self.before()
        try:
            played = self._sink.play(sound)
            if self.closing_tone is not None:
                self._sink.play(self.closing_tone)
            return played
        finally:
            self.after()

    def use(self, settings: VoiceSettings) -> None:
        """Speak like this from now on."""
        if self._renders is not None:
            self._renders.settings = settings

    def prepare(self, texts: Iterable[str]) -> None:
        """Render what will probably be said next."""
        if self._renders is not None and self.output is not Output.LINES:
            self._renders.want(texts)

    def signal(self, sound: Sound) -> None:
        """Play a short tone, where anything is heard at all."""
        if self._renders is not None and self.output is not Output.LINES:
            self.play(sound)

    def cut(self) -> None:
        """Fall silent at once; may be called from any thread."""
        self._sink.cut()


def _nothing() -> None:
    """Nobody listens."""
