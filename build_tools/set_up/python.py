"""Find a Python that the handbook's packages are locked for, or bring one."""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path
from typing import NamedTuple

from build_tools.set_up import debian
from build_tools.set_up.failure import AGAIN, DISK_FULL, Failure
from build_tools.set_up.log import Log
from build_tools.set_up.programs import answer

# The lock files have ready-made packages for these; the one most used with them comes first.
VERSIONS = ("3.13", "3.14", "3.12", "3.15")

# Debian ships Pythons without venv or ensurepip, and a Python built without OpenSSL lacks ssl.
NEEDED = ("venv", "ensurepip", "ssl")

# Prints the program's true path (not that of an environment or of a launcher), its version, and
# the needed modules that it lacks.
PROBE = f"""
import sys
print(getattr(sys, "_base_executable", None) or sys.executable)
print("%d.%d" % sys.version_info[:2])
for name in {NEEDED!r}:
    try:
        __import__(name)
    except ImportError:
        print(name)
"""


class Found(NamedTuple):
    """A Python that runs."""

    path: str
    version: str
    lacks: tuple


def examine(path):
    """What the Python at `path` is, or None when it does not run."""
    lines = (answer([path, "-I", "-c", PROBE]) or "").splitlines()
    if len(lines) < 2:
        return None
    return Found(lines[0], lines[1], tuple(lines[2:]))


def likely_paths(root: Path, environ, home: Path):
    """Where a Python may be, best guess first: this one, PATH, pyenv, the usual places, uv's."""
    yield sys.executable
    on_path = [Path(folder) for folder in environ.get("PATH", "").split(os.pathsep) if folder]
    pyenv = Path(environ.get("PYENV_ROOT") or home / ".pyenv")
    data = Path(environ.get("XDG_DATA_HOME") or home / ".local" / "share")
    uv = Path(environ.get("UV_PYTHON_INSTALL_DIR") or data / "uv" / "python")
    usual = [Path(folder) for folder in ("/usr/local/bin", "/usr/bin", "/opt/homebrew/bin")]
    for version in VERSIONS:
        folders = on_path + sorted(pyenv.glob(f"versions/{version}.*/bin"), reverse=True)
        folders += usual
        folders.append(Path(f"/Library/Frameworks/Python.framework/Versions/{version}/bin"))
        for managed in (uv, brought_to(root)):
            folders += sorted(managed.glob(f"*-{version}.*/bin"), reverse=True)
            yield from map(str, managed.glob(f"*-{version}.*/python.exe"))
        yield from (str(folder / ("python" + version)) for folder in folders)
    for name in ("python3", "python"):
        yield from (str(folder / name) for folder in on_path)


def brought_to(root: Path) -> Path:
    """Where a Python goes that we bring ourselves."""
    return root / ".cache" / "python"


def choose(paths):
    """The first complete Python of a right version, else the first that only lacks modules."""
    incomplete = None
    for path in paths:
        found = examine(path)
        if found is None or found.version not in VERSIONS:
            continue
        if not found.lacks:
            return found
        incomplete = incomplete or found
    return incomplete


def find_or_bring(root: Path, log: Log) -> str:
    """The path of a Python that can make the environment."""
    found = choose(likely_paths(root, os.environ, Path(os.path.expanduser("~"))))
    if found and found.lacks and os.path.dirname(found.path) == "/usr/bin":
        found = completed(found, log)
    if found and not found.lacks:
        return found.path
    try:
        return bring(root, log)
    except Failure as failure:
        if failure.cause == DISK_FULL:
            raise
        raise Failure(f"{wanted(found)}, {AGAIN} (all output: {log.path}).") from failure


def wanted(found) -> str:
    """What the person must install, given the best Python on the machine, if any."""
    if found is None:
        return (
            "The handbook needs Python 3.12 or newer, this machine has none, and none could be "
            "fetched: install one from python.org or with your system's packages"
        )
    return (
        f"Python {found.version} ({found.path}) lacks its module {found.lacks[0]}: install it (on "
        f"Debian and Ubuntu: sudo apt-get install python{found.version}-venv)"
    )


def completed(found: Found, log: Log) -> Found:
    """The system's own Python with the modules that Debian keeps in a package of their own."""
    if debian.permission() is None:
        return found
    package = f"python{found.version}-venv"
    log.say(f"Installing Debian's package {package} ...")
    debian.install([package], f"Installing Debian's package {package}", log)
    return examine(found.path)


def bring(root: Path, log: Log) -> str:
    """Fetch a Python of our own into .cache/python, with uv."""
    log.say(f"Fetching Python {VERSIONS[0]}, as this machine has none that will do ...")
    log.run(
        [shutil.which("uv") or fetch_uv(root, log), "python", "install", VERSIONS[0], "--no-bin"],
        f"Fetching Python {VERSIONS[0]}",
        dict(os.environ, UV_PYTHON_INSTALL_DIR=str(brought_to(root))),
    )
    found = choose(likely_paths(root, os.environ, Path(os.path.expanduser("~"))))
    if found is None or found.lacks:
        raise Failure(f"The Python fetched into {brought_to(root)} does not run here.")
    return found.path


def fetch_uv(root: Path, log: Log) -> str:
    """Install the locked uv into .cache/uv, with whatever Python runs this."""
    folder = root / ".cache" / "uv"
    if "ensurepip" in examine(sys.executable).lacks and debian.permission() is not None:
        debian.install(["python3-venv"], "Installing Debian's package python3-venv", log)
    log.run([sys.executable, "-I", "-m", "venv", "--clear", folder], "Making a place for uv")
    programs = folder / ("Scripts" if os.name == "nt" else "bin")
    log.run(
        [programs / "python", "-I", "-m", "pip", "install", "--require-hashes", "--no-deps"]
        + ["-r", root / "build_tools" / "requirements" / "uv.txt"],
        "Installing uv",
    )
    return str(programs / "uv")
