"""Which page leads to which: by the names that fields hold, by links, and by calculators used."""

from __future__ import annotations

import re
from collections.abc import Iterator
from enum import Enum
from urllib.parse import unquote

from build_tools.content.addresses import is_section_index, target_of
from build_tools.content.handbook import Handbook
from calculators.quantities import nearest

_FOLDERS = {
    "procedures": "procedures/",
    "faults": "faults/",
    "checks": "checks/",
    "learn": "learn/",
    "equipment": "equipment/",
    "calculators": "work-out/",
    "pages": "",
}
_CALL = re.compile(r"""work_out\(\s*["']([\w-]+)["']""")


class By(Enum):
    """How a page leads to another."""

    NAME = "a field that names it"
    LINK = "a link in a text"
    USE = "a calculator that works something out on the page"


def leads(handbook: Handbook) -> Iterator[tuple[str, str, By]]:
    """Yield (from, to, how) for each lead of one page to another; each as often as it stands there.

    A misspelled name leads to what it is nearest to. The index pages of sections list everything,
    so their links are no leads; those of the home page are.
    """
    for entry in handbook.entries():
        for _, group, name in entry.references():
            if group in _FOLDERS:
                known = handbook.names(group)
                meant = name if name in known else nearest(name, known)
                how = By.USE if group == "calculators" else By.NAME
                yield entry.address, f"{_FOLDERS[group]}{meant}.md", how
    for passage in handbook.passages:
        base = passage.entry.address
        if is_section_index(base) and base != "index.md":
            continue
        for link in passage.markdown.links:
            yield base, target_of(base, unquote(link.target))[0], By.LINK
        for match in _CALL.finditer(passage.text):
            yield base, f"work-out/{match[1]}.md", By.USE


def pages_by_calculator(handbook: Handbook) -> dict[str, set[str]]:
    """Return the addresses of the pages that work something out with each calculator."""
    found: dict[str, set[str]] = {}
    for base, target, how in leads(handbook):
        if how is By.USE:
            name = target.removeprefix("work-out/").removesuffix(".md")
            found.setdefault(name, set()).add(base)
    return found
