"""The loaded handbook: all that the source folder holds, and what of it could not be read."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from build_tools.content import models
from build_tools.content.diagnosis_models import Check, Fault
from build_tools.content.entries import Entry, Example, Page, Passage
from build_tools.content.layers import Replaced, layered
from build_tools.content.loading import LISTS, SECTIONS, Loader, page_folder
from build_tools.content.models import Caution, Equipment, Fact, SearchWord, Shop, Term
from build_tools.content.page_models import LessonFront, Picture, Procedure, Table
from build_tools.content.path_models import ReadingPath
from build_tools.content.practice_models import Exercise
from build_tools.content.problems import Problem
from build_tools.content.skill_models import Skill
from calculators import CALCULATORS
from calculators.simulation.changes import CHANGES
from calculators.sources import SOURCES

if TYPE_CHECKING:
    from build_tools.language.translation import Translation


@dataclass
class Handbook:
    """All that the source folder holds, and the problems found while loading it.

    `ids` has the names in each group, also of what failed to load; `unread` the groups of which
    some names could not be read; `broken` the text of each file that failed. `shown_in` is the
    unit system of those for whom the pages are made, where it is not the shop's.

    library: the shipped sources that the shop draws on; a handbook without one stands by itself.
    `shipped` names what the library has ("learn/what-hardness-is", "facts/bucket"), `shipped_files`
    its files as messages call them, and `replaced` tells what stands in the place of what.
    `example_units` are units of the library that the shop does not carry: they have no pages, but
    a text may take one as its example.
    """

    docs_folder: Path
    root: Path
    library: Path | None = None
    shop: Entry[Shop] | None = None
    facts: dict[str, Entry[Fact]] = field(default_factory=dict)
    sources: dict[str, Entry[models.Source]] = field(default_factory=dict)
    cautions: dict[str, Entry[Caution]] = field(default_factory=dict)
    tables: dict[str, Entry[Table]] = field(default_factory=dict)
    glossary: dict[str, Entry[Term]] = field(default_factory=dict)
    search_words: dict[str, Entry[SearchWord]] = field(default_factory=dict)
    skills: dict[str, Entry[Skill]] = field(default_factory=dict)
    paths: dict[str, Entry[ReadingPath]] = field(default_factory=dict)
    equipment: dict[str, Entry[Equipment]] = field(default_factory=dict)
    procedures: dict[str, Entry[Procedure]] = field(default_factory=dict)
    faults: dict[str, Entry[Fault]] = field(default_factory=dict)
    checks: dict[str, Entry[Check]] = field(default_factory=dict)
    practice: dict[str, Entry[Exercise]] = field(default_factory=dict)
    lessons: dict[str, Page] = field(default_factory=dict)
    pages: dict[str, Page] = field(default_factory=dict)
    examples: dict[str, Example] = field(default_factory=dict)
    pictures: dict[str, Entry[Picture]] = field(default_factory=dict)
    other_files: set[str] = field(default_factory=set)
    problems: list[Problem] = field(default_factory=list)
    ids: dict[str, set[str]] = field(default_factory=dict)
    unread: set[str] = field(default_factory=set)
    broken: dict[str, str] = field(default_factory=dict)
    _translations: dict[str, Translation] = field(default_factory=dict, repr=False)
    shipped: set[str] = field(default_factory=set)
    shipped_files: set[str] = field(default_factory=set)
    replaced: dict[str, Replaced] = field(default_factory=dict)
    example_units: dict[str, Entry[Equipment]] = field(default_factory=dict)
    shown_in: str | None = None

    def file_name(self, path: Path) -> str:
        """Return how messages call a file: its path from the folder of mkdocs.yml."""
        return Path(os.path.relpath(path, self.root)).as_posix()

    def source(self, place: str) -> Path:
        """Return where a source of this path lies: in the shop's folder or in the library."""
        own = self.docs_folder / place
        return self.library / place if self.library and not own.exists() else own

    def is_shipped(self, entry: Entry[Any]) -> bool:
        """Tell whether an entry comes from the library that the shop draws on."""
        return entry.file in self.shipped_files

    @property
    def left_out(self) -> set[str]:
        """What of the library the shop does not take."""
        return set(self.shop.content.left_out) if self.shop else set()

    def names(self, group: str) -> set[str]:
        """Return the names that a field naming something of this group may hold."""
        if group == "calculators":
            return set(CALCULATORS)
        if group == "changes":
            return set(CHANGES)
        if group == "fault groups":
            return {one.content.group for one in self.faults.values()}
        if group == "pages":
            sections = ("procedures", "faults", "checks", "learn", "equipment")
            found = {f"{name}/{one}" for name in sections for one in self.names(name)}
            return found | {f"work-out/{name}" for name in CALCULATORS}
        found = self.ids.get(group, set())
        if group == "equipment":
            return found | set(self.example_units)
        return found | set(SOURCES) if group == "sources" else found

    def knows(self, group: str, name: str) -> bool:
        """Tell whether something of this name exists, or may exist in a file that failed."""
        if group == "fault groups" and self.names("faults") != set(self.faults):
            return True
        return name in self.names(group) or group in self.unread

    @property
    def own_units(self) -> str:
        """The unit system of the shop, in which the sources are written."""
        return self.shop.content.units if self.shop else "us"

    @property
    def units(self) -> str:
        """The unit system of the readers for whom the pages are made."""
        return self.shown_in or self.own_units

    def in_the_other_system(self) -> Handbook:
        """Return the same handbook for readers of the other unit system."""
        other = "metric" if self.own_units == "us" else "us"
        return replace(self, shown_in=other, _translations={})

    @cached_property
    def carried(self) -> list[Entry[Equipment]]:
        """The equipment of the shop, in the shop's order."""
        named = self.shop.content.equipment if self.shop else []
        return [self.equipment[name] for name in dict.fromkeys(named) if name in self.equipment]

    @property
    def lessons_in_order(self) -> list[Page]:
        """The lessons in the order of the path; each of their pages leads to the next."""
        read = [page for page in self.lessons.values() if isinstance(page.content, LessonFront)]
        return sorted(read, key=lambda page: (page.content.order, page.id))

    def translation(self, code: str) -> Translation:
        """Return what the handbook has in another language; it is read once."""
        if code not in self._translations:
            from build_tools.language.translation import Translation

            self._translations[code] = Translation(self, code)
        return self._translations[code]

    def entries(self) -> Iterator[Entry[Any]]:
        """Yield everything that was loaded."""
        if self.shop:
            yield self.shop
        for group in (
            self.facts,
            self.sources,
            self.cautions,
            self.tables,
            self.glossary,
            self.search_words,
            self.skills,
            self.paths,
            self.equipment,
            self.procedures,
            self.faults,
            self.checks,
            self.practice,
            self.lessons,
            self.pages,
            self.examples,
            self.pictures,
        ):
            yield from group.values()

    @cached_property
    def passages(self) -> list[Passage]:
        """Every text that readers see."""
        return [passage for entry in self.entries() for passage in entry.passages()]


def load_handbook(docs_folder: Path, root: Path, library: Path | None = None) -> Handbook:
    """Load every source file under `docs_folder`, and what it does not replace of a library.

    root: the folder that messages start from.
    """
    handbook = Handbook(docs_folder, root, library)
    loader = Loader(handbook)
    if not (docs_folder / "shop.yaml").is_file():
        said = "the file is missing (expected the shop's name, town, units and prices)"
        handbook.problems.append(Problem(handbook.file_name(docs_folder / "shop.yaml"), 1, said))
    sources = layered(docs_folder, library, {f"{stem}.yaml" for stem in LISTS})
    if library is not None:  # the shop first: it tells what to leave out
        sources.sort(key=lambda one: one.place != "shop.yaml")
    for source in sources:
        loader.load(source)
    _set_aside_examples(handbook)
    handbook.problems += _same_address(handbook)
    return handbook


def _set_aside_examples(handbook: Handbook) -> None:
    """Take the library's units that the shop does not carry out of its equipment."""
    carried = handbook.shop.content.equipment if handbook.shop else []
    for name, entry in [*handbook.equipment.items()]:
        if name not in carried and handbook.is_shipped(entry):
            handbook.example_units[name] = handbook.equipment.pop(name)
            handbook.ids["equipment"].discard(name)


def made_from(handbook: Handbook) -> dict[str, set[str]]:
    """Return the source files of each page that has any, by the page's address."""
    found: dict[str, set[str]] = {}
    for entry in handbook.entries():
        found.setdefault(entry.address, set()).add(entry.file)
    return found


def _same_address(handbook: Handbook) -> Iterator[Problem]:
    for place in handbook.ids.get("markdown", ()):
        folder, _, name = place.removesuffix(".md").rpartition("/")
        if any(folder == page_folder(one) and name in handbook.names(one) for one in SECTIONS):
            said = f'"{name}.yaml" makes a page of the same address (expected another name)'
            yield Problem(handbook.file_name(handbook.docs_folder / place), 1, said)
