"""The files that run Python in a page: Pyodide, and the calculators packed for three ways to start.

The site keeps them in two folders, one inside the other: Pyodide's own files, in a folder named by
its version, and those made from the calculators, in a folder named by what they were made from. So
a browser may keep them for ever, and a change of the calculators leaves Pyodide's large files as
they are.
"""

from __future__ import annotations

import hashlib
import json
import shutil
import subprocess
import tempfile
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path

from pyodide_lock import PyodideLockSpec
from pyodide_lock.utils import add_wheels_to_spec

from build_tools.browser import BrowserFilesError
from build_tools.browser.compressed import gzip_twin
from build_tools.browser.wheel import PROJECT_FILE, build_wheel, source_files

PYODIDE_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")
LOCK_NAME = "pyodide-lock.json"

# What a page fetches itself, and so needs as gzip where the host compresses nothing.
FETCHED_AS_PARTS = ("pyodide.asm.wasm", "compiled.zip", "image.bin")

# Large, and not compressed in itself as the standard library and the wheel are.
COMPRESSIBLE = (*FETCHED_AS_PARTS, "pyodide.mjs", "pyodide.asm.mjs")

# What makes the files for a fast start, and the script that it shares with the page.
PACKING = (
    *sorted((Path(__file__).parent / "pack").glob("*.*")),
    Path(__file__).parent / "page" / "memory_image.js",
)

# Whichever way Python was started, this shows that it calculates right before it answers.
KNOWN_REQUEST = {
    "work": "calculate",
    "calculator": "resin-capacity",
    "inputs": {"salt": "9 lb", "resin_volume": "1.5 ft³"},
    "units": "us",
}


@dataclass(frozen=True)
class Runtime:
    """The folder that pages name, and the file behind each address in the site."""

    folder_name: str
    files: dict[str, Path]

    @property
    def compressible(self) -> dict[str, Path]:
        """The files of which a host may serve a compressed twin."""
        return {
            address: path
            for address, path in self.files.items()
            if address.rsplit("/", 1)[-1] in COMPRESSIBLE
        }

    def copy_to(self, site: Path) -> Path:
        """Put the files into a site that MkDocs does not write; return the named folder."""
        for address, path in self.files.items():
            place = site / address
            place.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(path, place)
        return site / self.folder_name


def runtime_files(root: Path) -> Runtime:
    """Return the runtime made from the repository at `root`.

    What is made is kept in the cache, for each state of the calculators and of the packing.
    """
    pyodide = root / "node_modules" / "pyodide"
    if not (pyodide / "package.json").is_file():
        raise BrowserFilesError(
            "The Python for the browser is not installed (node_modules/pyodide is missing). "
            "Run `python3 -m build_tools build`, which installs it."
        )
    package = json.loads((pyodide / "package.json").read_text(encoding="utf-8"))
    outer = f"runtime/pyodide-{package['version']}"
    key = key_of(root / "calculators", package["version"])
    packed = root / ".cache" / "runtime" / key
    if not packed.is_dir():
        _pack(root / "calculators", pyodide, packed)
    inner = f"{outer}/calculators-{key}"
    files = {f"{outer}/{name}": pyodide / name for name in PYODIDE_FILES}
    files |= {f"{inner}/{path.name}": path for path in sorted(packed.iterdir())}
    runtime = Runtime(inner, files)
    for address, path in runtime.compressible.items():
        files[f"{address}.gz"] = gzip_twin(path, compressed_files(root))
    return runtime


def compressed_files(root: Path) -> Path:
    """Return the cache of compressed twins."""
    return root / ".cache" / "compressed"


def key_of(calculators: Path, pyodide_version: str) -> str:
    """Return a hash over everything that the content of the calculators' folder depends on."""
    digest = hashlib.sha256()
    for tool in (pyodide_version, version("hatchling"), version("pyodide-lock")):
        digest.update(f"{tool}\n".encode())
    digest.update(json.dumps(KNOWN_REQUEST).encode())
    for path in (PROJECT_FILE, *PACKING):
        digest.update(path.read_bytes())
    for source in source_files(calculators):
        content = hashlib.sha256(source.read_bytes()).hexdigest()
        digest.update(f"{source.relative_to(calculators).as_posix()} {content}\n".encode())
    return digest.hexdigest()[:16]


def _pack(calculators: Path, pyodide: Path, packed: Path) -> None:
    """Make the calculators' folder; it appears only when every file in it is whole."""
    packed.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=packed.parent) as temporary:
        folder = Path(temporary) / "packed"
        folder.mkdir()
        wheel = build_wheel(calculators, folder)
        lock = PyodideLockSpec.from_json(pyodide / LOCK_NAME)
        lock.packages = {}
        add_wheels_to_spec(lock, [wheel]).to_json(folder / LOCK_NAME)
        _make_fast_starts(pyodide, folder)
        try:
            folder.rename(packed)
        except OSError:
            # Another build may have put the same files there in the meantime.
            if not packed.is_dir():
                raise


def _make_fast_starts(pyodide: Path, folder: Path) -> None:
    """Add the archive of compiled modules and the memory image to a folder with the wheel."""
    node = shutil.which("node")
    if node is None:
        raise BrowserFilesError(
            "Node is not there, which packs the calculators for the browser. "
            "Run `python3 -m build_tools build`, which finds or installs it."
        )
    script = Path(__file__).parent / "pack" / "make.mjs"
    done = subprocess.run(
        [node, script, pyodide, folder, json.dumps(KNOWN_REQUEST)],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    if done.returncode:
        raise BrowserFilesError(
            "The calculators could not be packed for a fast start in the browser; "
            f"Node said:\n{done.stderr[-2000:]}"
        )
