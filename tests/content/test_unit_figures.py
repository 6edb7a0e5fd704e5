"""The figures of a unit: of its sheet, and worked out from it."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.handbook import load_handbook
from build_tools.content.unit_figures import NAMES
from build_tools.content.values import Values
from calculators import CALCULATORS
from tests.content.small_shop import FILES, problems_of, write


def figures(folder: Path, files: dict[str, str], unit: str) -> dict[str, str | None]:
    """Return every figure of a unit as it is shown."""
    write(folder, files)
    values = Values(load_handbook(folder / "docs_src", folder))
    entry = values.handbook.equipment[unit]
    with values.showing.in_units_of(entry):
        found = {name: values.figures.of(entry, name) for name in NAMES}
    return {name: value and str(value).replace("\u00a0", " ") for name, value in found.items()}


def test_what_a_sheet_leaves_out_is_worked_out_or_unknown(tmp_path: Path) -> None:
    found = figures(tmp_path, FILES, "meter-unit")
    assert found["bed_depth"] == "33 in"
    assert found["short_title"] == "Meter softener"
    assert found["refills"] == "last"
    unknown = ("service_flow", "float_height", "room_to_float", "pressure_loss", "control_voltage")
    assert [found[name] for name in unknown] == [None] * len(unknown)


def test_what_a_sheet_tells_is_taken(tmp_path: Path) -> None:
    told = "bed_depth: 31 in\nservice_flow: 7 gpm\nfloat_height: 10 in\nbrine_grid_height: 4 in\n"
    meter = FILES["equipment/meter-unit.yaml"]
    plain = figures(tmp_path / "plain", FILES, "meter-unit")
    found = figures(
        tmp_path / "told", FILES | {"equipment/meter-unit.yaml": meter + told}, "meter-unit"
    )
    assert found["bed_depth"] == "31 in"
    assert found["pressure_loss"] == "6.7 psi"
    assert found["level_after_refill"] != plain["level_after_refill"]
    assert found["room_to_float"] == "3.7 in"


def test_settings_for_the_typical_home_follow_the_control(tmp_path: Path) -> None:
    meter = figures(tmp_path, FILES, "meter-unit")
    clock = figures(tmp_path, FILES, "clock-unit")
    assert (meter["setting"], meter["counter"], meter["interval"]) == (
        "19 gpg",
        "1,330 gal",
        "6.0 days",
    )
    assert (clock["setting"], clock["counter"], clock["interval"]) == ("19 gpg", None, "4.0 days")


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            "units: imperial",
            '"units" is "imperial" (expected one of: us, metric)',
        ),
        (
            "refills: never",
            '"refills" is "never" (expected one of: last, first)',
        ),
    ],
)
def test_a_wrong_choice_is_told(tmp_path: Path, line: str, said: str) -> None:
    name = "equipment/clock-unit.yaml"
    (problem,) = problems_of(tmp_path, FILES | {name: f"{FILES[name]}{line}\n"})
    assert problem.startswith(f"docs_src/{name}:19: {said}")


def test_a_form_s_unit_forgets_what_the_one_before_it_filled_in(tmp_path: Path) -> None:
    """Every unit fills in the same fields, with the usual where its sheet says nothing."""
    files = dict(FILES)
    files["equipment/meter-unit.yaml"] += "float_height: 10 in\nbrine_well_diameter: 5 in\n"
    write(tmp_path, files)
    values = Values(load_handbook(tmp_path / "docs_src", tmp_path))
    level = CALCULATORS["brine-level"]
    meter, clock = (
        values.figures.for_form(values.handbook.equipment[name], level)
        for name in ("meter-unit", "clock-unit")
    )
    assert meter["float_height"] == "10 in"
    assert clock["float_height"] == ""
    assert (meter["well_diameter"], clock["well_diameter"]) == ("5 in", "4 in")
    assert meter.keys() == clock.keys()
