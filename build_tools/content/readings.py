"""The readings a technician should expect at a step, worked out for a unit of the shop."""

from __future__ import annotations

import re
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.models import Equipment
from build_tools.content.page_models import Procedure, Reading
from build_tools.content.values import Values, typed
from calculators import CALCULATORS

NAMED = re.compile(r"(unit|shop|fact|home)\.(\w+)")


def expected_readings(
    values: Values, procedure: Entry[Procedure], step: int, place: int, unit: Entry[Equipment]
) -> list[tuple[str, str]]:
    """Return (label, shown) for item `place` of what a step expects, from a unit of the shop.

    `step` and `place` count from 0. Empty when the reading is not for this unit, or when it
    fails: why is then noted in `values.problems`.
    """
    reading = procedure.content.steps[step].expect[place]
    path = ("steps", step, "expect", place)
    if reading.only_for is not None and unit.content.control not in reading.only_for:
        return []
    label = values.fill(procedure.passage((*path, "reading"), reading.label), unit)
    if reading.value is not None:
        shown = _value(values, procedure, (*path, "value"), reading.value, unit)
        return [] if shown is None else [(label, str(shown))]
    answers = _calculated(values, procedure, path, reading, unit)
    if len(answers) == 1:
        return [(label, answers[0]["shown"])]
    return [(f"{label}: {answer['label'].lower()}", answer["shown"]) for answer in answers]


def _value(
    values: Values,
    entry: Entry[Procedure],
    path: tuple[Any, ...],
    text: str,
    unit: Entry[Equipment],
) -> Any:
    """Return the value a text names (unit.backwash_flow), or the text with its values filled in."""
    if match := NAMED.fullmatch(text):
        return values.attempt(
            entry, entry.line(*path), lambda: values.named(match[1], match[2], unit)
        )
    return values.fill(entry.passage(path, text), unit)


def _calculated(
    values: Values,
    entry: Entry[Procedure],
    path: tuple[Any, ...],
    reading: Reading,
    unit: Entry[Equipment],
) -> list[dict[str, Any]]:
    calculator = CALCULATORS.get(reading.calculate)
    if calculator is None or any(calculator.input(name) is None for name in reading.inputs):
        return []
    given = {
        name: _value(values, entry, (*path, "inputs", name), text, unit)
        for name, text in reading.inputs.items()
    }
    if None in given.values():
        return []
    result = values.result(calculator.name, {name: typed(one) for name, one in given.items()})
    for about, sentence in result["problems"].items():
        said = f'for the unit "{unit.id}" the calculator cannot use "{about}": {sentence}'
        values.problems.append(entry.problem((*path, "inputs", about), said))
    return [result["values"][name] for name in reading.show if name in result["values"]]
