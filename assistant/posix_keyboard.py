"""Keys from a Unix terminal; it is put back as it was, however the program ends, but for a kill -9."""

import atexit
import os
import select
import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import suppress
from types import FrameType
from typing import Any, Self

from assistant.key_names import END_OF_INPUT, Decoder

if sys.platform != "win32":
    import termios

    ESCAPE_WAIT_S = 0.05
    """How long the rest of a sequence is waited for before an escape is a key of its own."""

    _ENDING = (signal.SIGTERM, signal.SIGHUP, signal.SIGQUIT)

    class PosixKeyboard:
        """Single keys without echo; see assistant.terminal.Keyboard. Interrupt and suspend still work."""

        def __init__(self, number: int) -> None:
            """Take a file descriptor: a terminal, or anything else to read keys from."""
            self._number = number
            self._wake_out, self._wake_in = os.pipe()
            self._woken_before = -1
            self._saved: list[Any] | None = None
            self._handlers: dict[int, Any] = {}
            self._closed = False

        def strokes(self) -> Iterator[str]:
            """Names of keys, as they come, until the end of input or `close`."""
            decoder = Decoder()
            while not self._closed:
                data = self._read(ESCAPE_WAIT_S if decoder.is_pending else None)
                for name in decoder.flush() if not data else decoder.feed(data):
                    if name == END_OF_INPUT:
                        return
                    yield name
                if data == b"":
                    return

        def _read(self, wait_s: float | None) -> bytes | None:
            """What came; nothing at the end of input; None where nothing came in time, or a signal did."""
            ready, _, _ = select.select([self._number, self._wake_out], [], [], wait_s)
            if self._wake_out in ready:
                os.read(self._wake_out, 1024)
                return b"" if self._closed else None
            try:
                return os.read(self._number, 1024) if ready else None
            except OSError:  # the terminal has gone
                return b""

        def close(self) -> None:
            """Put the terminal back and end `strokes`."""
            if not self._closed:
                self._closed = True
                with suppress(BlockingIOError):  # it is full, so the wait ends all the same
                    os.write(self._wake_in, b"x")
                self._put_back()
                self._let_signals_be()
                atexit.unregister(self._put_back)

        def __enter__(self) -> Self:
            if os.isatty(self._number):
                self._saved = termios.tcgetattr(self._number)
                atexit.register(self._put_back)
                self._watch_signals()
                self._take_over()
            return self

        def __exit__(self, *_: object) -> None:
            self.close()

        # --- the terminal ---

        def _take_over(self) -> None:
            wanted = termios.tcgetattr(self._number)
            wanted[3] &= ~(termios.ICANON | termios.ECHO)
            wanted[6][termios.VMIN], wanted[6][termios.VTIME] = 1, 0
            termios.tcsetattr(self._number, termios.TCSADRAIN, wanted)

        def _put_back(self) -> None:
            if self._saved is not None:
                with suppress(termios.error):  # the terminal may have gone
                    termios.tcsetattr(self._number, termios.TCSADRAIN, self._saved)

        # --- signals ---

        def _watch_signals(self) -> None:
            if threading.current_thread() is not threading.main_thread():
                return
            for number in _ENDING:
                self._handlers[number] = signal.signal(number, self._end)
            self._handlers[signal.SIGTSTP] = signal.signal(signal.SIGTSTP, self._suspend)
            self._handlers[signal.SIGCONT] = signal.signal(signal.SIGCONT, self._go_on)
            # a signal between the last look for one and the wait would otherwise be acted on at the next key
            os.set_blocking(self._wake_in, False)
            self._woken_before = signal.set_wakeup_fd(self._wake_in, warn_on_full_buffer=False)

        def _let_signals_be(self) -> None:
            if threading.current_thread() is threading.main_thread() and self._handlers:
                signal.set_wakeup_fd(self._woken_before)
                while self._handlers:
                    signal.signal(*self._handlers.popitem())

        def _end(self, number: int, frame: FrameType | None) -> None:
            """Put the terminal back, then do what the signal would have done."""
            self._put_back()
            before = self._handlers.get(number, signal.SIG_DFL)
            if callable(before):
                before(number, frame)
            elif before != signal.SIG_IGN:
                signal.signal(number, signal.SIG_DFL)
                os.kill(os.getpid(), number)

        def _suspend(self, number: int, frame: FrameType | None) -> None:
            """Stop with the terminal put back; where nobody could wake it, the system goes on at once."""
            self._put_back()
            signal.signal(number, signal.SIG_DFL)
            os.kill(os.getpid(), number)
            self._go_on(number, frame)

        def _go_on(self, _: int, __: FrameType | None) -> None:
            if not self._closed:
                signal.signal(signal.SIGTSTP, self._suspend)
                self._take_over()
