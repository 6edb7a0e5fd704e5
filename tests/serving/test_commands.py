"""The command serve: the port it takes, and how it ends."""

from __future__ import annotations

import re
import signal
import socket
import subprocess
import sys
import urllib.request

import pytest

from build_tools.commands import ROOT, run

#: A shop whose site is built in a moment.
SMALL = str(ROOT / "tests" / "second_shop")


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


@pytest.mark.parametrize("stop", [signal.SIGINT, signal.SIGTERM])
def test_serve_listens_here_only_and_ends_cleanly(port: int, stop: signal.Signals) -> None:
    with subprocess.Popen(
        [sys.executable, "-m", "build_tools", "serve", "--shop", SMALL, "--port", str(port)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
        # A shell that started these tests in the background may have had Ctrl+C ignored.
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
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
