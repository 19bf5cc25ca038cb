"""A machine that is offline: no name can be looked up and no connection opened. Names of what tried are printed."""

import socket
import sys


class _Refused(socket.socket):
    def __init__(self, *_: object, **__: object) -> None:
        sys.stderr.write("a socket was opened\n")
        raise OSError("this machine is offline")


def _unknown(*_: object, **__: object) -> None:
    raise socket.gaierror(socket.EAI_NONAME, "Name or service not known")


socket.socket = _Refused  # type: ignore[misc]
socket.getaddrinfo = _unknown  # type: ignore[assignment]
