"""Where sound comes from: a microphone, a WAV file, or one on standard input; all as 16 kHz mono blocks."""

import queue
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, nullcontext, suppress
from pathlib import Path
from typing import Any, BinaryIO, NamedTuple

import numpy as np
from numpy.typing import NDArray

from assistant.clocks import StreamClock
from assistant.device_errors import DeviceLost, DeviceRefused, WavMissing, WavUnreadable
from assistant.devices import find_device, load_sounddevice
from assistant.listening.wav_reading import in_blocks, read_wav
from models.recognising import SAMPLE_RATE_HZ, Block, Samples
from models.resampling import Resampler

BLOCK_SAMPLES = 320
STALLED_S = 2.0
_INTERRUPTED_S = 0.25


class Opening(NamedTuple):
    """How to open a stream of bytes, and what errors call it."""

    open: Callable[[], AbstractContextManager[BinaryIO]]
    path: str


class Recording:
    """A WAV on any stream of bytes, told as if it were heard.

    Args:
        opening: opens it, when the blocks are asked for.
        clock: the ears' stream.
        block_samples: how long a block is.
        paced: give each block when it would have been heard, not at once.
        patient: wait while an answer is played; else run on, so that what is said meanwhile is lost. Left
            out: patient unless paced.
    """

    def __init__(
        self,
        opening: Opening,
        clock: StreamClock,
        *,
        block_samples: int = BLOCK_SAMPLES,
        paced: bool = False,
        patient: bool | None = None,
    ) -> None:
        self._opening = opening
        self._clock = clock
        self._block_samples = block_samples
        self._paced = paced
        self._patient = not paced if patient is None else patient
        self._hearing = threading.Event()
        self._hearing.set()
        self._closed = threading.Event()
        self._next = 0
        self._due_s = 0.0

    def blocks(self) -> Iterator[Block]:
        """The recording from its beginning.

        Raises:
            WavMissing, WavUnreadable, WavEmpty, WavUnsupported: as they say.
        """
        self._next = self._clock.now()
        self._due_s = time.monotonic()
        with self._opening.open() as stream:
            for samples in in_blocks(self._pieces(stream), self._block_samples):
                self._wait(len(samples))
                if self._closed.is_set():
                    return
                block = self._tell(samples)
                if len(block.samples):
                    self._clock.hear(block.end_sample)
                    yield block

    def pause(self) -> None:
        """Wait, or lose what comes, until `resume`."""
        self._hearing.clear()

    def resume(self) -> None:
        """Go on."""
        if self._patient:
            self._next = max(self._next, self._clock.now())
        self._hearing.set()

    def close(self) -> None:
        """End the blocks, from any thread."""
        self._closed.set()
        self._hearing.set()

    def _pieces(self, stream: BinaryIO) -> Iterator[Samples]:
        try:
            yield from read_wav(stream, self._opening.path)
        except OSError as broken:
            raise WavUnreadable(path=self._opening.path) from broken

    def _wait(self, samples: int) -> None:
        """For the end of an answer, and for the time at which the block would have been heard."""
        if self._patient:
            self._hearing.wait()
        if self._paced:
            now_s = time.monotonic()
            if self._patient and now_s - self._due_s > _INTERRUPTED_S:
                self._due_s = now_s
            self._due_s += samples / SAMPLE_RATE_HZ
            self._closed.wait(max(0.0, self._due_s - now_s))

    def _tell(self, samples: Samples) -> Block:
        """The block without what was lost under an answer: a clock that is not live tells how much."""
        first, self._next = self._next, self._next + len(samples)
        if self._clock.live:
            return Block(first, samples if self._hearing.is_set() else samples[:0])
        if self._patient:
            return Block(self._clock.now(), samples)
        lost = min(max(self._clock.now() - first, 0), len(samples))
        return Block(first + lost, samples[lost:])


class WavFile(Recording):
    """A WAV file; arguments as `Recording`'s."""

    def __init__(
        self,
        path: Path,
        clock: StreamClock,
        *,
        block_samples: int = BLOCK_SAMPLES,
        paced: bool = False,
        patient: bool | None = None,
    ) -> None:
        opening = Opening(lambda: _opened(path), str(path))
        super().__init__(opening, clock, block_samples=block_samples, paced=paced, patient=patient)


class StandardInput(Recording):
    """A WAV on standard input, which need not say how long it is; read as it comes.

    Args:
        clock: the ears' stream.
        stream: another stream of bytes than standard input.
    """

    def __init__(self, clock: StreamClock, stream: BinaryIO | None = None) -> None:
        super().__init__(Opening(lambda: nullcontext(stream or sys.stdin.buffer), "-"), clock)


def _opened(path: Path) -> BinaryIO:
    try:
        return path.open("rb")
    except FileNotFoundError as missing:
        raise WavMissing(path=str(path)) from missing
    except OSError as refused:
        raise WavUnreadable(path=str(path)) from refused


class _Arrived(NamedTuple):
    """What a callback brought, and how many samples at 16 kHz passed unheard before it."""

    samples: NDArray[np.int16]
    lost: int


class Microphone:
    """A microphone of this machine, at 16 kHz or at its own rate.

    Args:
        clock: the ears' stream, which this moves on.
        name: part of the device's name; None for the system's default.
        block_samples: how long a block is.
        stalled_s: after how long without sound the microphone counts as gone.
        library: sounddevice, or what stands in for it.

    Raises:
        PortAudioMissing, NoMicrophone, NoSuchMicrophone: as they say.
    """

    def __init__(
        self,
        clock: StreamClock,
        name: str | None = None,
        *,
        block_samples: int = BLOCK_SAMPLES,
        stalled_s: float = STALLED_S,
        library: Any = None,  # noqa: ANN401
    ) -> None:
        self._library = library or load_sounddevice()
        self._device = find_device("microphone", name, self._library)
        self._clock = clock
        self._block_samples = block_samples
        self._arrived: queue.SimpleQueue[_Arrived | None] = queue.SimpleQueue()
        self._end = 0.0
        self._running = False
        self._samples_a_frame = 1.0
        self._stalled_s = stalled_s
        self._hearing = True
        self._deaf_until = 0

    @property
    def name(self) -> str:
        """The device's name."""
        return self._device.name

    def blocks(self) -> Iterator[Block]:
        """What is heard from now on, until `close`.

        Raises:
            DeviceRefused: the microphone does not open.
            DeviceLost: it gave nothing for so long.
        """
        stream, channels = self._open()
        resampler = Resampler(int(stream.samplerate), channels)
        self._samples_a_frame = SAMPLE_RATE_HZ / stream.samplerate
        first = self._clock.now()
        self._end = float(first)
        self._running = False
        try:
            stream.start()
            yield from self._listen(resampler, first)
        except self._library.PortAudioError as lost:
            raise DeviceLost(name=self.name) from lost
        finally:
            with suppress(self._library.PortAudioError):
                stream.abort()
                stream.close()

    def pause(self) -> None:
        """Hear nothing until `resume`; the stream goes on."""
        self._hearing = False

    def resume(self) -> None:
        """Hear what is said from now on, and nothing that is on its way already."""
        self._deaf_until = self._clock.now()
        self._hearing = True

    def close(self) -> None:
        """End the blocks, from any thread."""
        self._arrived.put(None)

    def _listen(self, resampler: Resampler, following: int) -> Iterator[Block]:
        for arrived in iter(self._next, None):
            samples = resampler.accept(arrived.samples)
            first = following + arrived.lost
            following = first + len(samples)
            deaf = min(max(self._deaf_until - first, 0), len(samples))
            if self._hearing and deaf < len(samples):
                yield Block(first + deaf, samples[deaf:])

    def _next(self) -> _Arrived | None:
        try:
            return self._arrived.get(timeout=self._stalled_s)
        except queue.Empty:
            raise DeviceLost(name=self.name) from None

    def _open(self) -> tuple[Any, int]:
        """A stream, and its channels: what is asked for first is what most devices give."""
        own_hz, own_channels = self._device.rate_hz, min(self._device.channels_in, 2)
        refused: Exception | None = None
        for rate_hz, channels in dict.fromkeys((
            (SAMPLE_RATE_HZ, 1), (own_hz, 1), (SAMPLE_RATE_HZ, own_channels), (own_hz, own_channels),
        )):  # fmt: skip
            try:
                with self._device.opening():
                    return self._stream_at(rate_hz, channels), channels
            except (self._library.PortAudioError, ValueError) as error:
                refused = error
        raise DeviceRefused(name=self.name) from refused

    def _stream_at(self, rate_hz: int, channels: int) -> Any:  # noqa: ANN401
        return self._library.InputStream(
            samplerate=rate_hz,
            device=self._device.index,
            channels=channels,
            dtype="int16",
            blocksize=self._block_samples * rate_hz // SAMPLE_RATE_HZ,
            latency="low",
            callback=self._take,
        )

    def _take(self, data: NDArray[np.int16], frames: int, _time: object, status: Any) -> None:  # noqa: ANN401
        self._end += frames * self._samples_a_frame
        uncertain = status.input_overflow or not self._running
        lost = max(0, self._clock.now() - int(self._end)) if uncertain else 0
        self._running = True
        self._end += lost
        self._clock.hear(int(self._end))
        self._arrived.put(_Arrived(data.copy(), lost))
