"""Says the interface's own words in the language of the page that is being written.

English is the key and the fallback: `say("Steps")` says "Steps" where no other language is spoken,
and where the catalog of the language has no words for it.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

from build_tools.language.catalogs import calculated, interface
from build_tools.language.languages import ENGLISH
from calculators.translating import Translator

_spoken = ContextVar("spoken", default=ENGLISH)


def spoken() -> str:
    """Return the code of the language that is spoken now."""
    return _spoken.get()


@contextmanager
def speaking(code: str) -> Iterator[None]:
    """Speak a language while the block runs."""
    before = _spoken.set(code)
    try:
        yield
    finally:
        _spoken.reset(before)


def say(words: str, **names: object) -> str:
    """Return words of the interface; `names` fill what stands in braces."""
    said = words if spoken() == ENGLISH else interface(spoken()).gettext(words)
    return said.format(**names) if names else said


def marked(words: str) -> str:
    """Mark words that are said elsewhere, so that the catalog gets them."""
    return words


def say_count(count: int, one: str, more: str, **names: object) -> str:
    """Return words about so many things; {count} is among the names."""
    if spoken() == ENGLISH:
        said = one if count == 1 else more
    else:
        said = interface(spoken()).ngettext(one, more, count)
    return said.format(count=count, **names)


def translator() -> Translator | None:
    """Return what translates the calculators' texts into the language spoken; None in English."""
    return None if spoken() == ENGLISH else calculated(spoken())


def said(text: str) -> str:
    """Return a text of the calculators in the language spoken, or in English where it has none."""
    found = translator() and translator().text(text)
    return found or text


def drawn_in_words(svg: str) -> str:
    """Return a picture with its words in the language spoken."""
    found = translator()
    return found.svg(svg) if found else svg


def in_words(result: dict) -> dict:
    """Return what `calculators.run` returned with its texts in the language spoken."""
    found = translator()
    return found.result(result) if found else result


def is_english(text: str) -> bool:
    """Tell whether a text of the calculators is shown in English on a page of another language."""
    return bool(text) and translator() is not None and translator().text(text) is None
