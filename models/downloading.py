"""One file over HTTP, growing beside its final place: a broken connection costs only what is to go."""

import hashlib
import http.client
import json
import ssl
import urllib.error
import urllib.request
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from models.errors import BrokenOff, Offline, ServerRefused, SizeWrong

TIMEOUT_S = 30.0
MOST_BYTES = 4_000_000_000
"""Where no size is known, nothing larger than this is taken."""

_CHUNK_BYTES = 1 << 16
_PARTIAL_CONTENT = 206
_RANGE_NOT_SATISFIABLE = 416


@dataclass(frozen=True, slots=True)
class Received:
    """How far a download is; `total_bytes` and `percent` are None where the server does not tell the size."""

    name: str
    received_bytes: int
    total_bytes: int | None

    @property
    def percent(self) -> int | None:
        """In whole percent, rounded down."""
        return 100 * self.received_bytes // self.total_bytes if self.total_bytes else None


Progress = Callable[[Received], None]


@dataclass(frozen=True, slots=True)
class Download:
    """What is to be fetched.

    Attributes:
        name: the model's, for the problems.
        url: http or https.
        part: the file that grows; an earlier try is gone on from where the server allows.
        size_bytes: what must come; None where it is not known.
        cure: the command that goes on after a broken connection.
    """

    name: str
    url: str
    part: Path
    size_bytes: int | None
    cure: str


def download(wanted: Download, progress: Progress) -> str:
    """Fetch the file into `wanted.part`; returns its SHA-256 in hex.

    `progress` is called once at each 10 %, or each 10 MB where the size is not known.

    Raises:
        Offline: when the server cannot be reached.
        ServerRefused: on any answer but success.
        SizeWrong: when more would come or came than is right; the part is removed.
        BrokenOff: when less came; the part is kept for the next try.
        OSError: when the disk refuses.
    """
    held = _held(wanted)
    if held and held == wanted.size_bytes:
        with wanted.part.open("rb") as whole:
            return hashlib.file_digest(whole, "sha256").hexdigest()
    response = _open(wanted, held)
    if response is None:
        forget_part(wanted.part)
        held, response = 0, _open(wanted, 0)
    if response is None:
        raise ServerRefused(name=wanted.name, url=wanted.url, status=str(_RANGE_NOT_SATISFIABLE))
    with response:
        if response.status != _PARTIAL_CONTENT or not _continues(response, held):
            held = 0
        total = _total(wanted, response, held)
        _note_validator(wanted, response)
        return _receive(wanted, response, held, total, progress)


def forget_part(part: Path) -> None:
    """Remove an unfinished download."""
    part.unlink(missing_ok=True)
    _validator_path(part).unlink(missing_ok=True)


def _opener() -> urllib.request.OpenerDirector:
    """Knows http and https alone, so that no address can read a file of this machine."""
    opener = urllib.request.OpenerDirector()
    for handler in (
        urllib.request.ProxyHandler,
        urllib.request.HTTPHandler,
        urllib.request.HTTPSHandler,
        urllib.request.HTTPRedirectHandler,
        urllib.request.HTTPErrorProcessor,
        urllib.request.HTTPDefaultErrorHandler,
        urllib.request.UnknownHandler,
    ):
        opener.add_handler(handler())
    return opener


def _open(wanted: Download, held: int) -> http.client.HTTPResponse | None:
    """The server's answer; None where it has nothing from byte `held` on."""
    headers = {"Accept-Encoding": "identity", "User-Agent": "roundcaller"}
    if held:
        headers |= {"Range": f"bytes={held}-", "If-Range": _validator(wanted)}
    request = urllib.request.Request(wanted.url, headers=headers)  # noqa: S310 - the opener knows http alone
    host = urlsplit(wanted.url).netloc
    try:
        response: http.client.HTTPResponse = _opener().open(request, timeout=TIMEOUT_S)
    except urllib.error.HTTPError as refusal:
        with refusal:
            if held and refusal.code == _RANGE_NOT_SATISFIABLE:
                return None
        raise ServerRefused(name=wanted.name, url=wanted.url, status=str(refusal.code)) from None
    except (OSError, http.client.HTTPException) as failure:
        if isinstance(getattr(failure, "reason", None), ssl.SSLError):
            raise ServerRefused(name=wanted.name, url=wanted.url, status="TLS") from failure
        raise Offline(name=wanted.name, host=host) from failure
    return response


def _continues(response: http.client.HTTPResponse, held: int) -> bool:
    return response.headers.get("Content-Range", "").startswith(f"bytes {held}-")


def _total(wanted: Download, response: http.client.HTTPResponse, held: int) -> int | None:
    """The whole size, as known before or as the server says."""
    length = response.headers.get("Content-Length", "")
    offered = held + int(length) if length.isdecimal() else None
    expected = wanted.size_bytes
    if offered is not None and offered != (expected or min(offered, MOST_BYTES)):
        forget_part(wanted.part)
        raise SizeWrong(name=wanted.name, expected=str(expected or MOST_BYTES), actual=str(offered))
    return expected or offered


def _receive(
    wanted: Download, response: http.client.HTTPResponse, held: int, total: int | None, progress: Progress
) -> str:
    hasher = hashlib.sha256()
    with wanted.part.open("r+b" if held else "wb") as part:
        while held > part.tell() and (known := part.read(min(_CHUNK_BYTES, held - part.tell()))):
            hasher.update(known)
        received = held
        while chunk := _read(response):
            part.write(chunk)
            hasher.update(chunk)
            before, received = received, received + len(chunk)
            if received > (total or MOST_BYTES):
                forget_part(wanted.part)
                raise SizeWrong(name=wanted.name, expected=str(total or MOST_BYTES), actual=str(received))
            if _milestone(before, total) != _milestone(received, total):
                progress(Received(wanted.name, received, total))
    if total is not None and received < total:
        raise BrokenOff(name=wanted.name, received=str(received), expected=str(total), cure=wanted.cure)
    return hasher.hexdigest()


def _read(response: http.client.HTTPResponse) -> bytes:
    """The next bytes; none at the end, and none where the connection breaks."""
    try:
        return response.read(_CHUNK_BYTES)
    except (OSError, http.client.HTTPException):
        return b""


def _milestone(received: int, total: int | None) -> int:
    return 10 * received // total if total else received // 10_000_000


def _validator_path(part: Path) -> Path:
    return part.with_name(part.name + ".json")


def _note_validator(wanted: Download, response: http.client.HTTPResponse) -> None:
    """Remember which version of the file this is; a weak entity tag will not do (RFC 9110, 13.1.5)."""
    tag = response.headers.get("ETag", "")
    validator = response.headers.get("Last-Modified", "") if tag.startswith("W/") or not tag else tag
    _validator_path(wanted.part).write_text(json.dumps({"url": wanted.url, "validator": validator}), "utf-8")


def _validator(wanted: Download) -> str:
    try:
        noted = json.loads(_validator_path(wanted.part).read_text("utf-8"))
        return str(noted["validator"]) if noted["url"] == wanted.url else ""
    except (OSError, ValueError, KeyError, TypeError):
        return ""


def _held(wanted: Download) -> int:
    """How many bytes of an earlier try can be gone on from: none where it may be another file's."""
    return wanted.part.stat().st_size if wanted.part.is_file() and _validator(wanted) else 0
