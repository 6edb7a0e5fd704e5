"""The reader's switch between the unit systems, in the header of every page."""

from __future__ import annotations

from markdown.extensions.toc import slugify
from mkdocs.exceptions import PluginError

from build_tools.content.unit_marks import own, pair
from build_tools.language.languages import ENGLISH
from build_tools.language.speaking import spoken

#: By language: how the switch names each system, in short and in full, and what it says.
_WORDS = {
    "en": {
        "us": ("US", "US customary"),
        "metric": ("Metric", "metric"),
        "label": "Units: {shown}. Change to {hidden} units.",
        "told": "Quantities are now in {shown} units.",
    },
    "es": {
        "us": ("EE. UU.", "de EE. UU."),
        "metric": ("Métrico", "métricas"),
        "label": "Unidades: {shown}. Cambiar a unidades {hidden}.",
        "told": "Las cantidades están ahora en unidades {shown}.",
    },
}
_BEFORE = '<form class="md-header__option" data-md-component="palette">'


def switch(own_units: str) -> str:
    """Return the switch; hidden, until the script that answers it is there."""
    other = "metric" if own_units == "us" else "us"
    words = _WORDS.get(spoken(), _WORDS[ENGLISH])

    def said(what: str, shown: str, hidden: str) -> str:
        return words[what].format(shown=words[shown][1], hidden=words[hidden][1])

    label, told = (
        pair(said(what, own_units, other), said(what, other, own_units))
        for what in ("label", "told")
    )
    short = pair(words[own_units][0], words[other][0])
    return (
        '<div class="units-switch" hidden>'
        f'<button type="button" aria-label="{label}" title="{label}">{short}</button>'
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
