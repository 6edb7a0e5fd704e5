"""Reads a site's built file `_headers` as a host does, so that the tests prove the file itself."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlsplit

from build_tools.pages.headers import NAME


def rules_of(folder: Path) -> dict[str, dict[str, str]]:
    """Return the headers of each rule by the rule's path, which may end in "*"."""
    rules: dict[str, dict[str, str]] = {}
    for block in (folder / NAME).read_text(encoding="utf-8").split("\n\n"):
        path, *headers = block.splitlines()
        parted = [header.strip().partition(": ") for header in headers]
        rules[path] = {name: value for name, _, value in parted}
    return rules


def headers_by_path(folder: Path) -> Callable[[str], dict[str, str]]:
    """Return a function that gives the headers for a requested path."""
    rules = rules_of(folder)

    def headers(requested: str) -> dict[str, str]:
        path = urlsplit(requested).path
        sent: dict[str, str] = {}
        for pattern, its_headers in rules.items():
            fits = path.startswith(pattern[:-1]) if pattern.endswith("*") else path == pattern
            if fits:
                assert not sent.keys() & its_headers.keys(), f"{path} gets a header twice"
                sent |= its_headers
        return sent

    return headers
