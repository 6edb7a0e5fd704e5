"""Expected readings are worked out for each unit of the shop."""

from __future__ import annotations

from pathlib import Path

from build_tools.content.handbook import load_handbook
from build_tools.content.readings import expected_reading
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
        if (one := expected_reading(values, procedure, 0, place, handbook.equipment[unit]))
        for label, shown in one.answers
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
        ("Set the refill to", "6 min"),
        ("Water needed", "3.0 gal"),
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


def test_what_a_calculator_is_not_given_it_takes_from_the_unit(tmp_path: Path) -> None:
    given = """\
        inputs:
          salt: unit.salt_per_regeneration
          refill_flow: unit.refill_flow
"""
    files = changed("procedures/first-look.yaml", given, "")
    assert readings(tmp_path, files, "meter-unit")[1] == ("Refill", "6 min")
    assert readings(tmp_path, files, "clock-unit")[1] == ("Refill", "4 min")


def test_a_reading_may_name_a_figure_that_is_worked_out(tmp_path: Path) -> None:
    files = changed(
        "procedures/first-look.yaml", "value: unit.backwash_flow", "value: unit.level_after_refill"
    )
    assert readings(tmp_path, files, "meter-unit")[0] == ("Flow at the drain", "8.5 in")


def test_a_reading_of_a_figure_that_a_sheet_leaves_out_is_left_out(tmp_path: Path) -> None:
    files = changed(
        "procedures/first-look.yaml", "value: unit.backwash_flow", "value: unit.float_height"
    )
    files["equipment/meter-unit.yaml"] += "float_height: 10 in\n"
    assert readings(tmp_path, files, "meter-unit")[0] == ("Flow at the drain", "10 in")
    assert readings(tmp_path, files, "clock-unit") == [("Refill", "4 min")]


def test_a_calculator_does_without_an_input_that_the_sheet_leaves_out(tmp_path: Path) -> None:
    files = changed(
        "procedures/first-look.yaml",
        """\
        calculate: brine-refill
        inputs:
          salt: unit.salt_per_regeneration
          refill_flow: unit.refill_flow
        show: refill_time
""",
        """\
        calculate: brine-level
        inputs:
          brine: unit.brine
          float_height: unit.float_height
        show: [height, room_to_float]
""",
    )
    files["equipment/meter-unit.yaml"] += "float_height: 10 in\n"
    assert readings(tmp_path, files, "meter-unit")[1:3] == [
        ("Height of the water above the floor", "8.5 in"),
        ("Room up to the float", "1.5 in"),
    ]
    assert readings(tmp_path, files, "clock-unit")[1:] == [
        ("Height of the water above the floor", "6.5 in")
    ]


def test_an_expression_goes_on_without_rounding(tmp_path: Path) -> None:
    call = 'work_out("brine-refill", salt="9.4 lb", refill_flow="0.5 gpm").exact_time'
    shown = readings(
        tmp_path,
        changed(
            "procedures/first-look.yaml",
            """\
        calculate: brine-refill
        inputs:
          salt: unit.salt_per_regeneration
          refill_flow: unit.refill_flow
        show: refill_time
""",
            f"""\
        calculate: bucket-flow
        inputs:
          caught: 3.1375 gal
          time: '{{{{ {call} }}}}'
        show: flow
""",
        ),
        "meter-unit",
    )
    assert shown[1] == ("Refill", "0.50 gpm")


METRIC = {
    "resin_volume: 1.5 ft3": "resin_volume: 40 L",
    "refill_flow: 0.5 gpm": "refill_flow: 2 L/min",
    "salt_per_regeneration: 9 lb": "salt_per_regeneration: 4 kg",
    "backwash_flow: 2.4 gpm": "backwash_flow: 9 L/min",
    "meter_step: 10 gal": "meter_step: 50 L",
}


def metric_unit(own_units: str) -> dict[str, str]:
    """Return the small shop with a unit whose sheet is metric in part."""
    files = dict(FILES)
    text = files["equipment/meter-unit.yaml"] + own_units
    for old, new in METRIC.items():
        text = text.replace(old, new)
    files["equipment/meter-unit.yaml"] = text
    return files


def test_a_unit_with_its_own_units_is_shown_in_them(tmp_path: Path) -> None:
    files = metric_unit("units: metric\n")
    files["procedures/first-look.yaml"] = files["procedures/first-look.yaml"].replace(
        "value: unit.meter_step", "value: '{{ unit.meter_step }} of {{ fact.bucket }}'"
    )
    assert readings(tmp_path, files, "meter-unit") == [
        ("Flow at the drain", "9 L/min"),
        ("Refill", "6 min"),
        ("Counter step", "50 L of 18.9 L"),
    ]
    assert readings(tmp_path, files, "clock-unit")[0] == ("Flow at the drain", "2 gpm")


def test_a_metric_sheet_is_shown_in_the_units_of_the_shop(tmp_path: Path) -> None:
    assert readings(tmp_path, metric_unit(""), "meter-unit") == [
        ("Flow at the drain", "2.38 gpm"),
        ("Refill", "6 min"),
        ("Counter step", "13.2 gal"),
    ]


def test_a_us_unit_keeps_its_units_in_a_metric_shop(tmp_path: Path) -> None:
    files = changed("shop.yaml", "units: us", "units: metric")
    files["equipment/meter-unit.yaml"] += "units: us\n"
    assert readings(tmp_path, files, "meter-unit")[0] == ("Flow at the drain", "2.4 gpm")
    assert readings(tmp_path, files, "clock-unit")[0] == ("Flow at the drain", "7.57 L/min")
