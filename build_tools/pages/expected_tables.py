"""What the steps of a procedure expect: tables with a row for each unit of the shop."""

from __future__ import annotations

from dataclasses import dataclass, field

from build_tools.content.entries import Entry
from build_tools.content.page_models import Procedure
from build_tools.content.readings import Expected, expected_reading
from build_tools.content.values import Values
from build_tools.pages.render import Library, Texts

#: So many columns of numbers stand beside the units on a phone; further readings begin a new table.
MOST_COLUMNS = 3
#: What stands in the cell of a unit that a reading is not for.
NOTHING = "none"


@dataclass
class Table:
    """A table of readings.

    label: what all its columns belong to, or "". columns: (place of the reading, its answer or "")
    -> by unit the label and the text of what it shows. A unit in other units of measure than the
    shop's has labels of its own; the head of a column is that of the first unit.
    """

    label: str
    columns: dict[tuple[int, str], dict[str, tuple[str, str]]] = field(default_factory=dict)

    @property
    def heads(self) -> list[str]:
        """The head of each column."""
        return [next(iter(column.values()))[0] for column in self.columns.values()]

    def add(self, place: int, unit: str, answers: list[tuple[str, str]]) -> None:
        """Add what one unit shows for a reading."""
        for label, shown in answers:
            answer = label if len(answers) > 1 or self.label else ""
            self.columns.setdefault((place, answer), {})[unit] = (label, shown)

    def cells(self, unit: str) -> list[dict[str, str]]:
        """Return the row of a unit, empty for one that shows none of the readings."""
        cells = [column.get(unit) for column in self.columns.values()]
        if not any(cells):
            return []
        return [
            {"label": one[0], "shown": one[1]} if one else {"label": "", "shown": NOTHING}
            for one in cells
        ]


def expected_tables(
    values: Values, library: Library, procedure: Entry[Procedure], step: int
) -> list[dict[str, object]]:
    """Return the tables of what a step, counted from 0, expects."""
    made = []
    for table in _tables(values, procedure, step):
        rows = [
            library.link(procedure.address, unit.address)
            | {
                "unit": unit.id,
                "words": Texts(values, unit, unit)(unit.content.short_title or unit.content.title),
                "cells": cells,
            }
            for unit in values.handbook.carried
            if (cells := table.cells(unit.id))
        ]
        made.append({"label": table.label, "heads": table.heads, "rows": rows})
    return made


def _tables(values: Values, procedure: Entry[Procedure], step: int) -> list[Table]:
    """Return a table for each reading of several answers; single ones share tables."""
    tables: list[Table] = []
    shared: Table | None = None
    for place, reading in enumerate(procedure.content.steps[step].expect):
        expected = {
            unit.id: found
            for unit in values.handbook.carried
            if (found := expected_reading(values, procedure, step, place, unit))
        }
        if not expected:
            continue
        if reading.show and len(reading.show) > 1:
            table, shared = Table(_first(expected).label), None
            tables.append(table)
        else:
            if shared is None or len(shared.columns) == MOST_COLUMNS:
                shared = Table("")
                tables.append(shared)
            table = shared
        for unit, found in expected.items():
            table.add(place, unit, found.answers)
    return tables


def _first(expected: dict[str, Expected]) -> Expected:
    return next(iter(expected.values()))
