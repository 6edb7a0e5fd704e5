"""Templates, and the texts of one entry with their expressions filled."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from build_tools.content.addresses import link_to
from build_tools.content.entries import Entry, Page, Passage
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment
from build_tools.content.values import Values
from build_tools.language.speaking import say, say_count
from build_tools.templates import templates_in

_HEADING = re.compile(r"^# +(.+?)[ #]*(?:\{.*)?$", re.MULTILINE)
_ENVIRONMENT = templates_in(
    Path(__file__).parent / "templates",
    are_html=False,  # templates write Markdown, in which MkDocs escapes what is not markup
    keep_trailing_newline=True,
    comment_start_string="{*",  # "{#" begins the id of a heading
    comment_end_string="*}",
)
_ENVIRONMENT.globals |= {"say": say, "say_count": say_count}


def render(template: str, **names: Any) -> str:
    """Return the Markdown that a template makes."""
    return _ENVIRONMENT.get_template(f"{template}.md.jinja").render(**names)


class Texts:
    """The texts of one entry as they are printed on one page."""

    def __init__(self, values: Values, entry: Entry[Any], unit: Entry[Equipment] | None = None):
        self._values = values
        self._unit = unit
        self._passages = {passage.text: passage for passage in entry.passages()}

    def __call__(self, text: str) -> str:
        """Return a text of the entry on one line, with its expressions filled."""
        passage = self._passages[text]
        filled = " ".join(self._values.fill(passage, self._unit).split())
        return passage.entry.said(passage.path, filled)


def fill_section(values: Values, page: Page, line: int, text: str) -> str:
    """Return a part of a page's body, which begins at `line`, with its expressions filled."""
    passage = Passage(page, text, lambda offset: line + text.count("\n", 0, offset))
    return values.fill(passage)


class Library:
    """Titles of and links to every page, for whoever writes one of them."""

    def __init__(self, handbook: Handbook, values: Values) -> None:
        self._titles: dict[str, str] = {}
        sections = (
            handbook.procedures,
            handbook.faults,
            handbook.checks,
            handbook.equipment,
            handbook.practice,
        )
        for entries in (*sections, handbook.lessons, handbook.pages):
            for entry in entries.values():
                if entry.content.title:
                    self._titles[entry.address] = Texts(values, entry)(entry.content.title)
        for page in handbook.pages.values():
            heading = _HEADING.search(page.body)
            name = heading[1] if heading else page.address
            self._titles.setdefault(page.address, name)

    #: From a page to that of its section.
    up = "../"

    def section(self, title: str) -> str:
        """Return what the way back to the section is called."""
        return title

    @property
    def titles(self) -> dict[str, str]:
        """The titles of all pages by address."""
        return self._titles

    def remark(self, address: str) -> str:
        """Return what to say after words of one's own that lead to a page."""
        return ""

    def name(self, address: str, title: str) -> None:
        """Give a generated page its title."""
        self._titles[address] = title

    def knows(self, address: str) -> bool:
        """Tell whether there is such a page."""
        return address in self._titles

    def title(self, address: str) -> str:
        """Return the title of a page."""
        return self._titles[address]

    def link(self, base: str, address: str, note: str = "") -> dict[str, str]:
        """Return the link from the page `base` to another page, with its title as words."""
        return {"words": self._titles[address], "link": link_to(base, address), "note": note}

    def links_in_a_row(self, base: str, addresses: list[str]) -> str:
        """Return links parted by commas, each page once, in the order of their titles."""
        ordered = sorted(set(addresses), key=lambda address: self._titles[address].lower())
        made = [self.link(base, address) for address in ordered]
        return ", ".join(f"[{one['words']}]({one['link']})" for one in made)
