"""Links of translated texts: written as in English, they lead on to what the language has."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from build_tools.content.addresses import link_to, target_of
from build_tools.language.speaking import say, speaking

if TYPE_CHECKING:
    from build_tools.language.translation import Translation

LINK = re.compile(r"\]\(([^)\s]+)\)")
_OUTSIDE = re.compile(r"[a-zA-Z][a-zA-Z0-9+.-]*:|//")


def rewritten(
    translation: Translation, english: str, address: str, text: str, *, say_so: bool = True
) -> str:
    """Return a text whose links lead from its new address to where they led from the English one.

    A page that the language has is preferred. Of any other, `say_so` tells that it is in English.
    """

    def link(match: re.Match[str]) -> str:
        if _OUTSIDE.match(match[1]):
            return match[0]
        page, anchor = target_of(english, match[1])
        own = translation.address(page)
        if page == english:
            own = address
        target = link_to(address, own or page) + (f"#{anchor}" if anchor else "")
        if own or not say_so:
            return f"]({target})"
        with speaking(translation.code):
            return f"]({target}) ({say('in English')})"

    return LINK.sub(link, text)
