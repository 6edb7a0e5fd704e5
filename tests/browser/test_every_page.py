"""All pages of the handbook, one after the other; by itself, as it takes a while."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import expect

from tests.browser.visits import Visits


def test_every_page_loads_without_errors_and_from_its_own_host(
    visits: Visits, handbook: str, handbook_folder: Path
) -> None:
    page = visits.page()
    # Python would start in each page with a form, which other tests see to.
    page.add_init_script(
        "Object.defineProperty(navigator, 'connection', { value: { saveData: true } });"
    )
    found = sorted(handbook_folder.rglob("*.html"))
    for file in found:
        page.goto(handbook + file.relative_to(handbook_folder).as_posix())
        expect(page.get_by_role("heading", level=1)).to_be_visible()
    assert len(found) >= 100
    assert {url for url in visits.requests if not url.startswith(handbook)} <= {"data:,"}
