"""Files of translated texts: what each text says, and which English text it translates.

In YAML a key is the text's key and the digest of the English text: `steps.1.do @1a2b3c4d: …`. In a
Markdown file the front matter has such keys; under the heading of a section stands its digest as
`<!-- @1a2b3c4d -->`, and a block has the block's name and digest on its first line.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from build_tools.content.loading import BLOCKS
from build_tools.content.markdown_file import read_markdown, split_front
from build_tools.content.problems import Problem, asking, shortened
from build_tools.content.yaml_file import YamlFile, read_text, read_yaml
from build_tools.language.source_texts import DIGITS, START, SourceText, heading_id

#: The file with the titles of things that have no page in the language.
TITLES = "titles.yaml"
KEY = re.compile(rf"(\S+) @([0-9a-f]{{{DIGITS}}})")
_DIGEST_LINE = re.compile(rf"<!-- @([0-9a-f]{{{DIGITS}}}) -->\n*")
_BLOCK_LINE = re.compile(r"[`~]{3,}\s*([\w-]+)\s+(.*)")
_HEADING = re.compile(r"^## +(.+)$\n*", re.MULTILINE)
_WANTED = "expected the digest of the English text, which the command translations tells"


@dataclass(frozen=True)
class TranslatedText:
    """One translated text.

    parts: of a section, (kind, text or name of a block, line) for each part of it.
    """

    file: str
    line: int
    key: str
    of: str
    text: str
    parts: tuple[tuple[str, str, int], ...] = ()

    def line_of(self, words: str) -> int:
        """Return the line of some words of the text."""
        for _, said, line in self.parts:
            if words in said:
                return line + said.count("\n", 0, said.index(words))
        return self.line + self.text.count("\n", 0, max(0, self.text.find(words)))


@dataclass
class TranslatedFile:
    """The texts of one file by key, and what is wrong with it."""

    file: str
    address: str
    texts: list[TranslatedText] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)

    def of(self, source: SourceText) -> TranslatedText | None:
        """Return what translates an English text as it is now, or None."""
        for one in self.texts:
            if one.of == source.of and _kind(one.key) == _kind(source.key):
                return one
        return None

    def once_of(self, source: SourceText) -> TranslatedText | None:
        """Return what translates another English text under the same key, or None."""
        return next((one for one in self.texts if one.key == source.key), None)


def _kind(key: str) -> str:
    """Return what a text is, whatever its place: the texts of a block share one digest."""
    return "#" if key.startswith("#") else [one for one in key.split(".") if not one.isdigit()][-1]


def read_translated(path: Path, file: str, address: str) -> TranslatedFile:
    """Read a YAML or Markdown file of translated texts.

    file: how messages call it. address: of the English page, or list, that it translates.
    """
    read = TranslatedFile(file, address)
    text, problems = read_text(path, file)
    read.problems += problems
    if text is None:
        return read
    if path.suffix == ".md":
        front, start, problems = split_front(text, file)
        read.problems += problems
        if front is not None:
            _take(read, read_yaml(front, file, 2))
        read.texts += _sections(read, text[start:], text.count("\n", 0, start) + 1)
    else:
        _take(read, read_yaml(text, file))
    return read


def _take(read: TranslatedFile, yaml: YamlFile, of: str = "", prefix: str = "") -> None:
    """Take the texts of a YAML file, or of a block, whose keys have no digest of their own."""
    read.problems += yaml.problems
    for key, text in (yaml.data or {}).items():
        match = KEY.fullmatch(key)
        name, its_own = match.groups() if match else (key, of)
        line = yaml.line(key)
        if not its_own:
            said = f'"{shortened(key)}" does not say which English text it translates'
            read.problems.append(Problem(read.file, line, asking(said, f"{key} @1a2b3c4d")))
        elif not isinstance(text, str) or not text.strip():
            said = f'"{shortened(key)}" is {"empty" if text in (None, "") else "no text"}'
            read.problems.append(Problem(read.file, line, asking(said, "a text")))
        else:
            read.texts.append(TranslatedText(read.file, line, prefix + name, its_own, text))


def _sections(read: TranslatedFile, body: str, body_line: int) -> Iterator[TranslatedText]:
    blocks = [one for one in read_markdown(body).fences if one.word in BLOCKS]
    hidden = body
    for one in blocks:
        hidden = hidden[: one.offset] + " " * (one.end - one.offset) + hidden[one.end :]

    def line_at(offset: int) -> int:
        return body_line + body.count("\n", 0, offset)

    for name, heading, start, end in _places(hidden):
        line = line_at(start - len(heading))
        digest = _DIGEST_LINE.match(body, start)
        if digest is None:
            said = f'the section "#{name}" does not say which English text it translates'
            read.problems.append(Problem(read.file, line, asking(said, "<!-- @1a2b3c4d --> below")))
            continue
        parts = [("text", f"{heading.strip()}\n\n", line)] if heading else []
        done = digest.end()
        for one in blocks:
            if start <= one.offset < end:
                parts.append(("text", body[done : one.offset], line_at(done)))
                block = _block(read, body, one, body_line)
                parts.append(("block", block, line_at(one.offset)))
                done = one.end
        parts.append(("text", body[done:end], line_at(done)))
        text = "".join(said for kind, said, _ in parts if kind == "text")
        yield TranslatedText(read.file, line, f"#{name}", digest[1], text.strip(), tuple(parts))


def _places(body: str) -> Iterator[tuple[str, str, int, int]]:
    """Yield (id, heading, start, end) of each section; one without a heading is the first."""
    headings = list(_HEADING.finditer(body))
    first = headings[0].start() if headings else len(body)
    if body[:first].strip():
        yield START, "", len(body) - len(body.lstrip()), first
    starts = [match.start() for match in headings]
    for heading, end in zip(headings, [*starts[1:], len(body)], strict=False):
        yield heading_id(heading[1]), heading[0], heading.end(), end


def _block(read: TranslatedFile, body: str, fence, body_line: int) -> str:
    """Take the texts of a block, and return its name."""
    line = body_line + body.count("\n", 0, fence.offset)
    first = _BLOCK_LINE.match(body[fence.offset : fence.end].lstrip().partition("\n")[0])
    named = KEY.fullmatch(first[2].strip()) if first else None
    if named is None:
        said = f"this {BLOCKS[fence.word][2]} does not say which it translates"
        wanted = f"{fence.word} its-name @1a2b3c4d"
        read.problems.append(Problem(read.file, line, asking(said, wanted)))
        return ""
    yaml = read_yaml(fence.content, read.file, body_line + fence.content_line)
    _take(read, yaml, named[2], f"{named[1]}.")
    return named[1]
