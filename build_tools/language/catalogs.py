"""The catalogs of words: gettext's files, read by Babel.

Each language has two. `interface.po` holds the words that pages and scripts say, and is complete.
`calculators.po` holds the texts of the calculators; what it lacks is shown in English.
"""

from __future__ import annotations

import io
import re
from functools import cache
from gettext import c2py
from pathlib import Path

from babel import Locale
from babel.messages.catalog import Catalog, Message
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po
from babel.support import Translations

from build_tools.comparing.marks import MARK, unmarked, with_marks_of
from calculators.translating import Translator

HERE = Path(__file__).parent
INTERFACE, CALCULATORS = "interface", "calculators"
#: Under this context stand the words among the units.
UNIT = "unit"
#: Numbers up to this one show which form of a plural a language takes.
_TRIED = 1001

#: Lines of a catalog's head that tell of nobody here, or change with every writing.
_CHANGING_HEADER = re.compile(
    r'^"(?:Project-Id|Report-Msgid|POT-Creation|PO-Revision|Last-Translator|Language-Team|'
    r"Generated-By).*\n|\A(?:#.*\n)+",
    re.MULTILINE,
)


def file_of(code: str, name: str) -> Path:
    """Return the file of a language's catalog."""
    return HERE / code / f"{name}.po"


@cache
def read(code: str, name: str) -> Catalog:
    """Return a catalog of a language as it is on disk."""
    with file_of(code, name).open("rb") as file:
        return read_po(file, locale=code)


def write(code: str, name: str, catalog: Catalog) -> None:
    """Write a catalog: in the order of its words, without the numbers of lines, which change."""
    written = io.BytesIO()
    write_po(written, catalog, width=100, sort_output=True, include_lineno=False)
    text = _CHANGING_HEADER.sub("", written.getvalue().decode("utf-8"))
    file_of(code, name).write_text(text, encoding="utf-8")
    for known in (read, interface, calculated):
        known.cache_clear()


@cache
def interface(code: str) -> Translations:
    """Return what a language says for the interface's words; a fuzzy message says nothing."""
    compiled = io.BytesIO()
    write_mo(compiled, read(code, INTERFACE))
    compiled.seek(0)
    return Translations(compiled)


def is_translated(message: Message) -> bool:
    """Tell whether a message has all its words, and nobody must look at them again."""
    strings = message.string if isinstance(message.string, (list, tuple)) else [message.string]
    return all(strings) and not message.fuzzy


def calculated_words(code: str) -> dict[str, dict[str, str]]:
    """Return what a language says for the calculators' texts, and for words among the units."""
    found: dict[str, dict[str, str]] = {"texts": {}, "units": {}}
    for message in read(code, CALCULATORS):
        if message.id and is_translated(message):
            found["units" if message.context == UNIT else "texts"][message.id] = message.string
    return found


class MarkedTranslator(Translator):
    """Translates also texts whose numbers are marked with what they rest on."""

    def text(self, text: str) -> str | None:
        if text.isascii() or not MARK.search(text):
            return super().text(text)
        found = super().text(unmarked(text))
        return found and with_marks_of(text, found)


@cache
def calculated(code: str) -> Translator:
    """Return what translates the calculators' texts."""
    return MarkedTranslator(calculated_words(code))


def browser_words(code: str) -> dict[str, object]:
    """Return what the scripts of a page need to speak a language: see `words.js`."""
    catalog = read(code, INTERFACE)
    words = {}
    for message in catalog:
        if message.id and is_translated(message) and _is_of_scripts(message):
            key = message.id[0] if isinstance(message.id, (list, tuple)) else message.id
            words[key] = message.string
    category, form = Locale.parse(code).plural_form, c2py(catalog.plural_expr)
    forms = {category(number): form(number) for number in range(_TRIED)}
    return {"words": words, "forms": forms, "calculators": calculated_words(code)}


def _is_of_scripts(message: Message) -> bool:
    return any(str(place).endswith(".js") for place, _ in message.locations)
