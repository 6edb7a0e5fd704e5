"""The readings a technician should expect at a step, worked out for a unit of the shop."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.markdown_file import EXPRESSION
from build_tools.content.models import Equipment
from build_tools.content.page_models import Procedure, Reading
from build_tools.content.showing import typed
from build_tools.content.unit_figures import OPTIONAL, WORKED_OUT
from build_tools.content.values import Values
from calculators import CALCULATORS

NAMED = re.compile(r"(unit|shop|fact|home)\.(\w+)")


@dataclass(frozen=True)
class Expected:
    """What one unit should show for one reading: (label, value) of each answer."""

    label: str
    answers: list[tuple[str, str]]


def expected_reading(
    values: Values, procedure: Entry[Procedure], step: int, place: int, unit: Entry[Equipment]
) -> Expected | None:
    """Return item `place` of what a step expects, from a unit of the shop.

    `step` and `place` count from 0. None when the reading is not for this unit, when it rests on a
    figure that the unit's sheet leaves out, or when it fails: why is then noted in
    `values.problems`. What a calculator is not given it takes from the unit.

    A page of the library that another shop draws on was written for other units and another typical
    home: where one of its readings fails for a unit of this shop, it is left out and nothing noted.
    """
    if not values.handbook.is_shipped(procedure):
        return _reading(values, procedure, step, place, unit)
    with values.leaving_out_failures():
        return _reading(values, procedure, step, place, unit)


def _reading(
    values: Values, procedure: Entry[Procedure], step: int, place: int, unit: Entry[Equipment]
) -> Expected | None:
    reading = procedure.content.steps[step].expect[place]
    path = ("steps", step, "expect", place)
    if reading.only_for is not None and unit.content.control not in reading.only_for:
        return None
    label = values.fill(procedure.passage((*path, "reading"), reading.label), unit)
    with values.showing.in_units_of(unit):
        if reading.value is not None:
            shown = _value(values, procedure, (*path, "value"), reading.value, unit)
            return None if shown is None else Expected(label, [(label, values.said(str(shown)))])
        answers = _calculated(values, procedure, path, reading, unit)
    if not answers:
        return None
    if len(reading.show) == 1:
        return Expected(label, [(label, values.said(answers[0]["shown"]))])
    return Expected(
        label, [(values.said(answer["label"]), values.said(answer["shown"])) for answer in answers]
    )


def _value(
    values: Values,
    entry: Entry[Procedure],
    path: tuple[Any, ...],
    text: str,
    unit: Entry[Equipment],
) -> Any:
    """Return the value a text names (unit.backwash_flow), or the text with its values filled in."""
    if _may_be_missing(text):
        return values.figures.of(unit, text.removeprefix("unit."))
    if match := NAMED.fullmatch(text):
        return values.attempt(
            entry, entry.line(*path), lambda: values.names.find(match[1], match[2], unit)
        )
    passage = entry.passage(path, text)
    if text.count("{{") == 1 and EXPRESSION.fullmatch(text):
        return values.value_of(passage, unit)
    return values.fill(passage, unit)


def _may_be_missing(text: str) -> bool:
    """Tell whether a text names a figure that the sheets of some units leave out."""
    match = NAMED.fullmatch(text)
    return bool(match) and match[1] == "unit" and match[2] in (*OPTIONAL, *WORKED_OUT)


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
    given = values.figures.inputs(unit, calculator)
    for name, text in reading.inputs.items():
        value = _value(values, entry, (*path, "inputs", name), text, unit)
        if value is not None:
            given[name] = values.origins.stated(entry, name, typed(value))
        elif not _may_be_missing(text):
            return []
    result = values.calculators.result(calculator.name, given)
    for about, sentence in result["problems"].items():
        if about not in given and (about in reading.inputs or calculator.input(about).equipment):
            continue  # the unit's sheet leaves it out
        said = f'for the unit "{unit.id}" the calculator cannot use "{about}": {sentence}'
        line = ("inputs", about) if about in reading.inputs else ()
        values.problems.append(entry.problem((*path, *line), said))
    return [result["values"][name] for name in reading.show if name in result["values"]]
