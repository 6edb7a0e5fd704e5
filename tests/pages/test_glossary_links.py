"""The first use of each term on a page leads to the glossary, and nothing else on it changes."""

from __future__ import annotations

from pathlib import Path
from xml.etree.ElementTree import fromstring

import pytest
from markdown import Markdown

from build_tools.content.handbook import load_handbook
from build_tools.pages.glossary_links import GlossaryLinks
from tests.content.small_shop import FILES, write

GLOSSARY = """\
brine:
  term: brine
  means: Water with salt.
brine-tank:
  term: brine tank
  forms: [brine tanks]
  means: The tank with the salt.
float:
  term: float
  forms: [floats]
  means: It shuts the refill.
gpg:
  term: grain per gallon
  abbreviation: gpg
  means: A unit.
"""
EXTENSIONS = ["admonition", "attr_list", "def_list", "md_in_html", "tables", "pymdownx.details"]


@pytest.fixture
def links(tmp_path: Path) -> GlossaryLinks:
    handbook = load_handbook(write(tmp_path, {**FILES, "glossary.yaml": GLOSSARY}), tmp_path)
    made = GlossaryLinks()
    made.use(handbook)
    made.page = "faults/salt-bridge.md"
    return made


def html(links: GlossaryLinks, text: str) -> str:
    return Markdown(extensions=[*EXTENSIONS, links]).convert(text)


def link(words: str, name: str) -> str:
    label = f'aria-label="{" ".join(words.split())}, in the glossary"'
    return f'<a {label} class="term" href="../reference/glossary.md#{name}">{words}</a>'


def test_only_the_first_use_is_linked_the_longest_term_first(links: GlossaryLinks) -> None:
    tank, brine = link("brine tank", "brine-tank"), link("brine", "brine")
    assert html(links, "The brine tank holds brine. The brine tanks, and brine.") == (
        f"<p>The {tank} holds {brine}. The brine tanks, and brine.</p>"
    )


def test_forms_capitals_line_ends_and_abbreviations_are_found(links: GlossaryLinks) -> None:
    tanks = link("Brine\ntanks", "brine-tank")
    assert html(links, "Brine\ntanks hold 5 gpg.") == (
        f"<p>{tanks} hold 5 {link('gpg', 'gpg')}.</p>"
    )


@pytest.mark.parametrize("text", ["A briny float-like afloat.", "In mg/gpg.", "Brine-like."])
def test_parts_of_words_are_not_found(links: GlossaryLinks, text: str) -> None:
    assert html(links, text) == f"<p>{text}</p>"


def test_a_verb_at_the_start_of_a_sentence_is_no_term(links: GlossaryLinks) -> None:
    found = html(links, "Float the jar. The float rises.")
    assert found == f"<p>Float the jar. The {link('float', 'float')} rises.</p>"


@pytest.mark.parametrize(
    "text",
    [
        "# The brine",
        "[the brine](x.md)",
        "`brine`",
        "```\nbrine\n```",
        '!!! warning "Brine"\n\n    Salt.',
        '??? question "Brine"\n\n    Salt.',
        "| Brine |\n| --- |\n| Salt |",
        '<div class="cards" markdown>\n\n- [x](x.md)<span>brine</span>\n\n</div>',
        "<button>brine</button>",
        "<form><label>brine</label></form>",
        'Salt <a href="x.md">*the* brine</a> here.',
        "They say “my brine is low”.",
    ],
)
def test_headings_links_code_and_forms_are_left_alone(links: GlossaryLinks, text: str) -> None:
    plain = html(GlossaryLinks(), text)
    assert html(links, text) == plain
    assert "brine" in plain.lower()


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ('!!! warning "A"\n\n    Brine.', "<p>{}.</p>\n</div>"),
        ('??? question "A"\n\n    Brine.', "<p>{}.</p>\n</details>"),
        ("| A |\n| --- |\n| Brine |", "<td>{}</td>"),
        ("- Brine", "<li>{}</li>"),
        ("**Brine** is", "<strong>{}</strong> is"),
        ("word\n\n:   Brine", "<dd>\n<p>{}</p>"),
        ('| A |\n| --- |\n| Brine {: data-x="brine" } |', '<td data-x="brine">{}</td>'),
        ("*a* Brine *b*", "<em>a</em> {} <em>b</em>"),
    ],
)
def test_text_anywhere_else_is_linked(links: GlossaryLinks, text: str, expected: str) -> None:
    assert expected.format(link("Brine", "brine")) in html(links, text)


def test_the_text_of_a_page_stays_what_it_was(links: GlossaryLinks) -> None:
    text = "The *brine* tank, brine tank; brine (brine tanks), a **float** and 5 gpg &amp; more."
    after = "".join(fromstring(html(links, text)).itertext())
    assert after == "".join(fromstring(html(GlossaryLinks(), text)).itertext())


@pytest.mark.parametrize("page", ["index.md", "faults/index.md", "reference/glossary.md"])
def test_lists_of_pages_and_the_glossary_itself_have_no_such_links(
    links: GlossaryLinks, page: str
) -> None:
    links.page = page
    assert html(links, "The brine.") == "<p>The brine.</p>"


def test_each_page_begins_anew_from_its_own_place(links: GlossaryLinks) -> None:
    assert html(links, "Brine.") == html(links, "Brine.")
    links.page = "using-this-handbook.md"
    assert 'href="reference/glossary.md#brine"' in html(links, "Brine.")
