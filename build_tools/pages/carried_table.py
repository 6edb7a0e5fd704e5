"""A table that people carry, as pages print it."""

from __future__ import annotations

from typing import Any

from build_tools.content.addresses import link_to
from build_tools.content.entries import Entry
from build_tools.content.page_models import Table
from build_tools.content.tables import worked_out
from build_tools.content.values import Values
from build_tools.pages.render import Texts


def carried(values: Values, base: str, entry: Entry[Table]) -> dict[str, Any]:
    """Return a table for the page `base`, with every cell worked out."""
    text = Texts(values, entry)
    return {
        "id": entry.id,
        "title": text(entry.content.title),
        "note": text(entry.content.note),
        "link": link_to(base, f"work-out/{entry.content.calculate}.md"),
        "grid": worked_out(values, entry),
    }
