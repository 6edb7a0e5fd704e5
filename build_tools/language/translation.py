"""What is translated into a language: its files, and what of each is stale or missing.

A translated entry has its numbers, names and structure from the English source. Only its texts are
its own, and each only as long as the English text is what it was when somebody translated it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from build_tools.content.entries import Entry, Page
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem
from build_tools.language.glossary import FILE as GLOSSARY
from build_tools.language.source_texts import SourceText, source_texts
from build_tools.language.translated_file import (
    TITLES,
    TranslatedFile,
    TranslatedText,
    read_translated,
)
from build_tools.language.translated_handbook import translated_handbook

#: Folders of the sources whose pages can be translated, and the group of the handbook in each.
PAGE_FOLDERS = {"learn": "lessons", "procedures": "procedures"}
#: Lists whose entries can be translated.
TRANSLATED_LISTS = ("cautions", "paths")


@dataclass(frozen=True)
class State:
    """A text of a translated page: what translates it now, or what once did."""

    source: SourceText
    now: TranslatedText | None
    once: TranslatedText | None

    @property
    def word(self) -> str:
        """How it stands with the text."""
        return "translated" if self.now else "stale" if self.once else "missing"


class Translation:
    """What the folder of a language holds, and what it makes of an English handbook."""

    def __init__(self, handbook: Handbook, code: str) -> None:
        self.handbook = handbook
        self.code = code
        self.folder = handbook.docs_folder / code
        self.files: dict[str, TranslatedFile] = {}
        self.problems: list[Problem] = []
        for path in sorted(self.folder.rglob("*")):
            place = path.relative_to(self.folder).as_posix()
            if path.is_file() and place != GLOSSARY and not path.name.startswith("."):
                self._load(path, place)

    def _load(self, path, place: str) -> None:
        file = self.handbook.file_name(path)
        if place != TITLES and self.entry_at(place) is None and place not in self._lists:
            said = f'there is no "{place}" in English that this file could translate'
            wanted = "a lesson, a procedure, or one of: "
            lists = ", ".join((*self._lists, TITLES, GLOSSARY))
            self.problems.append(Problem(file, 1, f"{said} (expected {wanted}{lists})"))
            return
        self.files[place] = read_translated(path, file, place)
        self.problems += self.files[place].problems

    @property
    def _lists(self) -> tuple[str, ...]:
        return tuple(f"{name}.yaml" for name in TRANSLATED_LISTS)

    def entry_at(self, place: str) -> Entry[Any] | None:
        """Return the English entry that a file of the language translates."""
        folder, _, name = place.rpartition("/")
        group = PAGE_FOLDERS.get(folder)
        stem, _, ending = name.rpartition(".")
        right = ending == ("md" if folder == "learn" else "yaml")
        return getattr(self.handbook, group).get(stem) if group and right else None

    @cached_property
    def pages(self) -> dict[str, Entry[Any]]:
        """The English entries that have a page in this language, by the page's address."""
        found = {place: self.entry_at(place) for place in self.files}
        return {f"{self.code}/{one.address}": one for one in found.values() if one}

    def address(self, english: str) -> str | None:
        """Return the address of a page in this language, or None where it has none."""
        address = f"{self.code}/{english}"
        return address if address in self.pages else None

    def place_of(self, address: str) -> str:
        """Return the file of a page in the folder of the language."""
        stem = address.partition("/")[2].removesuffix(".md")
        return f"{stem}.md" if isinstance(self.pages[address], Page) else f"{stem}.yaml"

    def states(self) -> Iterator[tuple[TranslatedFile, list[State]]]:
        """Yield each file with how it stands with each English text that it translates."""
        for place, file in self.files.items():
            sources = self.sources(place)
            now = {source.key: file.of(source) for source in sources}
            used = {id(text) for text in now.values()}
            yield file, [State(one, now[one.key], _once(file, one, used)) for one in sources]

    def sources(self, place: str) -> list[SourceText]:
        """Return the English texts that a file of the language translates."""
        if entry := self.entry_at(place):
            return list(source_texts(entry))
        if place == TITLES:
            return self._titles
        group = getattr(self.handbook, place.removesuffix(".yaml"))
        named = {text.key.partition(".")[0] for text in self.files[place].texts}
        wanted = self._cautions if place == "cautions.yaml" else named
        return [
            source
            for name, entry in group.items()
            if name in wanted | named
            for source in source_texts(entry)
        ]

    @cached_property
    def _cautions(self) -> set[str]:
        """The cautions on the pages that are translated: all of these must be, too."""
        return {
            name for one in self.pages.values() for name in getattr(one.content, "cautions", [])
        }

    @cached_property
    def _titles(self) -> list[SourceText]:
        """The titles of things without a page in this language, for which the file has words."""
        named = {text.key for text in self.files[TITLES].texts}
        found = []
        for folder in ("learn", "procedures", "faults", "checks", "equipment"):
            group = getattr(self.handbook, PAGE_FOLDERS.get(folder, folder))
            for entry in group.values():
                for source in source_texts(entry):
                    key = f"{folder}/{entry.id}.{source.key}"
                    if source.key in ("title", "short_title") and key in named:
                        found.append(replace(source, key=key))
        return found

    def texts_of(self, place: str) -> dict[str, TranslatedText]:
        """Return the texts of a file that translate present English ones, by the English key."""
        file = self.files.get(place)
        if file is None:
            return {}
        found = {source.key: file.of(source) for source in self.sources(place)}
        return {key: text for key, text in found.items() if text}

    @cached_property
    def in_this_language(self) -> Handbook:
        """The handbook with the entries that are translated in the place of the English ones."""
        return translated_handbook(self)

    @property
    def page_entries(self) -> list[Entry[Any]]:
        """The translated entries that have a page of their own."""
        made = self.in_this_language
        groups = (*made.lessons.values(), *made.procedures.values())
        return [one for one in groups if one.address in self.pages]

    @property
    def entries(self) -> Iterator[Entry[Any]]:
        """What pages of this language show: their entries, with their blocks, and cautions."""
        for entry in self.page_entries:
            yield entry
            yield from (block for _, _, block in getattr(entry, "blocks", ()))
        yield from self.in_this_language.cautions.values()

    @property
    def procedures(self) -> list[Entry[Any]]:
        """The procedures that have a page in this language."""
        return [one for one in self.page_entries if not isinstance(one, Page)]


def _once(file: TranslatedFile, source: SourceText, used: set[int]) -> TranslatedText | None:
    """Return what translates another text of the same key that is there no more."""
    once = file.once_of(source)
    return None if once is None or id(once) in used else once
