"""The standing cautions, in full, for whichever page names them."""

from __future__ import annotations

from build_tools.content.handbook import Handbook
from build_tools.content.values import Values
from build_tools.pages.render import Texts


def in_full(handbook: Handbook, values: Values, names: list[str]) -> list[dict[str, str]]:
    """Return the named standing cautions with their title and text, and what local rules add."""
    shop = handbook.shop
    local: dict[str, list[str]] = {}
    for one in shop.content.local_cautions:
        if one.caution not in names:
            continue
        local.setdefault(one.caution, []).append(Texts(values, shop)(one.local))
    found = []
    for name in names:
        entry = handbook.cautions[name]
        text = Texts(values, entry)
        content = entry.content
        said = text(content.text)
        if name in local:
            said += f" **In {shop.content.town}:** {' '.join(local[name])}"
        found.append({"id": name, "title": text(content.title), "text": said})
    return found
