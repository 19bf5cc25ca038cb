"""A program that prints the name of each key pressed in its terminal, a line each, until "q" or control-D.

Run as `python -m tests.assistant.key_reader [HOW]`; HOW is how it ends after "q": "return", "raise", "exit",
"hang" (goes on reading), or "apart" (goes on reading, and signals come to another thread, which does nothing else).
"""

import signal
import sys
import threading

from assistant.terminal import open_keyboard


def main(how: str) -> None:
    """Read keys until the end."""
    with open_keyboard() as keyboard:
        if how == "apart":
            threading.Thread(target=threading.Event().wait, daemon=True).start()
            signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGTERM, signal.SIGHUP, signal.SIGQUIT})
        print("ready", flush=True)
        for name in keyboard.strokes():
            print(name, flush=True)
            if name == "q" and how not in ("hang", "apart"):
                break
        if how == "raise":
            raise RuntimeError("dropped a stitch")
        if how == "exit":
            sys.exit(3)
    print("after", flush=True)


if __name__ == "__main__":
    # whoever runs the tests in the background may have had these ignored, and children inherit that
    signal.signal(signal.SIGINT, signal.default_int_handler)
    for number in (signal.SIGQUIT, signal.SIGHUP):
        signal.signal(number, signal.SIG_DFL)
    main(*sys.argv[1:] or ["return"])
