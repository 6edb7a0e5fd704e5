"""Two records compared: pages, numbers by cause, and texts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from difflib import SequenceMatcher
from typing import Any

from build_tools.comparing.block import Block
from build_tools.comparing.blocks import blocks, title_of
from build_tools.comparing.differences import Change, NumberChange, differences
from build_tools.comparing.explaining import Explanation, Reason
from build_tools.comparing.marks import unmarked

#: Pages that share at least so many of their blocks are one page under a new address.
RENAMED = 0.5


@dataclass(frozen=True)
class Found:
    """A change with its page and its reasons."""

    page: str
    title: str
    change: Change
    reasons: tuple[Reason, ...]


@dataclass(frozen=True)
class PageChange:
    """A page that was added, removed or renamed: its addresses, and how many numbers it has."""

    old: str | None
    new: str | None
    title: str
    numbers: int

    @property
    def what(self) -> str:
        """What became of it."""
        if self.old is None:
            return "added"
        return "removed" if self.new is None else "renamed"


@dataclass
class Comparison:
    """All that changed. old, new: the two editions in words."""

    old: str
    new: str
    pages: list[PageChange] = field(default_factory=list)
    numbers: list[Found] = field(default_factory=list)
    texts: list[Found] = field(default_factory=list)

    @property
    def is_empty(self) -> bool:
        """Whether nothing changed that a reader sees."""
        return not (self.pages or self.numbers or self.texts)

    def by_cause(self) -> list[tuple[tuple[Reason, ...], dict[str, list[Found]]]]:
        """Return the changed numbers by reasons and page; what moved most first."""
        groups: dict[tuple[Reason, ...], dict[str, list[Found]]] = {}
        for found in self.numbers:
            groups.setdefault(found.reasons, {}).setdefault(found.page, []).append(found)
        return sorted(groups.items(), key=lambda group: -sum(map(len, group[1].values())))


def compare(old: dict[str, Any], new: dict[str, Any], old_name: str, new_name: str) -> Comparison:
    """Return what changed from one record to another."""
    made = Comparison(old_name, new_name)
    explanation = Explanation(old, new)
    for before, after in _paired(old["pages"], new["pages"]):
        was, is_now = before and old["pages"][before]["text"], after and new["pages"][after]["text"]
        if before == after and unmarked(was) == unmarked(is_now):
            continue
        sides = blocks(was or ""), blocks(is_now or "")
        title = title_of(sides[1]) or title_of(sides[0])
        if before != after:
            count = sum(len(one.numbers) for one in sides[1] or sides[0])
            made.pages.append(PageChange(before, after, title, count))
            if before is None or after is None:
                continue
        for change in differences(*sides):
            reasons = explanation.of(change, before, after)
            found = Found(after, title, change, reasons)
            (made.numbers if isinstance(change, NumberChange) else made.texts).append(found)
    return made


def _paired(old: dict[str, Any], new: dict[str, Any]) -> Iterator[tuple[str | None, str | None]]:
    """Yield the addresses of each page; of a renamed one, both."""
    gone = [one for one in old if one not in new]
    renamed: dict[str, str] = {}
    for address in new:
        if address in old:
            continue
        if like := _likest(address, gone, old, new):
            renamed[address] = like
            gone.remove(like)
    for address in new:
        yield (address if address in old else renamed.get(address)), address
    for address in gone:
        yield address, None


def _likest(address: str, gone: list[str], old: dict[str, Any], new: dict[str, Any]) -> str | None:
    if not gone:
        return None
    words = _words(blocks(new[address]["text"]))
    likeness = {one: _likeness(_words(blocks(old[one]["text"])), words) for one in gone}
    best = max(gone, key=lambda one: likeness[one])
    return best if likeness[best] >= RENAMED else None


def _words(found: list[Block]) -> list[str]:
    return [one.words for one in found]


def _likeness(old: list[str], new: list[str]) -> float:
    return SequenceMatcher(None, old, new, autojunk=False).ratio()
