"""How far the handbook is translated: a table with shares, and a line for each open text."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from babel.messages.catalog import Message

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem
from build_tools.language import catalogs, extracting
from build_tools.language.languages import LANGUAGES
from build_tools.language.translation import Translation
from calculators import CALCULATORS

#: What all calculators say comes from these, beside their own modules.
SHARED = ("inputs", "outputs", "quantities", "readings", "working")


@dataclass(frozen=True)
class Row:
    """How many texts of a file are translated, stale and missing."""

    file: str
    translated: int
    stale: int
    missing: int

    @property
    def texts(self) -> int:
        """How many texts there are."""
        return self.translated + self.stale + self.missing

    @property
    def share(self) -> str:
        """The share that is translated; a whole one only where nothing is open."""
        return f"{100 * self.translated // max(1, self.texts)} %"


def rows(handbook: Handbook) -> Iterator[Row]:
    """Yield the row of each translated file, then those of the catalogs."""
    for code in LANGUAGES:
        for file, states in handbook.translation(code).states():
            words = [state.word for state in states]
            counts = (words.count(word) for word in ("translated", "stale", "missing"))
            yield Row(file.file, *counts)
        for name in (catalogs.INTERFACE, catalogs.CALCULATORS):
            found = [_word(code, name, message) for message in _messages(name)]
            counts = (found.count(word) for word in ("translated", "stale", "missing"))
            yield Row(f"build_tools/language/{code}/{name}.po", *counts)


def open_texts(handbook: Handbook) -> list[Problem]:
    """Return a line for each text of a translated page that is stale, missing or left over."""
    return [problem for code in LANGUAGES for problem in _of_pages(handbook.translation(code))]


def _of_pages(translation: Translation) -> Iterator[Problem]:
    for file, states in translation.states():
        for state in states:
            source = state.source
            if state.once:
                said = f'"{source.key}" has changed since it was translated'
                place = f"{state.once.file}:{state.once.line}"
            elif not state.now:
                said, place = f'"{source.key}" is not translated', file.file
            else:
                continue
            said += f" (expected {source.key} @{source.of} in {place})"
            yield Problem(source.entry.file, source.line, said)
        used = {id(text) for state in states for text in (state.now, state.once) if text}
        for text in file.texts:
            if id(text) not in used:
                said = f'"{text.key}" translates no English text any more (expected to be removed)'
                yield Problem(text.file, text.line, said)


def open_calculators(translation: Translation) -> list[Problem]:
    """Return a line for each text, without a translation, of a calculator on a translated page."""
    names = {getattr(one.content, "calculate", None) for one in translation.entries}
    modules = {CALCULATORS[name].compute.__module__ for name in names - {None}}
    modules |= {f"calculators.{name}" for name in SHARED} if modules else set()
    files = {f"{module.replace('.', '/')}.py" for module in modules}
    return [one for one in open_words(translation.code, catalogs.CALCULATORS) if one.file in files]


def open_words(code: str, name: str) -> list[Problem]:
    """Return a line for each message of the code that a catalog lacks or is unsure of."""
    catalog = f"build_tools/language/{code}/{name}.po"
    found = []
    for message in _messages(name):
        word = _word(code, name, message)
        if word != "translated":
            file, line = message.locations[0]
            first = message.id[0] if isinstance(message.id, (list, tuple)) else message.id
            why = "is fuzzy" if word == "stale" else "is not translated"
            found.append(Problem(file, line, f'"{first}" {why} (expected it in {catalog})'))
    return found


def _messages(name: str) -> list[Message]:
    return [message for message in extracting.template(name) if message.id]


def _word(code: str, name: str, message: Message) -> str:
    found = catalogs.read(code, name).get(message.id, message.context)
    if found is None:
        return "missing"
    if catalogs.is_translated(found):
        return "translated"
    return "stale" if found.fuzzy else "missing"


def table(found: list[Row]) -> str:
    """Return the rows as lines in columns."""
    heads = ("File", "Texts", "Translated", "Stale", "Missing", "Share")
    lines = [heads]
    for one in found:
        counts = (one.texts, one.translated, one.stale, one.missing)
        lines.append((one.file, *map(str, counts), one.share))
    widths = [max(len(line[place]) for line in lines) for place in range(len(heads))]
    return "\n".join(
        "  ".join(
            cell.rjust(width) if place else cell.ljust(width)
            for place, (cell, width) in enumerate(zip(line, widths, strict=True))
        ).rstrip()
        for line in lines
    )
