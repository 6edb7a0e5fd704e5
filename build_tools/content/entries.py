"""What a loaded handbook is made of: entries that know their file and the line of every part."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cached_property

from build_tools.content.fields import Prose, Reference, parts
from build_tools.content.markdown_file import Markdown, Piece, read_markdown
from build_tools.content.page_models import LessonFront, Picture, PlainFront, WorkedExample
from build_tools.content.problems import Problem
from build_tools.content.yaml_file import KeyPath, YamlFile

_MARKUP = re.compile(r"[`\[\]<>*_&\\{}!#|\n]|^\s*(?:\d+[.)]|[-+])\s")


@dataclass(frozen=True)
class Passage:
    """A text that readers see: a text field of a YAML file, or the body of a Markdown page."""

    entry: Entry
    text: str
    line_at: Callable[[int], int]
    path: KeyPath = ()

    @cached_property
    def markdown(self) -> Markdown:
        """What the text holds, read as Markdown."""
        if _MARKUP.search(self.text):
            return read_markdown(self.text)
        piece = Piece()
        piece.add(self.text, 0)
        return Markdown(pieces=[piece])

    def problem(self, offset: int, text: str) -> Problem:
        """Return a problem at an offset of the text."""
        return Problem(self.entry.file, self.line_at(offset), text)


@dataclass(frozen=True)
class Entry[Content]:
    """One thing of the handbook: its content, its file and the lines of its parts.

    address: the page it stands on, as links name it ("procedures/arrival-check.md").
    place: its key path in the file ((), or (id,) for one entry of a file of many).
    """

    id: str
    file: str
    address: str
    content: Content
    yaml: YamlFile = field(repr=False)
    place: KeyPath = ()

    def line(self, *path: str | int) -> int:
        """Return the line of one part: line("steps", 3, "do")."""
        return self.yaml.line(*self.place, *path)

    def problem(self, path: KeyPath, text: str) -> Problem:
        """Return a problem with one part."""
        return Problem(self.file, self.line(*path), text)

    def passage(self, path: KeyPath, text: str) -> Passage:
        """Return the text at a key path as a passage that knows its lines."""
        place = (*self.place, *path)
        return Passage(self, text, lambda offset: self.yaml.line_at(place, text, offset), path)

    @cached_property
    def _parts(self) -> list[tuple[KeyPath, str, object]]:
        return list(parts(self.content))

    @cached_property
    def texts(self) -> list[Passage]:
        """The texts of the fields that readers see."""
        return [
            self.passage(path, value)
            for path, value, marker in self._parts
            if isinstance(marker, Prose)
        ]

    def said(self, path: KeyPath, text: str) -> str:
        """Return a filled text of the entry as its page shows it."""
        return text

    def passages(self) -> Iterator[Passage]:
        """Yield every text of the entry that readers see."""
        yield from self.texts

    def references(self) -> Iterator[tuple[KeyPath, str, str]]:
        """Yield (key path, group, name) for every field that names something else."""
        for path, value, marker in self._parts:
            if isinstance(marker, Reference):
                yield path, marker.group, value


Example = Entry[WorkedExample]
Block = Entry[WorkedExample | Picture]


@dataclass(frozen=True)
class Page(Entry[LessonFront | PlainFront]):
    """A Markdown page: its front matter as `content`, its body, and the blocks in it.

    blocks: where each begins and ends in the body, and the entry that it is.
    """

    body: str = ""
    body_line: int = 1
    blocks: list[tuple[int, int, Block]] = field(default_factory=list, repr=False)

    @cached_property
    def body_passage(self) -> Passage:
        """The body without its blocks, which are entries of their own."""
        text = self.body
        for start, end, _ in self.blocks:
            blank = re.sub(r"[^\n]", " ", text[start:end])
            text = text[:start] + blank + text[end:]
        return Passage(self, text, lambda offset: self.body_line + text.count("\n", 0, offset))

    def passages(self) -> Iterator[Passage]:
        yield from super().passages()
        yield self.body_passage

    def sections(self) -> Iterator[tuple[int, str | Block]]:
        """Yield (line, text or block) in the order of the body."""
        done = 0
        for start, end, block in self.blocks:
            yield self.body_line + self.body.count("\n", 0, done), self.body[done:start]
            yield block.line(), block
            done = end
        yield self.body_line + self.body.count("\n", 0, done), self.body[done:]
