"""The small metric shop, its built site, and its prints."""

from __future__ import annotations

import io
import unicodedata
from collections.abc import Callable, Iterator
from functools import cached_property
from pathlib import Path
from typing import Any

import pypdf
import pytest

from build_tools.content.handbook import Handbook, load_handbook
from build_tools.printing.built_site import BuiltSite
from build_tools.printing.commands import composed
from build_tools.printing.making import pdf_file
from build_tools.printing.wanted import Wanted

ROOT = Path(__file__).parents[2]
SECOND = ROOT / "tests" / "second_shop"


class Read:
    """A PDF file as its readers have it; pages are counted from one."""

    def __init__(self, data: bytes) -> None:
        self.pdf = pypdf.PdfReader(io.BytesIO(data))

    @cached_property
    def texts(self) -> list[str]:
        """The words of each page, on one line; letters that are drawn as one are several."""
        texts = [unicodedata.normalize("NFKC", page.extract_text()) for page in self.pdf.pages]
        return [" ".join(text.split()) for text in texts]

    @cached_property
    def headings(self) -> list[tuple[int, str, int]]:
        """The depth, the words and the page of each bookmark."""
        return list(self._bookmarks(self.pdf.outline, 1))

    def _bookmarks(self, entries: list[Any], depth: int) -> Iterator[tuple[int, str, int]]:
        for entry in entries:
            if isinstance(entry, list):
                yield from self._bookmarks(entry, depth + 1)
            else:
                yield depth, entry.title, self.pdf.get_destination_page_number(entry) + 1

    def links(self, number: int) -> list[int]:
        """Return the pages that the links of a page lead to within the file."""
        found = [one.get_object() for one in self.pdf.pages[number - 1].get("/Annots", [])]
        known = self.pdf.named_destinations
        return [
            self.pdf.get_destination_page_number(known[one["/Dest"]]) + 1
            for one in found
            if "/Dest" in one
        ]


@pytest.fixture(scope="session")
def handbook() -> Handbook:
    return load_handbook(SECOND / "docs_src", SECOND)


@pytest.fixture(scope="session")
def site(built: Callable[[Path], Path]) -> BuiltSite:
    return BuiltSite(built(SECOND / "mkdocs.yml"))


@pytest.fixture(scope="session")
def print_of(handbook: Handbook, site: BuiltSite, browser_program: str) -> Callable[..., Read]:
    """Return a function that prints a part of the small shop's handbook."""

    def printed(kind: str, name: str = "", paper: str = "a4") -> Read:
        document = composed(Wanted(kind, name), handbook, site, paper)
        return Read(pdf_file(document, browser_program, site.day.isoformat()))

    return printed
