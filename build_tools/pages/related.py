"""The lists at the foot of a page: which pages lead to it, found in the content, never typed."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from build_tools.content.addresses import target_of
from build_tools.content.handbook import Handbook
from build_tools.content.leads import By, leads, pages_by_calculator
from build_tools.language.speaking import marked, say
from build_tools.pages.render import Library, render

#: So many links stand at the foot of a page at most, over all its lists, and in one of them.
MOST, MOST_IN_A_LIST = 8, 5
#: What a lead counts for, by how it leads; pages that share a calculator share a little.
WEIGHT = {By.NAME: 3.0, By.LINK: 2.0, By.USE: 2.0}
SHARED = 0.5
#: A calculator that more pages use tells nothing about what two of them have in common.
SHARED_BY = 5
#: Sections whose pages have such lists.
SECTIONS = ("procedures", "faults", "checks", "learn", "work-out", "equipment")
#: By the section that leads here, in the order of the lists.
HEADINGS = {
    "faults": marked("Faults that send you here"),
    "checks": marked("Checks that send you here"),
    "procedures": marked("Procedures that send you here"),
    "learn": marked("Lessons that teach this"),
    "practise": marked("Practise it"),
}
#: Where another heading says it better: by the section that leads, and that of the page.
OTHER_HEADINGS = {
    ("faults", "faults"): marked("Faults that name this one"),
    ("checks", "checks"): marked("Take this before"),
    ("procedures", "work-out"): marked("Procedures that use this"),
    ("procedures", "equipment"): marked("Procedures that use this"),
    ("procedures", "checks"): marked("Procedures that use this"),
    ("procedures", "learn"): marked("Procedures that use this"),
    ("learn", "learn"): marked("Lessons that lead here"),
}
_MARKDOWN_LINK = re.compile(r"\]\(([^)\s]+)\)")
_HTML_LINK = re.compile(r"""\bhref=["']([^"']+)["']""")


class Related:
    """Knows for every page which others lead to it."""

    def __init__(self, handbook: Handbook, library: Library) -> None:
        self._library = library
        self._weights: dict[str, Counter[str]] = {}
        for base, target, how in leads(handbook):
            self._add(target, base, WEIGHT[how])
        for pages in pages_by_calculator(handbook).values():
            for one in pages if len(pages) <= SHARED_BY else ():
                for other in pages - {one}:
                    if _may_share(one, other):
                        self._add(one, other, SHARED / len(pages))
        self._shares = {
            fault.address: fault.content.share_of_calls.quantity.number
            for fault in handbook.faults.values()
        }

    def _add(self, target: str, base: str, weight: float) -> None:
        if target != base:
            self._weights.setdefault(target, Counter())[base] += weight

    def with_lists(self, address: str, markdown: str) -> str:
        """Return a page with its lists at its foot; what it links to already is in none."""
        if _section(address) not in SECTIONS or address.endswith("/index.md"):
            return markdown
        shown = set(_linked(address, markdown))
        best = [base for base in self._ranked(address) if base not in shown]
        groups: dict[str, list[dict[str, str]]] = {name: [] for name in HEADINGS}
        for base in best:
            group = groups[_section(base)]
            if len(group) < MOST_IN_A_LIST and sum(map(len, groups.values())) < MOST:
                group.append(self._library.link(address, base))
        lists = [
            {"heading": say(_heading(address, name)), "from": name, "links": links}
            for name, links in groups.items()
            if links
        ]
        return markdown + (render("related", lists=lists) if lists else "")

    def _ranked(self, address: str) -> list[str]:
        """Return the pages that lead to one, the strongest leads first."""
        weights = self._weights.get(address, Counter())
        found = [
            base
            for base in weights
            if _section(base) in HEADINGS and not base.endswith("/index.md")
        ]
        found.sort(key=lambda base: (-weights[base], -self._shares.get(base, 0.0), base))
        return found


def _section(address: str) -> str:
    return address.partition("/")[0]


def _may_share(one: str, other: str) -> bool:
    """Tell whether a shared calculator relates two pages: a lesson and what it prepares for."""
    return (_section(one) == "learn") != (_section(other) == "learn")


def _heading(address: str, leading: str) -> str:
    return OTHER_HEADINGS.get((leading, _section(address)), HEADINGS[leading])


def _linked(address: str, markdown: str) -> Iterator[str]:
    """Yield the pages that a finished page links to."""
    for pattern in (_MARKDOWN_LINK, _HTML_LINK):
        for match in pattern.finditer(markdown):
            yield target_of(address, match[1])[0]
