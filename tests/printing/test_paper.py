"""Every page on paper: nothing cut off, nothing of a screen, black on white, its edition below."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from build_tools.printing.built_site import BuiltSite
from tests.printing.conftest import ROOT, Read

#: What lies between the margins of each size of paper, in pixels of styles.
WIDTHS = {"A4": 672, "Letter": 695}
#: A page of each kind of the shipped handbook, and those with the widest tables.
OF_EACH_KIND = (
    "",
    "learn",
    "learn/testing-water-honestly",
    "procedures/arrival-check",
    "faults",
    "faults/what-customers-say",
    "faults/salt-bridge",
    "checks/cold-and-hot-pair",
    "equipment/farmhouse-softener",
    "work-out/hardness-setting",
    "practise/sheet-for-a-meter",
    "practise/a-call",
    "practise/my-record",
    "reference/tables",
    "reference/conversions",
    "reference/glossary",
    "reference/numbers",
    "reference/pocket-sheet",
    "trainers/sign-off",
    "trainers/authoring",
    "embed/brine-refill",
)
#: Told of each part of a page that will not do: too wide, a control, not dark on white.
WRONG = """(width) => {
  const found = [];
  const shade = (color) => Math.max(...color.match(/[0-9.]+/g).slice(0, 3).map(Number));
  if (document.documentElement.scrollWidth > width) found.push("the page is too wide");
  for (const part of document.querySelectorAll(":is(article, main.embedded) :not(svg *)")) {
    const box = part.getBoundingClientRect();
    if (!box.width || !box.height) continue;
    const style = getComputedStyle(part);
    const name = `${part.localName}.${part.className}`;
    if (box.right > width + 1) found.push(`${name} is too wide`);
    const cuts = style.overflowX !== "visible" && style.display !== "inline";
    if (cuts && part.scrollWidth > part.clientWidth + 2) found.push(`${name} is cut off`);
    if (part.matches("input, button, select, textarea")) found.push(`${name} is a control`);
    if (shade(style.color) > 0x66) found.push(`${name} is pale: ${style.color}`);
    const paper = style.backgroundColor;
    if (!paper.endsWith(", 0)") && shade(paper) < 255) found.push(`${name} is dark: ${paper}`);
  }
  return found;
}"""


@pytest.fixture(scope="module")
def sheet(browser: Browser) -> Iterator[Page]:
    """Return a page of a reader with a dark screen, as it is printed."""
    context = browser.new_context(color_scheme="dark")
    page = context.new_page()
    page.emulate_media(media="print", color_scheme="dark")
    yield page
    context.close()


def wrong(sheet: Page, site: Path, name: str) -> dict[str, list[str]]:
    """Return what will not do on a page at each size of paper."""
    sheet.goto((site / name / "index.html").as_uri())
    for scheme in ("body", "html"):
        sheet.locator(scheme).evaluate(
            "(one) => one.dataset.mdColorScheme && (one.dataset.mdColorScheme = 'slate')"
        )
    found = {}
    for paper, width in WIDTHS.items():
        sheet.set_viewport_size({"width": width, "height": 1000})
        if told := sheet.evaluate(WRONG, width):
            found[f"{name} on {paper}"] = told
    return found


def test_pages_of_the_small_shop_are_fit_for_paper(
    sheet: Page, site: BuiltSite, thorough: bool
) -> None:
    """All pages, when that is asked for; else of each kind the last and every fourth.

    Of forms there is a page for each calculator, alike but for its words and fields.
    """
    kinds: dict[str, list[str]] = {}
    for path in pages(site.folder):
        name = path.parent.relative_to(site.folder).as_posix()
        kinds.setdefault(name.partition("/")[0], []).append(name)
    assert {"learn", "procedures", "faults", "work-out", "embed", "reference"} <= set(kinds)
    assert sum(map(len, kinds.values())) > 100
    found = {}
    for names in kinds.values():
        for name in names if thorough else dict.fromkeys([*names[::4], names[-1]]):
            found |= wrong(sheet, site.folder, name)
    assert found == {}


def test_a_page_of_each_kind_is_fit_for_paper(sheet: Page, built: Callable[[Path], Path]) -> None:
    site = built(ROOT / "mkdocs.yml")
    found = {}
    for name in OF_EACH_KIND:
        found |= wrong(sheet, site, name)
    assert found == {}


def pages(folder: Path) -> list[Path]:
    return sorted(folder.rglob("index.html"))


@pytest.mark.parametrize(
    ("name", "sheets"), [("learn/the-spring", 3), ("equipment/kitchen-cabinet", 1)]
)
def test_each_sheet_of_a_page_has_its_edition_and_number(
    sheet: Page, site: BuiltSite, name: str, sheets: int
) -> None:
    sheet.goto((site.folder / name / "index.html").as_uri())
    read = Read(sheet.pdf(format="A4"))
    assert len(read.texts) == sheets
    for number, text in enumerate(read.texts, 1):
        assert f"{site.name} · Edition of {site.edition()}" in text
        assert f"Page {number}" in text


def test_folded_answers_are_unfolded(sheet: Page, site: BuiltSite) -> None:
    sheet.goto((site.folder / "learn" / "the-spring" / "index.html").as_uri())
    assert sheet.locator("details.question").first.get_attribute("open") is None
    read = Read(sheet.pdf(format="A4"))
    assert "No. The unit has to be turned first." in " ".join(read.texts)
