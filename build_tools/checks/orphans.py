"""A page that no other page leads to is never read."""

from __future__ import annotations

from collections.abc import Iterator
from urllib.parse import unquote

from build_tools.content.addresses import is_section_index, target_of
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem
from calculators.quantities import nearest

_LINKING = {"procedures": "procedures/", "faults": "faults/", "learn": "learn/", "pages": ""}


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each procedure, fault, lesson or plain page that nothing leads to.

    The index pages of sections list everything, so they do not count; the home page does. A file
    that failed to load may lead to whatever it mentions, a misspelled name to the nearest one.
    """
    reached = _reached(handbook)
    broken = "\n".join(handbook.broken.values())
    for group in (handbook.procedures, handbook.faults, handbook.lessons, handbook.pages):
        for entry in group.values():
            address = entry.address
            if address in reached or is_section_index(address) or entry.id in broken:
                continue
            said = (
                'no other page leads to this one (expected a link, a "go_to" or a list on another '
                "page that names it)"
            )
            yield Problem(entry.file, 1, said)


def _reached(handbook: Handbook) -> set[str]:
    reached = set()
    for entry in handbook.entries():
        for _, group, name in entry.references():
            if group in _LINKING:
                known = handbook.names(group)
                meant = name if name in known else nearest(name, known)
                reached |= {f"{_LINKING[group]}{meant}.md"} - {entry.address}
    for passage in handbook.passages:
        base = passage.entry.address
        if is_section_index(base) and base != "index.md":
            continue
        for link in passage.markdown.links:
            reached |= {target_of(base, unquote(link.target))[0]} - {base}
    return reached
