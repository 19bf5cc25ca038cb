"""Control-C comes at the moment when the module named in INTERRUPTED_AT is about to be imported."""

import importlib.abc
import os
import signal
import sys


class _Interrupting(importlib.abc.MetaPathFinder):
    """Finds nothing; sends the interrupt once."""

    _is_done = False

    def find_spec(self, name: str, *_: object) -> None:
        """Called for each import."""
        if name == os.environ["INTERRUPTED_AT"] and not self._is_done:
            self._is_done = True
            os.kill(os.getpid(), signal.SIGINT)


sys.meta_path.insert(0, _Interrupting())
