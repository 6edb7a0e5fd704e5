"""The handbook in another language: its translated entries, and what of them is stale or missing.

A translated entry has its numbers, names and structure from the English source. Only its texts are
its own, and each only as long as the English text is what it was when somebody translated it.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

from build_tools.content.entries import Entry, Page, Passage
from build_tools.content.handbook import Handbook
from build_tools.content.loading import LISTS
from build_tools.content.page_models import Picture
from build_tools.content.problems import Problem
from build_tools.content.yaml_file import KeyPath
from build_tools.language.links import rewritten
from build_tools.language.source_texts import SourceText, key_of, sections_of, source_texts
from build_tools.language.translated_file import TranslatedFile, TranslatedText, read_translated

#: Folders of the sources whose pages can be translated, and the group of the handbook in each.
PAGE_FOLDERS = {"learn": "lessons", "procedures": "procedures"}
#: Lists whose entries can be translated.
TRANSLATED_LISTS = ("cautions", "paths")
#: The file with the titles of things that have no page in the language.
TITLES = "titles.yaml"
GLOSSARY = "glossary.yaml"
NOT_TRANSLATED = '<div class="untranslated" lang="en" markdown>'


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


@dataclass(frozen=True)
class InAnotherLanguage(Entry[Any]):
    """An entry whose texts are translated. english: the paths of those that are not."""

    english: frozenset[KeyPath] = frozenset()
    translated: dict[KeyPath, TranslatedText] = field(default_factory=dict, repr=False)

    def line(self, *path: str | int) -> int:
        """Return the line of a text in the translated file."""
        found = self.translated.get(path)
        return found.line if found else 1

    def passage(self, path: KeyPath, text: str) -> Passage:
        """Return the text at a key path as a passage of the translated file."""
        return Passage(self, text, lambda offset: self.line(*path), path)

    def said(self, path: KeyPath, text: str) -> str:
        """Return a text as the page shows it: English words are marked as English."""
        return f'<span lang="en">{text}</span>' if path in self.english else text


@dataclass(frozen=True)
class PageInAnotherLanguage(Page):
    """A Markdown page whose texts are translated."""

    english: frozenset[KeyPath] = frozenset()
    translated: dict[KeyPath, TranslatedText] = field(default_factory=dict, repr=False)

    said = InAnotherLanguage.said


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
            if path.is_file() and place not in (GLOSSARY,) and not path.name.startswith("."):
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
        made = replace(
            self.handbook,
            _translations={},
            cautions=self._translated_list("cautions"),
            paths=self._translated_list("paths"),
            equipment=self._titled("equipment"),
            examples=dict(self.handbook.examples),
            pictures=dict(self.handbook.pictures),
            lessons=dict(self.handbook.lessons),
            procedures=dict(self.handbook.procedures),
        )
        for address, entry in self.pages.items():
            group = made.lessons if isinstance(entry, Page) else made.procedures
            group[entry.id] = self._translated(entry, address)
            for _, _, block in getattr(group[entry.id], "blocks", ()):
                blocks = made.pictures if isinstance(block.content, Picture) else made.examples
                blocks[block.id] = block
        return made

    def _translated_list(self, name: str) -> dict[str, Entry[Any]]:
        texts = self.texts_of(f"{name}.yaml")
        file = f"{self.code}/{name}.yaml"
        return {
            key: self._with_texts(entry, _at_paths(entry, texts, f"{key}."), file, LISTS[name][1])
            for key, entry in getattr(self.handbook, name).items()
        }

    def _titled(self, folder: str) -> dict[str, Entry[Any]]:
        texts = self.texts_of(TITLES)
        made = {}
        for name, entry in getattr(self.handbook, folder).items():
            own = _at_paths(entry, texts, f"{folder}/{name}.")
            made[name] = self._with_texts(entry, own, TITLES, entry.address, titles_only=True)
        return made

    def _translated(self, entry: Entry[Any], address: str) -> Entry[Any]:
        place = self.place_of(address)
        texts = self.texts_of(place)
        made = self._with_texts(entry, _at_paths(entry, texts), self.files[place].file, address)
        return self._page(entry, made, texts) if isinstance(entry, Page) else made

    def _with_texts(
        self,
        entry: Entry[Any],
        texts: dict[KeyPath, TranslatedText],
        file: str,
        address: str,
        titles_only: bool = False,
    ) -> InAnotherLanguage:
        data = copy.deepcopy(entry.yaml.data)
        for part in entry.place:
            data = data[part]
        for path, text in texts.items():
            _put(data, path, rewritten(self, entry.address, address, text.text))
        wanted = {
            source.path for source in source_texts(entry) if source.path and source.entry is entry
        }
        return InAnotherLanguage(
            entry.id,
            file,
            address,
            type(entry.content).model_validate(data),
            entry.yaml,
            entry.place,
            frozenset() if titles_only else frozenset(wanted - texts.keys()),
            texts,
        )

    def _page(
        self, page: Page, front: InAnotherLanguage, texts: dict[str, TranslatedText]
    ) -> PageInAnotherLanguage:
        """Return a Markdown page: its sections in the order of the English ones."""
        body = ""
        placed = []
        for section in sections_of(page):
            found = texts.get(f"#{section.id}")
            blocks = {block.id: block for _, _, block in section.blocks}
            if found is None:
                body += f"{NOT_TRANSLATED}\n\n"
                parts = list(_english_parts(page, section))
            else:
                parts = found.parts
            for kind, said, *_ in parts:
                if kind == "text":
                    is_own = found is not None
                    body += rewritten(self, page.address, front.address, said, say_so=is_own)
                elif said in blocks:
                    block = self._block(blocks[said], texts, front)
                    placed.append((len(body), len(body), block))
            body = body.rstrip("\n") + "\n\n" + ("" if found else "</div>\n\n")
        return PageInAnotherLanguage(
            page.id,
            front.file,
            front.address,
            front.content,
            page.yaml,
            (),
            body=body,
            blocks=placed,
            english=front.english,
            translated=front.translated,
        )

    def _block(
        self, block: Entry[Any], texts: dict[str, TranslatedText], page: InAnotherLanguage
    ) -> InAnotherLanguage:
        own = _at_paths(block, texts, f"{block.id}.")
        return self._with_texts(block, own, page.file, page.address)

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


def _at_paths(
    entry: Entry[Any], texts: dict[str, TranslatedText], prefix: str = ""
) -> dict[KeyPath, TranslatedText]:
    """Return the translated texts of an entry by their paths in it."""
    paths = [passage.path for passage in Entry.passages(entry)]
    return {path: texts[key] for path in paths if (key := prefix + key_of(path)) in texts}


def _put(data: Any, path: KeyPath, text: str) -> None:
    for part in path[:-1]:
        data = data[part]
    data[path[-1]] = text


def _english_parts(page: Page, section) -> Iterator[tuple[str, str]]:
    done = len(page.body) - len(page.body[section.start :].lstrip())
    for start, end, block in section.blocks:
        yield "text", page.body[done:start]
        yield "block", block.id
        done = end
    yield "text", page.body[done : section.end]
