"""Marked pairs of a finished page as elements: what is shown, and what waits to be chosen.

A quantity in a text: `<span data-other="308 mg/L">18 gpg</span>`. An attribute: `data-in-other` has
a JSON object with the other values. A picture: a `<template>` after it. Only the shop's own system
is in the page's text, so that without scripts nothing else is seen, read out, found or printed.
"""

from __future__ import annotations

import json
import re
from html import escape, unescape

from build_tools.content.unit_marks import ABSENT, END, KEPT, OPEN, PAIR, other, own, without_kept

_TAG = re.compile(f"<[a-zA-Z][^<>]*[{OPEN}{KEPT}][^<>]*>")
_ATTRIBUTE = re.compile(r"""\s([^\s"'<>/=]+)=("[^"]*"|'[^']*')""")
# Elements that hold nothing but text.
_PLAIN = re.compile(f"<(title|option|textarea)\\b([^<>]*)>([^<>]*[{OPEN}{KEPT}][^<>]*)</\\1>")
_KEPT = re.compile(f"{KEPT}(.*?){END}", re.DOTALL)


def with_elements(html: str) -> str:
    """Return a page's HTML with elements in the place of marks."""
    if OPEN not in html and KEPT not in html:
        return html
    html = _TAG.sub(_tag, html)
    html = _PLAIN.sub(_plain, html)
    html = PAIR.sub(_pair, html)
    return _KEPT.sub(r"<span data-kept>\1</span>", html)


def _tag(match: re.Match[str]) -> str:
    """Return a tag with its own attributes, and one that holds those of the other system."""
    waiting: dict[str, str | None] = {}

    def attribute(found: re.Match[str]) -> str:
        name, text = found[1], without_kept(found[2])
        if OPEN not in text:
            return f" {name}={text}"
        ours, theirs = own_or_none(text), other_or_none(text)
        waiting[name] = None if theirs is None else unescape(theirs[1:-1])
        return "" if ours is None else f" {name}={ours}"

    tag = _ATTRIBUTE.sub(attribute, match[0])
    if not waiting:
        return tag
    end = "/>" if tag.endswith("/>") else ">"
    texts = escape(json.dumps(waiting, ensure_ascii=False, separators=(",", ":")))
    return f'{tag.removesuffix(end)} data-in-other="{texts}"{end}'


def own_or_none(text: str) -> str | None:
    """Return an attribute's text in the shop's system, or None where it has none there."""
    return None if ABSENT in PAIR.sub(r"\1", text) else own(text)


def other_or_none(text: str) -> str | None:
    """Return an attribute's text in the other system, or None where it has none there."""
    return None if ABSENT in PAIR.sub(r"\2", text) else other(text)


def _plain(match: re.Match[str]) -> str:
    name, attributes, text = match.groups()
    if OPEN not in text:
        return f"<{name}{attributes}>{own(text)}</{name}>"
    waiting = other(text).replace('"', "&quot;")
    return f'<{name}{attributes} data-other="{waiting}">{own(text)}</{name}>'


def _pair(match: re.Match[str]) -> str:
    ours, theirs = match.groups()
    if "<" not in ours + theirs:
        return f'<span data-other="{theirs.replace(chr(34), "&quot;")}">{ours}</span>'
    if ours.startswith("<svg"):
        ours = f"<svg data-own{ours.removeprefix('<svg')}"
    else:
        ours, theirs = f"<span data-own>{ours}</span>", f"<span>{theirs}</span>"
    return f"{ours}<template data-other-block>{theirs}</template>"
