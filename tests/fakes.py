"""Stand-ins for clocks, voices and devices: each a whole, simple implementation of its port."""

import threading
from collections.abc import Callable, Iterable, Iterator
from types import SimpleNamespace
from typing import Any

import numpy as np

from assistant.ports import AttemptFailed, Played, Sound, SpeechFailed, VoiceSettings
from models.recognising import SAMPLE_RATE_HZ, Block
from models.second_opinion import Scored


class StillTime:
    """Seconds that pass only when told: `time = StillTime(); time.passes(0.5); time()`."""

    def __init__(self, now_s: float = 1_000.0) -> None:
        self.now_s = now_s

    def __call__(self) -> float:
        return self.now_s

    def passes(self, seconds: float) -> None:
        """Let time pass."""
        self.now_s += seconds


class StillClock:
    """A session's clock that stands still until told: set `wall_ms` and `heard_ms`."""

    def __init__(self, wall_ms: int = 1_700_000_000_000, heard_ms: int = 0) -> None:
        self.wall_ms = wall_ms
        self.heard_ms = heard_ms

    def now_ms(self) -> int:
        """As told."""
        return self.wall_ms

    def stream_ms(self) -> int:
        """As told."""
        return self.heard_ms

    def passes(self, milliseconds: int) -> None:
        """Let time pass on the wall and in the stream."""
        self.wall_ms += milliseconds
        self.heard_ms += milliseconds


def tone(seconds: float, rate_hz: int = 22_050, frequency_hz: float = 440.0, amplitude: float = 0.5) -> Sound:
    """A plain sine."""
    time_s = np.arange(round(seconds * rate_hz)) / rate_hz
    wave = np.sin(2 * np.pi * frequency_hz * time_s) * amplitude * 32_767
    return Sound(np.rint(wave).astype(np.int16), rate_hz)


class ToneVoice:
    """Speaks every text as a tone of 80 ms a letter or digit, never two at once.

    Attributes:
        texts: what was asked for, in order.
        held: set this to a cleared event to make every render wait for it.
    """

    def __init__(self) -> None:
        self.texts: list[str] = []
        self.settings: list[VoiceSettings] = []
        self.began = threading.Event()
        self.held = threading.Event()
        self.held.set()
        self.closed = False
        self._at_work = threading.Lock()

    def attempt(self, text: str, settings: VoiceSettings) -> Sound:
        """The tone."""
        assert self._at_work.acquire(blocking=False), "two renders at once"
        try:
            self.texts.append(text)
            self.settings.append(settings)
            self.began.set()
            assert self.held.wait(10)
            return tone(0.08 * sum(map(str.isalnum, text)) * 170 / settings.rate_wpm)
        finally:
            self._at_work.release()

    def render(self, text: str, settings: VoiceSettings | None = None) -> Sound:
        """The tone, as a whole synthesiser gives it."""
        return self.attempt(text, settings or VoiceSettings())

    def close(self) -> None:
        """Remember it."""
        self.closed = True


class FaultyVoice:
    """A voice whose first tries go as told, and whose later ones are right.

    Args:
        faults: for each try a sound to give back, or an exception to raise.
    """

    def __init__(self, *faults: Sound | Exception) -> None:
        self._faults = list(faults)
        self._right = ToneVoice()
        self.attempts = 0

    def attempt(self, text: str, settings: VoiceSettings) -> Sound:
        """The next fault, or the tone."""
        self.attempts += 1
        if not self._faults:
            return self._right.attempt(text, settings)
        fault = self._faults.pop(0)
        if isinstance(fault, Exception):
            raise fault
        return fault

    def close(self) -> None:
        """Nothing is open."""


class MuteVoice:
    """A voice that never gives a sound."""

    def attempt(self, text: str, settings: VoiceSettings) -> Sound:
        """Fail."""
        raise AttemptFailed(f"{text} at {settings.rate_wpm}")

    def render(self, text: str, _settings: VoiceSettings | None = None) -> Sound:
        """Fail, as a whole synthesiser does."""
        raise SpeechFailed(text)

    def close(self) -> None:
        """Nothing is open."""


class RememberingSink:
    """Plays at once and remembers; time in the stream moves on by each sound's length.

    Attributes:
        sounds: what was played, in order.
        cuts: how often it was cut.
    """

    def __init__(self) -> None:
        self.sounds: list[Sound] = []
        self.cuts = 0
        self.closed = False
        self._now = 0

    def play(self, sound: Sound) -> Played:
        """Remember it."""
        began, self._now = self._now, self._now + round(sound.seconds * SAMPLE_RATE_HZ)
        self.sounds.append(sound)
        return Played(began, self._now, cut_short=False)

    def cut(self) -> None:
        """Count it."""
        self.cuts += 1

    def close(self) -> None:
        """Remember it."""
        self.closed = True


class ListedSource:
    """A source of given blocks, then an end or an error.

    Args:
        blocks: what is heard.
        failing: raised after them.
    """

    def __init__(self, blocks: Iterable[Block], failing: Exception | None = None) -> None:
        self._blocks = blocks
        self._failing = failing
        self.pauses = 0
        self.resumes = 0
        self.closed = False

    def blocks(self) -> Iterator[Block]:
        """The blocks, then the error."""
        yield from self._blocks
        if self._failing is not None:
            raise self._failing

    def pause(self) -> None:
        """Count it."""
        self.pauses += 1

    def resume(self) -> None:
        """Count it."""
        self.resumes += 1

    def close(self) -> None:
        """Remember it."""
        self.closed = True


class FakeSoundLibrary:
    """What sounddevice is to our adapters, over devices that are only data.

    Args:
        devices: name, channels in, channels out, its own rate, for each.
        serves_hz: the rates at which streams open; None for all.
        serves_channels: the channel counts with which streams open; None for all.
        heard: what every microphone hears, shape (n, channels).

    Attributes:
        asks_for: how many blocks a speaker asks for before it vanishes; None for all there are.
        overflows_at: the number of the heard block before which sound was lost.
        before_block: called with each block's number before the callback.
    """

    class PortAudioError(Exception):
        """As the library's own."""

    class CallbackStop(Exception):
        """As the library's own."""

    def __init__(
        self,
        devices: tuple[tuple[str, int, int, int], ...] = (("Headset", 1, 2, 48_000),),
        *,
        serves_hz: frozenset[int] | None = None,
        serves_channels: frozenset[int] | None = None,
        heard: np.ndarray | None = None,
    ) -> None:
        self.devices = devices
        self.default = SimpleNamespace(device=[0, 0])
        self.serves_hz = serves_hz
        self.serves_channels = serves_channels
        self.heard = np.zeros((0, 1), np.int16) if heard is None else heard
        self.asks_for: int | None = None
        self.overflows_at: int | None = None
        self.opened: list[FakeStream] = []
        self.before_block: Callable[[int], None] = lambda _number: None

    def query_devices(self) -> list[dict[str, object]]:
        """All devices, as the library lists them."""
        names = ("name", "max_input_channels", "max_output_channels", "default_samplerate")
        return [dict(zip(names, device, strict=True)) for device in self.devices]

    def OutputStream(self, **options: object) -> "FakeStream":  # noqa: N802
        """A stream that asks for 10 ms at a time, as fast as it can."""
        return self._open(FakeStream(options, self._ask))

    def InputStream(self, **options: object) -> "FakeStream":  # noqa: N802
        """A stream that gives what is heard, then nothing."""
        return self._open(FakeStream(options, self._give))

    def _open(self, stream: "FakeStream") -> "FakeStream":
        if self.serves_hz is not None and stream.samplerate not in self.serves_hz:
            raise self.PortAudioError("Invalid sample rate")
        if self.serves_channels is not None and stream.channels not in self.serves_channels:
            raise self.PortAudioError("Invalid number of channels")
        self.opened.append(stream)
        return stream

    def _ask(self, stream: "FakeStream") -> None:
        frames = stream.samplerate // 100
        number = 0
        while self.asks_for is None or number < self.asks_for:
            self.before_block(number)
            number += 1
            out = np.full((frames, 1), 12_345, np.int16)
            try:
                stream.callback(out, frames, None, None)
            except self.CallbackStop:
                stream.given.append(out[:, 0])
                stream.finished_callback()
                return
            stream.given.append(out[:, 0])

    def _give(self, stream: "FakeStream") -> None:
        size = stream.blocksize
        for number, begin in enumerate(range(0, len(self.heard), size)):
            self.before_block(number)
            block = self.heard[begin : begin + size]
            status = SimpleNamespace(input_overflow=number == self.overflows_at)
            stream.callback(block, len(block), None, status)


def _nothing() -> None:
    """Nobody waits."""


class FakeStream:
    """One open stream of `FakeSoundLibrary`.

    Attributes:
        given: what a speaker was given, block by block.
    """

    def __init__(self, options: dict[str, Any], run: Callable[["FakeStream"], None]) -> None:
        self._run = run
        self._thread: threading.Thread | None = None
        self.samplerate: int = options["samplerate"]
        self.channels: int = options["channels"]
        self.latency: float = options["latency"] if isinstance(options["latency"], float) else 0.01
        self.blocksize: int = options.get("blocksize", 0)
        self.callback: Callable[..., None] = options["callback"]
        self.finished_callback: Callable[[], None] = options.get("finished_callback", _nothing)
        self.given: list[np.ndarray] = []
        self.closed = False

    def start(self) -> None:
        """Run."""
        self._thread = threading.Thread(target=self._run, args=(self,))
        self._thread.start()

    def stop(self) -> None:
        """Wait for the end."""
        if self._thread is not None:
            self._thread.join()

    def abort(self) -> None:
        """Wait for the end, which is near."""
        self.stop()

    def close(self) -> None:
        """Remember it."""
        self.closed = True


class TextScorer:
    """Another network that is sure of one text, whatever the sound: a second opinion of no skill.

    Args:
        words: the text.
        takes: how long each answer takes, in seconds.
        time: passes by it.

    Attributes:
        asked: the texts that it was asked about, each time.
    """

    def __init__(self, words: str, takes: Iterable[float] = (), time: StillTime | None = None) -> None:
        self.words = words
        self.asked: list[tuple[str, ...]] = []
        self._takes = iter(takes)
        self._time = time

    def encode(self, _sound: Any) -> "TextScorer":
        """The same for every sound."""
        return self

    def scored(self, texts: Iterable[str]) -> tuple[float, tuple[Scored, ...]]:
        """Its own text is as likely as can be, any other is not."""
        self.asked.append(tuple(texts))
        if self._time is not None:
            self._time.passes(next(self._takes))
        return -0.5, tuple(Scored(-0.5, -0.1) if text == self.words else Scored(-30.0, -6.0) for text in self.asked[-1])
