"""Markdown: front matter, prose, links, images, headings and fenced blocks, each with its place.

Places are offsets in the text, because a text may be a page or one field of a YAML file; whoever
holds the text knows the line of an offset.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache, lru_cache
from html.parser import HTMLParser

from markdown.extensions.toc import slugify, unique
from markdown_it import MarkdownIt
from markdown_it.token import Token

from build_tools.content.problems import Problem

_FRONT = re.compile(r"---[ \t]*\n(.*?\n|)(?:---|\.\.\.)[ \t]*(?:\n|$)", re.DOTALL)
#: `{{ }}` and what Jinja has besides; "{#" alone may begin the id of a heading.
EXPRESSION = re.compile(r"(?s:\{\{.*?\}\}|\{%.*?%\})|\{#.*?#\}")
_ATTRIBUTES = re.compile(r"\{:?[ ]*([^{}\n]*)\}")
_ID = re.compile(r"(?:^|\s)#([\w-]+)")
#: So many texts are remembered: more than a handbook of a thousand procedures has.
TEXTS = 50_000
#: Stands for each character of an expression while the Markdown is read.
_HIDDEN = "\ue000"


@dataclass
class Piece:
    """A run of prose as a reader sees it, and where its parts stand in the text.

    head: what stands above its column, where it is a cell of a table.
    """

    text: str = ""
    head: str = ""
    _starts: list[tuple[int, int]] = field(default_factory=list)

    def add(self, text: str, offset: int) -> None:
        self._starts.append((len(self.text), offset))
        self.text += text

    def offset(self, position: int) -> int:
        """Return the offset in the source of a position in `text`."""
        start, offset = max(pair for pair in self._starts if pair[0] <= position)
        return offset + position - start


@dataclass(frozen=True)
class Link:
    """A link or an image; `words` is an image's alternative text."""

    target: str
    words: str
    offset: int


@dataclass(frozen=True)
class Tag:
    """A tag of raw HTML, and its attributes."""

    name: str
    attributes: dict[str, str]
    offset: int


@dataclass(frozen=True)
class Fence:
    """A fenced block: its first word, its content, and where the block and the content begin."""

    word: str
    content: str
    offset: int
    end: int
    content_line: int


@dataclass
class Markdown:
    """What a Markdown text holds."""

    pieces: list[Piece] = field(default_factory=list)
    #: What is said beside the prose, in titles and labels.
    beside: list[Piece] = field(default_factory=list)
    links: list[Link] = field(default_factory=list)
    images: list[Link] = field(default_factory=list)
    tags: list[Tag] = field(default_factory=list)
    fences: list[Fence] = field(default_factory=list)
    anchors: set[str] = field(default_factory=set)


def split_front(text: str, file: str) -> tuple[str | None, int, list[Problem]]:
    """Return the front matter (None for none), the offset where the page begins, and problems."""
    if not re.match(r"---[ \t]*\n", text):
        return None, 0, []
    match = _FRONT.match(text)
    if match is None:
        said = 'the front matter is not closed (expected a second line "---")'
        return None, len(text), [Problem(file, 1, said)]
    return match[1], match.end(), []


@cache
def _parser() -> MarkdownIt:
    # Indented code is off: under an admonition's title the indented text is prose.
    parser = MarkdownIt("commonmark").enable("table").disable("code")
    parser.validateLink = lambda link: True  # what a link may be is for the checks to say
    return parser


def hide_expressions(text: str) -> str:
    """Return a text of the same length and lines with every expression covered."""
    return EXPRESSION.sub(lambda match: re.sub(r"[^\n]", _HIDDEN, match[0]), text)


@lru_cache(maxsize=TEXTS)
def read_markdown(text: str) -> Markdown:
    """Return what a Markdown text holds; code and expressions are not prose.

    What is returned is the same for the same text, also for the next build: nobody changes it.
    """
    hidden = hide_expressions(text)
    reader = _Reader(text, hidden)
    tokens = _parser().parse(hidden)
    for index, token in enumerate(tokens):
        if token.type == "inline":
            reader.inline(token, within=tokens[index - 1].type)
        elif token.type in ("thead_open", "tr_open"):
            reader.row(head=token.type == "thead_open")
        elif token.type == "html_block":
            reader.html(token.content, reader.line_starts[token.map[0]])
        elif token.type == "fence":
            reader.fence(token)
    return reader.found


def read_html(text: str) -> Markdown:
    """Return what a text that is all HTML, or a drawing, holds."""
    found = Markdown()
    parser = _Html(text, 0, found)
    parser.feed(text)
    parser.close()
    return found


class _Reader:
    """Gathers what the tokens of one text hold."""

    def __init__(self, text: str, hidden: str) -> None:
        self.text = text
        self.hidden = hidden
        self.line_starts = [0, *(match.end() for match in re.finditer("\n", hidden)), len(hidden)]
        self.found = Markdown()
        self._heading_ids: set[str] = set()
        self._heads: list[str] = []
        self._column = 0

    def row(self, *, head: bool) -> None:
        """Begin a row of a table, or the head of another table."""
        self._column = 0
        if head:
            self._heads = []

    def _beside(self, text: str, offset: int) -> None:
        piece = Piece()
        piece.add(text, offset)
        self.found.beside.append(piece)

    def fence(self, token: Token) -> None:
        first, last = token.map
        start, end = self.line_starts[first], self.line_starts[min(last, len(self.line_starts) - 1)]
        indent = len(self.text[start:end]) - len(self.text[start:end].lstrip(" "))
        lines = self.text[start:end].split("\n")[1:]
        while lines and not lines[-1].strip():
            lines.pop()
        if lines and re.fullmatch(r"\s*(`{3,}|~{3,})\s*", lines[-1]):
            lines.pop()
        content = "".join(
            f"{line[min(indent, len(line) - len(line.lstrip())) :]}\n" for line in lines
        )
        word = (token.info.split() or [""])[0]
        self.found.fences.append(Fence(word, content, start, end, first + 1))

    def html(self, source: str, offset: int) -> None:
        """Read raw HTML: its text is prose, its links and images count."""
        parser = _Html(source, offset, self.found)
        parser.feed(source)
        parser.close()

    def inline(self, token: Token, within: str) -> None:
        """Read a run of prose; `within` is the type of the token that opens what holds it."""
        first, last = token.map
        start = self.line_starts[first]
        source = self.hidden[start : self.line_starts[min(last, len(self.line_starts) - 1)]]
        piece, place = Piece(), 0
        words = ""
        for child in token.children or []:
            written = str(child.attrGet("href") or child.attrGet("src") or child.content)
            at = source.find(written, place)
            if at >= 0:
                place = at
            if title := child.attrGet("title"):
                self._beside(str(title), start + place)
            if child.type == "code_inline":
                self._beside(child.content, start + place)
            if child.type == "text" or child.type == "code_inline":
                words += child.content
            if child.type == "text":
                piece.add(child.content, start + place)
            elif child.type in ("softbreak", "hardbreak", "code_inline"):
                piece.add("\n" if child.type != "code_inline" else _HIDDEN, start + place)
            elif child.type == "link_open":
                self.found.links.append(Link(written, "", start + place))
                place = max(0, source.rfind("[", 0, place))  # the link's words stand before it
            elif child.type == "image":
                self.found.images.append(Link(written, child.content, start + place))
                piece.add(f" {child.content} ", start + place)
            elif child.type == "html_inline":
                self.html(child.content, start + place)
            if at >= 0 and child.type in ("text", "code_inline", "html_inline"):
                place = at + len(child.content)
        self.found.pieces.append(piece)
        if within == "th_open":
            self._heads.append(piece.text)
        elif within == "td_open":
            piece.head = self._heads[self._column]
            self._column += 1
        self._anchors(source, words if within == "heading_open" else None)

    def _anchors(self, source: str, heading: str | None) -> None:
        named = [found for part in _ATTRIBUTES.findall(source) for found in _ID.findall(part)]
        self.found.anchors.update(named)
        if heading is None:
            return
        words = _ATTRIBUTES.sub("", heading).replace(_HIDDEN, "").strip()
        if not named:
            self.found.anchors.add(unique(slugify(words, "-"), self._heading_ids))
        self._heading_ids.update(named)


#: Tags whose text goes on in the text around them.
_INLINE = frozenset("a abbr b bdi code em i kbd mark q s small span strong sub sup u".split())
_SAID = ("alt", "title", "aria-label", "aria-description", "summary", "label", "placeholder")


class _Html(HTMLParser):
    """Finds prose, links, images, tags and ids in raw HTML."""

    def __init__(self, source: str, offset: int, found: Markdown) -> None:
        super().__init__()
        self.found = found
        self.starts = [offset]
        for match in re.finditer("\n", source):
            self.starts.append(offset + match.end())
        self._goes_on = False

    def _offset(self) -> int:
        line, column = self.getpos()
        return self.starts[min(line, len(self.starts)) - 1] + column

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        written = {name: value or "" for name, value in attrs}
        self.found.tags.append(Tag(tag, written, self._offset()))
        self._goes_on = self._goes_on and tag in _INLINE
        for name in _SAID:
            if said := written.get(name):
                piece = Piece()
                piece.add(said, self._offset())
                self.found.beside.append(piece)
        if identity := given.get("id"):
            self.found.anchors.add(identity)
        if tag == "a" and given.get("href"):
            self.found.links.append(Link(given["href"] or "", "", self._offset()))
        if tag == "img":
            link = Link(given.get("src") or "", given.get("alt") or "", self._offset())
            self.found.images.append(link)

    def handle_endtag(self, tag: str) -> None:
        self._goes_on = self._goes_on and tag in _INLINE

    def handle_data(self, data: str) -> None:
        if not self._goes_on:
            self.found.pieces.append(Piece())
        self.found.pieces[-1].add(data, self._offset())
        self._goes_on = True
