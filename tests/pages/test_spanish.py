"""The shipped pages in Spanish: their language, the way to the other one, and their numbers."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest

from build_tools.content.handbook import load_handbook
from tests.pages.conftest import ROOT, Text

_ARTICLE = re.compile(r"<article.*?</article>", re.DOTALL)
_HIDDEN = re.compile(
    r'<p class="(?:edition|languages)[^>]*>.*?</p>|<nav class="related".*?</nav>', re.DOTALL
)
_NUMBER = re.compile(r"\d+(?:[.,:/]\d+)*")


def _pages() -> list[str]:
    translation = load_handbook(ROOT / "docs_src", ROOT).translation("es")
    return [address.removesuffix(".md").partition("/")[2] for address in translation.pages]


PAGES = _pages()


def _article(site: Path, page: str) -> str:
    html = (site / page / "index.html").read_text(encoding="utf-8")
    return _HIDDEN.sub("", _ARTICLE.search(html)[0])


@pytest.mark.parametrize("page", PAGES)
def test_a_page_has_its_language_and_leads_to_the_other(shipped: Path, page: str) -> None:
    spanish = (shipped / "es" / page / "index.html").read_text(encoding="utf-8")
    english = (shipped / page / "index.html").read_text(encoding="utf-8")
    assert '<html data-print-foot="' in spanish
    assert ' lang="es"' in spanish[:300] and ' lang="en"' in english[:300]
    assert f'href="../../../{page}/" hreflang="en" lang="en"' in spanish
    assert f'href="../../es/{page}/" hreflang="es" lang="es"' in english
    assert 'hreflang="es" href="../../es/' in english
    assert "Saltar a contenido" in spanish and "Skip to content" in english


@pytest.mark.parametrize("page", PAGES)
def test_a_page_has_the_numbers_of_the_english_one(shipped: Path, page: str) -> None:
    spanish, english = (str(Text(_article(shipped / part, page))) for part in ("es", "."))
    assert Counter(_NUMBER.findall(spanish)) == Counter(_NUMBER.findall(english))


@pytest.mark.parametrize("page", PAGES)
def test_what_is_in_english_on_a_page_is_marked(shipped: Path, page: str) -> None:
    html = _article(shipped / "es", page)
    marked = re.compile(r'<(\w+)[^>]*\blang="en"[^>]*>.*?</\1>', re.DOTALL)
    rest = str(Text(marked.sub("", html)))
    assert not re.search(r"\b(the|and|with|from|which|your)\b", rest)


@pytest.mark.parametrize("page", PAGES)
def test_links_to_english_pages_say_so(shipped: Path, page: str) -> None:
    html = _article(shipped / "es", page)
    for match in re.finditer(r'<a [^>]*href="([^"]+)"[^>]*>(.*?)</a>(.{0,40})', html, re.DOTALL):
        target = (shipped / "es" / page / match[1].partition("#")[0]).resolve()
        if target.is_relative_to(shipped.resolve() / "es"):
            continue
        assert "(en inglés)" in match[2] + match[3], match[0]


def test_pages_of_a_language_have_only_each_other_in_the_navigation(shipped: Path) -> None:
    spanish = (shipped / "es" / PAGES[0] / "index.html").read_text(encoding="utf-8")
    tabs = re.search(r'<nav class="md-tabs".*?</nav>', spanish, re.DOTALL)[0]
    words = Text(tabs)
    assert str(words) == "El manual en español La primera visita Glosario"
    home = (shipped / "index.html").read_text(encoding="utf-8")
    assert "La primera visita" not in home


def test_the_page_for_a_wrong_address_says_so_in_both_languages(shipped: Path) -> None:
    html = (shipped / "404.html").read_text(encoding="utf-8")
    assert "There is no such page" in html
    assert '<section lang="es">' in html and "Esa página no existe" in html


def test_the_scripts_get_the_words_of_the_page(shipped: Path) -> None:
    html = (shipped / "es" / PAGES[0] / "index.html").read_text(encoding="utf-8")
    [address] = re.findall(r'href="([^"]+)" data-words', html)
    assert (shipped / "es" / PAGES[0] / address).resolve().is_file()
    assert "data-words" not in (shipped / PAGES[0] / "index.html").read_text(encoding="utf-8")
    assert "navigation.instant" not in html
