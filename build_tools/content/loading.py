"""Loads each source file by its place, notes all problems, leaves nothing out in silence."""

from __future__ import annotations

import os
import re
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from build_tools.content import models
from build_tools.content.diagnosis_models import Check, Fault
from build_tools.content.entries import Entry, Page
from build_tools.content.fields import Format
from build_tools.content.layers import DATA_FILES, Replaced, Source, page_name
from build_tools.content.markdown_file import TEXTS, Fence, read_markdown, split_front
from build_tools.content.models import Caution, Equipment, Fact, SearchWord, Shop, Term
from build_tools.content.page_models import (
    LessonFront,
    Picture,
    PlainFront,
    Procedure,
    Table,
    WorkedExample,
)
from build_tools.content.path_models import ReadingPath
from build_tools.content.practice_models import Exercise
from build_tools.content.problems import Problem, choosing, expected
from build_tools.content.skill_models import Skill
from build_tools.content.validation import validate
from build_tools.content.yaml_file import YamlFile, read_text, read_yaml
from calculators.quantities import nearest
from calculators.sources import SOURCES

if TYPE_CHECKING:
    from build_tools.content.handbook import Handbook

#: Folder of YAML pages -> the format of its files.
SECTIONS: dict[str, type[Format]] = {
    "procedures": Procedure,
    "faults": Fault,
    "equipment": Equipment,
    "checks": Check,
    "practice": Exercise,
}
#: Where the pages of a folder stand, if not in a folder of the same name.
_PAGE_FOLDERS = {"practice": "practise"}
#: File of many entries -> their format and the page they stand on.
LISTS: dict[str, tuple[type[Format], str]] = {
    "facts": (Fact, "reference/numbers.md"),
    "sources": (models.Source, "reference/sources.md"),
    "cautions": (Caution, "reference/cautions.md"),
    "tables": (Table, "reference/tables.md"),
    "glossary": (Term, "reference/glossary.md"),
    "search_words": (SearchWord, "faults/what-customers-say.md"),
    "skills": (Skill, "trainers/sign-off.md"),
    "paths": (ReadingPath, "learn/index.md"),
}
#: First word of a fenced block -> its format, its group, and what messages call it.
BLOCKS: dict[str, tuple[type[Format], str, str]] = {
    "worked-example": (WorkedExample, "examples", "worked example"),
    "picture": (Picture, "pictures", "picture"),
}
_UNSEEN = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ufffe\uffff]")
FILE_NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
FACT_NAME = re.compile(r"[a-z][a-z0-9_]*")


def page_folder(section: str) -> str:
    """Return the folder in which the pages of a folder of YAML files stand."""
    return _PAGE_FOLDERS.get(section, section)


@lru_cache(maxsize=TEXTS)
def _page_of_yaml(
    folder: str, stem: str, file: str, text: str
) -> tuple[Entry[Any] | None, list[Problem]]:
    """Return what a file of a section holds, and its problems; the same text is read once."""
    read = read_yaml(text, file)
    content = validate(SECTIONS[folder], read, read.data) if read.data is not None else None
    if content is None:
        return None, read.problems
    return Entry(stem, file, f"{page_folder(folder)}/{stem}.md", content, read), read.problems


def _unseen(file: str, text: str | None) -> list[Problem]:
    """Return a problem for the first character of a page that is none of a text's."""
    match = _UNSEEN.search(text or "")
    if match is None:
        return []
    said = (
        f"the file holds a character that is no text (U+{ord(match[0]):04X}; expected plain text)"
    )
    return [Problem(file, 1 + match.string.count("\n", 0, match.start()), said)]


def _only_comments(text: str) -> bool:
    return all(not line.strip() or line.lstrip().startswith("#") for line in text.split("\n"))


class Loader:
    """Loads files into a handbook, whatever is wrong with them."""

    def __init__(self, handbook: Handbook) -> None:
        self.handbook = handbook
        self._shipped_data: dict[str, Any] = {}

    def load(self, source: Source) -> None:
        """Load one file, unless the shop leaves it out."""
        path, place = source.path, source.place
        folder, _, name = place.rpartition("/")
        stem, ending = os.path.splitext(name)
        if place in DATA_FILES:
            return
        if not self._wanted_of_library(source):
            return
        if ending.lower() in (".yaml", ".yml", ".md") and ending != ending.lower():
            said = f'the ending "{ending}" is not read (expected "{ending.lower()}")'
            self.handbook.problems.append(Problem(self.handbook.file_name(path), 1, said))
            return
        if ending not in (".yaml", ".yml", ".md"):
            self.handbook.other_files.add(place)
            return
        file = self.handbook.file_name(path)
        text, problems = read_text(path, file)
        if ending == ".md":
            problems += _unseen(file, text)
            problems += self._markdown(place, stem, file, text)
        elif ending == ".yaml" and folder in SECTIONS:
            problems += self._section(folder, stem, file, text)
        elif place == "shop.yaml":
            problems += self._shop(file, text)
        elif ending == ".yaml" and not folder and stem in LISTS:
            problems += self._list(stem, file, text)
        else:
            problems.append(Problem(file, 1, f"this file is not read {self._wanted(folder, name)}"))
        if problems:
            self.handbook.problems += problems
            self.handbook.broken[file] = text or ""

    def _wanted_of_library(self, source: Source) -> bool:
        """Tell whether a file is to be read; note what of the library it is or replaces."""
        name, file = page_name(source.place), self.handbook.file_name(source.path)
        if source.instead_of:
            same = source.path.read_bytes() == source.instead_of.read_bytes()
            self.handbook.replaced[name] = Replaced(file, 1, same)
        if source.shipped:
            self.handbook.shipped_files.add(file)
        if (source.shipped or source.instead_of) and name not in LISTS:
            self.handbook.shipped.add(name)
        return not (source.shipped and name in self.handbook.left_out)

    def _wanted(self, folder: str, name: str) -> str:
        if folder in SECTIONS:
            return f'(expected the name "{os.path.splitext(name)[0]}.yaml")'
        if folder:
            return f"(expected YAML files in the folders {', '.join(SECTIONS)})"
        return expected(name, ["shop.yaml", *(f"{stem}.yaml" for stem in LISTS)])

    def _name(self, group: str, name: str, file: str) -> list[Problem]:
        self.handbook.ids.setdefault(group, set()).add(name)
        if FILE_NAME.fullmatch(name):
            return []
        said = (
            f'the name "{name}" cannot be an address (expected lower case letters, digits and "-")'
        )
        return [Problem(file, 1, said)]

    def _section(self, folder: str, stem: str, file: str, text: str | None) -> list[Problem]:
        problems = self._name(folder, stem, file)
        if text is None:
            return problems
        entry, found = _page_of_yaml(folder, stem, file, text)
        if entry is not None:
            getattr(self.handbook, folder)[stem] = entry
        return problems + found

    def _shop(self, file: str, text: str | None) -> list[Problem]:
        if text is None:
            return []
        read = read_yaml(text, file)
        content = validate(Shop, read, read.data) if read.data is not None else None
        if content is not None:
            self.handbook.shop = Entry("shop", file, "reference/shop.md", content, read)
        return read.problems

    def _list(self, group: str, file: str, text: str | None) -> list[Problem]:
        if text is not None and self.handbook.library and _only_comments(text):
            return []  # what the library has counts
        read = read_yaml(text, file) if text is not None else None
        if read is None or read.data is None:
            self.handbook.unread.add(group)
            return read.problems if read else []
        shape, address = LISTS[group]
        ids = self.handbook.ids.setdefault(group, set())
        for name, data in read.data.items():
            if self._left_out(group, name, read):
                continue
            ids.add(name)
            if group == "facts" and not FACT_NAME.fullmatch(name):
                read.report(
                    read.line(name),
                    f'the fact name "{name}" cannot stand in an expression '
                    '(expected lower case letters, digits and "_")',
                )
            if group == "sources" and name in SOURCES:
                read.report(
                    read.line(name),
                    f'the source "{name}" is one of the calculators\' own '
                    "sources (expected another key)",
                )
            content = validate(shape, read, data, (name,))
            if content is not None:
                entry = Entry(name, file, address, content, read, (name,))
                getattr(self.handbook, group)[name] = entry
        return read.problems

    def _left_out(self, group: str, name: str, read: YamlFile) -> bool:
        """Tell whether an entry is not to be read; note what it is replaced by."""
        called = f"{group}/{name}"
        if read.file in self.handbook.shipped_files:
            self.handbook.shipped.add(called)
            self._shipped_data[called] = read.data[name]
            return called in self.handbook.left_out
        if called in self._shipped_data:
            same = self._shipped_data[called] == read.data[name]
            self.handbook.replaced[called] = Replaced(read.file, read.line(name), same)
        return False

    def _markdown(self, place: str, stem: str, file: str, text: str | None) -> list[Problem]:
        folder = place.rpartition("/")[0]
        lesson = folder == "learn" and stem != "index"
        problems = self._name("learn", stem, file) if lesson else []
        self.handbook.ids.setdefault("markdown", set()).add(place)
        if text is None:
            return problems
        front, start, found = split_front(text, file)
        problems += found
        read = YamlFile(file, [], 1, data={}) if front is None else read_yaml(front, file, 2)
        shape = LessonFront if lesson else PlainFront
        if lesson and front is None and not found:
            read.report(
                1,
                'a lesson begins with front matter between two lines "---" '
                "(expected title, order, minutes, aim, can_now, questions)",
            )
            read.data = None
        if found:
            read.data = None
        content = validate(shape, read, read.data) if read.data is not None else None
        body, body_line = text[start:], text.count("\n", 0, start) + 1
        page = Page(
            stem, file, place, content or PlainFront(), read, body=body, body_line=body_line
        )
        problems += read.problems + self._blocks(page)
        if content is not None:
            pages = self.handbook.lessons if lesson else self.handbook.pages
            pages[stem if lesson else place] = page
        return problems

    def _blocks(self, page: Page) -> list[Problem]:
        problems: list[Problem] = []
        for fence in read_markdown(page.body).fences:
            if fence.word in BLOCKS:
                problems += self._block(page, fence)
            elif nearest(fence.word, BLOCKS):
                self.handbook.unread.update(group for _, group, _ in BLOCKS.values())
                said = choosing(f'unknown block "{fence.word}"', fence.word, BLOCKS)
                line = page.body_line + page.body.count("\n", 0, fence.offset)
                problems.append(Problem(page.file, line, said))
        return problems

    def _block(self, page: Page, fence: Fence) -> list[Problem]:
        shape, group, what = BLOCKS[fence.word]
        read = read_yaml(fence.content, page.file, page.body_line + fence.content_line)
        if read.data is None:
            self.handbook.unread.add(group)
            return read.problems
        name = read.data.get("id")
        if isinstance(name, str):
            self._once(name, what, read)
            self.handbook.ids.setdefault(group, set()).add(name)
        else:
            self.handbook.unread.add(group)
        content = validate(shape, read, read.data)
        if content is not None:
            block = Entry(content.id, page.file, page.address, content, read)
            page.blocks.append((fence.offset, fence.end, block))
            getattr(self.handbook, group).setdefault(content.id, block)
        return read.problems

    def _once(self, name: str, what: str, read: YamlFile) -> None:
        """Report a block whose id an earlier block of any kind has: it is an anchor."""
        for _, group, first_what in BLOCKS.values():
            first = getattr(self.handbook, group).get(name)
            if first is None:
                continue
            both = f"two {what}s" if what == first_what else f"a {what} and a {first_what}"
            read.report(
                read.line("id"),
                f'{both} have the id "{name}", the first in {first.file}, line '
                f"{first.line('id')} (expected each id once)",
            )
