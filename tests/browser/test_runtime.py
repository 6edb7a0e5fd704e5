"""The runtime folder: the right files under a name that changes with them."""

from __future__ import annotations

import hashlib
import json
import shutil
from pathlib import Path

import pytest

from build_tools.browser import BrowserFilesError
from build_tools.browser.runtime import LOCK_NAME, PYODIDE_FILES, runtime_files

ROOT = Path(__file__).parents[2]


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    """Make a small repository: the calculators, and the parts of Pyodide that are read."""
    shutil.copytree(ROOT / "calculators", tmp_path / "calculators")
    pyodide = tmp_path / "node_modules" / "pyodide"
    pyodide.mkdir(parents=True)
    for name in ("package.json", LOCK_NAME):
        shutil.copy(ROOT / "node_modules" / "pyodide" / name, pyodide / name)
    return tmp_path


def test_every_file_is_there() -> None:
    runtime = runtime_files(ROOT)
    wheel = "calculators-1.0.0-py3-none-any.whl"
    assert set(runtime.files) == {*PYODIDE_FILES, LOCK_NAME, wheel}
    assert all(path.name == name and path.is_file() for name, path in runtime.files.items())


def test_the_lock_file_has_one_entry_which_names_the_wheel_and_its_hash(repository: Path) -> None:
    files = runtime_files(repository).files
    lock = json.loads(files[LOCK_NAME].read_text(encoding="utf-8"))
    original = json.loads((ROOT / "node_modules/pyodide" / LOCK_NAME).read_text(encoding="utf-8"))
    assert lock["info"] == original["info"]
    assert list(lock["packages"]) == ["calculators"]
    entry = lock["packages"]["calculators"]
    assert entry["sha256"] == hashlib.sha256(files[entry["file_name"]].read_bytes()).hexdigest()
    assert entry["depends"] == []


def test_a_second_call_builds_nothing(repository: Path) -> None:
    first = runtime_files(repository)
    (wheel,) = (path for path in first.files.values() if path.suffix == ".whl")
    made = wheel.stat().st_mtime_ns
    assert runtime_files(repository) == first
    assert wheel.stat().st_mtime_ns == made


def test_the_folder_has_a_new_name_when_the_calculators_or_pyodide_change(repository: Path) -> None:
    names = [runtime_files(repository).folder_name]
    with (repository / "calculators" / "water.py").open("a", encoding="utf-8") as source:
        source.write("# changed\n")
    names.append(runtime_files(repository).folder_name)
    package = repository / "node_modules" / "pyodide" / "package.json"
    package.write_text('{"version": "0.0.1"}', encoding="utf-8")
    names.append(runtime_files(repository).folder_name)
    assert len(set(names)) == 3
    assert all(name.startswith("runtime/") for name in names)


def test_a_missing_pyodide_is_told_in_one_sentence(tmp_path: Path) -> None:
    with pytest.raises(BrowserFilesError) as told:
        runtime_files(tmp_path)
    assert str(told.value) == (
        "The Python for the browser is not installed (node_modules/pyodide is missing). "
        "Run `python3 -m build_tools build`, which installs it."
    )
