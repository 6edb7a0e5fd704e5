"""Tables are worked out cell by cell, with a unit that all cells share in the label."""

from __future__ import annotations

from pathlib import Path

from build_tools.content.handbook import load_handbook
from build_tools.content.tables import worked_out
from build_tools.content.values import Values
from tests.content.small_shop import FILES, write

TABLES = """\
refill:
  title: Refill time
  note: In whole steps.
  calculate: brine-refill
  down: {input: salt, values: [6 lb, 9 lb]}
  across: {input: refill_flow, values: [0.5 gpm, 1 gpm]}
  show: refill_time
answers:
  title: Water and salt
  note: Side by side.
  calculate: brine-refill
  down: {input: salt, values: [6 lb, 4 kg]}
  given: {refill_flow: 0.5 gpm}
  show: [water, salt_dissolved]
"""


def values_of(folder: Path) -> Values:
    write(folder, FILES | {"tables.yaml": TABLES})
    return Values(load_handbook(folder / "docs_src", folder))


def test_a_table_of_two_inputs(tmp_path: Path) -> None:
    values = values_of(tmp_path)
    grid = worked_out(values, values.handbook.tables["refill"])
    assert (grid.cells, grid.down, grid.across) == (
        "Set the refill to, min",
        "Salt wanted for one regeneration, lb",
        "Refill flow, gpm",
    )
    assert grid.head == ["0.5", "1"]
    assert grid.rows == [["6", "4", "2"], ["9", "6", "3"]]


def test_a_table_of_several_answers_keeps_their_units(tmp_path: Path) -> None:
    values = values_of(tmp_path)
    grid = worked_out(values, values.handbook.tables["answers"])
    assert grid.down == "Salt wanted for one regeneration"
    assert grid.head == ["Water needed", "Salt that the set time dissolves"]
    assert grid.rows == [
        ["6\u00a0lb", "2.0\u00a0gal", "6.0\u00a0lb"],
        ["4\u00a0kg", "2.9\u00a0gal", "9.0\u00a0lb"],
    ]
