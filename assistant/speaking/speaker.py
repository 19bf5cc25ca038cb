"""The voice out of a loudspeaker of this machine; it tells what was played when, in the ears' stream."""

import contextlib
import threading
import time
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from assistant.clocks import StreamClock
from assistant.device_errors import DeviceLost, DeviceRefused
from assistant.devices import find_device, load_sounddevice
from assistant.ports import Played, Sound
from assistant.speaking.playing import Playing, at_rate
from models.recognising import SAMPLE_RATE_HZ

if TYPE_CHECKING:
    from assistant.echo import Playback

LATENCY_S = 0.02
LOST_S = 2.0


class Speaker:
    """A loudspeaker of this machine. It runs only while something is played.

    Args:
        clock: the ears' stream.
        name: part of the device's name; None for the system's default.
        latency_s: how much sound the system holds; a cut is heard that much later.
        lost_s: after how long without asking for sound the speaker counts as gone.
        library: sounddevice, or what stands in for it.

    Attributes:
        playback: is told what is played, and when, for an echo canceller.

    Raises:
        PortAudioMissing, NoSpeaker, NoSuchSpeaker: as they say.
    """

    def __init__(
        self,
        clock: StreamClock,
        name: str | None = None,
        *,
        latency_s: float = LATENCY_S,
        lost_s: float = LOST_S,
        library: Any = None,  # noqa: ANN401
    ) -> None:
        self._library = library or load_sounddevice()
        self._device = find_device("speaker", name, self._library)
        self._clock = clock
        self._latency_s = latency_s
        self._lost_s = lost_s
        self.playback: Playback | None = None
        self._one_at_a_time = threading.Lock()
        self._playing: Playing | None = None
        self._stream: Any = None
        self._serves_hz: frozenset[int] = frozenset()

    @property
    def name(self) -> str:
        """The device's name."""
        return self._device.name

    def play(self, sound: Sound) -> Played:
        """Play to the end or until cut.

        Raises:
            DeviceRefused: the speaker does not open.
            DeviceLost: it stopped taking sound.
        """
        with self._one_at_a_time:
            stream = self._stream if sound.rate_hz in self._serves_hz else self._open(sound.rate_hz)
            playing = Playing(
                at_rate(sound, int(stream.samplerate)), self._clock, stream.latency, self._telling(sound)
            )
            if len(playing.samples):
                self._run(stream, playing)
            played = playing.played()
            if self.playback is not None and played.cut_short:
                self.playback.stop(played.ended)
            self._clock.wait(played.ended - played.began)
            return played

    def _telling(self, sound: Sound) -> Callable[[int], None]:
        """Tells what is heard of the sound, never later than it is heard."""
        playback = self.playback
        if playback is None:
            return lambda _: None
        samples = at_rate(sound, SAMPLE_RATE_HZ).samples
        return lambda began: playback.begin(began, samples)

    def cut(self) -> None:
        """Fade out within milliseconds; heard after the latency."""
        playing = self._playing
        if playing is not None:
            playing.cut.set()

    def close(self) -> None:
        """Fall silent and let the device go."""
        self.cut()
        with self._one_at_a_time:
            self._drop()

    def _run(self, stream: Any, playing: Playing) -> None:  # noqa: ANN401
        self._playing = playing
        try:
            stream.start()
            while not playing.done.wait(self._lost_s / 4):
                if time.monotonic() - playing.asked_at_s > self._lost_s:
                    raise DeviceLost(name=self.name)
            stream.stop()
        except self._library.PortAudioError as lost:
            self._drop()
            raise DeviceLost(name=self.name) from lost
        except DeviceLost:
            self._drop()
            raise
        finally:
            self._playing = None
        if playing.given < len(playing.samples):
            self._drop()
            raise DeviceLost(name=self.name)

    def _open(self, rate_hz: int) -> Any:  # noqa: ANN401
        """A stream at this rate, or at the device's own where it takes no other."""
        self._drop()
        refused: Exception | None = None
        for tried_hz in dict.fromkeys((rate_hz, self._device.rate_hz)):
            try:
                with self._device.opening():
                    self._stream = self._stream_at(tried_hz)
            except (self._library.PortAudioError, ValueError) as error:
                refused = error
            else:
                self._serves_hz = frozenset({rate_hz, tried_hz})
                return self._stream
        raise DeviceRefused(name=self.name) from refused

    def _stream_at(self, rate_hz: int) -> Any:  # noqa: ANN401
        return self._library.OutputStream(
            samplerate=rate_hz,
            device=self._device.index,
            channels=1,
            dtype="int16",
            latency=self._latency_s,
            callback=self._give,
            finished_callback=self._end,
        )

    def _give(self, out: NDArray[np.int16], _frames: int, _time: object, _status: object) -> None:
        playing = self._playing
        if playing is None or not playing.fill(out[:, 0]):
            raise self._library.CallbackStop

    def _end(self) -> None:
        playing = self._playing
        if playing is not None:
            playing.done.set()

    def _drop(self) -> None:
        stream, self._stream = self._stream, None
        self._serves_hz = frozenset()
        if stream is not None:
            with contextlib.suppress(self._library.PortAudioError):
                stream.abort()
                stream.close()
