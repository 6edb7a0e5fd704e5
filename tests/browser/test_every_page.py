"""Pages of the handbook, one after the other; by itself, as it takes a while."""

from __future__ import annotations

from itertools import groupby
from pathlib import Path

from playwright.sync_api import expect

from tests.browser.visits import Visits

#: Folders of many pages that one template makes of like content: every eighth page is visited.
ALIKE = ("checks", "embed", "equipment", "faults", "learn", "practise", "procedures", "work-out")
STEP = 8


def to_visit(folder: Path, step: int) -> list[str]:
    """Return the addresses of the pages to visit: all, or one of so many alike."""
    pages = sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*.html"))
    found: list[str] = []
    for section, members in groupby(pages, key=lambda page: page.partition("/")[0]):
        found += list(members)[:: step if section in ALIKE else 1]
    return found


def test_every_page_loads_without_errors_and_from_its_own_host(
    visits: Visits, handbook: str, handbook_folder: Path, thorough: bool
) -> None:
    page = visits.page()
    # Python would start in each page with a form, which other tests see to.
    page.add_init_script(
        "Object.defineProperty(navigator, 'connection', { value: { saveData: true } });"
    )
    found = to_visit(handbook_folder, 1 if thorough else STEP)
    for address in found:
        page.goto(handbook + address, wait_until="domcontentloaded")
        expect(page.get_by_role("heading", level=1)).to_be_visible()
    assert {address.partition("/")[0] for address in found} >= {*ALIKE, "es", "reference"}
    assert {url for url in visits.requests if not url.startswith(handbook)} <= {"data:,"}
