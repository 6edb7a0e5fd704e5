"""Reads a site's built file `_headers` as a host does, so that the tests prove the file itself."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlsplit

from build_tools.pages.headers import NAME, headers_for, read_rules


def rules_of(folder: Path) -> dict[str, dict[str, str]]:
    """Return the headers of each rule by the rule's path, which may end in "*"."""
    return read_rules((folder / NAME).read_text(encoding="utf-8"))


def headers_by_path(folder: Path) -> Callable[[str], dict[str, str]]:
    """Return a function that gives the headers for a requested path."""
    rules = rules_of(folder)

    def headers(requested: str) -> dict[str, str]:
        path = urlsplit(requested).path
        fitting = [its for pattern, its in rules.items() if headers_for({pattern: its}, path)]
        names = [name for its in fitting for name in its]
        assert len(names) == len(set(names)), f"{path} gets a header twice"
        return headers_for(rules, path)

    return headers
