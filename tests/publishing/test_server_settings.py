"""The container's web server, run with the very settings that are made for it."""

from __future__ import annotations

import http.client
import os
import socket
import subprocess
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from build_tools.pages.headers import NAME, headers_for, read_rules
from build_tools.publishing.copy_at_address import compare
from build_tools.publishing.hash_list import NAME as LIST
from build_tools.publishing.hash_list import files_of, read_list
from build_tools.publishing.media_types import MEDIA_TYPES
from build_tools.publishing.server_settings import server_settings
from build_tools.set_up.web_server import find
from tests.pages.conftest import SECOND
from tests.publishing.site import tiny_site

PROGRAM = find(Path(__file__).parents[2])
# A build machine has it, or the test command has failed before; elsewhere it may be missing.
pytestmark = pytest.mark.skipif(
    PROGRAM is None and os.environ.get("CI") != "true",
    reason="caddy is not installed: the tests of its settings are left out",
)
PATIENCE = 60


class Server:
    """A running server, asked without any help: no redirect is followed, nothing is unpacked."""

    def __init__(self, port: int) -> None:
        self.port = port
        self.address = f"http://127.0.0.1:{port}/"

    def ask(self, path: str, **headers: str) -> tuple[int, dict[str, str], bytes]:
        """Return the status, the headers and the body for a path."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE)
        named = {name.replace("_", "-"): value for name, value in headers.items()}
        connection.request("GET", path, headers=named)
        answer = connection.getresponse()
        body = answer.read()
        connection.close()
        return answer.status, dict(answer.getheaders()), body


@contextmanager
def serving(site: Path, settings: Path) -> Iterator[Server]:
    """Run the server with the settings for a site."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    settings.write_text(server_settings(site, folder=str(site), port=port), "utf-8")
    command = [PROGRAM, "run", "--config", str(settings), "--adapter", "caddyfile"]
    with (settings.parent / "log").open("wb") as log:
        places = {"XDG_CONFIG_HOME": settings.parent, "XDG_DATA_HOME": settings.parent}
        process = subprocess.Popen(command, stdout=log, stderr=log, env={**os.environ, **places})
        try:
            _wait_for(port, process)
            yield Server(port)
        finally:
            process.terminate()
            process.wait(timeout=PATIENCE)


def _wait_for(port: int, process: subprocess.Popen[bytes]) -> None:
    end = time.monotonic() + PATIENCE
    while process.poll() is None and time.monotonic() < end:
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", port)) == 0:
                return
        time.sleep(0.1)
    raise AssertionError("the server did not start")


@pytest.fixture(scope="module")
def server(built: Callable[[Path], Path], tmp_path_factory: pytest.TempPathFactory) -> Iterator:
    """Serve the built second shop."""
    site = built(SECOND)
    with serving(site, tmp_path_factory.mktemp("server") / "Caddyfile") as running:
        yield site, running


def test_a_built_site_is_sent_whole_and_as_its_file_of_headers_says(
    server: tuple[Path, Server],
) -> None:
    """The comparison of `check-copy` covers every file: hashes, media types, all headers."""
    site, running = server
    listed = read_list((site / LIST).read_text("utf-8"))
    rules = read_rules((site / NAME).read_text("utf-8"))
    found = compare(running.address, listed, rules)
    assert found.problems == []
    assert found.warnings == []


@pytest.fixture
def tiny(tmp_path: Path) -> Path:
    """Write the tiny site."""
    return tiny_site(tmp_path / "site")


def test_each_path_gets_its_rule_and_its_media_type(tiny: Path) -> None:
    rules = read_rules((tiny / NAME).read_text("utf-8"))
    with serving(tiny, tiny.parent / "Caddyfile") as running:
        for name, path in files_of(tiny):
            if name == NAME:
                continue
            address = "/" + name.removesuffix("index.html").replace(" ", "%20")
            status, headers, body = running.ask(address)
            assert (status, body) == (200, path.read_bytes()), name
            for header, value in headers_for(rules, f"/{name.removesuffix('index.html')}").items():
                assert headers[header] == value, name
            types = MEDIA_TYPES.get(path.suffix)
            assert types is None or headers["Content-Type"].split(";")[0] in types, name
            assert "Etag" in headers or "ETag" in headers


def test_large_files_are_sent_as_their_twins_and_pages_compressed(tiny: Path) -> None:
    with serving(tiny, tiny.parent / "Caddyfile") as running:
        wasm = tiny / "runtime/pyodide-1/python.wasm"
        for coding, ending in (("br", ".br"), ("gzip", ".gz")):
            _, headers, body = running.ask("/runtime/pyodide-1/python.wasm", Accept_Encoding=coding)
            assert headers["Content-Encoding"] == coding
            assert headers["Content-Type"] == "application/wasm"
            assert body == wasm.with_name(wasm.name + ending).read_bytes()
            assert headers["Vary"] == "Accept-Encoding"
        _, headers, body = running.ask("/", Accept_Encoding="gzip")
        assert headers["Content-Encoding"] == "gzip"
        assert len(body) < len((tiny / "index.html").read_bytes())


def test_what_a_browser_has_is_not_sent_again(tiny: Path) -> None:
    with serving(tiny, tiny.parent / "Caddyfile") as running:
        _, headers, _ = running.ask("/learn/salt/")
        tag = headers.get("Etag") or headers["ETag"]
        assert running.ask("/learn/salt/", If_None_Match=tag)[0] == 304


def test_a_wrong_address_gets_the_page_for_it_and_nobody_keeps_it(tiny: Path) -> None:
    with serving(tiny, tiny.parent / "Caddyfile") as running:
        for path in ("/nothing/", "/runtime/pyodide-1/nothing.js", f"/{NAME}", "/../Caddyfile"):
            status, headers, body = running.ask(path)
            assert status == 404, path
            assert b"Not found" in body, path
            assert headers["Cache-Control"] == "no-cache", path
            assert "frame-ancestors 'none'" in headers["Content-Security-Policy"], path
        status, headers, _ = running.ask("/learn/salt")
        assert (status, headers["Location"]) == (308, "/learn/salt/")


def test_a_site_in_a_folder_of_its_host_is_served_there(tmp_path: Path) -> None:
    site = tiny_site(tmp_path / "site", root="/handbook/")
    with serving(site, tmp_path / "Caddyfile") as running:
        status, headers, body = running.ask("/handbook/learn/salt/")
        assert (status, body) == (200, (site / "learn/salt/index.html").read_bytes())
        assert headers["Cache-Control"] == "no-cache"
        status, headers, _ = running.ask("/handbook/runtime/pyodide-1/python.mjs")
        assert headers["Cache-Control"] == "public, max-age=31536000, immutable"
        status, headers, _ = running.ask("/")
        assert (status, headers["Location"]) == (302, "/handbook/")
        assert running.ask("/learn/salt/")[0] == 404
        rules = read_rules((site / NAME).read_text("utf-8"))
        listed = read_list((site / LIST).read_text("utf-8"))
        found = compare(f"{running.address}handbook", listed, rules)
        assert (found.problems, found.warnings) == ([], [])
