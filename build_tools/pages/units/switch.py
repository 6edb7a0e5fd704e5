"""The reader's switch between the unit systems, in the header of every page."""

from __future__ import annotations

from markdown.extensions.toc import slugify
from mkdocs.exceptions import PluginError

from build_tools.content.unit_marks import own, pair
from build_tools.language.speaking import marked, say

#: How the switch names a system, in short and in full.
NAMES = {
    "us": (marked("US"), marked("US customary")),
    "metric": (marked("Metric"), marked("metric")),
}
_BEFORE = '<form class="md-header__option" data-md-component="palette">'


def switch(own_units: str) -> str:
    """Return the switch; hidden, until the script that answers it is there."""
    other = "metric" if own_units == "us" else "us"

    def said(shown: str, hidden: str) -> str:
        names = {"now": say(NAMES[shown][1]), "then": say(NAMES[hidden][1])}
        return say("Units: {now}. Change to {then} units.", **names)

    label = pair(said(own_units, other), said(other, own_units))
    told = pair(
        *(
            say("Quantities are now in {now} units.", now=say(NAMES[one][1]))
            for one in (own_units, other)
        )
    )
    words = pair(say(NAMES[own_units][0]), say(NAMES[other][0]))
    return (
        '<div class="units-switch" hidden>'
        f'<button type="button" aria-label="{label}" title="{label}">{words}</button>'
        f'<span class="units-switch__told" role="status" data-told="{told}"></span></div>'
    )


def with_switch(html: str, own_units: str) -> str:
    """Return a page with the switch in its header, before that between light and dark."""
    before, found, after = html.partition(_BEFORE)
    if not found:
        raise PluginError(f"the theme's pages have no {_BEFORE} any more")
    return f"{before}{switch(own_units)}{found}{after}"


def slug(value: str, separator: str) -> str:
    """Return the anchor of a heading: that of its words in the shop's own units."""
    return slugify(own(value), separator)
