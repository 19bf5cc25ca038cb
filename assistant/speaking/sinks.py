"""Where the voice goes: speaker, WAV file or nowhere. All tell what was played when, in the ears' stream."""

import contextlib
import threading
import time
import wave
from collections.abc import Iterator
from pathlib import Path
from typing import Any, BinaryIO

import numpy as np
from numpy.typing import NDArray

from assistant.clocks import StreamClock
from assistant.device_errors import DeviceLost, DeviceRefused, WavInTheWay, WavUnwritable
from assistant.devices import find_device, load_sounddevice
from assistant.ports import Played, Sound
from models.recognising import SAMPLE_RATE_HZ

LATENCY_S = 0.02
LOST_S = 2.0
_FADE_S = 0.005
_STEP_S = 0.02


def at_rate(sound: Sound, rate_hz: int) -> Sound:
    """The same sound at another rate: its spectrum, cut or padded to the new length."""
    if sound.rate_hz == rate_hz or not len(sound.samples):
        return Sound(sound.samples, rate_hz)
    seconds = -(-len(sound.samples) // sound.rate_hz)
    spectrum = np.fft.rfft(sound.samples, seconds * sound.rate_hz)[: seconds * rate_hz // 2 + 1]
    long = np.fft.irfft(spectrum, seconds * rate_hz) * (rate_hz / sound.rate_hz)
    samples = np.rint(long[: len(sound.samples) * rate_hz // sound.rate_hz])
    return Sound(np.clip(samples, -32_768, 32_767).astype(np.int16), rate_hz)


class _Playing:
    """One sound on its way out; filled by the audio callback, watched by whoever called `play`.

    Args:
        sound: what is played.
        clock: the ears' stream.
        held_s: how much sound the system holds; so much silence follows, as what is held at the end is lost.
    """

    def __init__(self, sound: Sound, clock: StreamClock, held_s: float = 0.0) -> None:
        rate_hz = sound.rate_hz
        self.samples = sound.samples
        self._silence_to_go = int(held_s * rate_hz)
        self._held_s = held_s
        self._fade = int(_FADE_S * rate_hz)
        self._clock = clock
        self.given = 0
        self.began: int | None = None
        self.asked_at_s = time.monotonic()
        self.cut_short = False
        self.cut = threading.Event()
        self.done = threading.Event()
        self._rate_hz = rate_hz

    def played(self) -> Played:
        """What came of it; it is heard when the system has played what it holds."""
        began = (self._clock.now() if self.began is None else self.began) + int(self._held_s * SAMPLE_RATE_HZ)
        return Played(began, began + self.given * SAMPLE_RATE_HZ // self._rate_hz, self.cut_short)

    def fill(self, out: NDArray[np.int16]) -> bool:
        """Put the next samples into `out`, shape (n,); whether more are to come."""
        self.asked_at_s = time.monotonic()
        if self.began is None:
            self.began = self._clock.now()
        if self.cut.is_set() and not self.cut_short and self.given < len(self.samples):
            self.cut_short = True
            self.samples = self._faded()
        part = self.samples[self.given : self.given + len(out)]
        out[: len(part)] = part
        out[len(part) :] = 0
        self.given += len(part)
        self._silence_to_go -= len(out) - len(part)
        return self.given < len(self.samples) or self._silence_to_go > 0

    def _faded(self) -> NDArray[np.int16]:
        """What was given already and a short way down to silence."""
        end = min(self.given + self._fade, len(self.samples))
        ramp = np.linspace(1.0, 0.0, end - self.given)
        tail = (self.samples[self.given : end] * ramp).astype(np.int16)
        return np.concatenate((self.samples[: self.given], tail))


class Speaker:
    """A loudspeaker of this machine. It runs only while something is played.

    Args:
        clock: the ears' stream.
        name: part of the device's name; None for the system's default.
        latency_s: how much sound the system holds; a cut is heard that much later.
        lost_s: after how long without asking for sound the speaker counts as gone.
        library: sounddevice, or what stands in for it.

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
        self._one_at_a_time = threading.Lock()
        self._playing: _Playing | None = None
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
            playing = _Playing(at_rate(sound, int(stream.samplerate)), self._clock, stream.latency)
            if len(playing.samples):
                self._run(stream, playing)
            played = playing.played()
            self._clock.wait(played.ended - played.began)
            return played

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

    def _run(self, stream: Any, playing: _Playing) -> None:  # noqa: ANN401
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


class WavSink:
    """A WAV file that holds everything said at its time in the ears' stream, with silence between.

    Where the stream is live, playing takes as long as it would be heard, and can be cut; where it waits for
    the answer, as with a recording, no time passes but the stream's.

    Args:
        file: a path, or an open file that can seek.
        clock: the ears' stream.
        rate_hz: samples a second in the file.

    Raises:
        WavInTheWay: a file of that name holds something else than sound.
        WavUnwritable: here and at every call.
    """

    def __init__(self, file: Path | str | BinaryIO, clock: StreamClock, *, rate_hz: int = 22_050) -> None:
        self._path = str(file if isinstance(file, Path | str) else getattr(file, "name", "-"))
        self._clock = clock
        self._rate_hz = rate_hz
        self._written = 0
        self._playing: _Playing | None = None
        self._owned = isinstance(file, Path | str)
        self._refused = False
        if isinstance(file, Path | str) and _holds_no_sound(Path(file)):
            raise WavInTheWay(path=self._path)
        with self._writing():
            self._file: BinaryIO = Path(file).open("wb") if isinstance(file, Path | str) else file  # noqa: SIM115
        self._wave = wave.open(self._file, "wb")  # noqa: SIM115
        self._wave.setnchannels(1)
        self._wave.setsampwidth(2)
        self._wave.setframerate(rate_hz)

    def play(self, sound: Sound) -> Played:
        """Write the sound where the stream is now, to its end or until cut."""
        playing = self._playing = _Playing(at_rate(sound, self._rate_hz), self._clock)
        self._silence_until(self._clock.now() * self._rate_hz // SAMPLE_RATE_HZ)
        more = bool(len(playing.samples))
        while more:
            before = playing.given
            step = np.zeros(int(_STEP_S * self._rate_hz), np.int16)
            more = playing.fill(step)
            self._write(step[: playing.given - before])
            self._pass(playing)
        self._playing = None
        return playing.played()

    def cut(self) -> None:
        """Fade out what is being played."""
        playing = self._playing
        if playing is not None:
            playing.cut.set()

    def close(self) -> None:
        """Finish the file; a failure that was told already is not told again."""
        self.cut()
        quiet = contextlib.suppress(WavUnwritable) if self._refused else contextlib.nullcontext()
        with quiet, self._writing():
            try:
                self._wave.close()
            finally:
                if self._owned:
                    self._file.close()

    def _silence_until(self, frame: int) -> None:
        while self._written < frame:
            self._write(np.zeros(min(frame - self._written, 60 * self._rate_hz), np.int16))

    def _write(self, samples: NDArray[np.int16]) -> None:
        with self._writing():
            self._wave.writeframes(samples.astype("<i2").tobytes())
            self._file.flush()
        self._written += len(samples)

    def _pass(self, playing: _Playing) -> None:
        """Let the time go by that the sound takes: really, or in a stream that waits."""
        to_go = playing.played().ended - self._clock.now()
        if to_go <= 0:
            return
        if self._clock.live:
            playing.cut.wait(to_go / SAMPLE_RATE_HZ)
        else:
            self._clock.wait(to_go)

    @contextlib.contextmanager
    def _writing(self) -> Iterator[None]:
        try:
            yield
        except (OSError, ValueError) as refused:
            self._refused = True
            raise WavUnwritable(path=self._path) from refused


def _holds_no_sound(path: Path) -> bool:
    """Whether an ordinary file is there that is not empty and no WAV."""
    if not path.is_file():
        return False
    try:
        with path.open("rb") as file:
            return file.read(4) not in (b"", b"RIFF")
    except OSError:
        return False


class Silent:
    """Nowhere: nothing is heard and no time passes."""

    def __init__(self, clock: StreamClock) -> None:
        self._clock = clock

    def play(self, sound: Sound) -> Played:  # noqa: ARG002
        """Play nothing."""
        return Played(self._clock.now(), self._clock.now(), cut_short=False)

    def cut(self) -> None:
        """Nothing is playing."""

    def close(self) -> None:
        """Nothing is open."""
