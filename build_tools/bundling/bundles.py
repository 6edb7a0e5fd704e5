"""Joins the scripts and the styles of pages: one file where a page would ask for fifty.

What is joined is made small as well, and a map beside each file leads a reader with a browser's
tools to the sources. The same sources give the same bytes; what is made is kept in the cache.
"""

from __future__ import annotations

import hashlib
import json
import shutil
import subprocess
import tempfile
from collections.abc import Iterable, Mapping
from pathlib import Path

from build_tools.browser import BrowserFilesError

ROOT = Path(__file__).parents[2]
CACHE = ROOT / ".cache" / "bundles"
MAKER = Path(__file__).with_name("bundle.mjs")
#: While somebody works on the scripts, each save makes another; so many are kept.
KEPT = 20


def bundles(
    scripts: Mapping[str, Path], styles: Mapping[str, list[Path]], sources: Iterable[Path]
) -> dict[str, Path]:
    """Return the joined files and their maps by their names, such as "page/handbook.js".

    scripts: the first module of each joined script; styles: what each joined style is made of;
    both by their names without an ending. sources: every file that they may be made of.
    """
    asked = {
        "scripts": {name: str(path) for name, path in scripts.items()},
        "styles": {name: [str(path) for path in paths] for name, paths in styles.items()},
    }
    made = CACHE / _key(asked, sources)
    if not made.is_dir():
        _make(asked, made)
    files = sorted(path for path in made.rglob("*") if path.is_file())
    return {path.relative_to(made).as_posix(): path for path in files}


def _key(asked: dict[str, object], sources: Iterable[Path]) -> str:
    """Return a hash over everything that the joined files depend on."""
    digest = hashlib.sha256(json.dumps(asked, sort_keys=True).encode())
    for path in (MAKER, ROOT / "package-lock.json", *sorted(sources)):
        digest.update(f"{path} {hashlib.sha256(path.read_bytes()).hexdigest()}\n".encode())
    return digest.hexdigest()[:16]


def _make(asked: dict[str, object], made: Path) -> None:
    """Join the files into a folder, which appears only when every file in it is whole."""
    node = shutil.which("node")
    if node is None or not (ROOT / "node_modules" / "esbuild").is_dir():
        raise BrowserFilesError(
            "What joins the scripts of pages is not installed (Node, and esbuild in node_modules). "
            "Run `python3 -m build_tools build`, which installs both."
        )
    made.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=made.parent) as temporary:
        folder = Path(temporary)
        done = subprocess.run(
            [node, str(MAKER)],
            input=json.dumps({"root": str(ROOT), "folder": temporary, **asked}),
            capture_output=True,
            text=True,
            encoding="utf-8",
            check=False,
        )
        if done.returncode:
            told = done.stderr.strip()[-2000:]
            raise BrowserFilesError(f"The scripts of pages could not be joined:\n{told}")
        whole = folder.with_name(f"{folder.name}-whole")
        folder.rename(whole)
        folder.mkdir()  # which its maker removes
        try:
            whole.rename(made)
        except OSError:
            # Another build may have put the same files there in the meantime.
            shutil.rmtree(whole)
            if not made.is_dir():
                raise
    _forget_old(made.parent)


def _forget_old(cache: Path) -> None:
    """Remove all but the newest folders."""
    folders = [path for path in cache.iterdir() if not path.name.startswith("tmp")]
    for old in sorted(folders, key=lambda path: path.stat().st_mtime)[:-KEPT]:
        shutil.rmtree(old, ignore_errors=True)
