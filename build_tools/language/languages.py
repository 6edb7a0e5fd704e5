"""The languages that the handbook speaks beside English, and which of them a page is in."""

from __future__ import annotations

from dataclasses import dataclass

#: The language of the sources, of every key in the catalogs, and of what is not translated yet.
ENGLISH = "en"


@dataclass(frozen=True)
class Language:
    """A language: its code, which is also its folder in the sources and the site, and its name.

    name: as its own speakers call it.
    """

    code: str
    name: str


#: By code. Each has its catalogs in `build_tools/language/<code>/` and its pages in
#: `docs_src/<code>/`.
LANGUAGES = {one.code: one for one in (Language("es", "Español"),)}


#: Words of mkdocs.yml that the theme puts into every page.
CONFIGURED = ("Switch to dark", "Switch to light", "A link to this section")


def language_of(address: str) -> str:
    """Return the code of the language of a page, from its address or its source's.

    >>> language_of("es/learn/what-hardness-is.md"), language_of("learn/what-hardness-is.md")
    ('es', 'en')
    """
    first = address.partition("/")[0]
    return first if first in LANGUAGES else ENGLISH


def in_english(address: str) -> str:
    """Return the address of the English page that a page of another language is made from.

    >>> in_english("es/learn/what-hardness-is.md")
    'learn/what-hardness-is.md'
    """
    return address if language_of(address) == ENGLISH else address.partition("/")[2]
