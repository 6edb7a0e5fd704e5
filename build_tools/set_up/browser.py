"""A browser for the tests: an installed one, else Debian's package, else Playwright's download."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

from build_tools.set_up import debian, environment, programs
from build_tools.set_up.failure import AGAIN, DISK_FULL, Failure
from build_tools.set_up.log import Log

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")

USUAL_PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "C:/Program Files/Google/Chrome/Application/chrome.exe",
    "C:/Program Files (x86)/Google/Chrome/Application/chrome.exe",
)

# Chromium without a font shows boxes for letters.
DEBIAN_PACKAGES = ("chromium", "fonts-dejavu-core")

WHERE_PLAYWRIGHT_HAS_IT = """
from playwright.sync_api import sync_playwright
with sync_playwright() as playwright:
    print(playwright.chromium.executable_path)
"""


def installed():
    """The path of an installed Chromium or Chrome that runs, or None."""
    return programs.installed(NAMES, USUAL_PLACES)


def find(root: Path):
    """The path of a browser that is there already, or None."""
    return installed() or playwrights_own(root)


def bring(root: Path, log: Log) -> str:
    """Install a browser and give its path."""
    return from_debian(log) or from_playwright(root, log)


def from_debian(log: Log):
    """Install Debian's Chromium where that needs no question, and give its path."""
    if debian.permission() is None:
        return None
    log.say("Installing Debian's Chromium for the tests (about a minute) ...")
    try:
        debian.install(DEBIAN_PACKAGES, "Installing Debian's Chromium", log)
    except Failure as failure:
        log.say(str(failure))
    return installed()


def from_playwright(root: Path, log: Log) -> str:
    """Let Playwright fetch the browser it knows, and give its path."""
    log.say("Fetching Playwright's own browser for the tests ...")
    try:
        log.run(
            [environment.interpreter(root), "-I", "-m", "playwright", "install", "chromium"],
            "Fetching Playwright's own browser",
        )
    except Failure as failure:
        if failure.cause == DISK_FULL:
            raise
        raise Failure(none_could_be_brought(log)) from failure
    path = playwrights_own(root)
    if path is None:
        raise Failure(none_could_be_brought(log))
    return path


def none_could_be_brought(log: Log) -> str:
    """The sentence for a machine on which no way to a browser worked."""
    return (
        "The tests need a browser, and none could be installed: install Chromium or Chrome, "
        f"{AGAIN} (all output: {log.path})."
    )


def playwrights_own(root: Path):
    """The path of the browser that Playwright has fetched, or None."""
    told = subprocess.run(
        [str(environment.interpreter(root)), "-I", "-c", WHERE_PLAYWRIGHT_HAS_IT],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        check=False,
    )
    path = told.stdout.strip()
    return path if told.returncode == 0 and os.path.exists(path) and programs.runs(path) else None
