"""Links the first use of each glossary term on a page to the glossary.

It works on the parsed page, between the reading of inline Markdown and the writing of HTML, so
that a term in a link, in code or in a heading is seen as what it is.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.treeprocessors import Treeprocessor
from markdown.util import HTML_PLACEHOLDER_RE, AtomicString

from build_tools.content.addresses import is_section_index, link_to
from build_tools.content.handbook import Handbook
from build_tools.language.languages import ENGLISH, language_of

PAGE = "reference/glossary.md"
CLASS = "term"
#: Pages that have no text of their own, or only the terms.
_LEFT_OUT = (PAGE, "reference/abbreviations.md", "reference/conversions.md", "reference/units.md")
#: After the inline patterns (20) and the attributes written in Markdown (8), before MkDocs turns
#: links between sources into those of pages (0).
_PRIORITY = 4
_SKIPPED_TAGS = frozenset(
    "a abbr button code form h1 h2 h3 h4 h5 h6 input label legend math option pre script "
    "select style summary svg textarea th".split()
)
_RAW_TAG = re.compile(r"<(/?)([a-z][a-z0-9]*)\b", re.IGNORECASE)
#: What somebody says has the speaker's own words.
_SPEECH = re.compile(r"“[^”]*”")
_SKIPPED_CLASSES = frozenset(["admonition-title", "cards"])
#: A verb at the start of a sentence: "Float the hydrometer", "Refill it".
_VERB_BEFORE = re.compile(r"(?:^|[.!?:]\s+)$")
_VERB_AFTER = re.compile(r"\s+(?:the|an?|it|them|this|that|each|your|every|all|both|once|again)\b")


class GlossaryLinks(Extension):
    """The extension of Python-Markdown; `page` is the address of the page that is being read."""

    def __init__(self) -> None:
        super().__init__()
        self.page = ""
        self._terms: dict[str, str] = {}
        self._pattern = re.compile(r"(?!)")

    def use(self, handbook: Handbook) -> None:
        """Take the terms of a handbook; without a glossary nothing is linked."""
        self._terms = {
            _key(spelling): name
            for name, entry in handbook.glossary.items()
            for spelling in entry.content.spellings
        }
        longest_first = sorted(self._terms, key=lambda one: (-len(one), one))
        spelled = "|".join(r"\s+".join(map(re.escape, one.split())) for one in longest_first)
        if spelled:
            self._pattern = re.compile(rf"(?<![\w/°-])(?:{spelled})(?![\w/-])", re.IGNORECASE)
        else:
            self._pattern = re.compile(r"(?!)")

    @property
    def terms(self) -> list[tuple[str, str]]:
        """Every spelling with the name of its term."""
        return sorted(self._terms.items())

    def extendMarkdown(self, md: Markdown) -> None:
        """Register the tree processor; Python-Markdown calls it by this name."""
        md.treeprocessors.register(_Linker(md, self), "glossary", _PRIORITY)

    def links_page(self) -> bool:
        """Tell whether terms of the page that is being read are linked at all."""
        return (
            bool(self._terms)
            and self.page not in _LEFT_OUT
            and language_of(self.page) == ENGLISH
            and not is_section_index(self.page)
        )

    def first_uses(self, text: str, used: set[str]) -> Iterator[tuple[int, int, str]]:
        """Yield (start, end, term) for each term in a text that is not `used`, and note it."""
        for match in self._pattern.finditer(text):
            name = self._terms[_key(match[0])]
            if name in used:
                continue
            verb = _VERB_BEFORE.search(text[: match.start()])
            if verb and _VERB_AFTER.match(text[match.end() :]):
                continue
            used.add(name)
            yield match.start(), match.end(), name


class _Linker(Treeprocessor):
    """Walks through the tree of one page."""

    def __init__(self, md: Markdown, links: GlossaryLinks) -> None:
        super().__init__(md)
        self._links = links

    def run(self, root: Element) -> None:
        if self._links.links_page():
            self._target = link_to(self._links.page, PAGE)
            self._used: set[str] = set()
            self._raw_depth = 0
            self._walk(root)

    def _walk(self, element: Element) -> None:
        if not _is_skipped(element):
            children = list(element)
            self._link(element, None)
            for child in children:
                self._walk(child)
                self._link(element, child)

    def _link(self, parent: Element, before: Element | None) -> None:
        """Put links into the text at the start of `parent`, or into that after a child of it."""
        text = parent.text if before is None else before.tail
        if not text or isinstance(text, AtomicString) and before is None:
            return
        place = 0 if before is None else list(parent).index(before) + 1
        written = 0
        last = before
        for start, end, name in self._links.first_uses(self._outside(text), self._used):
            _set_text(parent, last, text[written:start])
            last = self._anchor(text[start:end], name)
            parent.insert(place, last)
            place += 1
            written = end
        if last is not before:
            last.tail = text[written:]

    def _outside(self, text: str) -> str:
        """Return a text of the same length in which raw tags and speech are covered."""
        shown, done = "", 0
        for place in HTML_PLACEHOLDER_RE.finditer(text):
            between = text[done : place.start()]
            shown += "\ue000" * len(between) if self._raw_depth else between
            shown += place[0]
            done = place.end()
            raw = self.md.htmlStash.rawHtmlBlocks[int(place[1])]
            tag = _RAW_TAG.match(raw) if isinstance(raw, str) else None
            if tag and tag[2].lower() in _SKIPPED_TAGS:
                self._raw_depth = max(0, self._raw_depth + (-1 if tag[1] else 1))
        rest = text[done:]
        shown += "\ue000" * len(rest) if self._raw_depth else rest
        return _SPEECH.sub(lambda said: "\ue000" * len(said[0]), shown)

    def _anchor(self, words: str, name: str) -> Element:
        link = Element("a", {"class": CLASS, "href": f"{self._target}#{name}"})
        link.set("aria-label", f"{' '.join(words.split())}, in the glossary")
        link.text = words
        return link


def _set_text(parent: Element, last: Element | None, text: str) -> None:
    if last is None:
        parent.text = text
    else:
        last.tail = text


def _is_skipped(element: Element) -> bool:
    tag = element.tag if isinstance(element.tag, str) else "script"
    classes = set((element.get("class") or "").split())
    return tag in _SKIPPED_TAGS or bool(classes & _SKIPPED_CLASSES)


def _key(spelling: str) -> str:
    return " ".join(spelling.lower().split())
