"""The small metric shop: nothing is wired to the first."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path

import lxml.html

from calculators.units import METRIC

#: US units that no page of a metric shop may show, as they stand after a number.
US_UNITS = [unit for unit in METRIC if unit not in ("gpg per mg/L",)]


def test_a_metric_shop_shows_no_us_unit(second: Path, text_of: Callable[[Path], str]) -> None:
    # Pages about units themselves, one with a form about them, what sources say word for word, and
    # the guide, whose recipes change the shipped shop.
    everywhere = {
        "reference/units",
        "reference/conversions",
        "work-out/hardness-units",
        "embed/hardness-units",
        "learn/the-spring",
        "reference/sources",
        "trainers/authoring",
    }
    pattern = re.compile(r"\d[\d.,]*\s(" + "|".join(map(re.escape, US_UNITS)) + r")(?![\w/³²])")
    found = {}
    for page in second.rglob("index.html"):
        address = page.parent.relative_to(second).as_posix()
        if address not in everywhere and (match := pattern.search(text_of(page))):
            found[address] = match[0]
    assert found == {}


def test_nothing_of_the_first_shop_is_printed(second: Path, text_of: Callable[[Path], str]) -> None:
    for page in second.rglob("*.html"):
        assert "Quillfeather" not in text_of(page), page
        assert "Port Tansy" not in text_of(page), page


def test_its_name_is_told_letter_by_letter(second: Path) -> None:
    name = 'Fjordvik\'s "Sund & Søn" <handbook>'
    for page in ("index.html", "learn/the-spring/index.html", "404.html"):
        tree = lxml.html.document_fromstring((second / page).read_text(encoding="utf-8"))
        assert tree.findtext(".//title").endswith(name)
        assert tree.findtext(".//header//span[@class='md-ellipsis']").strip() == name
        logos = tree.findall(".//a[@data-md-component='logo']")
        assert [logo.get("aria-label") for logo in logos] == [name] * len(logos) != []
    manifest = json.loads((second / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert manifest["name"] == name


def test_forms_are_in_metric_units(second: Path) -> None:
    html = (second / "work-out" / "brine-refill" / "index.html").read_text(encoding="utf-8")
    assert 'data-units="metric"' in html
    assert re.search(r'value="[\d.]+ kg"', html)
