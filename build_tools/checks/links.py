"""Links between pages, their anchors, and images."""

from __future__ import annotations

import re
from collections.abc import Iterator
from urllib.parse import unquote

from build_tools.content.addresses import addresses, anchors, link_to, target_of
from build_tools.content.entries import Passage
from build_tools.content.handbook import Handbook
from build_tools.content.markdown_file import Link
from build_tools.content.problems import Problem, choosing, shortened

#: What tells those who cannot see a drawing what it shows, or that it shows nothing.
_SPOKEN = ("aria-label", "aria-labelledby", "aria-hidden")
_OUTSIDE = re.compile(r"[a-zA-Z][a-zA-Z0-9+.-]*:|//")


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each link or image that leads nowhere, and each image without words."""
    known = addresses(handbook)
    for passage in handbook.passages:
        for link in passage.markdown.links:
            if said := _link(handbook, known, passage, link):
                yield passage.problem(link.offset, said)
        for image in passage.markdown.images:
            for said in _image(handbook, passage, image):
                yield passage.problem(image.offset, said)
        for tag in passage.markdown.tags:
            if tag.name == "svg" and not any(tag.attributes.get(one) for one in _SPOKEN):
                said = 'the drawing <svg> has no alternative text (expected aria-label="…")'
                yield passage.problem(tag.offset, said)


def _link(handbook: Handbook, known: set[str], passage: Passage, link: Link) -> str | None:
    if not link.target.strip():
        return "the link has no address (expected a path from this file between the brackets)"
    if _OUTSIDE.match(link.target):
        return None
    if link.target.startswith("/"):
        return f'the link "{link.target}" begins with "/" (expected a path from this file, "../…")'
    base = passage.entry.address
    address, anchor = target_of(base, unquote(link.target))
    if address in handbook.other_files:
        return None
    if address not in known:
        near = [link_to(base, one) for one in sorted(known | handbook.other_files)]
        return choosing(f'there is no page "{shortened(link.target)}"', link.target, near)
    there = anchors(handbook, address) if anchor else None
    if there is None or anchor in there:
        return None
    said = f'the page "{address}" has no anchor "{shortened(anchor)}"'
    return choosing(said, anchor, sorted(there))


def _image(handbook: Handbook, passage: Passage, image: Link) -> Iterator[str]:
    if not image.words.strip():
        yield (
            f'the image "{shortened(image.target)}" has no alternative text (expected what it '
            "shows, between the square brackets)"
        )
    base = passage.entry.address
    address, _ = target_of(base, unquote(image.target))
    if _OUTSIDE.match(image.target):
        yield f'the image "{shortened(image.target)}" is on another host (expected a file here)'
    elif address not in handbook.other_files:
        near = [link_to(base, one) for one in sorted(handbook.other_files)]
        yield choosing(f'there is no image "{shortened(image.target)}"', image.target, near)
