"""`check-copy`: a copy in a folder and at an address, whole and in every way damaged."""

from __future__ import annotations

import gzip
import shutil
import socket
import threading
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import unquote

import pytest

from build_tools.commands import run
from build_tools.pages.headers import NAME, headers_for, read_rules
from build_tools.publishing import hash_list
from build_tools.publishing.media_types import MEDIA_TYPES
from tests.publishing.site import FILES, tiny_site


class Host:
    """A host of a folder at /copy/, which a test makes err.

    other: by path, the status, headers and body to send. cut: paths of which the end is missing.
    types: other media types by ending. packs: whether it compresses whatever it is asked for.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.rules = read_rules((folder / NAME).read_text("utf-8"))
        self.other: dict[str, tuple[int, dict[str, str], bytes]] = {}
        self.cut: set[str] = set()
        self.types: dict[str, str] = {}
        self.packs = False
        host = self

        class Handler(BaseHTTPRequestHandler):
            """Answers with a file, its media type and its headers."""

            def do_GET(self) -> None:
                path = unquote(self.path).removeprefix("/copy/")
                status, headers, body = host.answer(path)
                self.send_response(status)
                for name, value in headers.items():
                    self.send_header(name, value)
                self.send_header("Content-Length", str(len(body)))
                self.end_headers()
                self.wfile.write(body[:-1] if path in host.cut else body)

            def log_message(self, format: str, *arguments: object) -> None:
                """Keep the test's output clean."""

        self._server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        threading.Thread(target=self._server.serve_forever, daemon=True).start()
        self.address = f"http://127.0.0.1:{self._server.server_port}/copy"

    def answer(self, path: str) -> tuple[int, dict[str, str], bytes]:
        """Return what is sent for a path."""
        if path in self.other:
            return self.other[path]
        file = self.folder / (f"{path}index.html" if not path or path.endswith("/") else path)
        if not file.is_file():
            return 404, {}, b"nothing"
        ending, body = file.suffix, file.read_bytes()
        kind = self.types.get(ending, MEDIA_TYPES.get(ending, ("application/x-any",))[0])
        headers = {"Content-Type": kind, **headers_for(self.rules, f"/{path}")}
        if self.packs:
            return 200, {**headers, "Content-Encoding": "gzip"}, gzip.compress(body)
        return 200, headers, body

    def close(self) -> None:
        """End the host."""
        self._server.shutdown()
        self._server.server_close()


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Write the site of the own build."""
    return tiny_site(tmp_path / "own")


@pytest.fixture
def copy(site: Path, tmp_path: Path) -> Path:
    """Copy it."""
    return shutil.copytree(site, tmp_path / "copy")


@pytest.fixture
def host(copy: Path) -> Iterator[Host]:
    """Publish the copy."""
    host = Host(copy)
    yield host
    host.close()


def checked(
    place: object, site: Path, capsys: pytest.CaptureFixture[str]
) -> tuple[int, list[str], list[str]]:
    """Return the exit code of the command and the lines of both its outputs."""
    code = run(["check-copy", str(place), "--list", str(site / hash_list.NAME)])
    said = capsys.readouterr()
    return code, said.out.splitlines(), said.err.splitlines()


def test_a_whole_copy_in_a_folder(
    site: Path, copy: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    number = len(FILES) + 3  # two twins, and the headers
    assert checked(copy, site, capsys) == (
        0,
        [f"{copy} is complete and unaltered: {number} files."],
        [],
    )


def test_all_that_is_wrong_in_a_folder_is_told_at_once(
    site: Path, copy: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (copy / "learn" / "salt" / "index.html").unlink()
    (copy / "edition.json").write_text("{ }", "utf-8")
    (copy / "learn" / "more.html").write_text("<script>", "utf-8")
    # Whoever alters the copy can alter its list too: it is not asked.
    hash_list.write_list(copy)
    assert checked(copy, site, capsys) == (
        1,
        [],
        [
            "edition.json: altered",
            "learn/more.html: additional",
            "learn/salt/index.html: missing",
            "3 files are not as in the list.",
        ],
    )


def test_a_whole_copy_at_an_address(
    site: Path, host: Host, capsys: pytest.CaptureFixture[str]
) -> None:
    number = len(FILES) + 3
    told = f"{host.address} is complete and unaltered: {number} files."
    assert checked(host.address, site, capsys) == (0, [told], [])
    host.packs = True
    assert checked(f"{host.address}/", site, capsys)[::2] == (0, [])


def test_all_that_is_wrong_at_an_address_is_told_at_once(
    site: Path, copy: Path, host: Host, capsys: pytest.CaptureFixture[str]
) -> None:
    (copy / "learn" / "salt" / "index.html").write_text("Pepper", "utf-8")
    (copy / "edition.json").unlink()
    host.cut.add("search/search_index.json")
    host.other["manifest.webmanifest"] = (403, {}, b"")
    host.other["service-worker.js"] = (500, {}, b"")
    host.other["embed/embed-one/"] = (200, {"Content-Encoding": "br"}, b"")
    code, _, told = checked(host.address, site, capsys)
    assert code == 1
    assert told[0] == "edition.json: missing"
    assert told[1] == (
        'embed/embed-one/index.html: not comparable: sent with the compression "br", which was '
        "not asked for"
    )
    assert told[2:4] == [
        "learn/salt/index.html: altered",
        "manifest.webmanifest: not sent (the host answers 403 Forbidden)",
    ]
    assert told[4].startswith("search/search_index.json: cut off on the way (")
    assert told[5:] == [
        "service-worker.js: not sent (the host answers 500 Internal Server Error)",
        "6 files are not as in the list.",
    ]


def test_headers_that_matter_are_warnings(
    site: Path, host: Host, capsys: pytest.CaptureFixture[str]
) -> None:
    host.types[".wasm"] = "application/octet-stream"
    host.rules["/runtime/*"]["Cache-Control"] = "max-age=60"
    del host.rules["/learn/*"]["Content-Security-Policy"]
    host.other["no-such-page-in-this-handbook/"] = (200, {}, b"Home")
    code, _, told = checked(host.address, site, capsys)
    assert code == 0
    wanted = read_rules((site / NAME).read_text("utf-8"))["/learn/*"]["Content-Security-Policy"]
    assert told == [
        'Warning: 1 .wasm file is sent with the media type "application/octet-stream" (expected '
        '"application/wasm")',
        f'Warning: Content-Security-Policy: 1 file is sent with "nothing" (expected "{wanted}"), '
        "such as learn/salt/index.html",
        'Warning: Cache-Control: 4 files are sent with "max-age=60" (expected "public, '
        'max-age=31536000, immutable"), such as runtime/pyodide-1/python.mjs',
        "Warning: an address without a page is answered with 200 (expected 404)",
    ]


def test_a_redirect_to_another_host_is_a_warning(
    site: Path, host: Host, capsys: pytest.CaptureFixture[str]
) -> None:
    other = Host(host.folder)
    host.other["edition.json"] = (302, {"Location": f"{other.address}/edition.json"}, b"")
    code, _, told = checked(host.address, site, capsys)
    other.close()
    place = other.address.removeprefix("http://").removesuffix("/copy")
    assert (code, told) == (
        0,
        [
            f"Warning: files come from another host, {place}: the policy lets pages load none "
            "from there"
        ],
    )


def test_without_the_file_of_headers_only_files_and_types_are_compared(
    site: Path, host: Host, capsys: pytest.CaptureFixture[str]
) -> None:
    (site / NAME).unlink()
    host.rules["/runtime/*"]["Cache-Control"] = "max-age=60"
    code, _, told = checked(host.address, site, capsys)
    assert code == 0
    assert told == [
        'Warning: no file "_headers" stands beside the list, so headers were not compared'
    ]


def test_nothing_that_answers_is_one_sentence(
    site: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        address = f"http://127.0.0.1:{free.getsockname()[1]}"
    code, _, told = checked(address, site, capsys)
    assert code == 1
    assert len(told) == 1
    assert told[0].startswith(f"Nothing answers at {address}/: ")


@pytest.mark.parametrize(
    ("place", "text", "told"),
    [
        ("nowhere", None, "nowhere is neither a folder nor an address that begins with http"),
        ("ftp://a", None, "ftp://a is neither a folder nor an address that begins with http"),
        (".", "no list", "SHA256SUMS is no list of hashes: line 1 is no hash of 64 digits"),
    ],
)
def test_what_cannot_be_compared_is_one_sentence(
    site: Path, capsys: pytest.CaptureFixture[str], place: str, text: str | None, told: str
) -> None:
    if text:
        (site / hash_list.NAME).write_text(text, "utf-8")
    code, _, (sentence,) = checked(place, site, capsys)
    assert code == 1
    assert told in sentence
