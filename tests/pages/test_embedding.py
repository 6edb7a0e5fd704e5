"""Bare pages for other sites: there, complete, and hidden from readers of the handbook."""

from __future__ import annotations

import json
import re
from pathlib import Path

from calculators import CALCULATORS


def test_every_calculator_has_a_bare_page_with_its_form(site: Path) -> None:
    for name, calculator in CALCULATORS.items():
        html = (site / "embed" / name / "index.html").read_text(encoding="utf-8")
        assert f'data-calculator="{name}"' in html
        assert '<html lang="en" dir="ltr"' in html
        assert '<meta name="robots" content="noindex">' in html
        assert f'<link rel="canonical" href="../../work-out/{name}/">' in html
        assert f"<title>{calculator.title} - " in html
        assert html.count("<li>") >= len(calculator.cautions)
        assert "md-header" not in html


def test_what_a_bare_page_names_is_there(site: Path) -> None:
    for page in site.glob("embed/*/index.html"):
        for target in re.findall(r'(?:href|src)="([^"]+)"', page.read_text(encoding="utf-8")):
            assert (page.parent / target).resolve().exists(), (page, target)


def test_bare_pages_are_in_no_list_of_pages(site: Path) -> None:
    index = json.loads((site / "search" / "search_index.json").read_text(encoding="utf-8"))
    assert [one for one in index["docs"] if one["location"].startswith("embed")] == []
    assert "embed/" not in (site / "sitemap.xml").read_text(encoding="utf-8")
    for page in site.rglob("*.html"):
        assert not re.search(r'href="[^"]*\bembed/', page.read_text(encoding="utf-8")), page


def test_the_script_knows_the_title_of_every_calculator(site: Path) -> None:
    script = (site / "embed.js").read_text(encoding="utf-8")
    titles = re.search(r"const TITLES = (\{.*\});", script)[1]
    assert json.loads(titles) == {name: one.title for name, one in CALCULATORS.items()}


def test_no_input_has_a_name_that_an_attribute_could_not_have() -> None:
    names = {one.name for calculator in CALCULATORS.values() for one in calculator.inputs}
    assert names == {name.lower() for name in names}
