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

    label: what all its columns belong to, or "". columns: the label of each answer -> its text by
    unit.
    """

    label: str
    columns: dict[str, dict[str, str]] = field(default_factory=dict)

    def add(self, unit: str, answers: list[tuple[str, str]]) -> None:
        """Add what one unit shows."""
        for label, shown in answers:
            self.columns.setdefault(label, {})[unit] = shown

    def cells(self, unit: str) -> list[str]:
        """Return the row of a unit, empty for one that shows none of the readings."""
        cells = [column.get(unit) for column in self.columns.values()]
        return [one or NOTHING for one in cells] if any(cells) else []


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
        made.append({"label": table.label, "heads": list(table.columns), "rows": rows})
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
            table.add(unit, found.answers)
    return tables


def _first(expected: dict[str, Expected]) -> Expected:
    return next(iter(expected.values()))
