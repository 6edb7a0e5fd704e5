"""A page of the site made ready for paper, on a site of a few lines."""

from __future__ import annotations

from pathlib import Path

import pytest
from lxml import html

from build_tools.printing.built_site import BuiltSite
from build_tools.printing.paper_page import PaperPages
from build_tools.set_up.failure import Failure

PAGES = {
    "": "<h1>Home</h1>",
    "learn/salt": (
        '<h1 id="salt">Salt<a class="headerlink" href="#salt">#</a></h1>'
        '<p>See <a href="../../faults/bridge/#seen">a bridge</a>, <a href="../brine/">Brine</a>, '
        'then <a href="../brine/">what brine is</a>; <a href="#salt">above</a>.</p>'
        '<p>The <a class="term" href="../../reference/glossary/#bed">bed</a> is full.</p>'
        '<table><tr><td data-unit="x"><a href="../../faults/bridge/">Bridge</a></td></tr></table>'
        '<div class="sheet"><a href="../brine/">Brine</a></div>'
        '<details class="question"><summary>Why?</summary><p>So.</p></details>'
        '<p><a href="https://elsewhere.example/">elsewhere</a></p>'
        '<h2>Deep</h2><nav class="related">Lists</nav><p class="edition">Edition</p>'
    ),
    "learn/brine": "<h1>Brine</h1>",
    "faults/bridge": '<h1>Salt bridge</h1><h2 id="seen">What you see</h2>',
    "reference/glossary": (
        '<h1>Glossary</h1><h2>B</h2><dl><dt><span id="bed">bed</span></dt><dd>The resin.</dd>'
        '<dt><span id="bead">bead</span></dt><dd>A ball.</dd></dl>'
    ),
}


@pytest.fixture
def site(tmp_path: Path) -> BuiltSite:
    for name, body in PAGES.items():
        page = tmp_path / name / "index.html"
        page.parent.mkdir(parents=True, exist_ok=True)
        text = f'<html lang="en"><body><article class="md-typeset">{body}</article></body></html>'
        page.write_text(text, "utf-8")
    return BuiltSite(tmp_path)


def words(element: html.HtmlElement) -> str:
    return " ".join(element.text_content().split())


def test_links_to_printed_pages_lead_there_and_name_the_page(site: BuiltSite) -> None:
    pages = PaperPages(site, ["learn/salt", "faults/bridge"])
    page = pages.page("learn/salt", 1)
    links = [one.get("href") for one in page.iter("a")]
    assert links == [
        "#faults/bridge:seen", "#learn/salt:salt", "#faults/bridge", "https://elsewhere.example/",
    ]  # fmt: skip
    numbers = page.find_class("page-number")
    assert [one.get("data-of") for one in numbers] == ["faults/bridge:seen"]
    assert "See a bridge (page ), " in words(page)
    targets = {one.get("id") for one in pages.page("faults/bridge", 1).iter() if one.get("id")}
    assert {"faults/bridge:seen"} <= targets


def test_pages_that_are_not_printed_are_named(site: BuiltSite) -> None:
    page = PaperPages(site, ["learn/salt"]).page("learn/salt", 1)
    assert (
        "See a bridge (see “Salt bridge”), “Brine”, then what brine is (see “Brine”); above."
        in (words(page))
    )
    assert words(page.find_class("sheet")[0]) == "Brine", "a sheet has no room"
    assert words(page.find(".//td")) == "Bridge", "nor has a table of readings"


def test_what_only_a_screen_needs_goes_and_folded_text_opens(site: BuiltSite) -> None:
    page = PaperPages(site, ["learn/salt"]).page("learn/salt", 2)
    assert "Lists" not in words(page)
    assert "Edition" not in words(page)
    assert page.find("h1").text_content() == "Salt"
    assert [one.get("aria-level") for one in page.iter("h1", "h2")] == ["2", "3"]
    assert [one.get("open") for one in page.iter("details")] == [""]


def test_the_words_of_a_print_are_those_that_it_uses(site: BuiltSite) -> None:
    pages = PaperPages(site, ["learn/salt"], with_words=True)
    assert pages.words() is None
    page = pages.page("learn/salt", 1)
    assert page.find_class("term")[0].get("href") == "#reference/glossary:bed"
    assert [part.text_content() for part in pages.words().iter("h1", "dt", "dd")] == [
        "Words of the trade used here", "bed", "The resin.",
    ]  # fmt: skip
    with_glossary = PaperPages(site, ["learn/salt", "reference/glossary"], with_words=True)
    with_glossary.page("learn/salt", 1)
    assert with_glossary.words() is None


def test_a_site_without_a_page_or_an_edition_says_so(site: BuiltSite) -> None:
    with pytest.raises(Failure, match='has no page "learn/sand": build it anew'):
        site.article("learn/sand")
    with pytest.raises(Failure, match="does not tell its edition: build it anew"):
        site.edition("learn/salt")
