"""Compressed twins of files, beside them in the site: made once for each content, then kept.

A page fetches a gzip twin itself where the host compresses nothing. A host that can serve a
file's brotli twin in its place sends least.
"""

from __future__ import annotations

import gzip
import hashlib
import os
import shutil
import subprocess
from pathlib import Path

from build_tools.browser import BrowserFilesError


def gzip_twin(path: Path, cache: Path) -> Path:
    """Return the file's gzip twin in the folder `cache`; the same content gives the same bytes."""
    twin = _place(path, cache, "gz")
    if not twin.exists():
        _put(gzip.compress(path.read_bytes(), compresslevel=9, mtime=0), twin)
    return twin


def brotli_twin(path: Path, cache: Path) -> Path:
    """Return the file's brotli twin in the folder `cache`. Large files take half a minute."""
    twin = _place(path, cache, "br")
    if not twin.exists():
        script = Path(__file__).parent / "pack" / "brotli.mjs"
        node = shutil.which("node")
        done = subprocess.run([node or "node", script, path], capture_output=True, check=False)
        if done.returncode:
            told = done.stderr.decode("utf-8", "replace")[-2000:]
            raise BrowserFilesError(f"{path.name} could not be compressed; Node said:\n{told}")
        _put(done.stdout, twin)
    return twin


def is_compressed(path: Path, cache: Path) -> bool:
    """Return whether the file's brotli twin is made already."""
    return _place(path, cache, "br").exists()


def _place(path: Path, cache: Path, ending: str) -> Path:
    return cache / f"{hashlib.sha256(path.read_bytes()).hexdigest()}.{ending}"


def _put(content: bytes, twin: Path) -> None:
    """Write a file whole or not at all."""
    twin.parent.mkdir(parents=True, exist_ok=True)
    unfinished = twin.with_suffix(f".{os.getpid()}")  # another build may be at the same file
    unfinished.write_bytes(content)
    unfinished.replace(twin)
