"""The voice into a WAV file, or nowhere; both tell what was played when, in the ears' stream."""

import contextlib
import wave
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

import numpy as np
from numpy.typing import NDArray

from assistant.clocks import StreamClock
from assistant.device_errors import WavInTheWay, WavUnwritable
from assistant.ports import Played, Sound
from assistant.speaking.playing import Playing, at_rate
from models.recognising import SAMPLE_RATE_HZ

_STEP_S = 0.02


class WavSink:
    """A WAV file that holds everything said at its time in the ears' stream, with silence between.

    Where the stream is live, playing takes as long as it would be heard, and can be cut; where it waits for
    the answer, as with a recording, no time passes but the stream's.

    Args:
        file: a path, or an open file that can seek.
        clock: the ears' stream.
        rate_hz: samples a second in the file.

    Raises:
        WavInTheWay: a file of that name holds something else than sound.
        WavUnwritable: here and at every call.
    """

    def __init__(self, file: Path | str | BinaryIO, clock: StreamClock, *, rate_hz: int = 22_050) -> None:
        self._path = str(file if isinstance(file, Path | str) else getattr(file, "name", "-"))
        self._clock = clock
        self._rate_hz = rate_hz
        self._written = 0
        self._playing: Playing | None = None
        self._owned = isinstance(file, Path | str)
        self._refused = False
        if isinstance(file, Path | str) and _holds_no_sound(Path(file)):
            raise WavInTheWay(path=self._path)
        with self._writing():
            self._file: BinaryIO = Path(file).open("wb") if isinstance(file, Path | str) else file  # noqa: SIM115
        self._wave = wave.open(self._file, "wb")  # noqa: SIM115
        self._wave.setnchannels(1)
        self._wave.setsampwidth(2)
        self._wave.setframerate(rate_hz)

    def play(self, sound: Sound) -> Played:
        """Write the sound where the stream is now, to its end or until cut."""
        playing = self._playing = Playing(at_rate(sound, self._rate_hz), self._clock)
        self._silence_until(self._clock.now() * self._rate_hz // SAMPLE_RATE_HZ)
        more = bool(len(playing.samples))
        while more:
            before = playing.given
            step = np.zeros(int(_STEP_S * self._rate_hz), np.int16)
            more = playing.fill(step)
            self._write(step[: playing.given - before])
            self._pass(playing)
        self._playing = None
        return playing.played()

    def cut(self) -> None:
        """Fade out what is being played."""
        playing = self._playing
        if playing is not None:
            playing.cut.set()

    def close(self) -> None:
        """Finish the file; a failure that was told already is not told again."""
        self.cut()
        quiet = contextlib.suppress(WavUnwritable) if self._refused else contextlib.nullcontext()
        with quiet, self._writing():
            try:
                self._wave.close()
            finally:
                if self._owned:
                    self._file.close()

    def _silence_until(self, frame: int) -> None:
        while self._written < frame:
            self._write(np.zeros(min(frame - self._written, 60 * self._rate_hz), np.int16))

    def _write(self, samples: NDArray[np.int16]) -> None:
        with self._writing():
            self._wave.writeframes(samples.astype("<i2").tobytes())
            self._file.flush()
        self._written += len(samples)

    def _pass(self, playing: Playing) -> None:
        """Let the time go by that the sound takes: really, or in a stream that waits."""
        to_go = playing.played().ended - self._clock.now()
        if to_go <= 0:
            return
        if self._clock.live:
            playing.cut.wait(to_go / SAMPLE_RATE_HZ)
        else:
            self._clock.wait(to_go)

    @contextlib.contextmanager
    def _writing(self) -> Iterator[None]:
        try:
            yield
        except (OSError, ValueError) as refused:
            self._refused = True
            raise WavUnwritable(path=self._path) from refused


def _holds_no_sound(path: Path) -> bool:
    """Whether an ordinary file is there that is not empty and no WAV."""
    if not path.is_file():
        return False
    try:
        with path.open("rb") as file:
            return file.read(4) not in (b"", b"RIFF")
    except OSError:
        return False


class Silent:
    """Nowhere: nothing is heard and no time passes."""

    def __init__(self, clock: StreamClock) -> None:
        self._clock = clock

    def play(self, sound: Sound) -> Played:  # noqa: ARG002
        """Play nothing."""
        return Played(self._clock.now(), self._clock.now(), cut_short=False)

    def cut(self) -> None:
        """Nothing is playing."""

    def close(self) -> None:
        """Nothing is open."""
