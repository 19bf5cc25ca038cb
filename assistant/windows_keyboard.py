"""Keys from the Windows console, which needs no setting and no putting back."""

import sys
from collections.abc import Iterator
from typing import Self

from assistant.key_names import END_OF_INPUT, of_windows

if sys.platform == "win32":
    import msvcrt

    _LEADS = ("\0", "\xe0")
    _INTERRUPT = "\x03"

    class WindowsKeyboard:
        """Reads keys without echo; see assistant.terminal.Keyboard."""

        def __init__(self) -> None:
            """Nothing is taken over."""
            self._closed = False

        def strokes(self) -> Iterator[str]:
            """Names of keys, as they come; the console hands out no more than one after `close`."""
            while not self._closed:
                first = msvcrt.getwch()
                if first in {_INTERRUPT, END_OF_INPUT}:
                    return
                name = of_windows(first, msvcrt.getwch() if first in _LEADS else "")
                if name is not None:
                    yield name

        def close(self) -> None:
            """End `strokes` with the next key."""
            self._closed = True

        def __enter__(self) -> Self:
            return self

        def __exit__(self, *_: object) -> None:
            self.close()
