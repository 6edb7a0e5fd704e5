"""A comparison as plain data for other programs; docs/compare.md tells what the keys mean."""

from __future__ import annotations

from typing import Any

from build_tools.comparing.as_text import address
from build_tools.comparing.block import Block, Number, quantity
from build_tools.comparing.compared import Comparison, Found, PageChange

#: Changes with any change of the keys' meaning.
FORMAT = 1


def as_data(comparison: Comparison) -> dict[str, Any]:
    """Return all of it as JSON can carry it."""
    return {
        "format": FORMAT,
        "old": comparison.old,
        "new": comparison.new,
        "causes": [
            {
                "reasons": [one.as_data() for one in reasons],
                "numbers": sum(map(len, pages.values())),
                "pages": [address(page) for page in pages],
            }
            for reasons, pages in comparison.by_cause()
        ],
        "numbers": [_number(one) for one in comparison.numbers],
        "texts": [_text(one) for one in comparison.texts],
        "pages": [_page(one) for one in comparison.pages],
    }


def _number(found: Found) -> dict[str, Any]:
    change = found.change
    block, number = change.block, change.number
    return {
        "page": address(found.page),
        "place": [*block.place, *filter(None, [block.column_of(number)])],
        "anchor": block.anchor,
        "kind": block.kind,
        "old": _shown(change.old),
        "new": _shown(change.new),
        "old_text": change.old and change.old[0].text,
        "new_text": change.new and change.new[0].text,
        "reasons": [one.as_data() for one in found.reasons],
    }


def _shown(side: tuple[Block, Number] | None) -> dict[str, str] | None:
    if side is None:
        return None
    number, unit = quantity(*side)
    return {"number": number, "unit": unit}


def _text(found: Found) -> dict[str, Any]:
    change = found.change
    return {
        "page": address(found.page),
        "place": list(change.block.place),
        "anchor": change.block.anchor,
        "kind": change.block.kind,
        "what": change.what,
        "old": change.old and change.old.text,
        "new": change.new and change.new.text,
        "parts": [list(part) for part in change.parts],
        "reasons": [one.as_data() for one in found.reasons],
    }


def _page(change: PageChange) -> dict[str, Any]:
    return {
        "what": change.what,
        "old": change.old and address(change.old),
        "new": change.new and address(change.new),
        "title": change.title,
        "numbers": change.numbers,
    }
