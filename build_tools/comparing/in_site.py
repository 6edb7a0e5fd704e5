"""The page "What changed", which is published with an edition."""

from __future__ import annotations

import re
from typing import Any

from mkdocs.utils import get_relative_url

from build_tools.comparing.as_text import (
    by_page,
    counted,
    label_of,
    page_words,
    place_of,
    reason_words,
    shown,
    summary,
    text_place,
)
from build_tools.comparing.compared import Comparison, Found, PageChange
from build_tools.pages.forms import page_url
from build_tools.pages.guides import FOLDER
from build_tools.pages.render import render

ADDRESS, TITLE = f"{FOLDER}/what-changed.md", "What changed"
_MARKUP = re.compile(r"[\\`*_{}\[\]<>#|&]")


def what_changed(comparison: Comparison) -> str:
    """Return the Markdown of the page."""
    return render(
        "what_changed",
        title=TITLE,
        old=comparison.old,
        new=comparison.new,
        summary=_plain("Nothing that readers see." if comparison.is_empty else summary(comparison)),
        numbers=[_group(reasons, pages) for reasons, pages in comparison.by_cause()],
        texts=[
            {"title": _plain(found[0].title), "rows": [_text(one) for one in found]}
            for found in by_page(comparison.texts).values()
        ],
        pages=[
            {"title": one.title, "what": page_words(one), "link": _link_of(one)}
            for one in comparison.pages
        ],
    )


def _group(reasons: tuple[Any, ...], pages: dict[str, list[Found]]) -> dict[str, Any]:
    numbers = counted(sum(map(len, pages.values())), "number", "numbers")
    return {
        "reasons": _plain(reason_words(reasons)),
        "count": f"{numbers} on {counted(len(pages), 'page', 'pages')}.",
        "pages": [
            {
                "title": found[0].title,
                "link": _link(page),
                "rows": [_number(one) for one in found],
            }
            for page, found in pages.items()
        ],
    }


def _number(found: Found) -> dict[str, str]:
    change = found.change
    return {
        "link": _link(found.page, change.block.anchor if change.new else ""),
        "place": place_of(change),
        "label": label_of(change),
        "old": shown(change.old) or "none",
        "new": shown(change.new) or "none",
    }


def _text(found: Found) -> dict[str, Any]:
    change = found.change
    return {
        "link": _link(found.page, change.block.anchor if change.new else ""),
        "place": place_of(change),
        "what": text_place(found),
        "parts": change.parts,
    }


def _link_of(change: PageChange) -> str:
    return _link(change.new) if change.new else ""


def _link(page: str, anchor: str = "") -> str:
    """Return a link that MkDocs does not see: the anchors of rendered pages are all known here."""
    link = get_relative_url(page_url(page), page_url(ADDRESS))
    return f"{link}#{anchor}" if anchor else link


def _plain(text: str) -> str:
    """Return a text in which Markdown finds no markup."""
    return _MARKUP.sub(lambda match: f"&#{ord(match[0])};", text)
