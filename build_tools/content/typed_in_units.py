"""Quantities typed in prose, for readers of the other unit system."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import partial

from build_tools.content.both_systems import number_in, other_unit
from build_tools.content.entries import Passage
from build_tools.content.fields import same_as_written
from build_tools.content.typed_quantities import Typed, kinds_of, typed_quantities
from calculators.quantities import (
    KINDS,
    Quantity,
    QuantityError,
    clock,
    normal_spelling,
    read_clock,
)

_SHOWN = {"us": "12-hour clock", "metric": "24-hour clock"}
_CLOCK = {
    "metric": re.compile(r"(?<![\w:])\d{1,2}:\d{2}[ \u00a0]?[ap]m\b"),
    "us": re.compile(r"(?<![\w:])\d{1,2}:\d{2}(?![\d:]|[ \u00a0]?[ap]m\b)"),
}

#: Answers as they are stated, each with what the calculator shows readers of the other system.
Answers = list[tuple[Quantity, str]]


def in_units(passage: Passage, units: str, answers: Answers, kinds: set[str]) -> str:
    """Return the text of a passage with its typed quantities as readers of `units` see them.

    answers: a quantity that is one of them becomes the calculator's own. kinds: of the givens and
    answers of the passage's block; they decide where a unit is spelled like one of another kind.
    What is written in a unit of neither system, or of the reader's, stays: such is a report's
    figure.
    """
    made, done = [], 0
    for piece in passage.markdown.pieces:
        changes = [
            *_quantities(piece.text, units, answers, kinds),
            *_times(piece.text, units, kinds),
        ]
        for start, end, text in sorted(changes):
            made += [passage.text[done : piece.offset(start)], text]
            done = piece.offset(end - 1) + 1
    return "".join([*made, passage.text[done:]])


def _quantities(
    text: str, units: str, answers: Answers, kinds: set[str]
) -> Iterator[tuple[int, int, str]]:
    """Yield where a quantity stands that is to be changed, and what it becomes."""
    for typed in typed_quantities(text):
        if made := _in_units(typed, units, answers, kinds):
            yield typed.start, typed.end, made


def _times(text: str, units: str, kinds: set[str]) -> Iterator[tuple[int, int, str]]:
    """Yield the same for times of day.

    Without am or pm, 1:30 may be a duration: it is a time of day where the block has one.
    """
    if units == "us" and "time of day" not in kinds:
        return
    for match in _CLOCK[units].finditer(text):
        try:
            hours = read_clock(match[0].replace("\u00a0", " "))
        except QuantityError:
            continue
        if hours is not None:
            yield match.start(), match.end(), clock(hours, _SHOWN[units])


def _in_units(typed: Typed, units: str, answers: Answers, kinds: set[str]) -> str | None:
    for kind in _kinds(typed, kinds):
        unit = KINDS[kind].spelled[normal_spelling(typed.unit)]
        other = other_unit(unit, kind, units)
        if other == unit:
            continue
        quantities = typed.quantities(kind)
        if len(quantities) == 1:
            for stated, shown in answers:
                if stated.kind == kind and same_as_written(typed.ends()[0], quantities[0], stated):
                    return shown
        try:
            made = typed.with_numbers(partial(number_in, unit=unit, kind=kind, units=units))
            return f"{made}\u00a0{other}"
        except QuantityError:
            continue
    return None


def _kinds(typed: Typed, kinds: set[str]) -> list[str]:
    """Return the kinds that the unit may mean, the likeliest first."""
    spelled = normal_spelling(typed.unit)

    def order(name: str) -> tuple[bool, bool]:
        return name not in kinds, spelled not in map(normal_spelling, KINDS[name].units)

    possible = kinds_of(typed.unit)
    return sorted([name for name in KINDS if name in possible], key=order)
