"""Programs of the machine: where one is, and what it says of itself."""

from __future__ import annotations

import os
import shutil
import subprocess


def answer(command):
    """What a program prints, or None when it does not run."""
    try:
        done = subprocess.run(
            command,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            errors="replace",
            timeout=60,
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired):
        return None
    return done.stdout.strip() if done.returncode == 0 else None


def runs(path: str, asked: str = "--version") -> bool:
    """Whether a program tells its version; some packages are a stand-in that only says no."""
    return answer([path, asked]) is not None


def installed(names, places):
    """The path of a program that runs, under one of its names, or is in a usual place; or None."""
    for name in names:
        path = shutil.which(name)
        if path and runs(path):
            return path
    for path in places:
        if os.path.exists(path):
            return path
    return None
