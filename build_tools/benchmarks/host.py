"""A web host on this machine, as good or as poor as a measurement wants it.

It can send compressed twins in the place of files, counts the bytes it sends, hears what pages
tell it, and can be reached through one slow pipe that all its connections share.
"""

from __future__ import annotations

import json
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any, ClassVar

from build_tools.browser.compressed import brotli_twin, gzip_twin

TWINS = {"br": brotli_twin, "gzip": gzip_twin}

# Small, so that all connections take turns.
CHUNK = 4096


@dataclass(frozen=True)
class Link:
    """A network: how much goes through it, and how long a question and its answer travel."""

    megabits_per_second: float
    round_trip_ms: float


class Host:
    """A running host: its address, what it has sent so far, and who hears a page's messages."""

    def __init__(self, folder: Path, cache: Path, encoding: str, link: Link | None) -> None:
        self.folder = folder
        self.encoding = encoding
        self.link = link
        self.address = ""
        self.bytes_sent = 0
        self.hear: Callable[[dict[str, Any]], None] = lambda message: None
        self._files = {
            path: self._smallest(path, cache) for path in folder.rglob("*") if path.is_file()
        }
        self._turn = threading.Lock()
        self._pipe_free = 0.0

    def file_for(self, path: Path) -> tuple[Path, str] | None:
        """Return the file to send for a path, and its encoding."""
        return self._files.get(path)

    def round_trip(self) -> None:
        """Wait as long as the link takes to a host and back."""
        if self.link:
            time.sleep(self.link.round_trip_ms / 1000)

    def through_pipe(self, size: int) -> None:
        """Count bytes that are sent, and wait until they have come through the link."""
        with self._turn:
            self.bytes_sent += size
            if not self.link:
                return
            seconds = size * 8 / 1_000_000 / self.link.megabits_per_second
            self._pipe_free = max(self._pipe_free, time.monotonic()) + seconds
            wait = self._pipe_free - time.monotonic()
        time.sleep(max(0, wait))

    def _smallest(self, path: Path, cache: Path) -> tuple[Path, str]:
        """Return the file or its compressed twin."""
        if self.encoding:
            twin = TWINS[self.encoding](path, cache)
            if twin.stat().st_size < path.stat().st_size:
                return twin, self.encoding
        return path, ""


@contextmanager
def serve(
    folder: Path, cache: Path, *, encoding: str = "", link: Link | None = None
) -> Iterator[Host]:
    """Serve a folder over loopback.

    cache: where compressed twins are kept. encoding: "br", "gzip", or nothing for a host that
    sends files as they are.
    """
    host = Host(folder, cache, encoding, link)
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Handler, host=host))
    server.daemon_threads = True
    host.address = f"http://127.0.0.1:{server.server_port}/"
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield host
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


class _Handler(SimpleHTTPRequestHandler):
    """Answers one connection; files keep for ever, as their names change with their content."""

    protocol_version = "HTTP/1.1"
    extensions_map: ClassVar[dict[str, str]] = {
        **SimpleHTTPRequestHandler.extensions_map,
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
    }

    def __init__(self, *arguments: object, host: Host) -> None:
        self._host = host
        super().__init__(*arguments, directory=str(host.folder))

    def setup(self) -> None:
        """Let a new connection take its time."""
        super().setup()
        self._host.round_trip()

    def handle(self) -> None:
        """Answer until the browser goes away, which it may do at any time."""
        with suppress(ConnectionError):
            super().handle()

    def do_HEAD(self) -> None:
        """Answer with the headers."""
        self._send(with_body=False)

    def do_GET(self) -> None:
        """Answer with the file."""
        self._send(with_body=True)

    def do_POST(self) -> None:
        """Let a page's message be heard before it goes on."""
        content = self.rfile.read(int(self.headers["Content-Length"]))
        self._host.hear(json.loads(content))
        self.send_response(204)
        self.end_headers()

    def _send(self, *, with_body: bool) -> None:
        self._host.round_trip()
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        found = self._host.file_for(path)
        if found is None:
            self.send_error(404)
            return
        file, encoding = found
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Length", str(file.stat().st_size))
        if encoding:
            self.send_header("Content-Encoding", encoding)
        keeps = "no-cache" if path.suffix == ".html" else "max-age=31536000, immutable"
        self.send_header("Cache-Control", keeps)
        self.end_headers()
        if with_body:
            self._send_body(file)

    def _send_body(self, file: Path) -> None:
        with file.open("rb") as content:
            while chunk := content.read(CHUNK if self._host.link else 1 << 20):
                self._host.through_pipe(len(chunk))
                self.wfile.write(chunk)

    def log_message(self, format: str, *arguments: object) -> None:
        """Keep the output for the table."""
