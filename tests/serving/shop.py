"""A copy of the small metric shop to change, and what one build of it leaves behind."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from build_tools.serving.server import Live

SECOND = Path(__file__).parents[1] / "second_shop" / "docs_src"
MAIN = Path(__file__).parents[2] / "mkdocs.yml"


def copied(folder: Path) -> Path:
    """Copy the shop's sources; return the configuration beside them."""
    shutil.copytree(SECOND, folder / "docs_src")
    config = folder / "mkdocs.yml"
    config.write_text(f"INHERIT: {MAIN}\ndocs_dir: docs_src\n", encoding="utf-8")
    return config


@contextmanager
def live(config: Path, base: Path) -> Iterator[Live]:
    """Hold a shop ready to be built again and again, without a server."""
    made = Live(config, ("127.0.0.1", 8000), base)
    made.config.plugins.on_startup(command="serve", dirty=False)
    try:
        yield made
    finally:
        made.folders.remove()


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder by its path; folders count as files without content."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else b""
        for path in sorted(folder.rglob("*"))
    }
