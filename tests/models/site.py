"""A web server on this machine with the faults that a real one may have."""

import threading
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Self


@dataclass
class Behaviour:
    """What the server does with the next requests.

    Attributes:
        content: what it has.
        status: other than 200 refuses everything.
        ranges: whether it can go on from a byte.
        tag: entity tag; "" sends none.
        breaks_after: bytes of a body after which the connection ends, None for never.
        claimed_length: a Content-Length other than the true one; "" sends none.
        redirects: the first request is sent on to another path.
    """

    content: bytes = b""
    status: int = 200
    ranges: bool = True
    tag: str = '"first"'
    breaks_after: int | None = None
    claimed_length: str | None = None
    redirects: bool = False


class Site:
    """Serves one file; a context manager that ends with its thread."""

    def __init__(self, content: bytes) -> None:
        self.behaviour = Behaviour(content)
        self.asked: list[str | None] = []
        site = self

        class Handler(BaseHTTPRequestHandler):
            def do_GET(self) -> None:
                site.answer(self)

            def log_message(self, *_: object) -> None:
                """Quiet."""

        self._server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self._thread = threading.Thread(target=self._server.serve_forever, kwargs={"poll_interval": 0.01})
        self.url = f"http://127.0.0.1:{self._server.server_port}/model.zip"

    def __enter__(self) -> Self:
        self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        self._server.shutdown()
        self._thread.join()
        self._server.server_close()

    def answer(self, request: BaseHTTPRequestHandler) -> None:
        """One request, with its Range header noted."""
        does = self.behaviour
        self.asked.append(request.headers.get("Range"))
        if does.redirects and request.path != "/elsewhere":
            request.send_response(302)
            request.send_header("Location", "/elsewhere")
            request.end_headers()
            return
        if does.status != 200:
            request.send_error(does.status)
            return
        self._send(request, does)

    def _send(self, request: BaseHTTPRequestHandler, does: Behaviour) -> None:
        begin = self._begin(request, does)
        if begin is not None and begin >= len(does.content):
            request.send_error(416)
            return
        body = does.content[begin or 0 :]
        request.send_response(200 if begin is None else 206)
        if begin is not None:
            size = len(does.content)
            request.send_header("Content-Range", f"bytes {begin}-{size - 1}/{size}")
        if does.tag:
            request.send_header("ETag", does.tag)
        length = str(len(body)) if does.claimed_length is None else does.claimed_length
        if length:
            request.send_header("Content-Length", length)
        request.end_headers()
        request.wfile.write(body[: does.breaks_after])

    @staticmethod
    def _begin(request: BaseHTTPRequestHandler, does: Behaviour) -> int | None:
        wished = request.headers.get("Range")
        if wished is None or not does.ranges or request.headers.get("If-Range") != does.tag:
            return None
        return int(wished.removeprefix("bytes=").rstrip("-"))


@dataclass
class Lines:
    """A progress that remembers every call."""

    percents: list[int | None] = field(default_factory=list)
    received: list[int] = field(default_factory=list)

    def __call__(self, received) -> None:
        self.percents.append(received.percent)
        self.received.append(received.received_bytes)
