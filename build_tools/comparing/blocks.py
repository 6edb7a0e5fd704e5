"""A written page as the blocks that readers see: headings, steps, paragraphs, rows, defaults.

Markdown is rendered as MkDocs renders it, and the result is read as a page without scripts: what is
hidden until a script runs is left out, and a picture counts by its words.
"""

from __future__ import annotations

import re
from functools import cache
from html.parser import HTMLParser

import markdown

from build_tools.comparing.block import CELL, Block, Number
from build_tools.comparing.marks import FIRST, LAST, MARK, NUMBER, unmarked

#: What the handbook's own mkdocs.yml names, without the links at headings.
EXTENSIONS = (
    "admonition",
    "attr_list",
    "def_list",
    "md_in_html",
    "tables",
    "pymdownx.details",
    "toc",
)
#: The marked numbers of a text; a step without a mark is typed.
_MARKED = re.compile(f"({NUMBER.pattern})([{chr(FIRST)}-{chr(LAST)}]?)")
_STEP = re.compile(r"step-(\d+)")
_VOID = {
    "area",
    "base",
    "br",
    "col",
    "embed",
    "hr",
    "img",
    "input",
    "link",
    "meta",
    "source",
    "wbr",
}
_UNSEEN = {"script", "style", "template", "button", "nav"}
_HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
#: Elements whose ids links may lead to.
_WITH_ANCHORS = {*_HEADINGS, "span", "section", "figure", "div"}
#: The class of a form's title, and what its form is called in a place.
FORM_TITLE, FORM = "live-form__title", "form"
#: Elements that are a block of text each, and what messages call it.
KINDS = {
    **dict.fromkeys(_HEADINGS, "heading"),
    "p": "paragraph",
    "li": "item",
    "tr": "row",
    "dt": "paragraph",
    "dd": "answer",
    "summary": "question",
    "figcaption": "caption",
    "label": "label",
    "option": "choice",
}
#: Elements of which neither text nor a block goes on across.
_PARTS = {
    "div",
    "section",
    "ul",
    "ol",
    "dl",
    "table",
    "thead",
    "tbody",
    "details",
    "figure",
    "form",
}


def blocks(text: str) -> list[Block]:
    """Return the blocks of a written page in order."""
    reader = _Reader()
    reader.feed(_html(text))
    reader.close()
    return reader.found


def title_of(found: list[Block]) -> str:
    """Return a page's title: its first heading."""
    return next((one.text for one in found if one.kind == "heading"), "")


def _html(text: str) -> str:
    renderer = _renderer()
    renderer.reset()
    return renderer.convert(text)


@cache
def _renderer() -> markdown.Markdown:
    return markdown.Markdown(
        extensions=[*EXTENSIONS], extension_configs={"tables": {"use_align_attribute": True}}
    )


def numbers_in(marked: str) -> tuple[str, list[Number]]:
    """Return a text without marks, and its numbers with theirs."""
    made, found, done, length = [], [], 0, 0
    for match in _MARKED.finditer(marked):
        before = unmarked(marked[done : match.start()])
        number, mark = match[1], match[2]
        made += [before, number]
        found.append(Number(number, length + len(before), mark))
        length += len(before) + len(number)
        done = match.end()
    return "".join([*made, unmarked(marked[done:])]), found


class _Reader(HTMLParser):
    """Gathers the blocks of a page's HTML."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[Block] = []
        self._open: list[str] = []  # the elements that are open
        self._texts: list[tuple[str, list[str]]] = [("text", [])]  # the blocks that are open
        self._unseen = 0  # so many open elements from the first that nobody sees
        self._headings: list[tuple[int, str]] = []
        self._anchor = self._above_steps = ""
        self._label = ""
        self._cells: list[str] | None = None
        self._columns: tuple[str, ...] = ()
        self._in_head = False
        self._in_form_title = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag not in _VOID:
            self._open.append(tag)
        if self._unseen:
            self._unseen += tag not in _VOID
            return
        if self._is_unseen(tag, given):
            self._unseen = int(tag not in _VOID)
            return
        classes = given.get("class", "").split()
        self._in_form_title = tag in _HEADINGS and FORM_TITLE in classes
        if given.get("id") and tag in _WITH_ANCHORS and not self._in_form_title:
            if _STEP.fullmatch(given["id"]) and not _STEP.fullmatch(self._anchor):
                self._above_steps = self._anchor
            self._anchor = given["id"]
        if tag in KINDS:
            self._flush()
            self._texts.append((tag, []))
        elif tag in _PARTS:
            self._flush()
        if tag == "table":
            self._columns = ()
        elif tag == "tr":
            self._cells, self._in_head = [], True
        elif tag in ("td", "th"):
            self._in_head &= tag == "th"
            self._texts[-1][1].clear()
        elif tag == "br":
            self._texts[-1][1].append(" ")
        self._spoken(tag, given)

    def handle_endtag(self, tag: str) -> None:
        if tag in _VOID or tag not in self._open:
            return
        while self._open:
            last = self._open.pop()
            if self._unseen:
                self._unseen -= 1
            else:
                self._close(last)
            if last == tag:
                return

    def handle_data(self, data: str) -> None:
        if not self._unseen:
            self._texts[-1][1].append(data)

    def close(self) -> None:
        """Read the rest."""
        super().close()
        self._flush()

    def _is_unseen(self, tag: str, given: dict[str, str]) -> bool:
        if tag == "option":
            return "selected" not in given
        return "hidden" in given or tag in _UNSEEN

    def _spoken(self, tag: str, given: dict[str, str]) -> None:
        """Note what an element says in an attribute: a picture's words, the default of a field."""
        if tag == "svg" or tag == "img":
            said = given.get("aria-label") or given.get("alt") or ""
            self._add("picture", said, "picture")
            if tag == "svg":
                self._unseen = 1
        elif tag == "input" and given.get("type") == "text":
            self._add("default", given.get("value", ""), self._label)

    def _close(self, tag: str) -> None:
        if tag in ("td", "th") and self._cells is not None:
            self._cells.append(self._taken())
        elif tag == "tr" and self._cells is not None:
            self._row(self._cells)
            self._cells = None
            self._texts.pop()
        elif tag in KINDS:
            self._flush()
            if len(self._texts) > 1:
                self._texts.pop()
        elif tag in _PARTS:
            self._flush()
        if tag == "ol" and _STEP.fullmatch(self._anchor):
            self._anchor = self._above_steps

    def _row(self, cells: list[str]) -> None:
        if self._in_head:
            self._columns = tuple(map(unmarked, cells))
        if any(cells):
            label = "" if self._in_head else unmarked(cells[0])
            kind = "head of a table" if self._in_head else "row"
            columns = () if self._in_head else ("", *self._columns[1:])
            self._add(kind, CELL.join(cells), label, columns)

    def _taken(self) -> str:
        """Return the text of the innermost open block, and begin it anew."""
        parts = self._texts[-1][1]
        text = " ".join("".join(parts).split())
        parts.clear()
        return text

    def _flush(self) -> None:
        """End the text of the innermost open block."""
        tag = self._texts[-1][0]
        if tag == "tr":  # its cells are taken one by one
            return
        if not (text := self._taken()):
            return
        if tag in _HEADINGS:
            self._heading(int(tag[1]), text)
        elif tag in ("label", "dt"):
            self._label = unmarked(text)
            self._add("label", text)
        elif tag == "dd":
            self._add("answer", text, self._label)
        else:
            self._add(self._kind(tag), text)

    def _kind(self, tag: str) -> str:
        inner = next((one for one, _ in reversed(self._texts) if one in ("li", "figcaption")), tag)
        kind = KINDS.get(inner if tag in ("p", "text") else tag, "paragraph")
        is_step = kind == "item" and _STEP.fullmatch(self._anchor)
        return "step" if is_step else kind

    def _heading(self, level: int, text: str) -> None:
        plain = FORM if self._in_form_title else unmarked(text)
        if level > 1:
            self._headings = [one for one in self._headings if one[0] < level]
            self._headings.append((level, plain))
        self._add("heading", text)

    def _add(self, kind: str, marked: str, label: str = "", columns: tuple[str, ...] = ()) -> None:
        text, numbers = numbers_in(" ".join(marked.split()))
        if not text:
            return
        trail = [words for _, words in self._headings]
        if kind == "heading" and trail:
            trail.pop()
        if kind != "heading" and (step := _STEP.fullmatch(self._anchor)):
            trail.append(f"step {step[1]}")
        marks = "".join(MARK.findall(_MARKED.sub("", marked)))
        self.found.append(
            Block(kind, tuple(trail), label, self._anchor, text, numbers, columns, marks)
        )
