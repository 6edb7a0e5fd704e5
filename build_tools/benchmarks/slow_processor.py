"""A slow processor for one program and all it starts, by a quota of Linux's control groups.

A browser's own throttling does not reach the workers of a page. The quota needs root.
"""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

# Short, so that a slow processor is slow all the time, and not now fast and then still.
PERIOD_US = 10_000

# A browser's parts outlive it for a moment.
SECONDS_TO_END = 30


class Quota:
    """A control group: programs that join it share a part of one processor."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._is_second_version = (folder / "cpu.max").exists()
        if not self._is_second_version:
            self._write("cpu.cfs_period_us", str(PERIOD_US))

    def limit(self, processors: float | None) -> None:
        """Allow that many processors, or all of them."""
        quota = None if processors is None else str(round(processors * PERIOD_US))
        if self._is_second_version:
            self._write("cpu.max", f"{quota or 'max'} {PERIOD_US}")
        else:
            self._write("cpu.cfs_quota_us", quota or "-1")

    def launcher(self, program: str, place: Path) -> Path:
        """Write a script that joins the group and becomes the program; return it."""
        joins = f'echo $$ > "{self.folder}/cgroup.procs"'
        place.write_text(f'#!/bin/sh\n{joins}\nexec "{program}" "$@"\n', encoding="utf-8")
        place.chmod(0o755)
        return place

    def remove(self) -> None:
        """Remove the group, as soon as the last of its programs has ended."""
        end = time.monotonic() + SECONDS_TO_END
        while (self.folder / "cgroup.procs").read_text(encoding="utf-8"):
            if time.monotonic() > end:
                return
            time.sleep(0.1)
        self.folder.rmdir()

    def _write(self, name: str, text: str) -> None:
        (self.folder / name).write_text(text, encoding="utf-8")


@contextmanager
def quota() -> Iterator[Quota | None]:
    """Make a control group for as long as it is needed; None where that is not allowed."""
    try:
        folder = _parent() / f"slow-processor-{os.getpid()}"
        folder.mkdir()
    except OSError:
        yield None
        return
    group = Quota(folder)
    try:
        yield group
    finally:
        group.remove()


def _parent() -> Path:
    """Return where groups with a quota are made. Raises OSError where this machine has none."""
    for line in Path("/proc/mounts").read_text(encoding="utf-8").splitlines():
        _, place, kind, options, *_ = line.split()
        if kind == "cgroup" and "cpu" in options.split(","):
            return Path(place)
        if kind == "cgroup2":
            controllers = Path(place, "cgroup.subtree_control").read_text(encoding="utf-8")
            if "cpu" in controllers.split():
                return Path(place)
    raise OSError("no control groups for processors")
