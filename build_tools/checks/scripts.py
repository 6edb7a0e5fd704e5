"""Sources bring no scripts, and nothing else that the pages' security policy keeps from working."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import PurePosixPath

from build_tools.content.entries import Passage
from build_tools.content.handbook import Handbook
from build_tools.content.markdown_file import Markdown, Tag, hide_expressions, read_html
from build_tools.content.problems import Problem, shortened

_REFUSED = frozenset(
    ("applet", "base", "embed", "form", "frame", "frameset", "iframe", "link", "meta", "object")
    + ("script", "style")
)
_RUNNING_FILES = frozenset((".htm", ".html", ".js", ".mjs", ".xht", ".xhtml", ".xml"))
_SCHEMES = ("https", "http", "mailto", "tel")

# Browsers skip blanks and control characters in an address: "java\nscript:" is a script.
_SKIPPED = re.compile(r"[\x00-\x20]")
_SCHEME = re.compile(r"([a-z][a-z0-9+.-]*):", re.IGNORECASE)
_LEADING = frozenset(("href", "xlink:href", "src", "srcset", "poster", "action", "formaction"))
# {: onclick="…" } gives the element before it an attribute.
_LIST_ATTRIBUTE = re.compile(r"\{:?[^{}\n]*?[\s:{](?P<name>on[a-z]+|style)[ ]*=", re.IGNORECASE)

# <svg/onload=…>: no blank stands before the attribute.
_HALF_TAG = re.compile(r"""<[a-z][^<>]*?[/"'](?P<name>on[a-z]+)\s*=""", re.IGNORECASE)

_ONLY_OWN = "pages run only the handbook's own scripts"


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each script in a text, and each file that could run one."""
    for passage in handbook.passages:
        for offset, said in _wrong(passage.markdown):
            yield passage.problem(offset, said)
        yield from _attribute_lists(passage)
        yield from _half_tags(passage)
    for place in sorted(handbook.other_files):
        yield from _file(handbook, place)


def _wrong(markdown: Markdown) -> Iterator[tuple[int, str]]:
    for tag in markdown.tags:
        for said in _tag(tag):
            yield tag.offset, said
    for link in markdown.links:
        if said := _address(link.target):
            yield link.offset, said


def _tag(tag: Tag) -> Iterator[str]:
    if tag.name in _REFUSED:
        yield (
            f"the tag <{tag.name}> does not work in a page (expected text, links and images: "
            f"{_ONLY_OWN})"
        )
    for name, value in tag.attributes.items():
        is_link = (tag.name, name) == ("a", "href")  # which is among the links
        said = _attribute(name) or (_address(value) if name in _LEADING and not is_link else None)
        if said:
            yield said


def _attribute(name: str) -> str | None:
    if name.startswith("on"):
        return f'the attribute "{name}" would run a script (expected none: {_ONLY_OWN})'
    if name == "style":
        return 'the attribute "style" does not work in a page (expected a class of the stylesheet)'
    return None


def _address(target: str) -> str | None:
    scheme = _SCHEME.match(_SKIPPED.sub("", target))
    if scheme is None or scheme[1].lower() in _SCHEMES:
        return None
    return (
        f'the link "{shortened(target)}" is no address of a page (expected a path from this file, '
        f"or one that begins with {', '.join(f'{one}:' for one in _SCHEMES)})"
    )


def _attribute_lists(passage: Passage) -> Iterator[Problem]:
    for match in _LIST_ATTRIBUTE.finditer(hide_expressions(passage.text)):
        said = _attribute(match["name"].lower())
        yield passage.problem(match.start("name"), str(said))


def _half_tags(passage: Passage) -> Iterator[Problem]:
    """Yield a problem for what browsers take for a tag with a script, and Markdown for a text."""
    told = {tag.offset for tag in passage.markdown.tags}
    for match in _HALF_TAG.finditer(hide_expressions(passage.text)):
        if match.start() not in told:
            yield passage.problem(match.start("name"), str(_attribute(match["name"].lower())))


def _file(handbook: Handbook, place: str) -> Iterator[Problem]:
    path = handbook.source(place)
    ending = PurePosixPath(place).suffix.lower()
    if ending in _RUNNING_FILES:
        said = (
            f'a file "{ending}" could run scripts in the handbook\'s name (expected no such file)'
        )
        yield Problem(handbook.file_name(path), 1, said)
    if ending == ".svg":
        text = path.read_text(encoding="utf-8", errors="replace")
        for tag in read_html(text).tags:
            if _runs(tag):
                said = f"the drawing's <{tag.name}> runs a script (expected none: {_ONLY_OWN})"
                yield Problem(handbook.file_name(path), 1 + text.count("\n", 0, tag.offset), said)


def _runs(tag: Tag) -> bool:
    """Tell whether a drawing's tag runs a script; what else it holds, its own file may show."""
    values = "".join(_SKIPPED.sub("", value) + "\n" for value in tag.attributes.values()).lower()
    return (
        tag.name == "script"
        or any(name.startswith("on") for name in tag.attributes)
        or "javascript:" in values
    )
