"""The host that measurements use: what it sends, counts and hears."""

from __future__ import annotations

import gzip
from collections.abc import Iterator
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import Request, urlopen

import pytest

from build_tools.benchmarks.host import Host, Link, serve

TEXT = b"a word that comes again and again, " * 1000


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Make a site of two files: one that compresses well, and one that does not at all."""
    folder = tmp_path / "site"
    folder.mkdir()
    (folder / "long.txt").write_bytes(TEXT)
    (folder / "index.html").write_bytes(b"x")
    return folder


@pytest.fixture(params=[None, Link(80, 1)], ids=["no limit", "a link"])
def host(request: pytest.FixtureRequest, site: Path, tmp_path: Path) -> Iterator[Host]:
    """Serve the site as gzip, over each kind of link."""
    with serve(site, tmp_path / "twins", encoding="gzip", link=request.param) as host:
        yield host


def test_a_file_travels_compressed_and_is_counted(host: Host) -> None:
    with urlopen(f"{host.address}long.txt") as answer:
        sent = answer.read()
        assert answer.headers["Content-Encoding"] == "gzip"
        assert answer.headers["Cache-Control"] == "max-age=31536000, immutable"
    assert gzip.decompress(sent) == TEXT
    assert host.bytes_sent == len(sent) < len(TEXT) / 10


def test_a_file_that_does_not_compress_travels_as_it_is(host: Host) -> None:
    with urlopen(host.address) as answer:
        assert answer.headers["Content-Encoding"] is None
        assert answer.headers["Cache-Control"] == "no-cache"
        assert answer.read() == b"x"


def test_a_question_for_the_headers_sends_no_file(host: Host) -> None:
    with urlopen(Request(f"{host.address}long.txt", method="HEAD")) as answer:
        assert answer.read() == b""
        assert int(answer.headers["Content-Length"]) > 0
    assert host.bytes_sent == 0


def test_what_is_not_there_is_said(host: Host) -> None:
    with pytest.raises(HTTPError) as told:
        urlopen(f"{host.address}none.txt")
    with told.value:
        assert told.value.code == 404


def test_a_message_is_heard_before_it_is_answered(host: Host) -> None:
    heard = []
    host.hear = heard.append
    with urlopen(host.address, data=b'{"type": "begins"}') as answer:
        assert answer.status == 204
    assert heard == [{"type": "begins"}]


def test_brotli_is_the_smallest_and_no_encoding_is_the_file(site: Path, tmp_path: Path) -> None:
    sizes = {}
    for encoding in ("br", "gzip", ""):
        with (
            serve(site, tmp_path / "twins", encoding=encoding) as host,
            urlopen(f"{host.address}long.txt") as answer,
        ):
            sizes[encoding] = len(answer.read())
    assert sizes["br"] < sizes["gzip"] < sizes[""] == len(TEXT)
