"""A page that no other page leads to is never read."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.addresses import is_section_index
from build_tools.content.handbook import Handbook
from build_tools.content.leads import leads
from build_tools.content.problems import Problem, asking


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each procedure, fault, lesson or plain page that nothing leads to.

    The index pages of sections list everything, so they do not count; the home page does. Each
    lesson leads to the next. A file that failed to load may lead to whatever it mentions, a
    misspelled name to the nearest one.
    """
    reached = {target for base, target, _ in leads(handbook) if target != base}
    reached |= {lesson.address for lesson in handbook.lessons_in_order[1:]}
    broken = "\n".join(handbook.broken.values())
    for group in (handbook.procedures, handbook.faults, handbook.lessons, handbook.pages):
        for entry in group.values():
            address = entry.address
            if address in reached or is_section_index(address) or entry.id in broken:
                continue
            wanted = 'a link, a "go_to" or a list on another page that names it'
            said = asking("no other page leads to this one", wanted)
            yield Problem(entry.file, 1, said)
