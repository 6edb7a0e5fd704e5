"""Runs MkDocs: a whole build of a handbook into a folder, and what MkDocs says meanwhile."""

from __future__ import annotations

import logging
from pathlib import Path
from typing import Any

from mkdocs.commands import build as mkdocs_build
from mkdocs.config import load_config

from build_tools.shops.place import Place


def build_site(place: Place, output: Path, compared_with: dict[str, Any] | None = None) -> None:
    """Build the handbook into a folder, which is emptied first.

    compared_with: the record of an older edition: a page then tells what changed since.
    """
    config = load_config(str(place.config), strict=True, site_dir=str(output))
    config.plugins.on_startup(command="build", dirty=False)
    config.plugins["handbook"].compared_with = compared_with
    try:
        mkdocs_build.build(config)
    finally:
        config.plugins.on_shutdown()


def print_what_mkdocs_says(progress_of: str | None = None) -> None:
    """Warnings and errors of MkDocs go to stderr as they are, and one part's progress too."""
    handler = logging.StreamHandler()
    handler.setFormatter(logging.Formatter("%(message)s"))
    logging.getLogger("mkdocs").addHandler(handler)
    logging.getLogger("mkdocs").setLevel(logging.WARNING)
    if progress_of:
        logging.getLogger(progress_of).setLevel(logging.INFO)
