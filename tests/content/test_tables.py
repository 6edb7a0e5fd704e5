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
days:
  title: Days by people
  note: For a time clock.
  calculate: regeneration-interval
  given: {control: time clock, setting: 20 gpg}
  down:
    input: water
    values: [2, 4]
    through: {calculate: household-load, input: people, given: {setting: 20 gpg}, show: water}
  across: {input: capacity, values: ["20,000 grains", "30,000 grains"]}
  show: interval
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


def test_what_a_table_takes_for_granted_is_told(tmp_path: Path) -> None:
    values = values_of(tmp_path)
    assert (
        worked_out(values, values.handbook.tables["answers"]).given == "refill flow: 0.5\u00a0gpm"
    )
    assert worked_out(values, values.handbook.tables["refill"]).given == ""


def test_values_may_go_through_another_calculator(tmp_path: Path) -> None:
    values = values_of(tmp_path)
    grid = worked_out(values, values.handbook.tables["days"])
    assert (grid.down, grid.across) == ("People in the home", "Usable capacity, grains")
    assert grid.rows == [["2", "8.0", "12.0"], ["4", "4.0", "6.0"]]
