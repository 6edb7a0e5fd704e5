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


DAYS = """\
days:
  title: Days
  note: For a time clock.
  calculate: regeneration-interval
  given: {control: time clock, setting: 20 gpg, capacity: 20000 grains}
  down:
    input: water
    values: [2, 4]
    through:
      calculate: household-load
      input: people
      given: {setting: 20 gpg}
      show: water
  show: interval
"""
WRONG_THROUGH = [
    (
        "calculate: household-load", "calculate: household-lod",
        '10: there is no calculator "household-lod" (expected one of: ',
    ),
    (
        "input: people", "input: peple",
        '11: the calculator "household-load" has no input "peple" (expected one of: people, ',
    ),
    (
        "given: {setting: 20 gpg}\n      show", "given: {seting: 20 gpg}\n      show",
        '12: the calculator "household-load" has no input "seting" (expected one of: ',
    ),
    (
        "show: water", "show: watr",
        '13: the calculator "household-load" has no answer "watr" (expected one of: water, load, '
        'busiest_day; nearest: "water")',
    ),
    (
        "values: [2, 4]", "values: [2, 400]",
        '8: table "days", "people": 400 is above the limit of ',
    ),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), WRONG_THROUGH)
def test_what_is_wrong_with_the_way_of_values_is_told(
    tmp_path: Path, old: str, new: str, said: str
) -> None:
    assert problems_with(tmp_path, DAYS) == []
    assert DAYS.count(old) == 1
    (problem,) = problems_with(tmp_path, DAYS.replace(old, new))
    assert problem.startswith(f"docs_src/tables.yaml:{said}")
