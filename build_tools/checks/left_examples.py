"""Lines that the command `new` wrote as an example, and that nobody has made true since."""

from __future__ import annotations

import re
from collections.abc import Iterator

from build_tools.content.entries import Entry, Page
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, asking
from build_tools.content.validation import called, description
from build_tools.content.yaml_file import YamlFile

#: What ends such a line in YAML, and what stands before such a text in Markdown.
MARK, MARK_OF_TEXT = "# example", "<!-- example -->"
_MARKED = re.compile(r"(?:^|\s)#\s*example\s*$")
_STILL = "still an example"


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each marked line."""
    marked: dict[int, set[int]] = {}
    for entry in handbook.entries():
        if id(entry.yaml) not in marked:  # many entries may stand in one file
            marked[id(entry.yaml)] = set(_marked(entry.yaml))
        if marked[id(entry.yaml)]:
            yield from _left(entry, marked[id(entry.yaml)])
        if isinstance(entry, Page):
            yield from _texts(entry)


def _marked(read: YamlFile) -> Iterator[int]:
    for index, line in enumerate(read.source):
        if line.endswith("example") and _MARKED.search(line):
            yield read.first_line + index


def _left(entry: Entry, lines: set[int]) -> Iterator[Problem]:
    depth = len(entry.place)
    deepest = {}
    for path, line in entry.yaml.lines.items():  # the parts of a part come after it
        if line in lines and path[:depth] == entry.place and len(path) > depth:
            deepest[line] = path
    for line, path in deepest.items():
        wanted = description(type(entry.content), path[depth:])
        said = asking(f"{called(path)} is {_STILL}", f'{wanted}; then take "{MARK}" away')
        yield Problem(entry.file, line, said)


def _texts(page: Page) -> Iterator[Problem]:
    for index, line in enumerate(page.body.split("\n")):
        if line.strip() == MARK_OF_TEXT:
            wanted = f'your own words; then take "{MARK_OF_TEXT}" away'
            said = asking(f"this is {_STILL}", wanted)
            yield Problem(page.file, page.body_line + index, said)
