"""The sound devices of this machine, and finding one by its name."""

import contextlib
import ctypes
import importlib
import sys
from contextlib import AbstractContextManager
from dataclasses import dataclass
from typing import Any, Literal

from assistant.device_errors import (
    DeviceProblem,
    NoMicrophone,
    NoSpeaker,
    NoSuchMicrophone,
    NoSuchSpeaker,
    PortAudioMissing,
    SeveralMicrophones,
    SeveralSpeakers,
)
from assistant.name_matching import fitting
from assistant.sound_server import GATEWAY, Served, led_to, served

Kind = Literal["microphone", "speaker"]

_ERRORS: dict[Kind, tuple[type[DeviceProblem], type[DeviceProblem], type[DeviceProblem]]] = {
    "microphone": (NoMicrophone, NoSuchMicrophone, SeveralMicrophones),
    "speaker": (NoSpeaker, NoSuchSpeaker, SeveralSpeakers),
}
_STANDS_FOR_ANY = frozenset({GATEWAY, "default"})


@dataclass(frozen=True, slots=True)
class Device:
    """A sound device: its number among PortAudio's, its name, and what it can do (channels in and out).

    Attributes:
        address: where a sound server serves it, the server's own name of it.
    """

    index: int
    name: str
    channels_in: int
    channels_out: int
    rate_hz: int
    address: str | None = None

    def channels(self, kind: Kind) -> int:
        """How many channels it has as a microphone or speaker."""
        return self.channels_in if kind == "microphone" else self.channels_out

    def opening(self) -> AbstractContextManager[None]:
        """Its stream must be opened within this."""
        return led_to("microphone" if self.channels_in else "speaker", self.address)


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
    """All sound devices of this machine, in the system's order; raises PortAudioMissing.

    Those of a sound server come first, each by its own name.
    """
    own = _portaudio(sounddevice or load_sounddevice())
    gateway = next((device.index for device in own if device.name == GATEWAY), None)
    return own if gateway is None else (*(_behind(gateway, each) for each in served()), *own)


def _portaudio(library: Any) -> tuple[Device, ...]:  # noqa: ANN401
    return tuple(
        Device(index, str(one["name"]), one["max_input_channels"], one["max_output_channels"], int(rate))
        for index, one in enumerate(library.query_devices())
        if (rate := one["default_samplerate"])
    )


def _behind(gateway: int, one: Served) -> Device:
    heard, played = (one.channels, 0) if one.kind == "microphone" else (0, one.channels)
    return Device(gateway, one.name, heard, played, one.rate_hz, one.address)


def nameable(kind: Kind, sounddevice: Any = None) -> tuple[Device, ...]:  # noqa: ANN401
    """The devices of a kind that a person can tell apart: not what stands for any of a sound server's."""
    able = [device for device in list_devices(sounddevice) if device.channels(kind)]
    is_served = any(device.address for device in able)
    return tuple(device for device in able if not (is_served and device.name in _STANDS_FOR_ANY))


def find_device(kind: Kind, wanted: str | None = None, sounddevice: Any = None) -> Device:  # noqa: ANN401
    """The device of that name, or whose name holds all its words; without a name the system's default.

    Raises:
        PortAudioMissing, NoMicrophone, NoSpeaker: there is nothing at all.
        NoSuchMicrophone, NoSuchSpeaker, SeveralMicrophones, SeveralSpeakers: not just one is meant.
    """
    library = sounddevice or load_sounddevice()
    able = [device for device in list_devices(library) if device.channels(kind)] if wanted else _plain(kind, library)
    none_at_all, no_such, several = _ERRORS[kind]
    if not able:
        raise none_at_all
    if not wanted:
        default = library.default.device[kind == "speaker"]
        return next((device for device in able if device.index == default), able[0])
    meant = [device for device in able if device.address == wanted] or _meant(able, wanted)
    if len(meant) == 1:
        return meant[0]
    found = meant or nameable(kind, library)
    raise (several if meant else no_such)(wanted=wanted, found=", ".join(device.name for device in found))


def _plain(kind: Kind, library: Any) -> list[Device]:  # noqa: ANN401
    """Without asking a sound server, which takes a while."""
    return [device for device in _portaudio(library) if device.channels(kind)]


def _meant(able: list[Device], wanted: str) -> list[Device]:
    return [able[at] for at in fitting(wanted, [device.name for device in able])]


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
