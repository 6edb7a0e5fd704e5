"""The printed pages of a pack, as HTML that needs no other file."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from markupsafe import Markup

from build_tools.templates import templates_in

_HERE = Path(__file__).parent
_ENVIRONMENT = templates_in(_HERE / "templates", keep_trailing_newline=True)


def page(template: str, **names: Any) -> str:
    """Return a page: "questions", "key" or "index"."""
    style = Markup((_HERE / "pack.css").read_text("utf-8"))
    made = _ENVIRONMENT.get_template(f"{template}.html.jinja").render(style=style, **names)
    return re.sub(r"\n{2,}", "\n", made)


def in_style(text: str) -> Markup:
    r"""Return a text as it may stand in the quotes of a style sheet, inside of HTML.

    >>> in_style('Dan "the" \\ </style>')
    Markup('Dan \\22 the\\22  \\5c  \\3c /style\\3e ')
    """
    return Markup(re.sub(r"""["'\\<>&\n]""", lambda found: f"\\{ord(found[0]):x} ", text))
