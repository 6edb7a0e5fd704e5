"""Builds a site, changes a step of a procedure, and prints how long the next build takes.

As in `serve`, one process does both, so that whatever is kept between builds helps. Prints the
milliseconds by what was done, as JSON: after the saved file, and, of the handbook, all made anew.
"""

from __future__ import annotations

import json
import sys
import time
from collections.abc import Callable
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config

from build_tools.serving.kept import HANDBOOK
from build_tools.serving.server import Live

#: A step of the procedure that is changed, and what it is changed into.
STEP, CHANGED = "Wait until the control is back", "Wait until the control is quite back"
SAVED, WHOLE = "saved", "whole"


def main(config_file: str) -> None:
    """Build twice, with a change between, and once more as if nothing were kept."""
    path = Path(config_file)
    plugins = load_config(config_file).plugins
    measured = _handbook(path) if HANDBOOK in plugins else _plain(path)
    print(json.dumps(measured))


def _handbook(config_file: Path) -> dict[str, float]:
    live = Live(config_file, ("127.0.0.1", 8000), config_file.parent / "served")
    _built(live)
    _change(config_file.parent)
    saved = _milliseconds(lambda: _built(live))
    live.forget()
    return {SAVED: saved, WHOLE: _milliseconds(lambda: _built(live))}


def _built(live: Live) -> None:
    live.build()
    if live.state.told:
        sys.exit("\n".join(one.what for one in live.state.told))


def _plain(config_file: Path) -> dict[str, float]:
    def whole() -> None:
        build(load_config(str(config_file), site_dir=str(config_file.parent / "served")))

    whole()
    _change(config_file.parent)
    return {SAVED: _milliseconds(whole)}


def _change(folder: Path) -> None:
    (changed,) = (folder / "docs_src" / "procedures").glob("close-the-visit.[ym]*")
    text = changed.read_text(encoding="utf-8")
    if STEP not in text:
        sys.exit(f"The procedure {changed.name} has no step with the words: {STEP}")
    changed.write_text(text.replace(STEP, CHANGED, 1), encoding="utf-8")


def _milliseconds(make: Callable[[], None]) -> float:
    start = time.perf_counter()
    make()
    return 1000 * (time.perf_counter() - start)


if __name__ == "__main__":
    main(sys.argv[1])
