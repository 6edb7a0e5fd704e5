"""The handbook without a network: what was visited, what is kept, and how editions change."""

from __future__ import annotations

import datetime
import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from build_tools.edition import Edition
from build_tools.offline.edition import WORKBOX_FOLDER, workbox_files, write_edition
from calculators import run
from tests.browser.conftest import ROOT
from tests.browser.host import Host, hosted
from tests.browser.visits import Visits, example_of
from tests.waiting import until, until_given

CALCULATOR = "work-out/hardness-units/"
NOT_VISITED = "work-out/bucket-flow/"
KEEP_PAGE = "reference/on-this-phone/"
PHONE = {"width": 390, "height": 844}
TODAY = datetime.date.today()


@pytest.fixture
def host(handbook_folder: Path, tmp_path: Path) -> Iterator[Host]:
    """Host a copy of the demo shop's handbook."""
    with hosted(shutil.copytree(handbook_folder, tmp_path / "site")) as host:
        yield host


@pytest.fixture
def page(visits: Visits) -> Iterator[Page]:
    """Return a page of a new phone, whose browser may keep pages. It loses its network at times."""
    page = visits.page(service_workers="allow", viewport=PHONE)
    yield page
    page.close()
    visits.take_errors()


def next_edition(site: Path, folder: Path) -> Path:
    """Return the edition of tomorrow: other text on each page, and scripts under a new name."""
    made = shutil.copytree(site, folder)
    (assets,) = made.glob("assets/handbook-*")
    renamed = assets.rename(assets.with_name("handbook-0123456789abcdef"))
    tomorrow = TODAY + datetime.timedelta(days=1)
    for html in made.rglob("*.html"):
        text = html.read_text(encoding="utf-8").replace(assets.name, renamed.name)
        text = text.replace(f'datetime="{TODAY}"', f'datetime="{tomorrow}"')
        html.write_text(text.replace("</h1>", " (new)</h1>"), encoding="utf-8")
    for old in made.glob("edition*.json"):
        old.unlink()
    workbox = [f"{WORKBOX_FOLDER}/{path.name}" for path in workbox_files(ROOT)]
    write_edition(made, Edition(tomorrow, "2b637838"), workbox)
    return made


def visit_until_kept(page: Page, address: str) -> None:
    """Visit a calculator once, long enough for the browser to keep the page and its Python."""
    page.goto(address)
    expect(page.locator(".live-form__status")).to_have_text(re.compile("^Change a number"))
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    kept = """async () => {
      const parts = await (await caches.open("runtime parts")).keys();
      const pages = await (await caches.open("pages")).keys();
      return parts.length >= 4 && pages.length >= 1;
    }"""
    until(page, kept)


def expect_answer(page: Page, calculator: str, name: str, text: str) -> None:
    """Type into a form, and check the answer."""
    page.locator(f"[data-input={name}] input").first.fill(text)
    values = run(calculator, {**example_of(calculator, "us"), name: text})["values"]
    for output, value in values.items():
        expect(page.locator(f"[data-output={output}] strong")).to_have_text(value["shown"])


def change_page(page: Page, address: str) -> None:
    """Follow a link of the theme's to another page of the handbook."""
    page.evaluate(
        """(address) => {
          const link = document.querySelector("[data-md-component=logo]");
          link.href = new URL(address, link.href);
          link.click();
        }""",
        address,
    )
    page.wait_for_url(f"**/{address}")


def keep(page: Page, address: str, button: str = "Keep this handbook on this phone") -> None:
    """Press the button that keeps the handbook."""
    page.goto(address + KEEP_PAGE)
    page.get_by_role("button", name=button).click()


def status(page: Page):
    """Return what the page says of keeping the handbook."""
    return page.locator("[data-part=status]")


def kept_addresses(host: Host) -> set[str]:
    """Return the addresses of the edition's files."""
    out = json.loads((host.folder / "edition.json").read_text(encoding="utf-8"))
    listed = (host.folder / f"edition-{out['id']}.json").read_text(encoding="utf-8")
    return {address for address, *_ in json.loads(listed)}


def test_a_second_visit_without_a_network_answers(page: Page, host: Host) -> None:
    visit_until_kept(page, host.address + CALCULATOR)
    host.has_network = False
    page.goto(host.address + CALCULATOR)
    expect_answer(page, "hardness-units", "hardness", "23 gpg")
    expect(page.locator(".live-form__start")).to_have_text("")
    expect(page.locator(".edition-note")).to_have_text(
        f"There is no network. This is the edition of {TODAY:%B} {TODAY.day}, {TODAY.year}."
    )


def test_a_link_with_numbers_opens_the_same_copy(page: Page, host: Host) -> None:
    visit_until_kept(page, host.address + CALCULATOR)
    host.has_network = False
    page.goto(f"{host.address}{CALCULATOR}?hardness-units.hardness=31+gpg")
    expect(page.locator("[data-input=hardness] input")).to_have_value("31 gpg")
    expect_answer(page, "hardness-units", "hardness", "31 gpg")


def test_a_page_that_is_not_here_says_so(page: Page, host: Host) -> None:
    visit_until_kept(page, host.address + CALCULATOR)
    host.has_network = False
    page.goto(host.address + NOT_VISITED)
    expect(page.get_by_role("heading", level=1)).to_have_text("This page is not on this phone")
    page.goto(host.address + "es/procedures/arrival-check/")
    said = "Esta página no está en este teléfono"
    expect(page.get_by_role("heading", level=1)).to_have_text(said)
    expect(page.locator("html")).to_have_attribute("lang", "es")
    assert page.get_by_role("link").get_attribute("href").endswith("/es/")


def test_one_worker_serves_the_pages_that_follow(page: Page, host: Host) -> None:
    visit_until_kept(page, host.address + CALCULATOR)
    page.goto(host.address + CALCULATOR)
    expect_answer(page, "hardness-units", "hardness", "23 gpg")
    started = []
    page.on("worker", lambda worker: started.append(worker.url))
    change_page(page, NOT_VISITED)
    expect(page.get_by_role("heading", level=1)).to_be_focused()
    expect_answer(page, "bucket-flow", "time", "50 s")
    assert started == []


def test_scripts_never_serve_a_page_of_another_edition(
    page: Page, host: Host, tmp_path: Path
) -> None:
    visit_until_kept(page, host.address + CALCULATOR)
    page.goto(host.address + CALCULATOR)
    expect_answer(page, "hardness-units", "hardness", "23 gpg")
    host.folder = next_edition(host.folder, tmp_path / "next")
    page.evaluate("window.isOld = true")
    change_page(page, NOT_VISITED)
    expect(page.get_by_role("heading", level=1)).to_contain_text("(new)")
    expect_answer(page, "bucket-flow", "time", "50 s")
    assert page.evaluate("window.isOld") is None


def test_a_handbook_in_a_folder_of_its_host_works_alike(
    visits: Visits, handbook_folder: Path, tmp_path: Path
) -> None:
    shutil.copytree(handbook_folder, tmp_path / "host" / "manuals" / "softeners")
    with hosted(tmp_path / "host") as host:
        page = visits.page(service_workers="allow")
        address = f"{host.address}manuals/softeners/{CALCULATOR}"
        visit_until_kept(page, address)
        host.has_network = False
        page.goto(address)
        expect_answer(page, "hardness-units", "hardness", "12 gpg")
        page.close()
        visits.take_errors()


def test_a_kept_handbook_opens_where_nobody_has_been(page: Page, host: Host) -> None:
    page.goto(host.address + KEEP_PAGE)
    size = json.loads((host.folder / "edition.json").read_text(encoding="utf-8"))["size"] / 1e6
    expect(status(page)).to_have_text(
        f"It takes {size:.1f} MB of this phone’s storage; less than half of that travels."
    )
    page.get_by_role("button", name="Keep this handbook on this phone").click()
    expect(page.get_by_role("progressbar")).to_be_visible()
    expect(status(page)).to_contain_text("Done. This phone keeps the edition of")
    expect(page.get_by_role("progressbar")).to_be_hidden()
    host.has_network = False
    page.goto(host.address + NOT_VISITED)
    expect_answer(page, "bucket-flow", "time", "47 s")
    page.locator("label.md-header__button[for=__search]").click()
    box = page.get_by_role("textbox", name="Search")
    box.press_sequentially("hisses in the bathroom")
    found = page.locator(".md-search-result__item h1, .md-search-result__item h2")
    expect(found.first).to_have_text("Running toilet or other small leak")


def test_it_can_be_taken_off_again(page: Page, host: Host) -> None:
    keep(page, host.address)
    expect(status(page)).to_contain_text("Done.")
    page.get_by_role("button", name="Take it off this phone").click()
    expect(status(page)).to_contain_text("It is off this phone. It takes")
    names = page.evaluate("caches.keys()")
    assert not [name for name in names if name.startswith("edition")]
    host.has_network = False
    page.goto(host.address + NOT_VISITED)
    expect(page.get_by_role("heading", level=1)).to_have_text("This page is not on this phone")


def test_a_full_storage_is_told_and_what_is_fetched_stays(page: Page, host: Host) -> None:
    page.goto(host.address + KEEP_PAGE)
    browser = page.context.new_cdp_session(page)
    origin = host.address.rstrip("/")
    browser.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": 6_000_000})
    page.get_by_role("button", name="Keep this handbook on this phone").click()
    expect(status(page)).to_contain_text("This phone’s storage is full: free some, then go on.")
    browser.send("Storage.overrideQuotaForOrigin", {"origin": origin})
    page.get_by_role("button", name="Go on").click()
    expect(status(page)).to_contain_text("Done.")


def test_a_lost_network_is_told_and_it_goes_on_where_it_stopped(page: Page, host: Host) -> None:
    host.lost = "work-out/bed-expansion/"
    keep(page, host.address)
    expect(status(page)).to_contain_text("The network was lost.")
    host.lost = "nothing"
    host.asked.clear()
    page.get_by_role("button", name="Go on").click()
    expect(status(page)).to_contain_text("Done.")
    assert "work-out/bed-expansion/" in host.asked
    assert "edition.json" in host.asked
    assert "equipment/" not in host.asked


def test_killed_in_the_middle_it_goes_on_in_another_page(
    visits: Visits, page: Page, host: Host
) -> None:
    host.asked.clear()
    keep(page, host.address)
    until_given(page, lambda: NOT_VISITED in host.asked, "the page asked for")
    context = page.context
    page.close()
    page = context.new_page()
    page.goto(host.address + KEEP_PAGE)
    expect(status(page)).to_contain_text("A part of it is fetched already.")
    host.asked.clear()
    page.get_by_role("button", name="Go on").click()
    expect(status(page)).to_contain_text("Done.")
    asked_again = kept_addresses(host) & set(host.asked)
    assert "work-out/supply-voltage/" in asked_again
    assert len(asked_again) < len(kept_addresses(host)) / 2


def test_a_file_that_is_not_of_the_edition_is_refused(page: Page, host: Host) -> None:
    changed = host.folder / NOT_VISITED / "index.html"
    changed.write_text(changed.read_text(encoding="utf-8") + " ", encoding="utf-8")
    keep(page, host.address)
    expect(status(page)).to_contain_text(
        f"The file {NOT_VISITED} did not arrive as this edition has it; perhaps a newer one is "
        "being put up just now."
    )
    expect(status(page)).not_to_contain_text("This phone keeps")


def test_a_new_edition_takes_the_place_of_the_old_one_as_a_whole(
    page: Page, host: Host, tmp_path: Path
) -> None:
    keep(page, host.address)
    expect(status(page)).to_contain_text("Done.")
    host.folder = next_edition(host.folder, tmp_path / "next")
    page.goto(host.address + NOT_VISITED)  # from the network: the new one
    expect(page.get_by_role("heading", level=1)).to_contain_text("(new)")
    expect(page.locator(".edition-note")).to_contain_text("and a newer one is out. Fetch it")
    host.has_network = False
    page.goto(host.address + NOT_VISITED)  # from the phone: the old one, whole
    expect(page.get_by_role("heading", level=1)).not_to_contain_text("(new)")
    expect_answer(page, "bucket-flow", "time", "49 s")
    host.has_network = True
    host.asked.clear()
    keep(page, host.address, "Fetch the new edition")
    expect(status(page)).to_contain_text("Done.")
    assert not [asked for asked in host.asked if "asm.wasm" in asked or "image.bin" in asked]
    host.has_network = False
    page.goto(host.address + CALCULATOR)
    expect(page.get_by_role("heading", level=1)).to_contain_text("(new)")
    expect_answer(page, "hardness-units", "hardness", "8 gpg")


def test_an_open_page_works_on_while_a_new_edition_is_put_up(
    page: Page, host: Host, tmp_path: Path
) -> None:
    """Its scripts are gone from the host; the form has not been touched yet."""
    page.add_init_script(
        "Object.defineProperty(navigator, 'connection', { value: { saveData: true } });"
    )
    page.goto(host.address + CALCULATOR)
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    host.folder = next_edition(host.folder, tmp_path / "next")
    expect_answer(page, "hardness-units", "hardness", "17 gpg")
    page.goto(host.address + CALCULATOR)
    expect(page.get_by_role("heading", level=1)).to_contain_text("(new)")
    expect_answer(page, "hardness-units", "hardness", "18 gpg")


def test_a_browser_that_keeps_nothing_says_so(visits: Visits, host: Host) -> None:
    page = visits.page(service_workers="allow")
    page.add_init_script(
        "caches.constructor.prototype.open = () => Promise.reject(new DOMException('', 'SecurityError'));"
        "caches.constructor.prototype.has = caches.constructor.prototype.open;"
    )
    page.goto(host.address + KEEP_PAGE)
    expect(status(page)).to_have_text(
        "This browser refuses to keep pages: storage is switched off, or the window is a private "
        "one."
    )
    page.goto(host.address + CALCULATOR)
    expect_answer(page, "hardness-units", "hardness", "21 gpg")
    page.close()
    visits.take_errors()


def test_without_scripts_the_page_says_what_it_needs(visits: Visits, host: Host) -> None:
    page = visits.page(java_script_enabled=False)
    page.goto(host.address + KEEP_PAGE)
    expect(status(page)).to_have_text("This needs the script of this page, which is not running.")
    expect(page.get_by_role("button", name="Keep")).to_have_count(0)
