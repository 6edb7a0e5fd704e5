"""Both sites: the shipped handbook and the small metric shop."""

from __future__ import annotations

from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path

import pytest

from build_tools.content.handbook import Handbook, load_handbook

ROOT = Path(__file__).parents[2]
MAIN = ROOT / "mkdocs.yml"
SECOND = ROOT / "tests" / "second_shop" / "mkdocs.yml"

#: Gives the text of a page's file.
Reader = Callable[[Path], str]


class Text(HTMLParser):
    """The text of a page as a reader sees it, on one line.

    Words of the glossary and quantities with another unit system beside them part nothing.
    """

    def __init__(self, html: str) -> None:
        super().__init__()
        self.words: list[str] = []
        self._hidden = 0
        self._parts_nothing: list[bool] = []
        self._goes_on = False
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._hidden += tag in ("script", "style", "template")
        inside = tag == "template" or (tag == "a" and ("class", "term") in attrs)
        inside |= tag == "span" and any(name in ("data-other", "data-own") for name, _ in attrs)
        if tag in ("a", "span", "template"):
            self._parts_nothing.append(inside)
        self._goes_on &= inside or bool(self._hidden)

    def handle_endtag(self, tag: str) -> None:
        self._hidden -= tag in ("script", "style", "template")
        inside = tag in ("a", "span", "template") and self._parts_nothing.pop()
        self._goes_on &= inside or bool(self._hidden)

    def handle_data(self, data: str) -> None:
        if self._hidden:
            return
        if self._goes_on:
            self.words[-1] += data
        else:
            self.words.append(data)
        self._goes_on = True

    def __str__(self) -> str:
        return " ".join(" ".join(self.words).split())


@pytest.fixture(params=[MAIN, SECOND], ids=["shipped", "second shop"])
def site(request: pytest.FixtureRequest, built: Callable[[Path], Path]) -> Path:
    """Return each of the two sites in turn."""
    return built(request.param)


@pytest.fixture(scope="session")
def shipped(built: Callable[[Path], Path]) -> Path:
    """Return the shipped handbook's site."""
    return built(MAIN)


@pytest.fixture(scope="session")
def second(built: Callable[[Path], Path]) -> Path:
    """Return the site of the small metric shop."""
    return built(SECOND)


@pytest.fixture(scope="session")
def handbook() -> Handbook:
    """Return the shipped handbook's sources."""
    return load_handbook(ROOT / "docs_src", ROOT)


def page(site: Path, address: str) -> Path:
    """Return the file of a page, by the address of its source."""
    return site / address.removesuffix(".md") / "index.html"


@pytest.fixture(scope="session")
def text_of() -> Reader:
    """Return a function that gives the text of a page's file."""
    return lambda page: str(Text(page.read_text(encoding="utf-8")))
