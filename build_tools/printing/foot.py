"""The foot of every printed page: which edition of what it is.

Styles print it from an attribute of the page, because the policy of pages lets no style stand in
them.
"""

from __future__ import annotations

from html import escape

from build_tools.edition import Edition
from build_tools.language.speaking import say

ATTRIBUTE = "data-print-foot"
_BEGINS = "<html "


def foot(title: str, edition: str) -> str:
    """Return the words of a foot."""
    return f"{title} · {say('Edition of {date}', date=edition)}"


def with_foot(page: str, site_name: str, edition: Edition | None) -> str:
    """Return a finished page with what its foot says; while authors work, nothing."""
    if edition is None:
        return page
    words = escape(foot(site_name, edition.words))
    return page.replace(_BEGINS, f'{_BEGINS}{ATTRIBUTE}="{words}" ', 1)
