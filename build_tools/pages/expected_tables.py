"""What the steps of a procedure expect: tables with a row for each unit of the shop."""

from __future__ import annotations

from dataclasses import dataclass, field

from build_tools.content.entries import Entry
from build_tools.content.page_models import Procedure
from build_tools.content.readings import expected_reading
from build_tools.content.values import Values
from build_tools.pages.render import Library, Texts

#: So many columns of numbers stand beside the units on a phone; further readings begin a new table.
MOST_COLUMNS = 3
#: What stands in the cell of a unit that a reading is not for.
NOTHING = "none"


@dataclass
class Table:
    """A table of readings.

    labels: by unit, what all columns belong to, if anything. columns: by what makes a column one,
    its (label, text) for each unit. A unit's labels are in the unit's own units.
    """

    labels: dict[str, str] = field(default_factory=dict)
    columns: dict[object, dict[str, tuple[str, str]]] = field(default_factory=dict)

    @property
    def label(self) -> str:
        """What all columns belong to, for the first unit."""
        return next(iter(self.labels.values()), "")

    @property
    def heads(self) -> list[str]:
        """The head of each column: its label for the first unit, which may be in other units."""
        return [next(iter(column.values()))[0] for column in self.columns.values()]

    def cells(self, unit: str) -> list[dict[str, str]]:
        """Return the row of a unit, empty for one that shows none of the readings."""
        cells = [
            dict(zip(("label", "shown"), column.get(unit, (head, NOTHING)), strict=True))
            for head, column in zip(self.heads, self.columns.values(), strict=True)
        ]
        return cells if any(unit in column for column in self.columns.values()) else []


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
                "words": Texts(values, unit, unit)(unit.content.short_title or unit.content.title)
                + library.remark(unit.address),
                "label": table.labels.get(unit.id, ""),
                "cells": cells,
                "kept": unit.content.units is not None,
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
            table, shared = Table({unit: found.label for unit, found in expected.items()}), None
            tables.append(table)
        else:
            if shared is None or len(shared.columns) == MOST_COLUMNS:
                shared = Table()
                tables.append(shared)
            table = shared
        for unit, found in expected.items():
            for label, shown in found.answers:
                # A label with a figure of the unit itself is another for each unit.
                key = label if len(found.answers) > 1 or "unit." in reading.label else place
                table.columns.setdefault(key, {})[unit] = label, shown
    return tables
