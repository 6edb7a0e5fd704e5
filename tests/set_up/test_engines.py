"""Firefox and WebKitGTK: found, or left out in words."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from build_tools.set_up import engines
from build_tools.set_up.failure import Failure
from tests.set_up.programs import put_program


@pytest.fixture(autouse=True)
def only_path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A machine on which nothing is found but what a test puts on PATH."""
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.delenv("CI", raising=False)
    monkeypatch.setattr(engines, "FIREFOX_PLACES", ())
    monkeypatch.setattr(engines, "MINI_BROWSER_PLACES", (f"{tmp_path}/*/MiniBrowser",))


@pytest.fixture
def debian(tmp_path: Path) -> None:
    """A Debian whose packages cannot be fetched, whoever asks."""
    for name in ("apt-get", "env"):
        put_program(tmp_path / name, "exit 100")
    put_program(tmp_path / "sudo", "exit 0")


def test_an_installed_firefox_is_taken(tmp_path: Path) -> None:
    assert engines.firefox() is None
    firefox = put_program(tmp_path / "firefox", "echo Mozilla Firefox 153")
    assert engines.firefox() == str(firefox)
    put_program(tmp_path / "firefox", "echo install the snap >&2", "exit 1")
    assert engines.firefox() is None


def test_webkit_is_taken_when_all_its_programs_are_there(tmp_path: Path) -> None:
    programs = [
        put_program(tmp_path / name)
        for name in ("WebKitWebDriver", "webkit2gtk-4.1/MiniBrowser", "Xvfb")
    ]
    assert engines.webkit() == engines.WebKit(*map(str, programs))
    for program in programs:
        text = program.read_text()
        program.unlink()
        assert engines.webkit() is None
        put_program(program, text)


def test_what_is_left_out_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    engines.bring(tmp_path)
    assert (
        capsys.readouterr().err == "Not installed here, and so left out: Firefox and WebKitGTK.\n"
    )
    put_program(tmp_path / "firefox", "exit 0")
    engines.bring(tmp_path)
    assert capsys.readouterr().err == "Not installed here, and so left out: WebKitGTK.\n"


def test_nothing_is_said_when_nothing_is_left_out(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in ("firefox", "WebKitWebDriver", "webkit2gtk-4.1/MiniBrowser", "Xvfb"):
        put_program(tmp_path / name, "exit 0")
    engines.bring(tmp_path)
    assert capsys.readouterr() == ("", "")


def test_a_debian_that_cannot_install_them_goes_on_without(
    debian: None, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    engines.bring(tmp_path)
    said = capsys.readouterr().err
    assert said.startswith("Installing Debian's Firefox and WebKitGTK for the tests")
    assert said.endswith("Not installed here, and so left out: Firefox and WebKitGTK.\n")


def test_a_debian_build_machine_must_have_them(
    debian: None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("CI", "true")
    with pytest.raises(Failure) as told:
        engines.bring(tmp_path)
    assert str(told.value) == (
        "This build machine lacks Firefox and WebKitGTK: install what is missing, then run the "
        "same command again."
    )


def test_another_build_machine_goes_on_without(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("CI", "true")
    engines.bring(tmp_path)
    assert re.fullmatch("Not installed here, and so left out: .*\n", capsys.readouterr().err)
