"""The templates of a folder, read alike wherever they stand; a name that is missing is an error."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined


def templates_in(folder: Path, *, are_html: bool = True, **options: Any) -> Environment:
    """Return Jinja2's environment for a folder. are_html: what is put into them is escaped."""
    return Environment(
        loader=FileSystemLoader(folder),
        autoescape=are_html,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        **options,
    )
