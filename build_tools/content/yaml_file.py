"""YAML with the line of every key, value and list item.

The C scanner of PyYAML composes the nodes: ruamel.yaml's round trip takes thirty times as long
(12 ms for a procedure of 135 lines), too long for a curriculum of 1,000 procedures. Only nodes are
taken from it; values follow YAML 1.2, where "yes" and "12:30" are plain texts.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml

from build_tools.content.problems import Problem, shortened

KeyPath = tuple[str | int, ...]

#: Line ends as the scanner counts them.
_LINE_END = re.compile("\r\n|[\n\r\x85\u2028\u2029]")
_NOTHING = re.compile(r"~|null|Null|NULL|")
_SWITCH = re.compile(r"true|True|TRUE|false|False|FALSE")
_WHOLE = re.compile(r"[-+]?[0-9]{1,300}")
#: A sign that makes the rest of a line a comment, with no blank as writers of comments set it. The
#: mark of a part that is still an example is told as that: checks/left_examples.py.
_CUT = re.compile(r"[ \t]+(#(?!example\b)[^\s#].*)")
_DECIMAL = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")

#: What the scanner says -> what the writer of the file most likely has to do.
_ADVICE = (
    ("mapping values are not allowed", 'quotes around a text that holds ": "'),
    ("tab character", "spaces instead of tabs"),
    ("found undefined alias", 'quotes around a text that begins with "*"'),
    (
        "cannot start any token",
        "spaces, not tabs, before a key; quotes around a text that begins "
        "with a sign such as @, ` or %",
    ),
    ("unexpected end of stream", "a closing quote"),
    ("expected ',' or ']'", 'a closing "]", or quotes around a text that begins with "["'),
    ("expected ',' or '}'", 'a closing "}", or quotes around a text that begins with "{"'),
    ("but found another document", 'one document: no line "---" in the middle of the file'),
    ("expected '-' indicator", 'every item of the list to begin with "- "'),
    (
        "expected key",
        'a line "key: value", indented like the lines around it; quotes around a text '
        'that begins with "{" or with a quote',
    ),
    ("could not find expected ':'", 'a line "key: value"'),
)


@dataclass
class _Scalar:
    """Where a text value stands in its file."""

    first_line: int
    column: int
    last_line: int
    block: bool


@dataclass
class YamlFile:
    """The data of a YAML text, the line of each part of it, and what is wrong with it.

    `data` is None when the text does not parse. Lines are those of the file, from 1.
    """

    file: str
    source: list[str]
    first_line: int
    data: Any = None
    problems: list[Problem] = field(default_factory=list)
    lines: dict[KeyPath, int] = field(default_factory=dict)
    _scalars: dict[KeyPath, _Scalar] = field(default_factory=dict)

    def line(self, *path: str | int) -> int:
        """Return the line of a key or list item, or of the nearest part around it."""
        for end in range(len(path), 0, -1):
            if path[:end] in self.lines:
                return self.lines[path[:end]]
        return self.lines.get((), self.first_line)

    def line_at(self, path: KeyPath, text: str, offset: int) -> int:
        """Return the line of the character at `offset` of the text value at `path`.

        A text folded over several lines keeps the order of its words, so they are counted.
        """
        scalar = self._scalars.get(path)
        if scalar is None:
            return self.line(*path)
        if scalar.first_line == scalar.last_line:
            return scalar.first_line
        words_left = len(text[: offset + 1].split())
        for number in range(scalar.first_line + scalar.block, scalar.last_line + 1):
            line = self.source[number - self.first_line]
            words_left -= len(
                line[scalar.column :].split() if number == scalar.first_line else line.split()
            )
            if words_left <= 0:
                return number
        return scalar.last_line

    def report(self, line: int, text: str) -> None:
        """Note one problem."""
        self.problems.append(Problem(self.file, line, text))


def read_text(path: Path, file: str) -> tuple[str | None, list[Problem]]:
    """Return the text of a source file, or None and the problem that kept it from being read."""
    try:
        return path.read_bytes().decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n"), []
    except UnicodeDecodeError as error:
        line = path.read_bytes()[: error.start].count(b"\n") + 1
        text = "the file is not UTF-8 text (expected a file saved with the encoding UTF-8)"
    except OSError as error:
        line, text = 1, f"the file cannot be read: {error.strerror} (expected a readable file)"
    return None, [Problem(file, line, text)]


def read_yaml(text: str, file: str, first_line: int = 1) -> YamlFile:
    """Read a YAML text that begins on `first_line` of a file and holds a mapping."""
    read = YamlFile(file, _LINE_END.split(text), first_line)
    try:
        node = yaml.compose(text, Loader=yaml.CSafeLoader)
        if node is not None:
            read.lines[()] = node.start_mark.line + first_line
            read.data = _Builder(read).value(node, ())
    except yaml.reader.ReaderError as error:
        line = text.encode()[: error.position].count(b"\n") + first_line
        read.report(
            line,
            "the file holds a character that YAML does not allow "
            f"(U+{error.character:04X}; expected plain text)",
        )
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line = min(mark.line + 1, len(read.source)) + first_line - 1
        read.report(line, f"the YAML does not parse: {_why(error)}")
    except RecursionError:
        read.report(first_line, "the YAML is nested too deeply (expected a few levels)")
    if not read.problems and not isinstance(read.data, dict):
        what = {list: "a list", type(None): "empty"}.get(type(read.data), "a text without keys")
        read.report(read.line(), f'this is {what} (expected lines "key: value")')
    if not isinstance(read.data, dict):
        read.data = None
    return read


def _why(error: yaml.MarkedYAMLError) -> str:
    said = " ".join(part for part in (error.context, error.problem) if part)
    advice = next((advice for part, advice in _ADVICE if part in said), None)
    return f"{said} (expected {advice})" if advice else said


class _Builder:
    """Turns nodes into plain values and notes the line of each."""

    def __init__(self, read: YamlFile) -> None:
        self.read = read
        self.seen: set[int] = set()

    def value(self, node: yaml.Node, path: KeyPath) -> Any:
        line = node.start_mark.line + self.read.first_line
        if id(node) in self.seen:
            self.read.report(
                line,
                'a part marked with "&" is used again with "*" (expected each part written out)',
            )
            return None
        self.seen.add(id(node))
        if node.tag.startswith("!"):
            self.read.report(
                line,
                f'"{shortened(node.tag)}" is a YAML tag (expected quotes around '
                'a text that begins with "!")',
            )
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, path)
        if isinstance(node, yaml.SequenceNode):
            return self._list(node, path)
        return self._scalar(node, path, line)

    def _mapping(self, node: yaml.MappingNode, path: KeyPath) -> dict[str, Any]:
        found: dict[str, Any] = {}
        for key_node, value_node in node.value:
            line = key_node.start_mark.line + self.read.first_line
            if not isinstance(key_node, yaml.ScalarNode):
                self.read.report(
                    line,
                    "a key is not a plain word (expected quotes around a text "
                    'that begins with "{{" or "[")',
                )
                continue
            key = key_node.value
            if key in found:
                first = self.read.lines[(*path, key)]
                self.read.report(
                    line,
                    f'the key "{shortened(key)}" is here twice, first on line '
                    f"{first} (expected each key once)",
                )
                continue
            self.read.lines[(*path, key)] = line
            found[key] = self.value(value_node, (*path, key))
        return found

    def _list(self, node: yaml.SequenceNode, path: KeyPath) -> list[Any]:
        found = []
        for index, item in enumerate(node.value):
            self.read.lines[(*path, index)] = item.start_mark.line + self.read.first_line
            found.append(self.value(item, (*path, index)))
        return found

    def _scalar(self, node: yaml.ScalarNode, path: KeyPath, line: int) -> Any:
        last = node.end_mark.line - (node.end_mark.column == 0 and node.end_mark.line > line)
        self.read._scalars[path] = _Scalar(
            line, node.start_mark.column, last + self.read.first_line, node.style in ("|", ">")
        )
        text: str = node.value
        if node.style:
            return text
        rest = self.read.source[node.end_mark.line][node.end_mark.column :]
        if cut := _CUT.fullmatch(rest):
            self.read.report(
                node.end_mark.line + self.read.first_line,
                f'YAML leaves out "{shortened(cut[1])}" as a comment (expected quotes around a text '
                'that holds " #", or a blank after the "#" of a comment)',
            )
        if _NOTHING.fullmatch(text):
            return None
        if _SWITCH.fullmatch(text):
            return text.lower() == "true"
        if _WHOLE.fullmatch(text):
            return int(text)
        return float(text) if _DECIMAL.fullmatch(text) else text
