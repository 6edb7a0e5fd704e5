"""The commands as they run inside the environment."""

from __future__ import annotations

import re
import signal
import socket
import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest

from build_tools.commands import run


@pytest.fixture
def port() -> int:
    """A port that is free now."""
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        return listener.getsockname()[1]


def test_a_taken_port_is_told_before_anything_is_built(capsys: pytest.CaptureFixture[str]) -> None:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port = listener.getsockname()[1]
        assert run(["serve", "--port", str(port)]) == 1
    assert capsys.readouterr() == (
        "",
        f"Port {port} is taken by another program: stop that one, or add --port {port + 1}.\n",
    )


def test_a_port_that_is_none_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["serve", "--port", "70000"]) == 1
    assert capsys.readouterr().err == (
        "Invalid value for '--port': 70000 is not in the range 1<=x<=65535.\n"
    )


def test_an_unknown_option_is_one_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["build", "--outptu", "x"]) == 1
    assert capsys.readouterr().err == "No such option '--outptu'. Did you mean '--output'?\n"


def test_a_folder_with_other_things_in_it_is_never_emptied(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    photo = tmp_path / "photo.jpg"
    photo.write_bytes(b"dear to someone")
    assert run(["build", "--output", str(tmp_path)]) == 1
    assert photo.read_bytes() == b"dear to someone"
    assert capsys.readouterr().err == (
        f"The folder {tmp_path} holds something other than a built handbook, and a build empties "
        "its folder: name a new or an empty one.\n"
    )


def test_build_writes_a_site_and_writes_it_again(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site = tmp_path / "site"
    for _ in range(2):
        assert run(["build", "--output", str(site)]) == 0
        assert capsys.readouterr().out == f"The handbook is in {site}\n"
        assert (site / "index.html").is_file()
        (site / "left-over.html").write_text("from an earlier edition")
    assert run(["build", "--output", str(site)]) == 0
    assert not (site / "left-over.html").exists()


def test_check_finds_no_problem_in_the_handbook(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["check"]) == 0
    assert capsys.readouterr().out == "No problems found.\n"


@pytest.mark.parametrize("stop", [signal.SIGINT, signal.SIGTERM])
def test_serve_listens_here_only_and_ends_cleanly(port: int, stop: signal.Signals) -> None:
    with subprocess.Popen(
        [sys.executable, "-m", "build_tools", "serve", "--port", str(port)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    ) as serving:
        said = ""
        while "Serving on" not in said and (line := serving.stderr.readline()):
            said += line
        address = re.search(r"Serving on (http://127\.0\.0\.1:\d+\S*)", said).group(1)
        with urllib.request.urlopen(address) as answer:
            assert b"livereload" in answer.read()
        serving.send_signal(stop)
        said += serving.stderr.read()
    assert serving.returncode == 0
    assert "Traceback" not in said
