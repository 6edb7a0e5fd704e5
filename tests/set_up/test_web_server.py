"""The web server for the tests of its settings: found, unpacked from Debian's package, or left out."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.set_up import web_server
from build_tools.set_up.failure import Failure
from tests.set_up.programs import put_program

#: A Debian whose package holds a program that tells its version.
DOWNLOAD = 'case "$1" in download) touch "$2"_1_all.deb;; esac'
EXTRACT = "mkdir -p usr/bin; printf '#!/bin/sh\\n' > usr/bin/caddy; chmod +x usr/bin/caddy"


@pytest.fixture(autouse=True)
def only_path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A machine on which nothing is found but what a test puts into a folder."""
    programs = tmp_path / "programs"
    programs.mkdir()
    for name in ("mkdir", "touch", "rm", "chmod", "sh"):
        put_program(programs / name, f'exec /bin/{name} "$@"')
    monkeypatch.setenv("PATH", str(programs))
    monkeypatch.delenv("CI", raising=False)
    return programs


def test_an_installed_one_is_taken(tmp_path: Path, only_path: Path) -> None:
    assert web_server.find(tmp_path) is None
    program = put_program(only_path / "caddy", '[ "$1" = version ]')
    assert web_server.find(tmp_path) == str(program)
    put_program(only_path / "caddy", "exit 1")
    assert web_server.find(tmp_path) is None


def test_debians_is_unpacked_and_not_installed(
    tmp_path: Path, only_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    put_program(only_path / "apt-get", f'[ "$1" != install ] || exit 1; {DOWNLOAD}')
    put_program(only_path / "sudo", 'shift; exec "$@"')
    put_program(only_path / "dpkg-deb", EXTRACT)
    web_server.bring(tmp_path)
    assert "Not installed" not in capsys.readouterr().err
    found = web_server.find(tmp_path)
    assert found == str(tmp_path / ".cache" / "web-server" / "usr" / "bin" / "caddy")
    assert list((tmp_path / ".cache" / "web-server").glob("*.deb")) == []


def test_what_is_left_out_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    web_server.bring(tmp_path)
    assert capsys.readouterr().err == "Not installed here, and so left out: caddy.\n"


def test_a_debian_build_machine_must_have_it(
    tmp_path: Path, only_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    put_program(only_path / "apt-get", "exit 100")
    put_program(only_path / "sudo", "exit 0")
    monkeypatch.setenv("CI", "true")
    with pytest.raises(Failure) as told:
        web_server.bring(tmp_path)
    assert str(told.value) == (
        "This build machine lacks a web server: install caddy, then run the same command again."
    )
