"""The pages of another language: as the English ones, from translated entries."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from build_tools.content.addresses import link_to
from build_tools.content.handbook import Handbook
from build_tools.content.leads import pages_by_calculator
from build_tools.content.values import Values
from build_tools.language.glossary import Glossary
from build_tools.language.languages import LANGUAGES, in_english
from build_tools.language.speaking import said, say, speaking
from build_tools.language.translated_entry import PageInAnotherLanguage
from build_tools.language.translated_file import TITLES
from build_tools.language.translation import Translation
from build_tools.pages.content_pages import ContentPages
from build_tools.pages.forms import Forms
from build_tools.pages.render import Library, Texts, render

#: The page of terms, in the folder of the language; the English one stands elsewhere.
TERMS, ENGLISH_TERMS = "glossary.md", "reference/glossary.md"


class LibraryInAnotherLanguage(Library):
    """Leads to the pages of the language, and tells of each other page that it is in English."""

    def __init__(self, translation: Translation, english: Library) -> None:
        self._translation = translation
        self._titles = dict(english.titles)
        self._named: set[str] = set()
        for key, text in translation.texts_of(TITLES).items():
            address, _, part = key.rpartition(".")
            if part == "title":
                self.name(f"{address}.md", text.text)
                self._named.add(f"{address}.md")

    def link(self, base: str, address: str, note: str = "") -> dict[str, str]:
        english = in_english(address)
        own = self._translation.address(english)
        if own:
            return super().link(base, own, note)
        words = said(self.title(english))
        if english not in self._named and words == self.title(english):
            words = f'<span lang="en">{words}</span>'
        link = link_to(base, english)
        return {"words": words + self.remark(english), "link": link, "note": note}

    #: The page of all pages in the language: its sections have none.
    up = "../../"

    def section(self, title: str) -> str:
        return say("The pages in this language")

    def remark(self, address: str) -> str:
        own = self._translation.address(in_english(address))
        return "" if own else f" ({say('in English')})"


@dataclass(frozen=True)
class LanguageSite:
    """The pages of one language by address, and its part of the navigation."""

    code: str
    pages: dict[str, str]
    nav: dict[str, list[Any]]


def language_sites(
    handbook: Handbook, values: Values, library: Library, runtime: str
) -> Iterator[LanguageSite]:
    """Yield the site of each language that has pages. library: the English one, whole."""
    for code in LANGUAGES:
        translation = handbook.translation(code)
        if translation.pages:
            with speaking(code):
                yield _site(translation, values, library, runtime)


def _site(translation: Translation, values: Values, english: Library, runtime: str) -> LanguageSite:
    handbook, code = translation.in_this_language, translation.code
    values = values.of_translation(handbook, said)
    library = LibraryInAnotherLanguage(translation, english)
    for entry in translation.page_entries:
        library.name(entry.address, Texts(values, entry)(entry.content.title))
    used = {
        name: {translation.address(one) or one for one in pages}
        for name, pages in pages_by_calculator(translation.handbook).items()
    }
    content = ContentPages(handbook, values, library, Forms(values, runtime), used)
    lessons = [one for one in handbook.lessons_in_order if isinstance(one, PageInAnotherLanguage)]
    pages = {
        lesson.address: content.lesson(lesson, following)
        for lesson, following in zip(lessons, [*lessons[1:], None], strict=True)
    }
    pages |= {one.address: content.procedure(one) for one in translation.procedures}
    whole = {
        file.address for file, states in translation.states() if all(one.now for one in states)
    }
    pages = {
        address: text if translation.place_of(address) in whole else _with_note(text)
        for address, text in pages.items()
    }
    terms = Glossary(translation.handbook, code).rows()
    index = f"{code}/index.md"
    paths, order = _paths(translation, values, library, index)
    others = [one for one in pages if all(one not in own for own in order.values())]
    groups = {**order, say("More pages"): others}
    nav: list[Any] = [index]
    nav += [
        {title: [{library.title(one): one} for one in own]} for title, own in groups.items() if own
    ]
    if terms:
        pages[f"{code}/{TERMS}"] = render("translated_terms", rows=terms)
        nav.append({say("Glossary"): f"{code}/{TERMS}"})
    pages[index] = render("language", paths=paths, terms=TERMS if terms else "")
    return LanguageSite(code, pages, {LANGUAGES[code].name: nav})


def _with_note(page: str) -> str:
    """Return a page that tells under its heading that some of it is in English."""
    heading, _, rest = page.partition("\n")
    note = say("What is in English on this page is not translated yet; it holds as it stands.")
    return f'{heading}\n\n<p class="untranslated-note">{note}</p>\n{rest}'


def _paths(
    translation: Translation, values: Values, library: Library, index: str
) -> tuple[list[dict[str, Any]], dict[str, list[str]]]:
    """Return the paths that have pages in the language, and by the title of each these pages."""
    paths: list[dict[str, Any]] = []
    order: dict[str, list[str]] = {}
    for name, path in translation.in_this_language.paths.items():
        own = [translation.address(f"{page}.md") for page in path.content.pages]
        if any(own):
            text = Texts(values, path)
            links = [library.link(index, f"{page}.md") for page in path.content.pages]
            title, purpose = text(path.content.title), text(path.content.purpose)
            paths.append({"id": name, "title": title, "purpose": purpose, "pages": links})
            known = [one for pages in order.values() for one in pages]
            order[title] = [one for one in own if one and one not in known]
    return paths, order
