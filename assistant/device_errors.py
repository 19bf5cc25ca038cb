"""What can go wrong with microphone, speaker, voice and sound files: keys and values.

DeviceProblem
├── PortAudioMissing     no-portaudio
├── NoDevice
│   ├── NoMicrophone     no-microphone
│   └── NoSpeaker        no-speaker
├── NoSuchDevice
│   ├── NoSuchMicrophone no-such-microphone    wanted, found
│   └── NoSuchSpeaker    no-such-speaker       wanted, found
├── SeveralFit
│   ├── SeveralMicrophones several-microphones wanted, found
│   ├── SeveralSpeakers  several-speakers      wanted, found
│   └── SeveralVoices    several-voices        wanted, found
├── DeviceRefused        device-refused        name
├── DeviceLost           device-lost           name
├── VoiceMissing         no-voice
├── NoSuchVoice          no-such-voice         wanted, found
├── EchoCancellerMissing no-echo-canceller
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

from assistant.ports import SpeechFailed
from models.sayable import Sayable, sayings


class DeviceProblem(Sayable):
    """The base of all that sound raises on purpose."""


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


class SeveralFit(DeviceProblem):
    """More than one name holds the words `wanted`: those in `found`."""

    names = frozenset({"wanted", "found"})


class SeveralMicrophones(SeveralFit):
    """More than one microphone is meant."""

    key = "several-microphones"


class SeveralSpeakers(SeveralFit):
    """More than one speaker is meant."""

    key = "several-speakers"


class SeveralVoices(SeveralFit):
    """More than one voice is meant."""

    key = "several-voices"


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
    names = frozenset({"wanted", "found"})


class EchoCancellerMissing(DeviceProblem):
    """The library that takes the voice out of what is heard is not installed."""

    key = "no-echo-canceller"


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


DEVICE_ERRORS: dict[str, frozenset[str]] = sayings(DeviceProblem) | sayings(SpeechFailed)
"""Every key a language must have a sentence for, with the names of its values."""
