"""Where each calculator is used: blocks of pages, expected readings and expressions."""

from __future__ import annotations

import re

from build_tools.content.handbook import Handbook

_CALL = re.compile(r"""work_out\(\s*["']([\w-]+)["']""")


def pages_by_calculator(handbook: Handbook) -> dict[str, set[str]]:
    """Return the addresses of the pages that use each calculator."""
    found: dict[str, set[str]] = {}
    for entry in handbook.entries():
        for _, group, name in entry.references():
            if group == "calculators":
                found.setdefault(name, set()).add(entry.address)
    for passage in handbook.passages:
        for match in _CALL.finditer(passage.text):
            found.setdefault(match[1], set()).add(passage.entry.address)
    return found
