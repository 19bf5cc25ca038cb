"""Microphones and speakers that PulseAudio or PipeWire serves, a headset over the air among them.

PortAudio reaches them through ALSA's plugin "pulse", which shows all of them as one device: a stream is led to
one of them by the variable that libpulse reads when a stream is opened.
"""

import contextlib
import os
import sys
from collections.abc import Iterable, Iterator
from typing import Any, Literal, NamedTuple

GATEWAY = "pulse"
"""Name of the device of PortAudio behind which all of them are."""

_VARIABLES = {"microphone": "PULSE_SOURCE", "speaker": "PULSE_SINK"}


class Served(NamedTuple):
    """One of them: what people call it, the server's own name of it, and what it can do."""

    kind: Literal["microphone", "speaker"]
    name: str
    address: str
    channels: int
    rate_hz: int


def served() -> tuple[Served, ...]:
    """All that the server of this session has; none where there is no server. What a speaker plays is no microphone."""
    if sys.platform != "linux":
        return ()
    try:
        import pulsectl  # noqa: PLC0415 (it loads the system's library, which may be missing)

        with pulsectl.Pulse("roundcaller", connect=False) as server:
            server.connect(autospawn=False)
            sources = [source for source in server.source_list() if source.proplist.get("device.class") != "monitor"]
            found = (*_listed("microphone", sources), *_listed("speaker", server.sink_list()))
    except Exception:  # noqa: BLE001 (no library, no server, or one that does not answer: it serves nothing)
        return ()
    return found


def _listed(kind: Literal["microphone", "speaker"], devices: Iterable[Any]) -> Iterator[Served]:
    devices = list(devices)
    names = [device.description or device.name for device in devices]
    for device, name in zip(devices, names, strict=True):
        shown = name if names.count(name) == 1 else f"{name} ({device.name})"
        yield Served(kind, shown, device.name, device.channel_count, device.sample_spec.rate)


@contextlib.contextmanager
def led_to(kind: Literal["microphone", "speaker"], address: str | None) -> Iterator[None]:
    """A stream opened in this block goes to that device; None for the server's own choice."""
    if address is None:
        yield
        return
    variable = _VARIABLES[kind]
    before = os.environ.get(variable)
    os.environ[variable] = address
    try:
        yield
    finally:
        if before is None:
            os.environ.pop(variable, None)
        else:
            os.environ[variable] = before
