"""Firefox and WebKitGTK for the tests: found on the machine, else from Debian's packages.

The tests can do without them, as they cannot without Chromium: most machines have no WebKitGTK.
"""

from __future__ import annotations

import glob
import os
import shutil
import sys
from pathlib import Path
from typing import NamedTuple

from build_tools.set_up import debian, programs
from build_tools.set_up.failure import AGAIN, Failure
from build_tools.set_up.log import Log

FIREFOX_NAMES = ("firefox-esr", "firefox")
FIREFOX_PLACES = (
    "/Applications/Firefox.app/Contents/MacOS/firefox",
    "C:/Program Files/Mozilla Firefox/firefox.exe",
)

# The plainest browser around the engine: each distribution keeps it beside the engine's library.
MINI_BROWSER_PLACES = (
    "/usr/lib/*/webkit2gtk-4.*/MiniBrowser",
    "/usr/lib*/webkit2gtk-4.*/MiniBrowser",
)

DEBIAN_PACKAGES = ("firefox-esr", "webkit2gtk-driver", "xvfb")


class WebKit(NamedTuple):
    """The three programs that WebKitGTK takes."""

    driver: str
    mini_browser: str
    display: str


def firefox():
    """The path of an installed Firefox that runs, or None."""
    return programs.installed(FIREFOX_NAMES, FIREFOX_PLACES)


def webkit():
    """WebKitGTK's programs where all are installed, or None."""
    driver, display = shutil.which("WebKitWebDriver"), shutil.which("Xvfb")
    found = [path for place in MINI_BROWSER_PLACES for path in sorted(glob.glob(place))]
    return WebKit(driver, found[-1], display) if driver and display and found else None


def missing():
    """The names of the engines that are not installed."""
    found = {"Firefox": firefox(), "WebKitGTK": webkit()}
    return [name for name, programs in found.items() if programs is None]


def bring(root: Path) -> None:
    """Install what is missing where that needs no question, and say what is left out.

    On a build machine nothing may be left out that could have been installed.
    """
    if not missing():
        return
    from_debian = debian.permission() is not None
    if from_debian:
        with Log(root) as log:
            log.say("Installing Debian's Firefox and WebKitGTK for the tests (about a minute) ...")
            try:
                debian.install(DEBIAN_PACKAGES, "Installing Debian's Firefox and WebKitGTK", log)
            except Failure as failure:
                log.say(str(failure))
    left_out = " and ".join(missing())
    if left_out and from_debian and os.environ.get("CI") == "true":
        raise Failure(f"This build machine lacks {left_out}: install what is missing, {AGAIN}.")
    if left_out:
        print(f"Not installed here, and so left out: {left_out}.", file=sys.stderr, flush=True)
