"""A print as one HTML document, whose page numbers are put in once they are known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from lxml import html
from markupsafe import Markup

from build_tools.language.speaking import say
from build_tools.printing.built_site import BuiltSite
from build_tools.printing.choosing import Chapter, Chosen
from build_tools.printing.cover import Cover
from build_tools.printing.foot import attributes, foot
from build_tools.printing.paper_page import WORDS, PaperPages, place_id
from build_tools.templates import templates_in

HERE = Path(__file__).parent
#: Contents with more pages than this stand in two columns.
LONG = 40
#: The room that a page number takes before it is known.
_USUAL_NUMBER = 100
_ENVIRONMENT = templates_in(HERE / "templates")
_ENVIRONMENT.globals["say"] = say


class Document:
    """A print before it is one. title: what the file is called for its readers."""

    def __init__(self, made: str) -> None:
        self._tree = html.document_fromstring(made)
        self.title = self._tree.findtext("head/title")
        self._numbers = self._tree.find_class("page-number")
        self.places = {one.get("data-of") for one in self._numbers}

    def as_html(self, numbers: Mapping[str, int] | None = None) -> bytes:
        """Return the document with the page numbers of its places, once they are known.

        A place without one is not printed, such as a button, and then no reference to it is.
        """
        for element in self._numbers:
            number = numbers.get(element.get("data-of")) if numbers is not None else _USUAL_NUMBER
            element.text = "" if number is None else str(number)
            if number is None:
                element.getparent().set("hidden", "")
        return html.tostring(self._tree, encoding="utf-8", doctype="<!doctype html>")


def book(site: BuiltSite, chosen: Chosen, cover: Cover, paper: str) -> Document:
    """Return chosen pages behind a title page and contents, with the words that they use."""
    pages = PaperPages(site, chosen.pages, with_words=True)
    chapters = [_chapter(site, pages, chapter) for chapter in chosen.chapters]
    if (words := pages.words()) is not None:
        listed = [{"title": "", "pages": [(words.get("id"), say(WORDS))]}]
        chapters.append({"title": "", "groups": listed, "articles": [_markup(words)]})
    return _document(
        "book",
        site,
        cover,
        paper,
        title=f"{chosen.title}: {site.name}" if chosen.title else site.name,
        page=chosen.pages[0],
        chosen=chosen,
        long=len(chosen.pages) > LONG,
        chapters=chapters,
    )


def loose_sheets(
    site: BuiltSite, title: str, articles: Sequence[html.HtmlElement], cover: Cover, paper: str
) -> Document:
    """Return sheets without anything before them."""
    title = f"{title}: {site.name}"
    made = map(_markup, articles)
    return _document("sheets", site, cover, paper, title=title, page="", articles=made)


def _document(
    template: str, site: BuiltSite, cover: Cover, paper: str, title: str, page: str, **names: Any
) -> Document:
    """Return a document in the language of a page of it."""
    edition = site.edition(page)
    made = _ENVIRONMENT.get_template(f"{template}.html.jinja").render(
        title=title,
        foot=attributes(foot(f"{cover.shop} · {title}", edition)),
        edition=edition,
        language=site.language(page),
        site=site,
        cover=cover,
        paper=paper,
        styles=[*site.styles, (HERE / "book.css").as_uri()],
        **names,
    )
    return Document(made)


def _chapter(site: BuiltSite, pages: PaperPages, chapter: Chapter) -> dict[str, Any]:
    """Return what the template says of a chapter. Under its title, pages are one level deeper."""
    level = 2 if chapter.title else 1
    articles = [
        pages.page(name, 1 if name == chapter.opening else level, name == chapter.opening)
        for name in chapter.pages
    ]
    return {
        "title": chapter.title,
        "id": place_id(chapter.pages[0]),
        "opening": bool(chapter.opening),
        "groups": [
            {
                "title": one.title,
                "pages": [(place_id(page), site.title(page)) for page in one.pages],
            }
            for one in chapter.groups
        ],
        "articles": map(_markup, articles),
    }


def _markup(article: html.HtmlElement) -> Markup:
    return Markup(html.tostring(article, encoding="unicode", with_tail=False))
