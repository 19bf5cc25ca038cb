"""Renders sentences with pyttsx3 in a process of its own: run as a script by `synthesis.SystemVoice`.

Why a process: pyttsx3 prints on standard output, where only spoken lines may stand; an error inside its
callback leaves a sentence without an end, and only a process can be ended from outside; the voices of macOS
want a main thread. Requests are JSON lines; answers a JSON line and then so many bytes of 16-bit mono sound. A request
without a text asks which voices there are.
"""

import contextlib
import json
import os
import shutil
import signal
import sys
import threading
import time
import wave
from collections.abc import Sequence
from pathlib import Path
from typing import Any, BinaryIO, Protocol

SETTLING_S = 0.5
_SETTLING_STEP_S = 0.002


class Unsettled(Exception):
    """A setting was given, but the synthesiser does not show it."""


class Unknown(Exception):
    """There is no such voice."""


class _Listed(Protocol):
    """A voice as pyttsx3 lists it."""

    id: object
    name: object
    languages: Sequence[object] | None


class Renderer:
    """pyttsx3, one sentence one `runAndWait`."""

    def __init__(self, folder: Path) -> None:
        import pyttsx3  # noqa: PLC0415  (it loads the system's library, which may be missing)

        self._engine: Any = pyttsx3.init()
        self._path = folder / "sentence.wav"
        self._ended = threading.Event()
        self._errors: list[object] = []
        self._engine.connect("finished-utterance", lambda **_: self._ended.set())
        self._engine.connect("error", lambda **told: self._errors.append(told.get("exception")))
        # In a callback from C an exception reaches nobody, and `runAndWait` would never return.
        sys.unraisablehook = lambda _: os._exit(1)
        self._engine.runAndWait()
        self._own_voice = self._engine.getProperty("voice")
        self._chosen: str | None = None

    def render(self, text: str, rate_wpm: int, voice: str | None, limit_s: float) -> tuple[int, bytes]:
        """Samples a second and the sound, which may be empty.

        Raises:
            Unknown: no such voice.
            Unsettled: a setting did not take hold.
            OSError, EOFError, wave.Error: no readable file came in time.
        """
        self._choose(voice)
        self._settle("rate", rate_wpm)
        self._settle("volume", 1.0)
        self._path.unlink(missing_ok=True)
        self._ended.clear()
        self._engine.save_to_file(text, str(self._path))
        self._engine.runAndWait()
        self._ended.wait(limit_s)
        with wave.open(str(self._path)) as file:
            return file.getframerate(), file.readframes(file.getnframes())

    def voices(self) -> list[tuple[str, str, list[str]]]:
        """Identifier, name and language tags of every voice that the system lists."""
        listed = self._engine.getProperty("voices")
        return [(str(one.id), str(one.name), _tags(one)) for one in listed]

    def _choose(self, voice: str | None) -> None:
        if voice == self._chosen:
            return
        name = self._own_voice if voice is None else self._find(voice)
        self._errors.clear()
        self._engine.setProperty("voice", name)
        if self._errors:
            raise Unknown(voice)
        if "+" not in name:
            self._wait_for("voice", name)
        self._chosen = voice

    def _find(self, voice: str) -> str:
        """The identifier of a voice; one in no list may still be known (espeak-ng's variants: en-us+f3)."""
        wanted = voice.lower()
        listed = self._engine.getProperty("voices")
        for fits in (_is_called, _speaks, _speaks_a_kind_of, _is_called_like):
            for one in listed:
                if fits(one, wanted):
                    return str(one.id)
        return voice

    def _settle(self, name: str, value: float) -> None:
        """Set a property until it reads back: the driver loses one that comes while it clears its queue."""
        for _ in range(3):
            if self._engine.getProperty(name) == value:
                return
            self._engine.setProperty(name, value)
            self._wait_for(name, value)
        if sys.platform == "linux" and self._engine.getProperty(name) != value:
            raise Unsettled(name)

    def _wait_for(self, name: str, value: object) -> None:
        until = time.monotonic() + SETTLING_S
        while self._engine.getProperty(name) != value and time.monotonic() < until:
            time.sleep(_SETTLING_STEP_S)


def _is_called(voice: _Listed, wanted: str) -> bool:
    identifier = str(voice.id).lower()
    return wanted in {identifier, identifier.rpartition("/")[2], str(voice.name).lower()}


def _speaks(voice: _Listed, wanted: str) -> bool:
    return wanted in _tags(voice)


def _speaks_a_kind_of(voice: _Listed, wanted: str) -> bool:
    return any(tag.startswith(f"{wanted}-") for tag in _tags(voice))


def _tags(voice: _Listed) -> list[str]:
    return [str(tag).lower().replace("_", "-") for tag in voice.languages or ()]


def _is_called_like(voice: _Listed, wanted: str) -> bool:
    return "+" not in wanted and wanted in str(voice.name).lower()


def _answer(out: BinaryIO, sound: bytes = b"", **header: object) -> None:
    out.write(json.dumps({**header, "bytes": len(sound)}).encode() + b"\n" + sound)
    out.flush()


def _serve(renderer: Renderer, out: BinaryIO) -> None:
    for line in sys.stdin.buffer:
        request = json.loads(line)
        if "text" not in request:
            _answer(out, voices=renderer.voices())
            continue
        try:
            rate_hz, sound = renderer.render(**request)
        except Unknown:
            _answer(out, error="no-such-voice")
        except (Unsettled, OSError, EOFError, wave.Error) as failed:
            _answer(out, error="failed", why=repr(failed))
        else:
            _answer(out, sound, rate_hz=rate_hz)


def main() -> None:
    """Serve until standard input ends."""
    for ending in ("SIGINT", "SIGHUP"):  # the other process decides, and closes our standard input
        if hasattr(signal, ending):
            signal.signal(getattr(signal, ending), signal.SIG_IGN)
    signal.signal(signal.SIGTERM, lambda *_: sys.exit())
    out = os.fdopen(os.dup(1), "wb")
    with Path(os.devnull).open("w", encoding="utf-8") as nowhere:
        os.dup2(nowhere.fileno(), 1)
        folder = Path(sys.argv[1])
        try:
            try:
                renderer = Renderer(folder)
            except Exception as missing:  # noqa: BLE001  (whatever a system without a voice raises)
                _answer(out, error="no-voice", why=repr(missing))
            else:
                _answer(out)
                with contextlib.suppress(BrokenPipeError):
                    _serve(renderer, out)
        finally:
            shutil.rmtree(folder, ignore_errors=True)


if __name__ == "__main__":
    main()
