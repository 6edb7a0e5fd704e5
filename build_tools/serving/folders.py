"""The two folders of a server: the one that builds write, and the one that browsers see."""

from __future__ import annotations

import os
import shutil
from pathlib import Path


class Folders:
    """`work` may be half made; `shown` always is a whole site, or the page before the first."""

    def __init__(self, base: Path) -> None:
        self._base = base
        self.work = base / "work"
        self.shown = base / "shown"
        self._copied: dict[str, tuple[int, int, int]] = {}
        self.remove()
        self.work.mkdir(parents=True)
        self.shown.mkdir()

    def show(self) -> None:
        """Make the shown folder the same as the other one; what did not change stays."""
        found = {path.relative_to(self.work).as_posix(): path for path in _files(self.work)}
        for path in _files(self.shown):
            if path.relative_to(self.shown).as_posix() not in found:
                path.unlink()
        states = {name: _state(path) for name, path in found.items()}
        for name, path in found.items():
            if self._copied.get(name) != states[name]:
                place = self.shown / name
                place.parent.mkdir(parents=True, exist_ok=True)
                shutil.copyfile(path, place)
        self._copied = states
        remove_empty_folders(self.shown)

    def remove(self) -> None:
        """Remove both."""
        shutil.rmtree(self._base, ignore_errors=True)


def remove_empty_folders(folder: Path) -> None:
    """Remove the folders below one that hold nothing, the inner ones first."""
    for path, _, _ in os.walk(folder, topdown=False):
        if Path(path) != folder and not os.listdir(path):
            os.rmdir(path)


def _files(folder: Path) -> list[Path]:
    return [path for path in folder.rglob("*") if path.is_file()]


def _state(path: Path) -> tuple[int, int, int]:
    found = path.stat()
    return found.st_mtime_ns, found.st_size, found.st_ino
