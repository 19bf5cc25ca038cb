"""WAV files and streams as 16 kHz mono, read as they come: any rate, channels and width, also from a pipe."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import BinaryIO

import numpy as np
from numpy.typing import NDArray

from assistant.device_errors import WavEmpty, WavUnreadable, WavUnsupported
from models.errors import RateUnusable
from models.recognising import Samples
from models.resampling import Resampler, unpack

_WHOLE, _FLOAT, _EXTENSIBLE = 1, 3, 0xFFFE
_PIECE_S = 0.1
_LONGEST_FORMAT = 1_000


@dataclass(frozen=True, slots=True)
class Format:
    """How the samples lie in the data: channels interleaved, `bits` each, whole numbers or floating point."""

    floating: bool
    channels: int
    rate_hz: int
    bits: int

    @property
    def frame_bytes(self) -> int:
        """Bytes of one sample of all channels."""
        return self.channels * self.bits // 8

    def samples(self, data: bytes) -> NDArray[np.generic]:
        """Interleaved samples of whole frames."""
        return np.frombuffer(data, f"<f{self.bits // 8}") if self.floating else unpack(data, self.bits // 8)


def read_wav(stream: BinaryIO, path: str) -> Iterator[Samples]:
    """Pieces of about 0.1 s, as soon as each is there; a stream that says no length is read to its end.

    Args:
        stream: open at its beginning; it need not seek.
        path: what the errors call it.

    Raises:
        WavUnreadable, WavUnsupported, WavEmpty: at the first piece.
    """
    form, length = _read_header(stream, path)
    try:
        resampler = Resampler(form.rate_hz, form.channels)
    except RateUnusable as unusable:
        raise WavUnsupported(path=path, encoding=f"{form.rate_hz} Hz") from unusable
    given = 0
    for data in _pieces(stream, form, length):
        samples = resampler.accept(form.samples(data))
        given += len(samples)
        yield samples
    rest = resampler.finish()
    if not given + len(rest):
        raise WavEmpty(path=path)
    yield rest


def _pieces(stream: BinaryIO, form: Format, length: int) -> Iterator[bytes]:
    piece = max(1, int(form.rate_hz * _PIECE_S)) * form.frame_bytes
    while length > 0 and (data := _read(stream, min(piece, length))):
        length -= len(data)
        whole = len(data) - len(data) % form.frame_bytes
        if whole:
            yield data[:whole]


def _read_header(stream: BinaryIO, path: str) -> tuple[Format, int]:
    """The format, and the length of the data in bytes, with the stream at its first byte."""
    opening = _read(stream, 12)
    if not opening:
        raise WavEmpty(path=path)
    if opening[:4] != b"RIFF" or opening[8:] != b"WAVE":
        raise WavUnreadable(path=path)
    form: Format | None = None
    while len(head := _read(stream, 8)) == 8:
        size = int.from_bytes(head[4:], "little")
        if head[:4] == b"data" and form is not None:
            return form, _length(size)
        body = _skip(stream, size + size % 2)
        if head[:4] == b"fmt ":
            form = _format(body, path)
    raise WavUnreadable(path=path)


def _length(size: int) -> int:
    """Whoever writes into a pipe cannot know the length: 0 and anything from 2 GiB up mean "to the end"."""
    return size if 0 < size < 0x7FFFFF00 else 1 << 62


def _format(body: bytes, path: str) -> Format:
    if len(body) < 16:
        raise WavUnreadable(path=path)
    tag, channels = (int.from_bytes(body[at : at + 2], "little") for at in (0, 2))
    rate_hz = int.from_bytes(body[4:8], "little")
    bits = int.from_bytes(body[14:16], "little")
    if tag == _EXTENSIBLE and len(body) >= 26:
        tag = int.from_bytes(body[24:26], "little")
    if not channels or not rate_hz:
        raise WavUnreadable(path=path)
    if bits not in {_WHOLE: {8, 16, 24, 32}, _FLOAT: {32, 64}}.get(tag, set()):
        raise WavUnsupported(path=path, encoding=f"{_NAMES.get(tag, tag)}, {bits} bit")
    return Format(tag == _FLOAT, channels, rate_hz, bits)


_NAMES = {1: "PCM", 2: "ADPCM", 3: "float", 6: "A-law", 7: "µ-law", 17: "ADPCM", 85: "MP3"}


def _skip(stream: BinaryIO, size: int) -> bytes:
    """Pass so many bytes; the first ones, which are all of a format."""
    opening = _read(stream, min(size, _LONGEST_FORMAT))
    to_go = size - len(opening)
    while to_go > 0 and (passed := _read(stream, min(to_go, 1 << 20))):
        to_go -= len(passed)
    return opening


def _read(stream: BinaryIO, size: int) -> bytes:
    """So many bytes, or fewer at the end; a pipe gives them in any portions."""
    parts: list[bytes] = []
    while size > 0 and (part := stream.read(min(size, 1 << 20))):
        parts.append(part)
        size -= len(part)
    return b"".join(parts)


def in_blocks(pieces: Iterator[Samples], block_samples: int) -> Iterator[Samples]:
    """The same samples in blocks of one size; the last may be shorter."""
    held = np.zeros(0, np.int16)
    for piece in pieces:
        held = np.concatenate((held, piece))
        full = len(held) - len(held) % block_samples
        for begin in range(0, full, block_samples):
            yield held[begin : begin + block_samples]
        held = held[full:]
    if len(held):
        yield held
