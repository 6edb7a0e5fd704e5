"""What holds for the site of any shop."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from build_tools.language.catalogs import calculated
from build_tools.language.languages import LANGUAGES
from calculators import CALCULATORS

LOADED = re.compile(r"<(?:script|img|iframe|source)\b[^>]*\bsrc=[\"']?([^\"' >]+)|<link\b[^>]*>")
HREF = re.compile(r"\bhref=[\"']?([^\"' >]+)")


def pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


def test_no_expression_is_left_in_a_page(site: Path, text_of: Callable[[Path], str]) -> None:
    mark = re.compile(r"\{\{|\{%|\{#|\{:")
    left = [page for page in pages(site) if mark.search(text_of(page))]
    assert left == [site / "trainers" / "authoring" / "index.html"]  # which tells how to write them


def test_every_page_has_one_main_heading(site: Path) -> None:
    counts = {
        page.relative_to(site).as_posix(): len(re.findall(r"<h1\b", page.read_text("utf-8")))
        for page in pages(site)
        if page.name != "404.html"
    }
    assert {page: count for page, count in counts.items() if count != 1} == {}


def test_nothing_is_loaded_from_another_host(site: Path) -> None:
    elsewhere = set()
    for page in pages(site):
        for match in LOADED.finditer(page.read_text(encoding="utf-8")):
            target = match[1] or (HREF.search(match[0]) or ["", ""])[1]
            if re.match(r"(https?:)?//", target):
                elsewhere.add(target)
    assert elsewhere == set()


def test_styles_load_nothing_from_another_host(site: Path) -> None:
    styles = list(site.rglob("*.css"))
    assert styles
    for style in styles:
        assert not re.search(r"(url\(|@import)\s*[\"']?(https?:)?//", style.read_text("utf-8")), (
            style
        )


def test_every_calculator_has_a_page_with_its_form_and_answer(site: Path) -> None:
    for name, calculator in CALCULATORS.items():
        html = (site / "work-out" / name / "index.html").read_text(encoding="utf-8")
        assert f'data-calculator="{name}"' in html
        for one in calculator.inputs:
            assert f'data-input="{one.name}"' in html, (name, one.name)
        assert "data-output=" in html, name


def test_every_form_finds_the_runtime(site: Path) -> None:
    found = 0
    for page in pages(site):
        for match in re.finditer(r'data-runtime="([^"]+)"', page.read_text(encoding="utf-8")):
            folder = (page.parent / match[1]).resolve()
            assert (folder.parent / "pyodide.mjs").is_file(), page
            assert (folder / "image.bin").is_file(), page
            found += 1
    assert found >= len(CALCULATORS)


def test_sources_are_not_published_as_files(site: Path) -> None:
    assert list(site.rglob("*.yaml")) == []
    assert list(site.rglob("*.csv")) == []
    assert list(site.rglob("simulated_homes*")) == []


def test_every_form_shows_the_cautions_of_its_calculator(
    site: Path, text_of: Callable[[Path], str]
) -> None:
    cautioned = 0
    for page in pages(site):
        text = text_of(page)
        language = page.relative_to(site).parts[0]
        for name in re.findall(r'data-calculator="([^"]+)"', page.read_text(encoding="utf-8")):
            for caution in CALCULATORS[name].cautions:
                if language in LANGUAGES:
                    caution = calculated(language).text(caution) or caution
                assert caution in text, (page, name)
                cautioned += "work-out" not in page.parts
    assert cautioned, "no worked example has a caution to show"
