"""Sound devices: what can go wrong with them (keys and values, sentences are each language's own), and finding one.

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
    └── WavUnwritable    wav-unwritable        path

`found` is the names of what there is, joined by commas; `path` is "-" for standard input. `SpeechFailed`
(speech-failed, text) stands in `assistant.ports`.
"""

from types import MappingProxyType
from typing import ClassVar

from assistant.ports import SpeechFailed


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
