"""Marks: characters after the numbers of a written page that tell what each number rests on.

A mark is one character that no text has, of those that Unicode leaves to private use. It stands for
a set of causes, so it survives whatever templates do with a text.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

FIRST, LAST = 0xF0000, 0x10FFFD
_FRACTION = "½⅓⅔¼¾⅛⅜⅝⅞"
#: A number as pages show it: "1,200", "0.45", "2:00", "3/4", "1 1/2", "-3"; none in "ft3" or "H2O".
NUMBER = re.compile(
    r"(?:(?<!\w)[-−])?(?<!\w)(?:"
    r"\d+(?:[.,:]\d+)*(?:(?:[ \u00a0]\d+)?[/⁄]\d+)?" + f"[{_FRACTION}]?|[{_FRACTION}])"
)
MARK = re.compile(f"[{chr(FIRST)}-{chr(LAST)}]")

_MARKED = re.compile(f"({NUMBER.pattern})({MARK.pattern})")


def unmarked(value: Any) -> Any:
    """Return a text, or plain data with texts in it, without marks."""
    if isinstance(value, str):
        return value if value.isascii() else MARK.sub("", value)
    if isinstance(value, dict):
        return {name: unmarked(one) for name, one in value.items()}
    return [unmarked(one) for one in value] if isinstance(value, (list, tuple)) else value


def with_marks_of(marked: str, text: str) -> str:
    """Return another text with the marks that the same numbers have in a marked one."""
    marks = {number: mark for number, mark in _MARKED.findall(marked)}
    any_mark = MARK.search(marked)
    default = any_mark[0] if any_mark else ""
    return NUMBER.sub(lambda match: match[0] + marks.get(match[0], default), text)


class Marks:
    """The sets of causes of one edition, each with its mark.

    sets: the names of causes, in the order of their marks.
    """

    def __init__(self) -> None:
        self.sets: list[frozenset[str]] = []
        self._places: dict[frozenset[str], int] = {}

    def mark(self, causes: Iterable[str]) -> str:
        """Return the mark of a set of causes."""
        found = frozenset(causes)
        if found not in self._places:
            if FIRST + len(self.sets) > LAST:
                raise OverflowError("so many sets of causes have no marks")
            self._places[found] = len(self.sets)
            self.sets.append(found)
        return chr(FIRST + self._places[found])

    def on(self, value: Any, causes: Iterable[str]) -> Any:
        """Return a text, or plain data with texts in it, with each number marked anew."""
        if isinstance(value, str):
            if not NUMBER.search(value):
                return unmarked(value)
            mark = self.mark(causes)
            return NUMBER.sub(lambda match: match[0] + mark, unmarked(value))
        if isinstance(value, dict):
            return {name: self.on(one, causes) for name, one in value.items()}
        if isinstance(value, (list, tuple)):
            return [self.on(one, causes) for one in value]
        return value

    def for_calculator(self, text: str, causes: Iterable[str]) -> str:
        """Return a text that a calculator takes, marked also where it has no number."""
        marked = self.on(text, causes)
        return marked if MARK.search(marked) else marked + self.mark(causes)

    def of(self, value: Any) -> frozenset[str]:
        """Return all causes whose marks stand in a text, or in plain data."""
        if isinstance(value, str):
            return frozenset().union(*(self.sets[ord(one) - FIRST] for one in MARK.findall(value)))
        if isinstance(value, dict):
            return self.of(list(value.values()))
        if isinstance(value, (list, tuple)):
            return frozenset().union(*map(self.of, value))
        return frozenset()
