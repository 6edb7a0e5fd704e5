"""The environment in .venv: its Python, the locked packages, and this repository in it."""

from __future__ import annotations

import hashlib
import os
import subprocess
from pathlib import Path

from build_tools.set_up import python
from build_tools.set_up.log import Log

# Fails when the Python under the environment was removed, or replaced by another version.
PROBE = "import click, mkdocs"

# Settings of pip that would send packages out of the environment.
MISLEADING = ("PIP_TARGET", "PIP_PREFIX", "PIP_ROOT")


def folder(root: Path) -> Path:
    """The environment's folder."""
    return root / ".venv"


def programs(root: Path) -> Path:
    """The folder with the environment's programs."""
    return folder(root) / ("Scripts" if os.name == "nt" else "bin")


def interpreter(root: Path) -> Path:
    """The environment's Python."""
    return programs(root) / ("python.exe" if os.name == "nt" else "python")


def requirements(root: Path, name: str) -> Path:
    """A lock file."""
    return root / "build_tools" / "requirements" / (name + ".txt")


def stamp_of(path: Path) -> str:
    """What a stamp says that was made from this version of a file."""
    return hashlib.sha256(path.read_bytes()).hexdigest()


def stamp_in(root: Path, name: str, source: Path):
    """Where a step's stamp is and what it says: it holds only in this folder."""
    return folder(root) / "stamps" / name, f"{root}\n{stamp_of(source)}\n"


def is_stamped(root: Path, name: str, source: Path) -> bool:
    """Whether a step was finished, in this folder and with this version of its source."""
    stamp, text = stamp_in(root, name, source)
    return stamp.is_file() and stamp.read_text(encoding="utf-8") == text


def put_stamp(root: Path, name: str, source: Path) -> None:
    """Note that a step is finished. A step that is cut short leaves no stamp, so it is redone."""
    stamp, text = stamp_in(root, name, source)
    stamp.parent.mkdir(exist_ok=True)
    stamp.write_text(text, encoding="utf-8")


def pip_install(root: Path, arguments, doing: str, log: Log) -> None:
    """Install into the environment, whatever the machine's Python settings are."""
    environ = {name: value for name, value in os.environ.items() if name not in MISLEADING}
    environ["PIP_USER"] = "0"
    command = [interpreter(root), "-I", "-m", "pip", "--disable-pip-version-check", "--no-input"]
    log.run(command + ["install", "--no-deps"] + arguments, doing, environ)


def packages_ready(root: Path) -> bool:
    """Whether the environment has the locked packages and its Python still runs."""
    return is_stamped(root, "handbook", requirements(root, "handbook")) and runs(root)


def runs(root: Path) -> bool:
    """Whether the environment's Python starts and finds its packages."""
    try:
        done = subprocess.run(
            [str(interpreter(root)), "-I", "-c", PROBE],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            check=False,
        )
    except OSError:
        return False
    return done.returncode == 0


def make_empty(root: Path, chosen: str, log: Log) -> None:
    """Make the environment without packages; a link in its place is replaced, not followed."""
    log.say(f"Making the environment in .venv, with {chosen} ...")
    if folder(root).is_symlink():
        folder(root).unlink()
    log.run([chosen, "-I", "-m", "venv", "--clear", folder(root)], "Making the environment")


def install_packages(root: Path, log: Log) -> None:
    """Make the environment anew, so that it has the locked packages and nothing else."""
    make_empty(root, python.find_or_bring(root, log), log)
    log.say("Installing the handbook's packages (about half a minute) ...")
    lock = requirements(root, "handbook")
    pip_install(
        root, ["--require-hashes", "-r", str(lock)], "Installing the handbook's packages", log
    )
    put_stamp(root, "handbook", lock)


def repository_ready(root: Path) -> bool:
    """Whether the repository as it is now described is known to the environment."""
    return is_stamped(root, "repository", root / "pyproject.toml")


def install_repository(root: Path, log: Log) -> None:
    """Make the repository importable from any folder, as it is edited."""
    log.say("Installing the handbook itself ...")
    pip_install(
        root,
        ["--no-index", "--no-build-isolation", "--editable", str(root)],
        "Installing the handbook itself",
        log,
    )
    put_stamp(root, "repository", root / "pyproject.toml")


def tests_ready(root: Path) -> bool:
    """Whether the environment has the tests' packages."""
    return is_stamped(root, "tests", requirements(root, "tests"))


def install_tests(root: Path, log: Log) -> None:
    """Add the tests' packages to the environment."""
    log.say("Installing the tests' packages (about half a minute) ...")
    lock = requirements(root, "tests")
    pip_install(root, ["--require-hashes", "-r", str(lock)], "Installing the tests' packages", log)
    put_stamp(root, "tests", lock)
