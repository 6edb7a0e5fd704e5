"""`serve` in a real browser: problems come onto the open page and go when they are mended."""

from __future__ import annotations

import re
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Error, Locator, Page, expect

from tests.serving.shop import SECOND, copied
from tests.waiting import until

PATIENCE = 60_000
SERVE = """
import signal, sys
from pathlib import Path
from build_tools.serving.server import serve
signal.signal(signal.SIGTERM, signal.default_int_handler)
serve(Path(sys.argv[1]), "127.0.0.1", int(sys.argv[2]))
"""
PROCEDURE = "procedures/set-the-cabinet.yaml"
BROKEN = "\nAbout {{ fact.nothing }}.\n"


class Served:
    """A shop that is being served, and its sources."""

    def __init__(self, docs: Path, address: str) -> None:
        self.docs = docs
        self.address = address
        self._before: dict[Path, str] = {}

    def append(self, name: str, text: str) -> None:
        """Add to a source, until it is mended."""
        path = self.docs / name
        self._before.setdefault(path, path.read_text("utf-8"))
        path.write_text(path.read_text("utf-8") + text, "utf-8")

    def mend(self, *names: str) -> None:
        """Give these sources, or all, the texts that they had before."""
        for path in [self.docs / name for name in names] or list(self._before):
            path.write_text(self._before.pop(path), "utf-8")


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """Serve a copy of the small shop whose first build has a problem."""
    folder = tmp_path_factory.mktemp("shop")
    config = copied(folder)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    served = Served(folder / "docs_src", f"http://127.0.0.1:{port}/")
    served.append("index.md", BROKEN)
    process = subprocess.Popen([sys.executable, "-c", SERVE, str(config), str(port)])
    yield served
    process.terminate()
    process.wait(timeout=20)


@pytest.fixture(scope="module")
def context(browser: Browser) -> Iterator[BrowserContext]:
    """Return a browser profile as a phone's."""
    context = browser.new_context(viewport={"width": 390, "height": 844}, color_scheme="dark")
    context.set_default_timeout(PATIENCE)
    yield context
    context.close()


@pytest.fixture
def page(context: BrowserContext, served: Served) -> Iterator[Page]:
    """Return a page that may say nothing of errors; after the test all sources are mended."""
    page, errors = context.new_page(), []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.on("console", lambda one: errors.append(one.text) if "Policy" in one.text else None)
    yield page
    served.mend()
    page.close()
    assert errors == []


def panel(page: Page) -> Locator:
    """Return the list of problems."""
    return page.get_by_role("region", name=re.compile(r"^\d+ problems?$"))


def opened(page: Page, address: str) -> None:
    """Open a page of a server that may still be starting."""
    end = time.monotonic() + PATIENCE / 1000
    while True:
        try:
            page.goto(address)
            return
        except Error as error:
            if "ERR_CONNECTION" not in str(error) or time.monotonic() > end:
                raise
            time.sleep(0.2)


def test_a_first_build_with_problems_shows_their_list_then_the_page(
    served: Served, page: Page
) -> None:
    opened(page, served.address + "reference/shop/")
    expect(panel(page)).to_contain_text("docs_src/index.md:7")
    expect(panel(page)).to_contain_text('there is no fact "nothing"')
    expect(page).to_have_title("1 problem · Softener Service Handbook")
    served.mend()
    expect(page.get_by_role("heading", level=1)).to_contain_text("shop", timeout=PATIENCE)
    expect(panel(page)).to_have_count(0)


def test_problems_stand_above_the_last_good_content_until_they_are_mended(
    served: Served, page: Page
) -> None:
    opened(page, f"{served.address}procedures/set-the-cabinet/")
    steps = page.get_by_text("Enter the hardness.")
    expect(steps).to_be_visible()
    served.append("facts.yaml", "\nloud:\n  is: How loud\n")
    served.append(PROCEDURE, "\nnonsense: 1\n")
    expect(panel(page)).to_be_visible(timeout=PATIENCE)
    places = panel(page).locator("code")
    expect(places.first).to_contain_text(f"docs_src/{PROCEDURE}:", timeout=PATIENCE)
    expect(panel(page)).to_contain_text('unknown key "nonsense"')
    expect(panel(page)).to_contain_text("docs_src/facts.yaml:")
    expect(panel(page)).to_contain_text("Below is the last good content.")
    expect(steps).to_be_visible()
    assert "problems · " in page.title()
    assert page.evaluate("document.activeElement.tagName") == "BODY"
    served.mend("facts.yaml")
    expect(panel(page)).not_to_contain_text("docs_src/facts.yaml:", timeout=PATIENCE)
    served.mend(PROCEDURE)
    expect(panel(page)).to_have_count(0, timeout=PATIENCE)
    expect(page).to_have_title(re.compile(r"^Set the cabinet softener"))


def test_the_list_fits_a_phone_and_takes_the_keyboard(served: Served, page: Page) -> None:
    opened(page, f"{served.address}procedures/set-the-cabinet/")
    served.append("facts.yaml", "".join(f"\nloud_{n}:\n  is: It\n" for n in range(20)))
    expect(panel(page)).to_be_visible(timeout=PATIENCE)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    box = panel(page).bounding_box()
    assert box["height"] < 844 / 2
    page.mouse.wheel(0, 1500)
    until(page, "scrollY > 300")
    expect(panel(page)).to_be_in_viewport()
    summary = panel(page).locator("summary")
    assert summary.bounding_box()["height"] >= 44
    summary.focus()
    page.keyboard.press("Tab")
    expect(panel(page).locator(".source-problems-list")).to_be_focused()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Enter")
    expect(panel(page).locator("li").first).to_be_hidden()
    page.keyboard.press("Enter")
    expect(panel(page).locator("li").first).to_be_visible()
    served.mend()
    expect(panel(page)).to_have_count(0, timeout=PATIENCE)


def test_each_page_has_its_own_problems_first_also_when_the_theme_changes_pages(
    served: Served, page: Page
) -> None:
    served.append(PROCEDURE, "\nnonsense: 1\n")
    opened(page, f"{served.address}reference/shop/")
    expect(panel(page)).to_be_visible(timeout=PATIENCE)
    expect(panel(page).get_by_role("heading", level=3)).to_have_count(0)
    # The theme changes pages only once it has read which there are.
    until(
        page,
        "performance.getEntriesByType('resource').some((one) => one.name.endsWith('sitemap.xml'))",
    )
    page.evaluate("window.stays = true")
    page.evaluate(
        """() => {
          const link = document.createElement("a");
          link.href = new URL("../../procedures/set-the-cabinet/", location);
          document.querySelector("article").append(link);
          link.click();
        }"""
    )
    heading = panel(page).get_by_role("heading", name="In the source of this page")
    expect(heading).to_be_visible(timeout=PATIENCE)
    expect(panel(page)).to_have_count(1)
    assert page.evaluate("window.stays")
    served.mend()
    expect(panel(page)).to_have_count(0, timeout=PATIENCE)


def test_a_page_that_does_not_exist_yet_comes_when_it_is_written(
    served: Served, page: Page
) -> None:
    opened(page, f"{served.address}reference/later/")
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    expect(page.get_by_role("heading", name="Here it is")).to_have_count(0)
    (served.docs / "reference" / "later.md").write_text("# Here it is\n", "utf-8")
    served.append("index.md", "\nSee [it](reference/later.md).\n")
    expect(page.get_by_role("heading", name="Here it is")).to_be_visible(timeout=PATIENCE)
    (served.docs / "reference" / "later.md").unlink()
    served.mend()


def test_the_sites_files_know_nothing_of_the_list(built: Callable[[Path], Path]) -> None:
    site = built(SECOND.parent / "mkdocs.yml")
    for path in [*site.rglob("*.html"), *site.rglob("*.css")]:
        assert "source-problems" not in path.read_text("utf-8")
