"""The web server of the container, for the tests of its settings: found, or of Debian's packages.

Debian's package is only unpacked, not installed: installed, it would serve the machine's port 80.
"""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path

from build_tools.set_up import debian, programs
from build_tools.set_up.failure import AGAIN, Failure
from build_tools.set_up.log import Log

NAME = "caddy"
_FOLDER = Path(".cache") / "web-server"


def find(root: Path):
    """The path of a web server that runs, or None."""
    unpacked = root / _FOLDER / "usr" / "bin" / NAME
    for path in (shutil.which(NAME), str(unpacked)):
        if path and os.path.exists(path) and programs.runs(path, "version"):
            return path
    return None


def bring(root: Path) -> None:
    """Unpack Debian's where there is none and that needs no question; say what is left out."""
    if find(root):
        return
    from_debian = debian.permission() is not None
    if from_debian:
        with Log(root) as log:
            log.say("Fetching Debian's web server for the tests ...")
            try:
                debian.unpack(NAME, root / _FOLDER, "Fetching Debian's web server", log)
            except Failure as failure:
                log.say(str(failure))
    if find(root):
        return
    if from_debian and os.environ.get("CI") == "true":
        raise Failure(f"This build machine lacks a web server: install {NAME}, {AGAIN}.")
    print(f"Not installed here, and so left out: {NAME}.", file=sys.stderr, flush=True)
