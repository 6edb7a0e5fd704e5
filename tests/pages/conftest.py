"""Both sites: the shipped handbook and the small metric shop."""

from __future__ import annotations

from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MAIN = ROOT / "mkdocs.yml"
SECOND = ROOT / "tests" / "second_shop" / "mkdocs.yml"


class Text(HTMLParser):
    """The text of a page as a reader sees it, on one line; a link of the glossary parts nothing."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.words: list[str] = []
        self._hidden = 0
        self._in_term = self._glued = self._in_text = False
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._hidden += tag in ("script", "style", "template")
        self._in_term = tag == "a" and ("class", "term") in attrs
        self._glued = self._in_term and self._in_text
        self._in_text = False

    def handle_endtag(self, tag: str) -> None:
        self._hidden -= tag in ("script", "style", "template")
        self._glued = self._in_term and tag == "a"
        self._in_term = self._in_text = False

    def handle_data(self, data: str) -> None:
        if self._hidden:
            return
        if self._glued and self.words:
            self.words[-1] += data
        else:
            self.words.append(data)
        self._glued = False
        self._in_text = True

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
def text_of() -> Callable[[Path], str]:
    """Return a function that gives the text of a page's file."""
    return lambda page: str(Text(page.read_text(encoding="utf-8")))
