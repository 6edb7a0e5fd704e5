"""The English texts of a page, each with its key and a digest of what it says.

A translated text names the digest of the English text that it translates. So it is found wherever
that text stands on the page, and where the English changes, no text is left that translates it.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from markdown.extensions.toc import slugify

from build_tools.content.entries import Block, Entry, Page
from build_tools.content.yaml_file import KeyPath

#: So many digits of a digest stand beside a text.
DIGITS = 8
#: The id of what stands before the first heading of a page.
START = "start"
_HEADING = re.compile(r"^## +(.+?)[ #]*$", re.MULTILINE)
_ATTRIBUTES = re.compile(r"\s*\{:?[ ]*([^{}\n]*)\}\s*$")
_ID = re.compile(r"(?:^|\s)#([\w-]+)")


@dataclass(frozen=True)
class SourceText:
    """One English text.

    key: how translated files call it: "steps.1.do", "#a-section", "a-block.title". path: its place
    in the entry; () for a section of a Markdown page. of: the digest. blocks: of a section, those
    in it.
    """

    entry: Entry[Any]
    key: str
    path: KeyPath
    text: str
    line: int
    of: str
    blocks: tuple[Block, ...] = ()


@dataclass(frozen=True)
class Section:
    """A section of a Markdown page: its id, where it stands in the body, and its blocks."""

    id: str
    start: int
    end: int
    blocks: list[tuple[int, int, Block]]


def digest(*texts: str) -> str:
    """Return the digest of some texts; how their lines are broken does not count.

    >>> digest("Lift the lid."), digest("Lift\\n  the lid.") == digest("Lift the lid.")
    ('9a9603a0', True)
    """
    said = "\n".join(" ".join(text.split()) for text in texts)
    return hashlib.sha256(said.encode()).hexdigest()[:DIGITS]


def key_of(path: KeyPath) -> str:
    """Return how translated files call the text at a path; places in lists count from 1."""
    return ".".join(str(part + 1) if isinstance(part, int) else part for part in path)


def source_texts(entry: Entry[Any]) -> Iterator[SourceText]:
    """Yield the texts of an entry to translate, in their order."""
    prefix = f"{entry.id}." if entry.place else ""
    for passage in Entry.passages(entry):
        if "expect" in passage.path and passage.path[-1] == "value":
            continue  # the name of a value
        line = passage.line_at(0)
        key = prefix + key_of(passage.path)
        yield SourceText(entry, key, passage.path, passage.text, line, digest(passage.text))
    if isinstance(entry, Page):
        yield from _of_body(entry)


def _of_body(page: Page) -> Iterator[SourceText]:
    for section in sections_of(page):
        text = page.body_passage.text[section.start : section.end]
        line = page.body_line + page.body.count("\n", 0, section.start)
        blocks = tuple(block for _, _, block in section.blocks)
        of = digest(text, *(block.id for block in blocks))
        yield SourceText(page, f"#{section.id}", (), text.strip(), line, of, blocks)
        for block in blocks:
            passages = list(block.passages())
            of = digest(*(one.text for one in passages))
            for one in passages:
                key = f"{block.id}.{key_of(one.path)}"
                yield SourceText(block, key, one.path, one.text, one.line_at(0), of)


def sections_of(page: Page) -> list[Section]:
    """Return the sections of a page; what stands before the first heading is `START`."""
    text = page.body_passage.text
    found = [(heading_id(match[1]), match.start()) for match in _HEADING.finditer(text)]
    if text[: found[0][1] if found else None].strip():
        found.insert(0, (START, 0))
    ends = [*(start for _, start in found[1:]), len(text)]
    return [
        Section(name, start, end, [one for one in page.blocks if start <= one[0] < end])
        for (name, start), end in zip(found, ends, strict=True)
    ]


def heading_id(heading: str) -> str:
    """Return the id of a heading: the one that it is given, or the one made from its words.

    >>> heading_id("Where it comes from"), heading_id("De dónde viene {#where-it-comes-from}")
    ('where-it-comes-from', 'where-it-comes-from')
    """
    attributes = _ATTRIBUTES.search(heading)
    named = _ID.search(attributes[1]) if attributes else None
    return named[1] if named else slugify(_ATTRIBUTES.sub("", heading), "-")
