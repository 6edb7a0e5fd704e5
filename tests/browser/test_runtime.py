"""The runtime's folders: the right files under names that change with them."""

from __future__ import annotations

import gzip
import hashlib
import json
import shutil
import zipfile
from pathlib import Path

import pytest

from build_tools.browser import BrowserFilesError
from build_tools.browser.compressed import brotli_twin
from build_tools.browser.runtime import LOCK_NAME, PYODIDE_FILES, Runtime, key_of, runtime_files

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def repository(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Make a small repository: the calculators, and Pyodide."""
    root = tmp_path_factory.mktemp("repository")
    shutil.copytree(ROOT / "calculators", root / "calculators")
    (root / "node_modules").mkdir()
    (root / "node_modules" / "pyodide").symlink_to(ROOT / "node_modules" / "pyodide")
    return root


@pytest.fixture(scope="module")
def runtime(repository: Path) -> Runtime:
    """Make the runtime of the small repository anew."""
    return runtime_files(repository)


def content(runtime: Runtime, name: str) -> bytes:
    """Return a file of the calculators' folder."""
    return runtime.files[f"{runtime.folder_name}/{name}"].read_bytes()


def test_every_file_is_there(runtime: Runtime) -> None:
    outer, inner = runtime.folder_name.rsplit("/", 1)
    wheel = "calculators-1.0.0-py3-none-any.whl"
    made = {LOCK_NAME, wheel, "compiled.zip", "image.bin", "pack.json"}
    twins = {f"{inner}/compiled.zip.gz", f"{inner}/image.bin.gz"}
    twins |= {"pyodide.mjs.gz", "pyodide.asm.mjs.gz", "pyodide.asm.wasm.gz"}
    names = {*PYODIDE_FILES, *(f"{inner}/{name}" for name in made), *twins}
    assert set(runtime.files) == {f"{outer}/{name}" for name in names}
    assert all(path.is_file() for path in runtime.files.values())


def test_the_lock_file_has_one_entry_which_names_the_wheel_and_its_hash(runtime: Runtime) -> None:
    lock = json.loads(content(runtime, LOCK_NAME))
    original = json.loads((ROOT / "node_modules/pyodide" / LOCK_NAME).read_text(encoding="utf-8"))
    assert lock["info"] == original["info"]
    assert list(lock["packages"]) == ["calculators"]
    entry = lock["packages"]["calculators"]
    wheel = content(runtime, entry["file_name"])
    assert entry["sha256"] == hashlib.sha256(wheel).hexdigest()
    assert entry["depends"] == []


def test_made_anew_every_file_has_the_same_bytes(runtime: Runtime) -> None:
    """The calculators here are the same, packed at another time in another folder."""
    here = runtime_files(ROOT)
    assert here.folder_name == runtime.folder_name
    for address, path in here.files.items():
        assert path.read_bytes() == runtime.files[address].read_bytes(), address


def test_the_pack_names_the_hashes_of_what_a_page_checks(runtime: Runtime) -> None:
    pack = json.loads(content(runtime, "pack.json"))
    assert pack["sha256"] == {
        name: hashlib.sha256(content(runtime, name)).hexdigest()
        for name in ("compiled.zip", "image.bin")
    }
    answer = json.loads(pack["known"]["answer"])
    assert answer["problems"] == {} and answer["values"]["capacity"]["number"] > 0


def test_the_archive_has_the_calculators_compiled_and_no_sources(runtime: Runtime) -> None:
    with zipfile.ZipFile(runtime.files[f"{runtime.folder_name}/compiled.zip"]) as archive:
        names = set(archive.namelist())
    sources = {
        path.relative_to(ROOT).with_suffix(".pyc").as_posix()
        for path in (ROOT / "calculators").rglob("*.py")
    }
    assert sources <= names
    assert all(name.endswith(".pyc") for name in names)
    assert "json/decoder.pyc" in names
    assert "unittest/__init__.pyc" not in names


def test_nothing_in_the_image_tells_where_it_was_made(runtime: Runtime) -> None:
    image = content(runtime, "image.bin")
    assert b"calculators.as_text" in image
    for secret in (str(ROOT), str(Path.home()), "node_modules", "Node.js"):
        assert secret.encode() not in image


def test_twins_are_the_same_content_compressed(runtime: Runtime) -> None:
    assert gzip.decompress(content(runtime, "image.bin.gz")) == content(runtime, "image.bin")


def test_a_brotli_twin_is_made_once_and_is_the_smallest(runtime: Runtime, tmp_path: Path) -> None:
    image = runtime.files[f"{runtime.folder_name}/pack.json"]
    twin = brotli_twin(image, tmp_path)
    made = twin.stat().st_mtime_ns
    assert brotli_twin(image, tmp_path).stat().st_mtime_ns == made
    assert 0 < twin.stat().st_size < len(gzip.compress(image.read_bytes()))


def test_a_second_call_makes_nothing(repository: Path, runtime: Runtime) -> None:
    made = {path: path.stat().st_mtime_ns for path in runtime.files.values()}
    assert runtime_files(repository) == runtime
    assert {path: path.stat().st_mtime_ns for path in made} == made


def test_a_change_of_the_calculators_changes_their_folder_only(
    repository: Path, runtime: Runtime
) -> None:
    outer, inner = runtime.folder_name.rsplit("/", 1)
    version = outer.removeprefix("runtime/pyodide-")
    assert inner == f"calculators-{key_of(repository / 'calculators', version)}"
    source = repository / "calculators" / "water.py"
    before = source.read_text(encoding="utf-8")
    source.write_text(f"{before}# changed\n", encoding="utf-8")
    try:
        changed = key_of(repository / "calculators", version)
    finally:
        source.write_text(before, encoding="utf-8")
    assert changed not in inner


def test_calculators_that_cannot_be_loaded_are_told(repository: Path) -> None:
    source = repository / "calculators" / "water.py"
    before = source.read_text(encoding="utf-8")
    source.write_text(f"{before}raise RuntimeError('not today')\n", encoding="utf-8")
    try:
        with pytest.raises(BrowserFilesError, match="not today"):
            runtime_files(repository)
    finally:
        source.write_text(before, encoding="utf-8")


def test_a_missing_pyodide_is_told_in_one_sentence(tmp_path: Path) -> None:
    with pytest.raises(BrowserFilesError) as told:
        runtime_files(tmp_path)
    assert str(told.value) == (
        "The Python for the browser is not installed (node_modules/pyodide is missing). "
        "Run `python3 -m build_tools build`, which installs it."
    )
