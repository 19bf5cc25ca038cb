"""A machine without the PortAudio library: the system's look-up of shared libraries does not find it."""

import ctypes.util

_find = ctypes.util.find_library


def _find_all_but_portaudio(name: str) -> str | None:
    return None if "portaudio" in name else _find(name)


ctypes.util.find_library = _find_all_but_portaudio
