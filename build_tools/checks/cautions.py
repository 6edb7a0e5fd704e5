"""A step that can hurt stands on a page that names the caution for it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from build_tools.checks.steps import all_steps
from build_tools.content.entries import Passage
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each caution that a step calls for and its page lacks."""
    yield from uncautioned(handbook, all_steps(handbook))


def uncautioned(handbook: Handbook, steps: Iterable[tuple[Passage, str]]) -> Iterator[Problem]:
    """Yield a problem for the first words on each page that call for a caution it lacks."""
    told: set[tuple[str, str]] = set()
    for passage, kind in steps:
        file, named = passage.entry.file, passage.entry.content.cautions
        for name, caution in handbook.cautions.items():
            if name in named or (file, name) in told:
                continue
            for piece in passage.markdown.pieces:
                if match := _calls(tuple(caution.content.called_for_by)).search(piece.text):
                    told.add((file, name))
                    said = (
                        f'"{" ".join(match[0].split())}" calls for the caution "{name}" '
                        f'(expected it under "cautions" of this page, or the {kind} in other words)'
                    )
                    yield passage.problem(piece.offset(match.start()), said)
                    break


@cache
def _calls(phrases: tuple[str, ...]) -> re.Pattern[str]:
    """Return the pattern of some words or phrases; longer ones first, spaces of any kind."""
    spelled = sorted(phrases, key=len, reverse=True)
    every = "|".join(r"\s+".join(map(re.escape, phrase.split())) for phrase in spelled)
    return re.compile(rf"(?<![\w-])(?:{every})(?![\w-])" if every else r"(?!)", re.IGNORECASE)
