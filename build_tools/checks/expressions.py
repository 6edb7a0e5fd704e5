"""Every expression in a text must have a value, and the text around it must leave it alone."""

from __future__ import annotations

import re
from collections.abc import Iterator

from build_tools.content.entries import Passage
from build_tools.content.handbook import Handbook
from build_tools.content.markdown_file import EXPRESSION
from build_tools.content.problems import Problem, asking
from build_tools.content.typed_quantities import typed_quantities
from build_tools.content.values import Values

#: What would be read as a part of the number that follows, and of the one that went before.
_BEFORE = re.compile(r"(?:\d[\d.,]*|(?<![\w}])[-−.])\Z")
_AFTER = re.compile(r"[.,]?\d+")
#: What is a unit elsewhere, and a word of its own after a value.
_WORDS = frozenset(["in", "cup", "cups", "second"])
#: Marks of Markdown between a value and the word after it.
_MARKS = re.compile(r"[*_]*")


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each expression that fails."""
    for passage in handbook.passages:
        yield from _touched(passage)
        entry = passage.entry
        own_unit = entry if handbook.equipment.get(entry.id) is entry else None
        if "expect" not in passage.path:  # those are filled in for each unit: see `expectations`
            values.fill(passage, own_unit)
    yield from values.problems


def _touched(passage: Passage) -> Iterator[Problem]:
    """Yield a problem where a digit, a sign or a unit would change what an expression says."""
    text = passage.text
    for match in EXPRESSION.finditer(text):
        if before := _BEFORE.search(text, max(0, match.start() - 20), match.start()):
            said = f'"{before[0]}" before "{match[0]}" would change its number'
            yield passage.problem(match.start(), asking(said, "a space or a word between them"))
        if after := _AFTER.match(text, match.end()):
            said = f'"{after[0]}" after "{match[0]}" would change its number'
            yield passage.problem(match.start(), asking(said, "a space or a word between them"))
        elif unit := _unit_after(text, match.end()):
            said = f'the unit "{unit}" is typed after "{match[0]}"'
            yield passage.problem(match.start(), asking(said, "no unit: the value brings its own"))


def _unit_after(text: str, place: int) -> str:
    """Return the unit that follows an expression, where it is not "a day" or "in the tank"."""
    rest = text[_MARKS.match(text, place).end() :][:60]
    typed = next(typed_quantities(f"1{rest}"), None)
    if typed is None or typed.start or typed.number != "1" or typed.unit.lower() in _WORDS:
        return ""
    return "" if re.match(r"/|an?\s|per\s", typed.unit, re.IGNORECASE) else typed.unit
