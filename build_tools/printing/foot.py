"""The foot of every printed page: which edition of what it is.

Styles print it from an attribute of the page, because the policy of pages lets no style stand in
them.
"""

from __future__ import annotations

from markupsafe import Markup

from build_tools.edition import Edition
from build_tools.language.speaking import say

ATTRIBUTE, PAGE_ATTRIBUTE = "data-print-foot", "data-print-page"
_BEGINS = "<html "


def foot(title: str, edition: str) -> str:
    """Return the words of a foot."""
    return f"{title} · {say('Edition of {date}', date=edition)}"


def with_foot(page: str, site_name: str, edition: Edition | None) -> str:
    """Return a finished page with what its foot says; while authors work, nothing."""
    if edition is None:
        return page
    return page.replace(_BEGINS, f"{_BEGINS}{attributes(foot(site_name, edition.words))} ", 1)


def attributes(foot: str) -> Markup:
    """Return the attributes of a page from which styles take the words of its foot."""
    return Markup('%s="%s" %s="%s"') % (ATTRIBUTE, foot, PAGE_ATTRIBUTE, say("Page"))
