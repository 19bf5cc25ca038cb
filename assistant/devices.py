"""The sound devices of this machine, and finding one by its name."""

import contextlib
import ctypes
import importlib
import sys
from dataclasses import dataclass
from typing import Any, Literal

from assistant.device_errors import (
    NoMicrophone,
    NoSpeaker,
    NoSuchMicrophone,
    NoSuchSpeaker,
    PortAudioMissing,
)

Kind = Literal["microphone", "speaker"]


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
