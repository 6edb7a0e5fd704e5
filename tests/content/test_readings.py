"""Expected readings are worked out for each unit of the shop."""

from __future__ import annotations

from pathlib import Path

from build_tools.content.handbook import load_handbook
from build_tools.content.readings import expected_readings
from build_tools.content.values import Values
from tests.content.small_shop import FILES, changed, write


def readings(folder: Path, files: dict[str, str], unit: str) -> list[tuple[str, str]]:
    """Return all readings expected at the first step of the first look, from one unit."""
    handbook = load_handbook(write(folder, files), folder)
    values = Values(handbook)
    procedure = handbook.procedures["first-look"]
    found = [
        (label, shown.replace("\u00a0", " "))
        for place in range(len(procedure.content.steps[0].expect))
        for label, shown in expected_readings(values, procedure, 0, place, handbook.equipment[unit])
    ]
    assert values.problems == []
    return found


def test_each_unit_has_its_own_readings(tmp_path: Path) -> None:
    assert readings(tmp_path, FILES, "meter-unit") == [
        ("Flow at the drain", "2.4 gpm"),
        ("Refill", "6 min"),
        ("Counter step", "10 gal"),
    ]


def test_a_reading_for_other_controls_only_is_left_out(tmp_path: Path) -> None:
    assert readings(tmp_path, FILES, "clock-unit") == [
        ("Flow at the drain", "2 gpm"),
        ("Refill", "4 min"),
    ]


def test_several_answers_are_told_apart_by_their_labels(tmp_path: Path) -> None:
    files = changed("procedures/first-look.yaml", "show: refill_time", "show: [refill_time, water]")
    assert readings(tmp_path, files, "meter-unit")[1:3] == [
        ("Refill: set the refill to", "6 min"),
        ("Refill: water needed", "3.0 gal"),
    ]


def test_a_reading_may_be_words_with_expressions(tmp_path: Path) -> None:
    files = changed(
        "procedures/first-look.yaml",
        "value: unit.backwash_flow",
        "value: About {{ unit.backwash_flow }}, clear",
    )
    assert readings(tmp_path, files, "meter-unit")[0] == (
        "Flow at the drain",
        "About 2.4 gpm, clear",
    )


def test_inputs_may_be_typed_or_named(tmp_path: Path) -> None:
    files = changed("procedures/first-look.yaml", "salt: unit.salt_per_regeneration", "salt: 12 lb")
    assert readings(tmp_path, files, "meter-unit")[1] == ("Refill", "8 min")
