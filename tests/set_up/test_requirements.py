"""What the lock files promise."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from build_tools.set_up.start import ROOT

FOLDER = ROOT / "build_tools" / "requirements"
NAMES = ("handbook", "tests", "mutation", "node", "uv")


def pins(path: Path) -> dict[str, str]:
    """The exact versions that a file asks for."""
    return dict(re.findall(r"^([a-z0-9._-]+)==([^ \n]+)", path.read_text(), re.MULTILINE))


def spelled_as_locked(name: str) -> str:
    return name.replace(".", "-")


def test_every_lock_file_is_known_here() -> None:
    assert sorted(path.stem for path in FOLDER.glob("*.txt")) == sorted(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_each_package_asked_for_is_locked_as_asked(name: str) -> None:
    asked = pins(FOLDER / f"{name}.in")
    lines = (FOLDER / f"{name}.in").read_text().splitlines()
    assert len(asked) == sum(not line.startswith(("#", "-")) for line in lines)
    locked = pins(FOLDER / f"{name}.txt")
    assert {spelled_as_locked(package): version for package, version in asked.items()}.items() <= (
        locked.items()
    )


@pytest.mark.parametrize("name", NAMES)
def test_each_locked_package_has_hashes_and_names_no_place(name: str) -> None:
    text = (FOLDER / f"{name}.txt").read_text()
    blocks = re.split(r"\n(?=[a-z])", text.strip())
    assert all("--hash=sha256:" in block for block in blocks)
    assert len(blocks) == len(pins(FOLDER / f"{name}.txt"))
    assert not re.search(r"://|--(extra-)?index|--find-links", text)


def test_the_handbook_and_the_tests_agree_on_shared_packages() -> None:
    handbook, tests = pins(FOLDER / "handbook.txt"), pins(FOLDER / "tests.txt")
    shared = handbook.keys() & tests.keys()
    assert shared
    assert {name: handbook[name] for name in shared} == {name: tests[name] for name in shared}


def test_the_npm_lock_has_hashes_and_names_no_place() -> None:
    lock = json.loads((ROOT / "package-lock.json").read_text())
    packages = {path: entry for path, entry in lock["packages"].items() if path}
    assert all(entry["integrity"].startswith("sha512-") for entry in packages.values())
    assert not any("resolved" in entry for entry in packages.values())


def test_the_npm_packages_are_pinned_exactly() -> None:
    asked = json.loads((ROOT / "package.json").read_text())["dependencies"]
    lock = json.loads((ROOT / "package-lock.json").read_text())
    assert asked == {name: lock["packages"][f"node_modules/{name}"]["version"] for name in asked}
