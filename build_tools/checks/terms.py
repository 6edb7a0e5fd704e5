"""One word for one thing: words that the glossary sets aside are told where we use them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from build_tools.content.diagnosis_models import COMPLAINT
from build_tools.content.entries import Passage
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem

_SPEECH = re.compile(r"“[^”]*”")


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each word in our own texts that the glossary has another word for."""
    wanted = {
        word.lower(): entry.content.term
        for entry in handbook.glossary.values()
        for word in entry.content.instead_of
    }
    if not wanted:
        return
    longest_first = sorted(wanted, key=lambda word: (-len(word), word))
    spelled = "|".join(r"\s+".join(map(re.escape, word.split())) for word in longest_first)
    pattern = re.compile(rf"(?<![\w-])({spelled})(?:s|es|d)?(?![\w-])", re.IGNORECASE)
    for passage in handbook.passages:
        if _is_speech(passage):
            continue
        for piece in passage.markdown.pieces:
            ours = _SPEECH.sub(lambda match: " " * len(match[0]), piece.text)
            for match in pattern.finditer(ours):
                word = " ".join(match[0].split())
                term = wanted[" ".join(match[1].lower().split())]
                said = f'"{word}" is no word of this handbook (expected "{term}", see the glossary)'
                yield passage.problem(piece.offset(match.start()), said)


def _is_speech(passage: Passage) -> bool:
    """Tell whether a text is what customers say, or what is said to them."""
    complaint = passage.entry.address == f"checks/{COMPLAINT}.md"
    return complaint or passage.path[:1] in (("customer_says",), ("say",))
