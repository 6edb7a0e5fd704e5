"""What the server answers: MkDocs' own answers, and with problems the panel in every page."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from mkdocs.livereload import LiveReloadServer

from build_tools.serving.panel import STYLE, STYLE_ADDRESS, with_panel
from build_tools.serving.trouble import Told

_HTML = "text/html"
_NOT_FOUND = "404.html"

StartResponse = Callable[..., Any]


class State:
    """What the builds have come to, for who answers.

    told: what kept the last build from its end. has_site: whether any build succeeded. sources:
    the files that a page is made from, by its address without the root.
    """

    def __init__(self) -> None:
        self.told: list[Told] = []
        self.has_site = False
        self.sources: Mapping[str, set[str]] = {}


class Pages:
    """The application of the server, around that of MkDocs."""

    def __init__(self, server: LiveReloadServer, state: State) -> None:
        self._server = server
        self._state = state
        self._root = server.mount_path

    def __call__(self, environ: dict[str, Any], start_response: StartResponse) -> Iterable[bytes]:
        """Answer one request."""
        path = environ["PATH_INFO"]
        if path == f"{self._root}{STYLE_ADDRESS}":
            start_response("200 OK", [("Content-Type", "text/css"), ("Cache-Control", "no-cache")])
            return [STYLE.read_bytes()]
        status, headers, body = self._ask(environ)
        if not _is_html(headers):
            start_response(status, headers)
            return body
        if not self._state.has_site:
            status, headers, body = self._in_place(environ, "index.html", "503 Service Unavailable")
        elif status.startswith("404"):  # MkDocs' own answer does not load anew by itself
            status, headers, body = self._in_place(environ, _NOT_FOUND, status)
        content = b"".join(body)
        if self._state.told:
            content = self._with_panel(content, path)
        start_response(status, [("Content-Type", _HTML), ("Content-Length", str(len(content)))])
        return [content]

    def _ask(self, environ: dict[str, Any]) -> tuple[str, list[tuple[str, str]], Iterable[bytes]]:
        answered: list[Any] = []
        body = self._server.serve_request(
            environ, lambda status, headers, *_: answered.extend((status, headers))
        )
        return answered[0], answered[1], body

    def _in_place(
        self, environ: dict[str, Any], name: str, status: str
    ) -> tuple[str, list[tuple[str, str]], Iterable[bytes]]:
        """Answer with another page, under a status of its own."""
        _, headers, body = self._ask({**environ, "PATH_INFO": f"{self._root}{name}"})
        return status, headers, body

    def _with_panel(self, content: bytes, path: str) -> bytes:
        address = path.removeprefix(self._root).removesuffix("index.html")
        page = with_panel(
            content.decode("utf-8"),
            self._state.told,
            self._state.sources.get(address, ()),
            self._root,
            good=self._state.has_site,
        )
        return page.encode("utf-8")


def _is_html(headers: list[tuple[str, str]]) -> bool:
    return any(
        name.lower() == "content-type" and value.startswith(_HTML) for name, value in headers
    )
