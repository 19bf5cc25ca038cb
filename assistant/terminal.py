"""Single keys from the terminal, without enter, on every system behind one function.

Nothing is drawn: what the program says goes out as plain lines, one fact a line, without colour or cursor
moves, the same on every terminal and with or without NO_COLOR.
"""

import sys
from collections.abc import Iterator
from typing import Protocol, Self


class Keyboard(Protocol):
    """Keys as they are pressed. Enter it on the main thread, read it on any, close it from any."""

    def strokes(self) -> Iterator[str]:
        """Names of keys (see key_names), as they come, until the end of input or `close`."""
        ...

    def close(self) -> None:
        """Put the terminal back as it was and end `strokes`."""
        ...

    def __enter__(self) -> Self:
        """Take the terminal over."""
        ...

    def __exit__(self, *_: object) -> None:
        """As `close`."""
        ...


def open_keyboard() -> Keyboard:
    """The keyboard of the terminal on standard input; or whatever else standard input is, read as keys."""
    if sys.platform == "win32":
        from assistant.windows_keyboard import WindowsKeyboard  # noqa: PLC0415 (exists on Windows only)

        return WindowsKeyboard()
    else:  # noqa: RET505 (type checkers leave out the branch of the other system)
        from assistant.posix_keyboard import PosixKeyboard  # noqa: PLC0415 (exists elsewhere only)

        return PosixKeyboard(sys.stdin.fileno())
