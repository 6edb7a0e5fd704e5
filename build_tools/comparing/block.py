"""A block of text that readers see on a page, and the numbers in it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache

from calculators.quantities import KINDS

#: What parts the cells of a row.
CELL = " | "


@dataclass(frozen=True)
class Number:
    """A number in a block: where it stands in the block's text, and its mark, "" for none."""

    text: str
    start: int
    mark: str


@dataclass
class Block:
    """A block of text.

    above: the headings above it, and its step; label: what it is called there; anchor: the nearest
    id; columns: the heads of a row's cells; marks: those of words and sentences, not of numbers.
    """

    kind: str
    above: tuple[str, ...]
    label: str
    anchor: str
    text: str
    numbers: list[Number] = field(default_factory=list)
    columns: tuple[str, ...] = ()
    marks: str = ""

    @property
    def words(self) -> str:
        """The text with each number as the same sign; a row of a table keeps its own label."""
        made, done = [], 0
        for one in self.numbers:
            made += [self.text[done : one.start], "#"]
            done = one.start + len(one.text)
        return "".join([*made, self.text[done:]])

    @property
    def place(self) -> tuple[str, ...]:
        """Where on its page it stands, from the heading to its own label."""
        return (*self.above, *filter(None, [self.label]))

    def column_of(self, number: Number) -> str:
        """Return the head above a number in a row of a table, "" for none."""
        cell = self.text.count(CELL, 0, number.start)
        return self.columns[cell] if cell < len(self.columns) else ""


def quantity(block: Block, number: Number) -> tuple[str, str]:
    """Return a number and the unit after it, which is "" where none is known."""
    match = _units().match(block.text, number.start + len(number.text))
    return number.text, match[1] if match else ""


@cache
def _units() -> re.Pattern[str]:
    names = {unit for kind in KINDS.values() for unit in kind.units}
    ordered = sorted(names, key=len, reverse=True)
    return re.compile(rf"\s?({'|'.join(map(re.escape, ordered))})(?![\w/])")


def words_before(block: Block, number: Number, most: int = 5) -> str:
    """Return the last words before a number in its sentence."""
    before = re.split(r"[.;|·]\s", block.text[: number.start])[-1]
    return " ".join(before.split()[-most:])
