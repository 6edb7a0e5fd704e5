"""From a print's document to its PDF file: printed, read for its page numbers, printed again."""

from __future__ import annotations

import io
import tempfile
from collections.abc import Mapping
from pathlib import Path

import pypdf

from build_tools.class_pack.pdf import printed
from build_tools.printing.document import Document
from build_tools.set_up.failure import Failure

#: A number with more or fewer digits may move what follows it; so often it is printed again.
MOST_TIMES = 5
#: Longer than the browser takes for the whole handbook on a slow machine [s].
LONGEST = 1800
OTHERWISE = "Try a smaller print, such as a path, or another version of the browser."


def pdf_file(document: Document, browser: str, day: str) -> bytes:
    """Return a print as a PDF file whose printed page numbers are those of its pages."""
    numbers: Mapping[str, int] | None = None
    with tempfile.TemporaryDirectory() as folder:
        page = Path(folder) / "print.html"
        for _ in range(MOST_TIMES):
            page.write_bytes(document.as_html(numbers))
            data = printed(browser, page, day, LONGEST, OTHERWISE)
            found = page_numbers(data, document.places)
            if found == numbers:
                return data
            numbers = found
    raise Failure("The page numbers of this print do not settle: try the other size of paper.")


def page_numbers(data: bytes, places: set[str]) -> dict[str, int]:
    """Return on which page of a PDF file each place stands, counted from one."""
    reader = pypdf.PdfReader(io.BytesIO(data))
    return {
        name.removeprefix("/"): reader.get_destination_page_number(target) + 1
        for name, target in reader.named_destinations.items()
        if name.removeprefix("/") in places
    }


def count_pages(data: bytes) -> int:
    """Return how many pages a PDF file has."""
    return len(pypdf.PdfReader(io.BytesIO(data)).pages)
