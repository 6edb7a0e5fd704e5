"""What can hurt stands on a page that names the caution for it.

Which words call for a caution, `called_for_by` in cautions.yaml says. In a phrase, a slash stands
between words of which any may be meant, a star for any ending, and "…" for up to four words of
the same sentence: "open/remove … cap*" is in "Remove the injector's cap".
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import chain

from build_tools.checks.steps import all_steps
from build_tools.content.entries import Passage
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each caution that something to be done calls for and its page lacks."""
    yield from uncautioned(handbook, chain(all_steps(handbook), _others_to_do(handbook)))


def _others_to_do(handbook: Handbook) -> Iterator[tuple[Passage, str]]:
    """Yield what decisions and proofs tell to do, and what messages call it."""
    for entry in handbook.procedures.values():
        for passage in entry.passages():
            if "decide" in passage.path and passage.path[-1] == "then":
                yield passage, "decision"
    for entry in handbook.faults.values():
        for passage in entry.passages():
            if passage.path == ("confirm",):
                yield passage, "proof"


def uncautioned(handbook: Handbook, steps: Iterable[tuple[Passage, str]]) -> Iterator[Problem]:
    """Yield a problem for the first words on each page that call for a caution it lacks."""
    told: set[tuple[str, str]] = set()
    for passage, kind in steps:
        file, named = passage.entry.file, _named(handbook, passage)
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


def _named(handbook: Handbook, passage: Passage) -> list[str]:
    """Return the cautions of a text's page, and of the page that a decision leads on to."""
    content = passage.entry.content
    if passage.path[-1] != "then":
        return content.cautions
    for key in passage.path[:-1]:
        content = content[key] if isinstance(content, list) else getattr(content, key)
    group, _, name = (content.go_to or "").partition("/")
    there = {"procedures": handbook.procedures, "faults": handbook.faults}.get(group, {}).get(name)
    return passage.entry.content.cautions + (there.content.cautions if there else [])


@cache
def _calls(phrases: tuple[str, ...]) -> re.Pattern[str]:
    """Return the pattern of some phrases, each as the module's text tells."""
    every = "|".join(_pattern(phrase) for phrase in phrases)
    return re.compile(rf"(?<![\w-])(?:{every})(?![\w-])" if every else r"(?!)", re.IGNORECASE)


def _pattern(phrase: str) -> str:
    spaced = r"\s+".join(_word(word) for word in phrase.split() if word)
    return spaced.replace(r"\s+…\s+", r"\s+(?:[^\s.;:!?]+\s+){0,4}?")


def _word(word: str) -> str:
    any_of = [re.escape(one).replace(r"\*", r"[\w’']*") for one in word.split("/")]
    return f"(?:{'|'.join(any_of)})" if len(any_of) > 1 else any_of[0]
