"""The phone decoder in a process of its own, so that both decoders work at the same time.

PocketSphinx keeps Python's lock while it decodes, so threads would only take turns; and while one decodes, a
microphone's sound could not be taken. The process ends with this one, however this one ends: its input does.
"""

import pickle
import signal
import struct
import subprocess
import sys
import weakref
from contextlib import suppress
from pathlib import Path
from typing import IO

import numpy as np

from models.pocketsphinx_decoding import Decoding, PhoneDecoder
from models.recognising import Samples

_SETTINGS = {"lw": 2.0, "beam": 1e-20, "pbeam": 1e-20}
_LENGTH = struct.Struct("<q")
_RUN = "import sys; sys.path.insert(0, sys.argv[1]); from models.pocketsphinx_apart import serve; serve()"
_ENDING_S = 5.0
_MOST_UNREAD = 3
"""So few answers fit into any pipe: else each side would wait for the other to read."""


class PhonesApart:
    """Decodes any speech as a string of phones, elsewhere; here, where there is no such process, or not any more."""

    def __init__(self) -> None:
        self._process = _started()
        self._begun: Samples | None = None
        self._unread = 0
        self._here: PhoneDecoder | None = None
        if self._process is not None:
            self._end = weakref.finalize(self, _end, self._process)

    @property
    def process_id(self) -> int | None:
        """Of the other process, while there is one."""
        return None if self._process is None else self._process.pid

    def begin(self, samples: Samples) -> None:
        """Start to decode a whole utterance; what was begun before is not wanted any more."""
        self._begun = samples
        if self._unread >= _MOST_UNREAD:
            self._answer()
        if self._process is not None and self._process.stdin is not None:
            try:
                _give(self._process.stdin, samples.tobytes())
            except OSError:
                self._process = None
            else:
                self._unread += 1

    def result(self) -> Decoding | None:
        """The phones of what was begun last, when they are there; None where the search found no way through it."""
        answer: bytes | None = None
        while self._unread:
            answer = self._answer()
        if answer is None:
            return self._decode_here()
        found: Decoding | None = pickle.loads(answer)  # noqa: S301 - from our own process
        return found

    def _answer(self) -> bytes | None:
        """The next one; None where there is no process any more."""
        answer = None
        if self._process is not None and self._process.stdout is not None:
            answer = _take(self._process.stdout)
        self._unread -= 1
        if answer is None:
            self._process, self._unread = None, 0
        return answer

    def _decode_here(self) -> Decoding | None:
        if self._begun is None:
            return None
        if self._here is None:
            self._here = PhoneDecoder(**_SETTINGS)
        return self._here.decode(self._begun)


def serve() -> None:
    """What the other process does: takes sound from its standard input and gives phones, until that ends."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # meant for the program, which ends the input in time
    decoder = PhoneDecoder(**_SETTINGS)
    sound, answers = sys.stdin.buffer, sys.stdout.buffer
    while (data := _take(sound)) is not None:
        _give(answers, pickle.dumps(decoder.decode(np.frombuffer(data, np.int16))))


def _started() -> subprocess.Popen[bytes] | None:
    command = (sys.executable, "-c", _RUN, str(Path(__file__).parents[1]))
    quiet = subprocess.DEVNULL
    try:
        return subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=quiet)  # noqa: S603
    except OSError:
        return None


def _end(process: subprocess.Popen[bytes]) -> None:
    for pipe in (process.stdin, process.stdout):
        with suppress(OSError):
            if pipe is not None:
                pipe.close()
    try:
        process.wait(_ENDING_S)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()


def _give(stream: IO[bytes], data: bytes) -> None:
    stream.write(_LENGTH.pack(len(data)) + data)
    stream.flush()


def _take(stream: IO[bytes]) -> bytes | None:
    """The next message; None at the end of the stream."""
    head = stream.read(_LENGTH.size)
    if len(head) < _LENGTH.size:
        return None
    data = stream.read(_LENGTH.unpack(head)[0])
    return data if len(data) == _LENGTH.unpack(head)[0] else None
