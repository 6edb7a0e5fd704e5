"""Packages of Debian and its relatives, where they can be installed without a question."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

from build_tools.set_up.log import Log


def permission():
    """What to put before apt-get to be allowed to install, or None where that is not possible."""
    if shutil.which("apt-get") is None:
        return None
    if os.geteuid() == 0:
        return []
    if shutil.which("sudo"):
        asked = subprocess.run(
            ["sudo", "-n", "true"],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            check=False,
        )
        if asked.returncode == 0:
            return ["sudo", "-n"]
    return None


def install(packages, doing: str, log: Log) -> None:
    """Install packages; call only where `permission()` is not None."""
    apt_get = permission() + ["env", "DEBIAN_FRONTEND=noninteractive", "apt-get"]
    log.run(apt_get + ["update"], doing)
    log.run(apt_get + ["install", "--yes", "--no-install-recommends"] + list(packages), doing)


def unpack(package, folder: Path, doing: str, log: Log) -> None:
    """Put the files of a package into a folder; call only where `permission()` is not None."""
    log.run(permission() + ["apt-get", "update"], doing)
    folder.mkdir(parents=True, exist_ok=True)
    # apt-get writes into the folder that it runs in
    fetch = 'cd "$1" && apt-get download "$2" && dpkg-deb --extract "$2"_*.deb . && rm "$2"_*.deb'
    log.run(["sh", "-c", fetch, "sh", str(folder), package], doing)
