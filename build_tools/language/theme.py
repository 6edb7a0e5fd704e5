"""What a page of another language needs of MkDocs and the theme: words, navigation, switches."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page

from build_tools.language.catalogs import browser_words
from build_tools.language.languages import CONFIGURED, ENGLISH, LANGUAGES, in_english, language_of
from build_tools.language.pages import ENGLISH_TERMS, TERMS
from build_tools.language.speaking import say, speaking
from build_tools.language.typed import typed_words


@dataclass(frozen=True)
class Switch:
    """A way from a page to the same page in another language."""

    code: str
    url: str
    words: str


def words_files(codes: Iterable[str]) -> dict[str, str]:
    """Return the files with the words of the scripts, by the code of their language."""
    files = {}
    for code in codes:
        words = browser_words(code)
        words["calculators"]["typed"] = typed_words(code)
        files[code] = json.dumps(words, ensure_ascii=False)
    return files


def words_address(code: str, content: str) -> str:
    """Return where a file of words stands; a changed one has another name, as all assets have."""
    return f"assets/words-{code}-{hashlib.sha256(content.encode()).hexdigest()[:16]}.json"


def remove_sources(files: Files) -> None:
    """Take the files with translated texts out of the site: they are no pages."""
    for file in list(files):
        if language_of(file.src_uri) != ENGLISH:
            files.remove(file)


def part_navigation(nav: Navigation) -> None:
    """Let no language's pages lead on to another language's with "next" and "previous"."""
    for page in nav.pages:
        for name in ("previous_page", "next_page"):
            other = getattr(page, name)
            if other and language_of(other.file.src_uri) != language_of(page.file.src_uri):
                setattr(page, name, None)


def navigation_for(nav: Navigation, code: str) -> Navigation:
    """Return the part of the navigation that is in a language."""
    items = [item for item in nav.items if _language(item) == code]
    if code != ENGLISH:
        items = [one for item in items for one in (item.children or [item])]
    made = Navigation(items, [page for page in nav.pages if _language(page) == code])
    made.homepage = next((page for page in made.pages if _is_index(page)), nav.homepage)
    return made


def switches(page: Page, files: Files) -> list[Switch]:
    """Return the ways from a page to itself in the other languages."""
    address = page.file.src_uri
    here, english = language_of(address), in_english(address)
    found = []
    for code in (ENGLISH, *LANGUAGES):
        file = files.get_file_from_path(_in(code, english))
        if code != here and file is not None:
            with speaking(code):
                words = "This page in English" if code == ENGLISH else say("This page in Spanish")
            found.append(Switch(code, file.url, words))
    return found


def _in(code: str, address: str) -> str:
    """Return the address of a page in a language; the page of terms has a place of its own."""
    if code == ENGLISH:
        return ENGLISH_TERMS if address == TERMS else address
    return f"{code}/{TERMS if address == ENGLISH_TERMS else address}"


def configured_words(html: str, code: str) -> str:
    """Return the HTML of a page with the words of mkdocs.yml in the page's language."""
    with speaking(code):
        for words in CONFIGURED if code != ENGLISH else ():
            html = html.replace(f'"{words}"', f'"{say(words)}"')
    return html


def not_found(codes: Iterable[str]) -> list[dict[str, str]]:
    """Return what the page for a wrong address says in each language."""
    told = []
    for code in codes:
        with speaking(code):
            told.append(
                {
                    "code": code,
                    "url": f"{code}/",
                    "title": say("There is no such page"),
                    "words": say("The address may be mistyped, or the page has another name now."),
                    "home": say("The pages in this language"),
                }
            )
    return told


def _language(item: Any) -> str:
    first = item
    while getattr(first, "children", None):
        first = first.children[0]
    return language_of(first.file.src_uri) if getattr(first, "file", None) else ENGLISH


def _is_index(page: Page) -> bool:
    return page.file.src_uri in ("index.md", *(f"{code}/index.md" for code in LANGUAGES))
