"""Builds a site, changes one source file, and prints how many milliseconds the next build takes.

As in `serve`, one process does both, so that whatever is kept between builds helps.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config


def main(config_file: str) -> None:
    """Build twice, with a change between."""
    folder = Path(config_file).parent
    first = load_config(config_file, site_dir=str(folder / "served"))
    first.plugins.on_startup(command="serve", dirty=False)
    build(first)
    (changed,) = (folder / "docs_src" / "procedures").glob("close-the-visit.[ym]*")
    changed.write_text(changed.read_text(encoding="utf-8") + "\n", encoding="utf-8")
    start = time.perf_counter()
    build(load_config(config_file, site_dir=str(folder / "served")))
    print(1000 * (time.perf_counter() - start))


if __name__ == "__main__":
    main(sys.argv[1])
