"""The command compare."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from build_tools.comparing.as_data import as_data
from build_tools.comparing.as_text import as_text
from build_tools.comparing.compared import Comparison
from build_tools.comparing.compared import compare as compared
from build_tools.comparing.editions import NOW, Side, records, side

FORMATS: dict[str, Callable[[Comparison], str]] = {
    "text": as_text,
    "json": lambda comparison: json.dumps(as_data(comparison), ensure_ascii=False, indent=2),
}


def compare(root: Path, old: str, new: str | None, how: str) -> None:
    """Tell what is different between two editions of the handbook in a folder.

    new: nothing stands for the files as they are now.
    """
    click.echo(FORMATS[how](between(side(old, root), side(new, root) if new else NOW, root)))


def between(old: Side, new: Side, root: Path) -> Comparison:
    """Return what changed from one side to another."""
    (before, old_words), (after, new_words) = records([old, new], root)
    return compared(before, after, old_words, new_words)


def record_of_side(name: str, root: Path) -> dict[str, Any]:
    """Return the record of what a name stands for."""
    record, _ = records([side(name, root)], root)[0]
    return record


def options_of_compare(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the arguments of `compare`."""
    for one in (
        click.option(
            "--format",
            "how",
            type=click.Choice([*FORMATS]),
            default="text",
            show_default=True,
            help="For people, or as JSON for other programs.",
        ),
        click.argument("new", required=False),
        click.argument("old", default="HEAD"),
    ):
        command = one(command)
    return command
