"""What is wrong with the source files, told to the person who can fix it."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache

from calculators.quantities import nearest

LONGEST_LIST = 8


class Said(str):
    """The text of a problem that also knows its parts, for reports that other programs read.

    message: what is wrong, alone. expected: what would be right. nearest: the name that was most
    likely meant, or None.
    """

    message: str
    expected: str
    nearest: str | None


def asking(message: str, wanted: str, nearest: str | None = None) -> Said:
    """Return the text of a problem: what is wrong, and what was expected."""
    return _said(message, f"(expected {wanted})", wanted, nearest)


def choosing(message: str, word: object, choices: Iterable[str]) -> Said:
    """Return the text of a problem with a word that is none of the choices; see `expected`."""
    names = tuple(choices)
    close = _most_like(str(word)[:60], names)[1] if names else None
    wanted = ", ".join(names) or "nothing: there is none"
    return _said(message, expected(word, names), wanted, close)


def _said(message: str, bracket: str, wanted: str, nearest: str | None) -> Said:
    made = Said(f"{message} {bracket}")
    made.message, made.expected, made.nearest = message, wanted, nearest
    return made


@dataclass(frozen=True, order=True)
class Problem:
    """One thing that is wrong: where it stands and what would be right."""

    file: str
    line: int
    text: str

    def __str__(self) -> str:
        text = self.text.replace("\u00a0", " ")  # calculators keep numbers and units together
        return f"{self.file}:{self.line}: {text}"


def in_order(problems: Iterable[Problem]) -> list[Problem]:
    """Return the problems by file and line, each once."""
    return sorted(set(problems))


def summary(problems: Iterable[Problem]) -> str:
    """Return the lines to print: every problem, then how many there are."""
    lines = [str(problem) for problem in in_order(problems)]
    count = "1 problem." if len(lines) == 1 else f"{len(lines)} problems."
    return "\n".join([*lines, count])


def expected(word: object, choices: Iterable[str]) -> str:
    """Return the bracket that ends a message: what there is to choose, and the nearest to `word`.

    Of a long list only the few most like `word` are named.
    """
    names = tuple(choices)
    if not names:
        return "(there are none yet)"
    few, close = _most_like(str(word)[:60], names)
    guess = f'; nearest: "{close}"' if close else ""
    if len(names) == 1:
        return f'(expected "{names[0]}")'
    more = "" if len(few) == len(names) else ", …"
    return f"(expected one of: {', '.join(few)}{more}{guess})"


@lru_cache(maxsize=256)
def _most_like(word: str, names: tuple[str, ...]) -> tuple[tuple[str, ...], str | None]:
    few = names if len(names) <= LONGEST_LIST else get_close_matches(word, names, n=4, cutoff=0.0)
    return tuple(few), nearest(word, names)


def shortened(text: object, longest: int = 60) -> str:
    """Return a text on one line, cut where a message would get too long."""
    line = " ".join(str(text).split())
    return line if len(line) <= longest else f"{line[:longest].rstrip()}…"


#: The bracket at the end of a message: what was expected, and the nearest name.
_BRACKET = re.compile(r'(.*) \(expected (.*?)(?:; nearest: "(.*)")?\)', re.DOTALL)


def parts(problem: Problem) -> tuple[str, str, str]:
    """Return what is wrong, what was expected and the nearest name; what is not told is empty."""
    text = problem.text
    if match := _BRACKET.fullmatch(text):
        found = (match[1], match[2], match[3] or "")
    elif isinstance(text, Said):
        found = (text.message, text.expected, text.nearest or "")
    else:
        found = (text, "", "")
    what, wanted, close = (part.replace("\u00a0", " ") for part in found)
    return what, wanted, close
