"""The tables that people carry, worked out cell by cell."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.page_models import Axis, Table
from build_tools.content.showing import exact
from build_tools.content.values import Values
from calculators import CALCULATORS
from calculators.declare import Calculator

#: In the cell of what a calculator refuses.
NO_ANSWER = "none"


@dataclass(frozen=True)
class Grid:
    """A worked-out table: what its cells, rows and columns are, its top row, and its rows.

    across: what the columns are, or nothing where each column is another answer. Where a whole
    side has one unit, the unit stands in its label and not in each cell. given: what the table
    takes for granted, in words.
    """

    cells: str
    down: str
    across: str
    head: list[str]
    rows: list[list[str]]
    given: str


def worked_out(values: Values, entry: Entry[Table]) -> Grid:
    """Return a table with every cell worked out.

    What a calculator refuses is noted in `values.problems`; its cell stays empty. In a table of the
    library, whose values were chosen for another shop, the cell tells that there is no answer.
    """
    table = entry.content
    calculator = CALCULATORS[table.calculate]
    cells = [_cells(values, entry, place) for place in range(len(table.down.values))]
    down, first = _one_unit(_label(calculator, table.down), _places(values, calculator, table.down))
    given = _given(values, entry)
    if table.across is None:
        head = [calculator.output(name).label for name in table.show]
        rows = [[one, *row] for one, row in zip(first, cells, strict=True)]
        return Grid("", down, "", head, rows, given)
    places = _places(values, calculator, table.across)
    across, head = _one_unit(_label(calculator, table.across), places)
    flat = [cell for row in cells for cell in row]
    answer, flat = _one_unit(calculator.output(table.show[0]).label, flat)
    width = len(head)
    rows = [[one, *flat[place * width : (place + 1) * width]] for place, one in enumerate(first)]
    return Grid(answer, down, across, head, rows, given)


def _label(calculator: Calculator, axis: Axis) -> str:
    """Return what a side holds: the input, or that of the calculator its values go through."""
    if axis.through is not None:
        return CALCULATORS[axis.through.calculate].input(axis.through.input).label
    return calculator.input(axis.input).label


def _places(values: Values, calculator: Calculator, axis: Axis) -> list[str]:
    """Return the values along a side as readers see them."""
    name = axis.input
    if axis.through is not None:
        calculator, name = CALCULATORS[axis.through.calculate], axis.through.input
    inputs = calculator.inputs
    return [values.showing.texts(inputs, {name: text})[name] for text in axis.values]


def _given(values: Values, entry: Entry[Table]) -> str:
    """Return what the table's calculator is given in every cell, each with its label."""
    table = entry.content
    inputs = _run(values, entry, {table.down.input: table.down.values[0]})["inputs"]
    return "; ".join(
        f"{inputs[name]['label'].lower()}: {inputs[name]['shown']}"
        for name in table.given
        if name in inputs
    )


def _one_unit(label: str, texts: list[str]) -> tuple[str, list[str]]:
    """Return the label with the unit that all texts share, and the texts without it."""
    parts = [text.replace("\u00a0", " ").partition(" ") for text in texts]
    units = {unit for _, _, unit in parts}
    if len(units) == 1 and (unit := units.pop()):
        return f"{label}, {unit}", [number for number, _, _ in parts]
    return label, [text.replace(" ", "\u00a0") for text in texts]


def _cells(values: Values, entry: Entry[Table], place: int) -> list[str]:
    """Return the answers in the row at a place, counted from 0."""
    table = entry.content
    down = {table.down.input: table.down.values[place]}
    if table.across is None:
        return _answers(values, entry, place, down)
    return [
        cell
        for text in table.across.values
        for cell in _answers(values, entry, place, down | {table.across.input: text})
    ]


def _answers(values: Values, entry: Entry[Table], place: int, given: dict[str, str]) -> list[str]:
    table = entry.content
    result = _run(values, entry, given)
    if result["problems"] and values.handbook.is_shipped(entry):
        return [NO_ANSWER] * len(table.show)
    for about, sentence in result["problems"].items():
        said = f'table "{entry.id}", "{about}": {sentence}'
        values.problems.append(entry.problem(("down", "values", place), said))
    found = [result["values"].get(name, {"shown": ""}) for name in table.show]
    return [value["shown"] for value in found]


def _run(values: Values, entry: Entry[Table], given: dict[str, str]) -> dict[str, Any]:
    """Run a table's calculator for one cell; values that go through another one do so first."""
    table = entry.content
    stated = values.origins.stated
    given = {name: stated(entry, name, text) for name, text in given.items()}
    inputs = values.calculators.given(entry) | given
    for axis in (table.down, table.across):
        if axis is None or axis.through is None or axis.input not in given:
            continue
        through = axis.through
        more = {name: stated(entry, name, text) for name, text in through.given.items()}
        first = more | {through.input: given[axis.input]}
        result = values.calculators.result(through.calculate, first)
        if result["problems"]:
            return result
        inputs[axis.input] = exact(result["values"][through.show])
    return values.calculators.result(table.calculate, inputs)
