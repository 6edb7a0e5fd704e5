"""A web host for one test, which can lose its network and put up another edition."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import ClassVar


class Host:
    """Serves a folder at one address for as long as the test lasts.

    Without a network it hangs up, and so it does for whatever begins with a lost path. It remembers
    what was asked for.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.has_network = True
        self.lost = "nothing"
        self.asked: list[str] = []
        self._server = ThreadingHTTPServer(("127.0.0.1", 0), self._handler())
        threading.Thread(target=self._server.serve_forever, daemon=True).start()

    @property
    def address(self) -> str:
        """The address of the folder."""
        return f"http://127.0.0.1:{self._server.server_port}/"

    def close(self) -> None:
        """End the host."""
        self._server.shutdown()
        self._server.server_close()

    def _handler(self) -> type[SimpleHTTPRequestHandler]:
        host = self

        class Handler(SimpleHTTPRequestHandler):
            """Answers from the host's present folder."""

            extensions_map: ClassVar[dict[str, str]] = {
                **SimpleHTTPRequestHandler.extensions_map,
                ".mjs": "text/javascript",
                ".wasm": "application/wasm",
            }

            def __init__(self, *arguments: object) -> None:
                super().__init__(*arguments, directory=str(host.folder))

            def handle(self) -> None:
                if host.has_network:
                    super().handle()

            def do_GET(self) -> None:
                asked = self.path.lstrip("/")
                host.asked.append(asked)
                if not asked.startswith(host.lost):
                    super().do_GET()

            def copyfile(self, source: object, outputfile: object) -> None:
                try:
                    super().copyfile(source, outputfile)
                except ConnectionError:
                    pass  # the page has turned away

            def log_message(self, format: str, *arguments: object) -> None:
                """Keep the test's output clean."""

        return Handler


@contextmanager
def hosted(folder: Path) -> Iterator[Host]:
    """Host a folder."""
    host = Host(folder)
    try:
        yield host
    finally:
        host.close()
