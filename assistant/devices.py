"""Sound devices: what can go wrong with them (keys and values), finding one, the time of a stream.

DeviceProblem
├── PortAudioMissing     no-portaudio
├── NoDevice
│   ├── NoMicrophone     no-microphone
│   └── NoSpeaker        no-speaker
├── NoSuchDevice
│   ├── NoSuchMicrophone no-such-microphone    wanted, found
│   └── NoSuchSpeaker    no-such-speaker       wanted, found
├── DeviceRefused        device-refused        name
├── DeviceLost           device-lost           name
├── VoiceMissing         no-voice
├── NoSuchVoice          no-such-voice         wanted
└── WavProblem
    ├── WavMissing       wav-missing           path
    ├── WavUnreadable    wav-unreadable        path
    ├── WavEmpty         wav-empty             path
    ├── WavUnsupported   wav-unsupported       path, encoding
    ├── WavInTheWay      wav-in-the-way        path
    └── WavUnwritable    wav-unwritable        path

`found` is the names of what there is, joined by commas; `path` is "-" for standard input. `SpeechFailed`
(speech-failed, text) stands in `assistant.ports`.
"""

import contextlib
import ctypes
import importlib
import sys
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, ClassVar, Literal

from assistant.ports import SpeechFailed
from models.recognising import SAMPLE_RATE_HZ

Kind = Literal["microphone", "speaker"]

_DRIFT_SAMPLES = SAMPLE_RATE_HZ // 5


class DeviceProblem(Exception):
    """The base of all that sound raises on purpose.

    Attributes:
        key: which sentence says it; one of `DEVICE_ERRORS`.
        values: what stands in that sentence, by name.
    """

    key: ClassVar[str] = ""
    names: ClassVar[frozenset[str]] = frozenset()

    def __init__(self, **values: str) -> None:
        if self.names != values.keys():
            message = f"{type(self).__name__} takes {sorted(self.names)}, not {sorted(values)}"
            raise TypeError(message)
        self.values = MappingProxyType(dict(values))
        super().__init__(f"{self.key}: " + ", ".join(f"{name}={value}" for name, value in values.items()))


class PortAudioMissing(DeviceProblem):
    """The system's PortAudio library is not installed."""

    key = "no-portaudio"


class NoDevice(DeviceProblem):
    """There is no device of the kind at all."""


class NoMicrophone(NoDevice):
    """Nothing to hear with."""

    key = "no-microphone"


class NoSpeaker(NoDevice):
    """Nothing to speak with."""

    key = "no-speaker"


class NoSuchDevice(DeviceProblem):
    """There are devices of the kind, but none whose name holds `wanted`."""

    names = frozenset({"wanted", "found"})


class NoSuchMicrophone(NoSuchDevice):
    """No microphone of that name."""

    key = "no-such-microphone"


class NoSuchSpeaker(NoSuchDevice):
    """No speaker of that name."""

    key = "no-such-speaker"


class DeviceRefused(DeviceProblem):
    """The device is there but will not open: in use, or not allowed."""

    key = "device-refused"
    names = frozenset({"name"})


class DeviceLost(DeviceProblem):
    """The device stopped giving or taking sound, as when it is unplugged."""

    key = "device-lost"
    names = frozenset({"name"})


class VoiceMissing(DeviceProblem):
    """The system has no speech synthesiser (on Linux: espeak-ng)."""

    key = "no-voice"


class NoSuchVoice(DeviceProblem):
    """The synthesiser has no voice of that name."""

    key = "no-such-voice"
    names = frozenset({"wanted"})


class WavProblem(DeviceProblem):
    """The base of what is wrong with a sound file."""

    names = frozenset({"path"})


class WavMissing(WavProblem):
    """There is no such file."""

    key = "wav-missing"


class WavUnreadable(WavProblem):
    """It is no WAV file, or a broken one."""

    key = "wav-unreadable"


class WavEmpty(WavProblem):
    """There is no sound in it."""

    key = "wav-empty"


class WavUnsupported(WavProblem):
    """A WAV of an encoding other than whole numbers of 8 to 32 bits or floating point."""

    key = "wav-unsupported"
    names = frozenset({"path", "encoding"})


class WavInTheWay(WavProblem):
    """There is a file of that name that holds no sound; it is not written over."""

    key = "wav-in-the-way"


class WavUnwritable(WavProblem):
    """The file cannot be written: no such folder, not allowed, or the disk is full."""

    key = "wav-unwritable"


def _leaves(kind: type[DeviceProblem]) -> tuple[type[DeviceProblem], ...]:
    below = tuple(leaf for sub in kind.__subclasses__() for leaf in _leaves(sub))
    return (kind, *below) if kind.key else below


DEVICE_ERRORS: dict[str, frozenset[str]] = {
    **{kind.key: kind.names for kind in _leaves(DeviceProblem)},
    SpeechFailed.key: frozenset({"text"}),
}
"""Every key a language must have a sentence for, with the names of its values."""


class StreamClock:
    """Where the stream of the ears is, in samples at 16 kHz: moved on by the source, read by the sink.

    Args:
        live: whether the stream runs in real time, as a microphone's does, or waits while something plays,
            as a file's does; then whoever plays moves it on by `wait`.
        monotonic: seconds from any start.
    """

    def __init__(self, *, live: bool, monotonic: Callable[[], float] = time.monotonic) -> None:
        self.live = live
        self._monotonic = monotonic
        self._lock = threading.Lock()
        self._sample = 0
        self._at_s = monotonic()
        self._told = 0

    def now(self) -> int:
        """The sample that is heard now; it never goes back."""
        with self._lock:
            self._told = max(self._told, self._reckoned())
            return self._told

    def hear(self, end_sample: int) -> None:
        """The source has handed out all samples before this one.

        Blocks come a little late, each by another amount, so the earliest one sets a live clock.
        """
        with self._lock:
            ahead = self._reckoned() - end_sample
            if ahead < 0 or (self.live and ahead > _DRIFT_SAMPLES):
                self._set(end_sample)

    def wait(self, samples: int) -> None:
        """Something was played for so long; only a stream that is not live was waiting."""
        with self._lock:
            if not self.live:
                self._set(self._sample + samples)

    def _reckoned(self) -> int:
        if not self.live:
            return self._sample
        return self._sample + round((self._monotonic() - self._at_s) * SAMPLE_RATE_HZ)

    def _set(self, sample: int) -> None:
        self._sample = sample
        self._at_s = self._monotonic()


class SystemClock:
    """Wall time, and the time of the ears' stream.

    Args:
        stream: where the stream is.
        wall: seconds since the epoch.
    """

    def __init__(self, stream: StreamClock, wall: Callable[[], float] = time.time) -> None:
        self._stream = stream
        self._wall = wall

    def now_ms(self) -> int:
        """Milliseconds since the epoch."""
        return round(self._wall() * 1000)

    def stream_ms(self) -> int:
        """Milliseconds of the ears' stream so far: samples / rate."""
        return self._stream.now() * 1000 // SAMPLE_RATE_HZ


@dataclass(frozen=True, slots=True)
class Device:
    """A sound device: its number among all, its name, and what it can do (channels in and out)."""

    index: int
    name: str
    channels_in: int
    channels_out: int
    rate_hz: int

    def channels(self, kind: Kind) -> int:
        """How many channels it has as a microphone or speaker."""
        return self.channels_in if kind == "microphone" else self.channels_out


def load_sounddevice() -> Any:  # noqa: ANN401  (an untyped library)
    """The library for sound devices, loaded when first needed.

    Raises:
        PortAudioMissing: the system's part of it is not installed.
    """
    _hush_alsa()
    try:
        return importlib.import_module("sounddevice")
    except OSError as missing:
        raise PortAudioMissing from missing


def list_devices(sounddevice: Any = None) -> tuple[Device, ...]:  # noqa: ANN401
    """All sound devices of this machine, in the system's order; raises PortAudioMissing."""
    library = sounddevice or load_sounddevice()
    return tuple(
        Device(index, str(one["name"]), one["max_input_channels"], one["max_output_channels"], int(rate))
        for index, one in enumerate(library.query_devices())
        if (rate := one["default_samplerate"])
    )


def find_device(kind: Kind, wanted: str | None = None, sounddevice: Any = None) -> Device:  # noqa: ANN401
    """The device whose name holds `wanted`, whatever the case; without it the system's default.

    Raises:
        PortAudioMissing, NoDevice, NoSuchDevice: as they say.
    """
    library = sounddevice or load_sounddevice()
    able = [device for device in list_devices(library) if device.channels(kind)]
    if not able:
        raise NoMicrophone if kind == "microphone" else NoSpeaker
    if wanted is None:
        default = library.default.device[kind == "speaker"]
        return next((device for device in able if device.index == default), able[0])
    fitting = [device for device in able if wanted.casefold() in device.name.casefold()]
    if not fitting:
        error = NoSuchMicrophone if kind == "microphone" else NoSuchSpeaker
        raise error(wanted=wanted, found=", ".join(device.name for device in able))
    return min(fitting, key=lambda device: len(device.name))


def look_again() -> None:
    """Notice devices that came or went since the library was loaded; only while none of them is open."""
    library = load_sounddevice()
    library._terminate()  # noqa: SLF001  (the library has no other way)
    library._initialize()  # noqa: SLF001


_ALSA_SAYS_NOTHING = ctypes.CFUNCTYPE(None)(lambda: None)


def _hush_alsa() -> None:
    """ALSA's library writes a dozen lines to standard error for every card a machine does not have."""
    if sys.platform == "linux":
        with contextlib.suppress(OSError, AttributeError):
            ctypes.CDLL("libasound.so.2").snd_lib_error_set_handler(_ALSA_SAYS_NOTHING)
