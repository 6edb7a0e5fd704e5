"""Compares a copy in a folder with a list."""

from __future__ import annotations

from pathlib import Path

from build_tools.publishing.findings import Findings
from build_tools.publishing.hash_list import files_of, hash_of


def compare(folder: Path, listed: dict[str, str]) -> Findings:
    """Return every missing, altered and additional file of a folder."""
    found = Findings()
    present = dict(files_of(folder))
    for name, wanted in listed.items():
        path = present.get(name)
        if path is None:
            found.problems.append(f"{name}: missing")
        elif hash_of(path) != wanted:
            found.problems.append(f"{name}: altered")
    found.problems += [f"{name}: additional" for name in present if name not in listed]
    return found
