"""`mkdocs serve`: a saved source file changes the page, and a broken one is named."""

from __future__ import annotations

import shutil
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

import pytest

SECOND = Path(__file__).parents[1] / "second_shop" / "mkdocs.yml"


class Server:
    """A shop's sources in a folder of their own, and the address they are served at."""

    def __init__(self, docs: Path, address: str) -> None:
        self.docs = docs
        self.address = address

    def waits_for(self, words: str, path: str = "") -> bool:
        """Tell whether the page comes to hold the words before patience ends."""
        end = time.monotonic() + 60
        while time.monotonic() < end:
            try:
                with urlopen(f"{self.address}{path}", timeout=10) as answer:
                    if words in answer.read().decode():
                        return True
            except (URLError, ConnectionError, TimeoutError):
                pass  # the server is starting, or holds the page back until it is built
            time.sleep(0.2)
        return False


@pytest.fixture
def server(tmp_path: Path) -> Iterator[Server]:
    """Serve a copy of the small metric shop."""
    docs = tmp_path / "docs_src"
    shutil.copytree(SECOND.parent / "docs_src", docs)
    config = tmp_path / "mkdocs.yml"
    config.write_text(f"INHERIT: {SECOND.parents[2] / 'mkdocs.yml'}\ndocs_dir: docs_src\n")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [
        sys.executable,
        "-m",
        "mkdocs",
        "serve",
        "-f",
        str(config),
        "-a",
        f"127.0.0.1:{port}",
    ]
    with open(tmp_path / "output.txt", "w") as output:
        process = subprocess.Popen(command, stdout=output, stderr=output, cwd=tmp_path)
        yield Server(docs, f"http://127.0.0.1:{port}/")
        process.terminate()
        process.wait(timeout=20)


def test_a_saved_file_changes_the_page(server: Server) -> None:
    assert server.waits_for("<h1", "reference/shop/")
    shop = server.docs / "shop.yaml"
    text = shop.read_text(encoding="utf-8")
    name = text.split("name:", 1)[1].split("\n", 1)[0]
    shop.write_text(text.replace(name, " Changed Water Shop", 1), encoding="utf-8")
    assert server.waits_for("Changed Water Shop", "reference/shop/")


def test_a_broken_file_is_named_and_mending_it_brings_the_page_back(server: Server) -> None:
    assert server.waits_for("<h1", "reference/shop/")
    shop = server.docs / "shop.yaml"
    text = shop.read_text(encoding="utf-8")
    shop.write_text(text + "\nnonsense: 1\n", encoding="utf-8")
    output = server.docs.parent / "output.txt"
    end = time.monotonic() + 60
    while "unknown key" not in output.read_text() and time.monotonic() < end:
        time.sleep(0.2)
    assert 'unknown key "nonsense"' in output.read_text()
    name = text.split("name:", 1)[1].split("\n", 1)[0]
    shop.write_text(text.replace(name, " Mended Water Shop", 1), encoding="utf-8")
    assert server.waits_for("Mended Water Shop", "reference/shop/")


def test_while_serving_the_script_that_loads_a_page_anew_may_run(server: Server) -> None:
    assert server.waits_for("script-src 'self' 'wasm-unsafe-eval' 'unsafe-inline';")
    assert server.waits_for("'unsafe-inline';", "embed/hardness-setting/")
