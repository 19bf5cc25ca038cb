"""Text to sound through pyttsx3, made safe: one sentence at a time, checked, tried again.

Measured with pyttsx3 2.99 and espeak-ng 1.51 on a loaded machine: 5 of 2,100 renders came back empty or too
late, without an error, and all were right at the second try.
"""

import contextlib
import json
import shutil
import subprocess
import sys
import tempfile
import threading
from pathlib import Path
from typing import IO, Any, NamedTuple

import numpy as np

from assistant.device_errors import NoSuchVoice, VoiceMissing
from assistant.ports import AttemptFailed, Sound, SpeechFailed, Voice, VoiceSettings
from assistant.speaking.voices import ListedVoice

ATTEMPTS = 3
_STARTING_S = 10.0
_RENDERING_S = 2.0
_GRACE_S = 0.5
_SILENT = 0.003
"""What is below this share of the peak counts as silence at a sentence's ends."""
_TAIL_S = 0.03


class Synthesis:
    """A synthesiser that gives a whole sentence or says that it cannot.

    Args:
        voice: what makes one try; `SystemVoice()` in earnest.
        settings: how to speak where a call does not say.
    """

    def __init__(self, voice: Voice, settings: VoiceSettings | None = None) -> None:
        self._voice = voice
        self._lock = threading.Lock()
        self.settings = settings or VoiceSettings()

    def render(self, text: str, settings: VoiceSettings | None = None) -> Sound:
        """The spoken text without the silence around it.

        Raises:
            SpeechFailed: after `ATTEMPTS` tries without a plausible sound.
            VoiceMissing, NoSuchVoice: trying again would not help.
        """
        settings = settings or self.settings
        with self._lock:
            for _ in range(ATTEMPTS if _can_be_said(text) else 0):
                with contextlib.suppress(AttemptFailed):
                    sound = trimmed(self._voice.attempt(text, settings))
                    if is_plausible(sound, text, settings.rate_wpm):
                        return scaled(sound, settings.volume)
        raise SpeechFailed(text)

    def close(self) -> None:
        """Let the voice go."""
        self._voice.close()


def _can_be_said(text: str) -> bool:
    return any(map(str.isalnum, text))


def is_plausible(sound: Sound, text: str, rate_wpm: int) -> bool:
    """Whether the sound can be the text.

    At 170 words a minute espeak-ng takes 0.05 to 0.3 s a letter or digit (measured); a third of the least,
    and a second a letter and two more, are the limits.
    """
    signs = sum(map(str.isalnum, text))
    pace = 170 / rate_wpm
    return 0.016 * signs * pace <= sound.seconds <= (2.0 + 1.0 * signs) * pace


def trimmed(sound: Sound) -> Sound:
    """Without the silence before, and with 30 ms of it after."""
    loudness = np.abs(sound.samples.astype(np.int32))
    heard = np.flatnonzero(loudness > _SILENT * loudness.max(initial=0))
    if not len(heard):
        return Sound(sound.samples[:0], sound.rate_hz)
    end = int(heard[-1]) + 1 + int(_TAIL_S * sound.rate_hz)
    return Sound(sound.samples[int(heard[0]) : end], sound.rate_hz)


def scaled(sound: Sound, volume: float) -> Sound:
    """With all amplitudes multiplied by the volume."""
    if volume == 1.0:
        return sound
    return Sound(np.rint(sound.samples * volume).astype(np.int16), sound.rate_hz)


class _Helper(NamedTuple):
    folder: str
    process: subprocess.Popen[bytes]
    requests: IO[bytes]
    answers: IO[bytes]


class SystemVoice:
    """The system's voices through pyttsx3, in a process of its own (`rendering.py` says why).

    Args:
        command: what starts that process; the folder for its files is added.
    """

    def __init__(self, command: tuple[str, ...] = ()) -> None:
        script = str(Path(__file__).with_name("rendering.py"))
        self._command = command or (sys.executable, "-P", script)
        self._helper: _Helper | None = None
        self._lock = threading.Lock()

    def attempt(self, text: str, settings: VoiceSettings) -> Sound:
        """One try.

        Raises:
            AttemptFailed: no file, an unreadable one, or none in time.
            VoiceMissing: pyttsx3 finds no synthesiser.
            NoSuchVoice: no voice of that name.
        """
        limit_s = _RENDERING_S + 0.01 * len(text)
        request = {"text": text, "rate_wpm": settings.rate_wpm, "voice": settings.voice, "limit_s": limit_s}
        with self._lock:
            helper = self._helper or self._start()
            header, data = self._ask(helper, request, limit_s + _GRACE_S)
        error = header.get("error")
        if error == "no-such-voice":
            raise NoSuchVoice(wanted=settings.voice or "", found=", ".join(voice.name for voice in self.voices()))
        if error is not None:
            raise AttemptFailed(header.get("why"))
        return Sound(np.frombuffer(data, "<i2").astype(np.int16), int(header["rate_hz"]))

    def voices(self) -> tuple[ListedVoice, ...]:
        """Every voice that the system lists; raises as `attempt` does."""
        with self._lock:
            helper = self._helper or self._start()
            header, _ = self._ask(helper, {}, _STARTING_S)
        return tuple(ListedVoice(one, name, tuple(tags)) for one, name, tags in header["voices"])

    def start(self) -> None:
        """Start the process ahead of the first sentence; raises as `attempt` does."""
        with self._lock:
            self._helper = self._helper or self._start()

    def close(self) -> None:
        """End the process."""
        with self._lock:
            self._drop()

    def _start(self) -> _Helper:
        folder = tempfile.mkdtemp(prefix="roundcaller-")
        process = subprocess.Popen(  # noqa: S603
            (*self._command, folder), stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL
        )
        if process.stdin is None or process.stdout is None:
            raise AssertionError
        self._helper = _Helper(folder, process, process.stdin, process.stdout)
        header, _ = self._ask(self._helper, None, _STARTING_S)
        if header.get("error") == "no-voice":
            self._drop()
            raise VoiceMissing
        return self._helper

    def _ask(self, helper: _Helper, request: object, limit_s: float) -> tuple[dict[str, Any], bytes]:
        """Send a request (None: it speaks first) and read the answer; a process that hangs is ended."""
        deadline = threading.Timer(limit_s, helper.process.kill)
        deadline.start()
        try:
            if request is not None:
                helper.requests.write(json.dumps(request).encode() + b"\n")
                helper.requests.flush()
            header: dict[str, Any] = json.loads(helper.answers.readline())
            return header, helper.answers.read(int(header["bytes"]))
        except (OSError, ValueError) as ended:
            self._drop()
            raise AttemptFailed(str(ended)) from ended
        finally:
            deadline.cancel()

    def _drop(self) -> None:
        if self._helper is None:
            return
        folder, process, requests, answers = self._helper
        self._helper = None
        with contextlib.suppress(OSError):
            requests.close()
        try:
            process.wait(_GRACE_S)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()
        answers.close()
        shutil.rmtree(folder, ignore_errors=True)
