"""A comparison in words: for a terminal, and the parts that the page in the site has too."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from build_tools.comparing.block import Block, Number, quantity, words_before
from build_tools.comparing.compared import Comparison, Found, PageChange
from build_tools.comparing.differences import Change, NumberChange
from build_tools.comparing.explaining import TEXT, Reason
from build_tools.pages.forms import page_url

#: How parts of a reworded text are set in plain text.
_SIGNS = {"same": "{}", "removed": "[-{}-]", "added": "{{+{}+}}"}
#: Blocks in which the words before a number help to find it.
_PROSE = ("paragraph", "item", "step", "picture", "caption", "question", "heading")


def as_text(comparison: Comparison) -> str:
    """Return the whole comparison as lines."""
    return "\n".join(_lines(comparison))


def arrow(old: tuple[str, str] | None, new: tuple[str, str] | None) -> str:
    """Return two quantities, (number, unit) each, with an arrow; a shared unit stands once."""
    if old is None or new is None:
        return f"{' '.join(filter(None, new or old))} ({'removed' if new is None else 'added'})"
    shared = old[1] == new[1]
    first = old[0] if shared else " ".join(filter(None, old))
    return f"{first} → {' '.join(filter(None, new))}"


def change_of(change: NumberChange) -> str:
    """Return a changed number, old and new, as it is shown."""
    return arrow(change.old and quantity(*change.old), change.new and quantity(*change.new))


def shown(side: tuple[Block, Number] | None) -> str:
    """Return a number with its unit, "" for none."""
    return " ".join(filter(None, quantity(*side))) if side else ""


def label_of(change: NumberChange) -> str:
    """Return what a number is called under its heading: its labels, else the words before it."""
    block, number = change.block, change.number
    words = words_before(block, number) if block.kind in _PROSE else ""
    found = [block.label, block.column_of(number), words and f"“{words} …”"]
    return ", ".join(filter(None, found)) or block.kind


def place_of(change: Change) -> str:
    """Return the headings above a change."""
    return ", ".join(change.block.above) or "at the head of the page"


def reason_words(reasons: tuple[Reason, ...]) -> str:
    """Return the causes of a group: "iron_allowance in docs_src/shop.yaml: 4 → 3 gpg per mg/L"."""
    return "; and ".join(map(_reason, reasons)) or "a cause that is not known"


def counted(number: int, one: str, many: str) -> str:
    """Return a count with its word."""
    return f"{number} {one if number == 1 else many}"


def page_words(change: PageChange) -> str:
    """Return what became of a page."""
    numbers = counted(change.numbers, "number", "numbers")
    if change.what == "renamed":
        return f"renamed: {address(change.old)} → {address(change.new)}"
    return f"{change.what}: {address(change.new or change.old)} ({numbers})"


def address(page: str) -> str:
    """Return a page as its address in the site."""
    return page_url(page).rstrip("/") or "the first page"


def by_page(found: list[Found]) -> dict[str, list[Found]]:
    """Return changes by their page."""
    groups: dict[str, list[Found]] = {}
    for one in found:
        groups.setdefault(one.page, []).append(one)
    return groups


def summary(comparison: Comparison) -> str:
    """Return all counts in a sentence."""
    numbers = counted(len(comparison.numbers), "number", "numbers")
    texts = counted(len(comparison.texts), "text", "texts")
    pages = counted(len(comparison.pages), "page", "pages")
    return f"{numbers} changed, {texts} changed, {pages} added, removed or renamed."


def _lines(comparison: Comparison) -> Iterator[str]:
    yield f"Old: {comparison.old}"
    yield f"New: {comparison.new}"
    yield ""
    if comparison.is_empty:
        yield "Nothing that readers see is different."
        return
    yield summary(comparison)
    for reasons, pages in comparison.by_cause():
        count = sum(map(len, pages.values()))
        yield ""
        yield (
            f"{reason_words(reasons)}: {counted(count, 'number', 'numbers')} on "
            f"{counted(len(pages), 'page', 'pages')}"
        )
        for page, found in pages.items():
            yield f"  {address(page)}: {found[0].title}"
            for place, members in groupby(found, key=lambda one: place_of(one.change)):
                yield f"    {place}"
                yield from (
                    f"      {label_of(one.change)}: {change_of(one.change)}" for one in members
                )
    if comparison.texts:
        yield from ("", "Texts:")
    for page, found in by_page(comparison.texts).items():
        yield f"  {address(page)}: {found[0].title}"
        for one in found:
            yield f"    {place_of(one.change)}, {text_place(one)}: {_marked(one)}"
    if comparison.pages:
        yield from ("", "Pages:")
        yield from (f"  {page_words(one)}" for one in comparison.pages)


def text_place(found: Found) -> str:
    """Return which block it is under its heading, and what became of it."""
    block = found.change.block
    named = ", ".join(filter(None, [block.label, block.kind]))
    causes = " and ".join(one.name for one in found.reasons if one.kind != TEXT)
    return f"{named} {found.change.what}{causes and f' (by {causes})'}"


def _marked(found: Found) -> str:
    return "".join(_SIGNS[sort].format(text) for sort, text in found.change.parts)


def _reason(reason: Reason) -> str:
    if not reason.old and not reason.new:
        return f"{reason.name}: changed"
    return f"{reason.name}: {arrow(_parted(reason.old), _parted(reason.new))}"


def _parted(value: str) -> tuple[str, str]:
    number, _, unit = value.partition(" ")
    return number, unit
