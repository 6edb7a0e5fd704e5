"""What is done when the tool's own Python changes while it serves: start anew, if that can be."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

from mkdocs.exceptions import PluginError

from build_tools.set_up.start import ROOT

#: What a new start loads before it can tell anything on a page.
_MODULES = ("build_tools.commands", "build_tools.pages.plugin", "build_tools.serving.server")


def state_of_code(folders: Iterable[Path]) -> dict[str, int]:
    """Return when each Python file of the folders was last changed."""
    return {str(path): path.stat().st_mtime_ns for one in folders for path in one.rglob("*.py")}


def start_anew(modules: Iterable[str] = _MODULES) -> None:
    """Run this program again with the code as it is now; tell where that cannot be loaded."""
    tried = subprocess.run(
        [sys.executable, "-c", f"import {', '.join(modules)}"],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    if tried.returncode:
        lines = tried.stderr.replace(f"{ROOT}{os.sep}", "").split("\n")
        why = " ".join(" ".join(lines[-5:]).split())
        raise PluginError(f"The tool's own code cannot be loaded: {why} (expected code that loads)")
    os.execv(sys.executable, sys.orig_argv)
