"""Which pages are printed, in which order and under which chapters."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from build_tools.content.addresses import A_CALL, OF_RECORD
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.loading import LISTS
from build_tools.content.path_models import ReadingPath
from build_tools.content.problems import expected
from build_tools.content.values import Values
from build_tools.language.languages import ENGLISH, LANGUAGES
from build_tools.pages.navigation import Section, sections
from build_tools.pages.render import Texts
from build_tools.set_up.failure import Failure

#: The page of the sign-off sheet.
SIGN_OFF = LISTS["skills"][1]
#: Pages that make no sense on paper; docs/print.md tells why.
LEFT_OUT = {
    "index.md",
    "reference/index.md",
    "trainers/index.md",
    "reference/on-this-phone.md",
    A_CALL,
    *(page for page in OF_RECORD if page != SIGN_OFF),
}


@dataclass(frozen=True)
class Group:
    """Pages that the contents list together, under a title or under none."""

    title: str
    pages: list[str]


@dataclass(frozen=True)
class Chapter:
    """A chapter of a print. opening: the page that opens it, which the contents do not list."""

    title: str
    groups: list[Group]
    opening: str = ""

    @property
    def pages(self) -> list[str]:
        """All pages of the chapter, in order."""
        listed = [page for group in self.groups for page in group.pages]
        return [self.opening, *listed] if self.opening else listed


@dataclass(frozen=True)
class Chosen:
    """What is printed: its title, for whom it is, and its chapters."""

    title: str
    purpose: str
    chapters: list[Chapter]

    @property
    def pages(self) -> list[str]:
        """All pages, in order."""
        return [page for chapter in self.chapters for page in chapter.pages]


def page_name(address: str) -> str:
    """Return how a built site calls the page of a source.

    >>> page_name("learn/salt-and-brine.md"), page_name("learn/index.md"), page_name("index.md")
    ('learn/salt-and-brine', 'learn', '')
    """
    name = address.removesuffix(".md")
    return name.removesuffix("index").rstrip("/") if name.endswith("index") else name


def whole_handbook(handbook: Handbook, values: Values) -> Chosen:
    """Return all of the handbook that makes sense on paper, in the site's order."""
    found = sections(handbook, values)
    every = [one for section in found for one in (section, *section.subsections)]
    openings = {one.index for one in every}
    plain = _on_paper(page for page in handbook.pages if page not in openings)
    chapters = [Chapter("Before you begin", [Group("", plain)])] if plain else []
    chapters += [_chapter(one) for one in every]
    return Chosen("", "", [one for one in chapters if one.pages])


def _chapter(section: Section) -> Chapter:
    groups = [Group(title, _on_paper(dict(pages))) for title, pages in section.groups]
    opening = "".join(_on_paper([section.index]))
    return Chapter(section.title, [group for group in groups if group.pages], opening)


def _on_paper(addresses: Iterable[str]) -> list[str]:
    return [page_name(one) for one in addresses if one not in LEFT_OUT]


def one_path(handbook: Handbook, values: Values, name: str, language: str = ENGLISH) -> Chosen:
    """Return the pages of a path; in another language those that are translated, and its terms.

    Raises Failure for a path that the handbook, or the language, does not have.
    """
    path = find_path(handbook, name)
    pages = [f"{page}.md" for page in path.content.pages]
    if language != ENGLISH:
        translation = handbook.translation(language)
        path = translation.in_this_language.paths[name]
        if not any(map(translation.address, pages)):
            raise Failure(f'No page of the path "{name}" is in {LANGUAGES[language].name} yet.')
        pages = [translation.address(page) or page for page in pages]
    texts = Texts(values, path)
    return Chosen(
        texts(path.content.title),
        texts(path.content.purpose),
        [Chapter("", [Group("", [page_name(page) for page in pages])])],
    )


def find_path(handbook: Handbook, name: str) -> Entry[ReadingPath]:
    """Return a path by its name."""
    if not handbook.paths:
        raise Failure("This handbook has no paths: write them into paths.yaml.")
    if not name:
        raise Failure(f"Say which path to print {expected(name, handbook.paths)}.")
    if name not in handbook.paths:
        raise Failure(f'There is no path "{name}" {expected(name, handbook.paths)}.')
    return handbook.paths[name]
