"""A page of the site made ready for paper: its links, its headings, what a screen alone needs."""

from __future__ import annotations

from collections.abc import Iterable

from lxml import html

from build_tools.content.loading import LISTS
from build_tools.language.speaking import marked, say
from build_tools.printing.built_site import BuiltSite
from build_tools.printing.choosing import page_name

GLOSSARY = page_name(LISTS["glossary"][1])
#: The title of the words of a print that has no glossary.
WORDS = marked("Words of the trade used here")
#: What a print has in another form, such as the edition in each foot, or not at all.
_REPLACED = ("headerlink", "jump", "related", "edition", "not-on-paper")
#: What prints as a sheet to carry.
_SHEETS = {"sheet", "unit-sheet", "pocket-side"}
#: Attributes that name other parts of the page by their ids.
_NAMING = ("for", "aria-labelledby", "aria-describedby")
#: Headings deeper than this are headings of the deepest kind.
_DEEPEST = 6


def place_id(page: str, anchor: str = "") -> str:
    """Return the id, in a print, of a page of the site or of a part of it."""
    return f"{page or 'home'}:{anchor}" if anchor else page or "home"


class PaperPages:
    """Makes the pages of one print, whose links lead to each other where both are printed.

    with_words: whether `words` is printed too, where the glossary is not.
    """

    def __init__(self, site: BuiltSite, printed: Iterable[str], with_words: bool = False) -> None:
        self._site = site
        self._printed = set(printed)
        self._with_words = with_words and GLOSSARY not in self._printed
        self._terms: set[str] = set()

    def page(self, name: str, level: int, opening: bool = False) -> html.HtmlElement:
        """Return a page whose title is a heading of this level; opening: it opens a chapter."""
        article = self._site.article(name)
        _drop_replaced(article)
        if opening:
            _drop_cards(article)
        self._name_parts(article, name)
        for folded in article.iter("details"):
            folded.set("open", "")
        for image in article.iter("img"):
            image.set("src", self._site.file_address(name, image.get("src", "")))
        for heading in article.iter("h1", "h2", "h3", "h4", "h5"):
            heading.set("aria-level", str(min(int(heading.tag[1]) + level - 1, _DEEPEST)))
        for link in list(article.iter("a")):
            self._lead(link, name)
        article.set("id", place_id(name))
        return article

    def words(self) -> html.HtmlElement | None:
        """Return the glossary of the terms on the pages so far; None where there is no need."""
        if not self._terms:
            return None
        article = self.page(GLOSSARY, 1)
        entries = html.Element("dl")
        for term in list(article.iter("dt")):
            if any(one.get("id") in self._terms for one in term.iter("span")):
                entries.extend([term, term.getnext()])
        title = article.find("h1")
        title.text = say(WORDS)
        words = html.Element(
            "article", {**article.attrib, "class": f"{article.get('class')} book-words"}
        )
        words.extend([title, entries])
        return words

    def _name_parts(self, article: html.HtmlElement, name: str) -> None:
        for element in article.xpath(".//*[@id]"):
            element.set("id", place_id(name, element.get("id")))
        for attribute in _NAMING:
            for element in article.xpath(f".//*[@{attribute}]"):
                names = element.get(attribute).split()
                element.set(attribute, " ".join(place_id(name, one) for one in names))

    def _lead(self, link: html.HtmlElement, name: str) -> None:
        """Let a link lead to a page of the print, or say which page of the handbook it means."""
        target = self._site.target(name, link.get("href", ""))
        if target is None:
            return
        page, anchor = target
        is_term = "term" in link.classes
        link.attrib.pop("aria-label", None)
        if is_term and self._with_words and name != GLOSSARY:
            self._terms.add(place_id(page, anchor))
            link.set("href", f"#{place_id(page, anchor)}")
            return
        if page in self._printed:
            link.set("href", f"#{place_id(page, anchor)}")
            if page != name and not is_term and _has_room(link):
                see = html.Element("span", {"class": "see-page"})
                before, _, behind = say("(page {number})", number="\0").partition("\0")
                see.text = f" {before}"
                see.append(page_number(place_id(page, anchor)))
                see[0].tail = behind
                _put_behind(link, see)
            return
        if not is_term and _has_room(link):
            _tell_name(link, self._site.title(page))
        if self._site.address and not is_term:
            link.set("href", f"{self._site.address}{page}/" if page else self._site.address)
        else:
            link.drop_tag()


def page_number(place: str) -> html.HtmlElement:
    """Return the element in which the number of a place's page will stand."""
    return html.Element("span", {"class": "page-number", "data-of": place})


def _drop_replaced(article: html.HtmlElement) -> None:
    found = [element for name in _REPLACED for element in article.find_class(name)]
    found += [link for way in article.find_class("way") for link in way.iter("a")]
    found += article.iter("template")  # pictures in the other unit system
    for element in found:
        element.drop_tree()


def _drop_cards(article: html.HtmlElement) -> None:
    """Remove the list of a chapter's pages, with its headings: the contents have it."""
    for cards in article.find_class("cards"):
        before = cards.getprevious()
        if before is not None and before.tag == "h2":
            before.drop_tree()
        cards.drop_tree()


def _has_room(link: html.HtmlElement) -> bool:
    """Tell whether something may stand beside a link: not on a sheet, not at a unit's readings."""
    around = list(link.iterancestors())
    return not any(_SHEETS & set(one.classes) or "data-unit" in one.attrib for one in around)


def _tell_name(link: html.HtmlElement, title: str) -> None:
    """Show that a link means a page of this title, which the print does not have."""
    words = html.Element("span", {"class": "see-page see-page--name"})
    if title.casefold() == " ".join(link.text_content().split()).casefold():
        link.text = f"“{link.text or ''}"
        words.text = "”"
    else:
        words.text = " " + say("(see “{title}”)", title=title)
    _put_behind(link, words)


def _put_behind(element: html.HtmlElement, new: html.HtmlElement) -> None:
    """Put an element right behind another, before the text that follows that one."""
    new.tail, element.tail = element.tail, None
    element.addnext(new)
