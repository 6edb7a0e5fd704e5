"""The panel with all problems, put into a page on its way to the browser, and its first page.

The files of the site know nothing of it. A page gets the problems of its own source first.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from build_tools.serving.trouble import Told
from build_tools.templates import templates_in

STYLE = Path(__file__).with_name("problems.css")
#: Where the server has the panel's style; nothing of a site begins so.
STYLE_ADDRESS = "livereload-problems.css"

#: The part of a page that the theme changes when it changes pages; else the page's beginning.
_PLACES = (re.compile(r'<div class="md-container"[^>]*>'), re.compile(r"<body[^>]*>"))
_TITLE = re.compile(r"<title>")
_ENVIRONMENT = templates_in(Path(__file__).parent / "templates")


def counted(told: list[Told]) -> str:
    """Return how many there are, in words."""
    return "1 problem" if len(told) == 1 else f"{len(told)} problems"


def with_panel(html: str, told: list[Told], own: Iterable[str], root: str, *, good: bool) -> str:
    """Return a page with the panel.

    own: the files that the page is made from. root: the path of the site at the server. good:
    whether the page below is that of an earlier build.
    """
    own = set(own)
    panel = _ENVIRONMENT.get_template("panel.html.jinja").render(
        count=counted(told),
        of_this_page=[one for one in told if one.file in own],
        others=[one for one in told if one.file not in own],
        style=f"{root}{STYLE_ADDRESS}",
        good=good,
    )
    html = _TITLE.sub(lambda match: f"{match[0]}{counted(told)} · ", html, count=1)
    for place in _PLACES:
        if place.search(html):
            return place.sub(lambda match: f"{match[0]}\n{panel}", html, count=1)
    return panel + html


def first_page(site_name: str) -> str:
    """Return the page that stands in for all others until the first build succeeds."""
    return _ENVIRONMENT.get_template("first_page.html.jinja").render(site_name=site_name)
