"""The folder of files that runs Python in a page: Pyodide, the calculators and their lock file."""

from __future__ import annotations

import hashlib
import json
import tempfile
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path

from pyodide_lock import PyodideLockSpec
from pyodide_lock.utils import add_wheels_to_spec

from build_tools.browser import BrowserFilesError
from build_tools.browser.wheel import PROJECT_FILE, build_wheel, source_files

PYODIDE_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")
LOCK_NAME = "pyodide-lock.json"


@dataclass(frozen=True)
class Runtime:
    """Where the runtime stands in the site, and the file behind each name in that folder."""

    folder_name: str
    files: dict[str, Path]


def runtime_files(root: Path) -> Runtime:
    """Return the runtime made from the repository at `root`.

    The wheel and the lock file are built once for each state of the calculators and then kept
    in the cache. The folder's name changes with its content, so a browser may keep what it has.
    """
    pyodide = root / "node_modules" / "pyodide"
    if not (pyodide / "package.json").is_file():
        raise BrowserFilesError(
            "The Python for the browser is not installed (node_modules/pyodide is missing). "
            "Run `python3 -m build_tools build`, which installs it."
        )
    key = _key(root / "calculators", pyodide)
    packed = root / ".cache" / "runtime" / key
    if not packed.is_dir():
        _pack(root / "calculators", pyodide, packed)
    files = {name: pyodide / name for name in PYODIDE_FILES}
    files |= {path.name: path for path in sorted(packed.iterdir())}
    return Runtime(f"runtime/{key}", files)


def _key(calculators: Path, pyodide: Path) -> str:
    """Return a hash over everything that the content of the folder depends on."""
    digest = hashlib.sha256()
    package = json.loads((pyodide / "package.json").read_text(encoding="utf-8"))
    for tool in (package["version"], version("hatchling"), version("pyodide-lock")):
        digest.update(f"{tool}\n".encode())
    digest.update(PROJECT_FILE.read_bytes())
    for source in source_files(calculators):
        content = hashlib.sha256(source.read_bytes()).hexdigest()
        digest.update(f"{source.relative_to(calculators).as_posix()} {content}\n".encode())
    return digest.hexdigest()[:16]


def _pack(calculators: Path, pyodide: Path, packed: Path) -> None:
    """Build the wheel and its one-entry lock file; the folder appears only when both are whole."""
    packed.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=packed.parent) as temporary:
        folder = Path(temporary) / "packed"
        folder.mkdir()
        wheel = build_wheel(calculators, folder)
        lock = PyodideLockSpec.from_json(pyodide / LOCK_NAME)
        lock.packages = {}
        add_wheels_to_spec(lock, [wheel]).to_json(folder / LOCK_NAME)
        try:
            folder.rename(packed)
        except OSError:
            # Another build may have put the same files there in the meantime.
            if not packed.is_dir():
                raise
