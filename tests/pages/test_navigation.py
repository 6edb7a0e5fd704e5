"""The navigation of each page: every section by its own page, the open one with all its pages."""

from __future__ import annotations

import difflib
import re
from pathlib import Path
from urllib.parse import urljoin

import material

from build_tools.pages.plugin import OVERRIDES

ITEM = "partials/nav-item.html"
#: Where the navigation of a page is, and where the row of sections at the head of a wide page.
NAVIGATION = ('<nav class="md-nav md-nav--primary', 'data-md-type="toc"')
TABS = ('<nav class="md-tabs"', "</nav>")


def linked(site: Path, address: str, part: tuple[str, str] = NAVIGATION) -> set[str]:
    """Return the addresses to which a part of a page leads."""
    html = (site / address / "index.html").read_text(encoding="utf-8")
    begin = html.index(part[0])
    end = html.index(part[1], begin)
    found = re.findall(r'<a href="([^"#]*)"', html[begin:end])
    return {urljoin(f"https://site/{address}", one).removeprefix("https://site/") for one in found}


def pages_below(site: Path, folder: str) -> set[str]:
    return {
        f"{path.parent.relative_to(site).as_posix()}/" for path in (site / folder).rglob("*.html")
    }


def test_one_condition_differs_from_the_theme_s_template() -> None:
    (theme,) = material.__path__
    names = [Path(theme, "templates", ITEM), OVERRIDES / ITEM]
    theirs, ours = (path.read_text("utf-8").partition("-#}\n")[2].splitlines() for path in names)
    changes = [line for line in difflib.ndiff(theirs, ours) if line[0] in "+-"]
    assert [(line[0], line[1:].strip()) for line in changes] == [
        ("-", "{% if not is_section and not nav_item.active %}"),
        ("+", "{% if index and not nav_item.active %}"),
    ]


def test_every_page_leads_to_every_section_and_to_its_own_section_s_pages(shipped: Path) -> None:
    sections = linked(shipped, "", TABS)
    assert {"", "learn/", "procedures/", "faults/"} <= sections
    for address in ("learn/what-hardness-is/", "procedures/arrival-check/", "work-out/small-leak/"):
        found = linked(shipped, address)
        assert sections <= found, address
        section = address.partition("/")[0]
        assert pages_below(shipped, section) <= found, address
        elsewhere = sections - {f"{section}/"}
        assert {one for one in found if not one.startswith(f"{section}/")} == elsewhere
    found = linked(shipped, "faults/salt-bridge/")
    assert pages_below(shipped, "faults") | {"checks/"} <= found
    assert pages_below(shipped, "checks") <= linked(shipped, "checks/backwash-flow/")
