"""The tables that people carry, worked out cell by cell."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.page_models import Table
from build_tools.content.values import Values
from calculators import CALCULATORS


@dataclass(frozen=True)
class Grid:
    """A worked-out table: what its cells, rows and columns are, its top row, and its rows.

    across: what the columns are, or nothing where each column is another answer. Where a whole
    side has one unit, the unit stands in its label and not in each cell.
    """

    cells: str
    down: str
    across: str
    head: list[str]
    rows: list[list[str]]


def worked_out(values: Values, entry: Entry[Table]) -> Grid:
    """Return a table with every cell worked out.

    What a calculator refuses is noted in `values.problems`; its cell stays empty.
    """
    table = entry.content
    calculator = CALCULATORS[table.calculate]
    cells = [_cells(values, entry, place) for place in range(len(table.down.values))]
    down, first = _one_unit(calculator.input(table.down.input).label, table.down.values)
    if table.across is None:
        head = [calculator.output(name).label for name in table.show]
        rows = [[one, *row] for one, row in zip(first, cells, strict=True)]
        return Grid("", down, "", head, rows)
    across, head = _one_unit(calculator.input(table.across.input).label, table.across.values)
    flat = [cell for row in cells for cell in row]
    answer, flat = _one_unit(calculator.output(table.show[0]).label, flat)
    width = len(head)
    rows = [[one, *flat[place * width : (place + 1) * width]] for place, one in enumerate(first)]
    return Grid(answer, down, across, head, rows)


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
    result: dict[str, Any] = values.result(table.calculate, table.given | given)
    for about, sentence in result["problems"].items():
        said = f'table "{entry.id}", "{about}": {sentence}'
        values.problems.append(entry.problem(("down", "values", place), said))
    found = [result["values"].get(name, {"shown": ""}) for name in table.show]
    return [value["shown"] for value in found]
