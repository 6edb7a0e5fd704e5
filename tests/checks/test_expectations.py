"""Expected readings must work out for every unit of the shop."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import changed, problems_of

LOOK = "procedures/first-look.yaml"
WRONG = [
    (
        "unit.backwash_flow", "unit.backwash_flw",
        '18: a unit has no "backwash_flw" (expected one of: backwash_flow, backwash_low, '
        'backwash_time, backwash_high, …; nearest: "backwash_flow")',
    ),
    (
        "        only_for: [delayed meter]\n", "",
        '26: the unit "clock-unit" has no "meter_step" (expected "only_for" with the controls that '
        "have it)",
    ),
    (
        "          salt: unit", "          salts: unit",
        '22: the calculator "brine-refill" has no input "salts" (expected one of: salt, '
        'refill_flow, salt_in_water, time_step; nearest: "salt")',
    ),
    (
        "show: refill_time", "show: refill_tim",
        '24: the calculator "brine-refill" has no answer "refill_tim" (expected one of: '
        'refill_time, exact_time, water, salt_dissolved, brine; nearest: "refill_time")',
    ),
    (
        "unit.salt_per_regeneration", "fact.bukket",
        '22: there is no fact "bukket" (expected one of: bucket, flush_time, scald_limit; nearest: '
        '"bucket")',
    ),
    (
        "value: unit.meter_step", "value: '{{ fact.bukket }}'",
        '26: there is no fact "bukket" (expected one of: bucket, flush_time, scald_limit; nearest: '
        '"bucket")',
    ),
    (
        "value: unit.meter_step", "value: 10 gal",
        '26: nothing backs the typed quantity "10 gal" (expected an expression: put the value in '
        "facts.yaml and write {{ fact.its_name }}, or compute it with {{ work_out(…) }} or a "
        "worked example)",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), WRONG)
def test_a_reading_that_does_not_work_out_is_told(
    tmp_path: Path, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(LOOK, old, new)) == [f"docs_src/{LOOK}:{said}"]


def test_what_a_calculator_refuses_is_told_for_each_unit(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed(LOOK, "unit.salt_per_regeneration", "900 lb")) == [
        f'docs_src/{LOOK}:22: for the unit "{unit}" the calculator cannot use "salt": 900 lb is '
        "above the limit of 60 lb."
        for unit in ("clock-unit", "meter-unit")
    ]
