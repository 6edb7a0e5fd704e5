"""A table names what its calculator has, and every cell works out."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, problems_of

TABLE = """\
refill:
  title: Refill time
  note: In whole steps.
  calculate: brine-refill
  down:
    input: salt
    values: [6 lb, 9 lb]
  across:
    input: refill_flow
    values: [0.5 gpm, 1 gpm]
  given:
    time_step: 1 min
  show: refill_time
"""
WRONG = [
    (
        "input: salt",
        "input: slat",
        '6: the calculator "brine-refill" has no input "slat" (expected one of: salt, refill_flow, '
        'salt_in_water, time_step; nearest: "salt")',
    ),
    (
        "input: refill_flow",
        "input: flow",
        '9: the calculator "brine-refill" has no input "flow" (expected one of: salt, refill_flow, '
        "salt_in_water, time_step)",
    ),
    (
        "time_step: 1",
        "step: 1",
        '12: the calculator "brine-refill" has no input "step" (expected one of: salt, '
        'refill_flow, salt_in_water, time_step; nearest: "time_step")',
    ),
    (
        "show: refill_time",
        "show: time",
        '13: the calculator "brine-refill" has no answer "time" (expected one of: refill_time, '
        "exact_time, water, salt_dissolved, brine)",
    ),
    (
        "show: refill_time",
        "show: [refill_time, water]",
        '1: a table with "across" shows one answer (expected one name in "show")',
    ),
    (
        "values: [6 lb",
        "values: [900 lb",
        '7: table "refill", "salt": 900 lb is above the limit of 60 lb.',
    ),
]


def problems_with(folder: Path, table: str) -> list[str]:
    return problems_of(folder, FILES | {"tables.yaml": table})


def test_a_right_table_has_no_problem(tmp_path: Path) -> None:
    assert problems_with(tmp_path, TABLE) == []


@pytest.mark.parametrize(("old", "new", "said"), WRONG)
def test_what_is_wrong_with_a_table_is_told(tmp_path: Path, old: str, new: str, said: str) -> None:
    assert TABLE.count(old) == 1
    assert problems_with(tmp_path, TABLE.replace(old, new)) == [f"docs_src/tables.yaml:{said}"]
