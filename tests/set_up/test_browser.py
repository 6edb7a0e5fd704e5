"""Which browser the tests get."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.set_up import browser
from tests.set_up.programs import put_program


@pytest.fixture(autouse=True)
def only_path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A machine on which nothing is found but what a test puts on PATH."""
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(browser, "USUAL_PLACES", ())


def test_an_installed_chromium_is_taken(tmp_path: Path) -> None:
    chromium = put_program(tmp_path / "chromium", "echo Chromium 156")
    assert browser.installed() == str(chromium)


def test_a_stand_in_that_only_says_what_to_install_is_passed_over(tmp_path: Path) -> None:
    put_program(tmp_path / "chromium-browser", "echo install the snap >&2", "exit 1")
    assert browser.installed() is None
    chrome = put_program(tmp_path / "google-chrome", "echo Google Chrome 156")
    assert browser.installed() == str(chrome)


def test_a_usual_place_is_looked_in(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    chrome = put_program(tmp_path / "Google Chrome.app/Google Chrome", "exit 0")
    monkeypatch.setattr(browser, "USUAL_PLACES", (str(tmp_path / "absent"), str(chrome)))
    assert browser.installed() == str(chrome)


def test_nothing_is_none() -> None:
    assert browser.installed() is None
