"""The plain data of the diagnosis: everything a file says, as numbers."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from build_tools.content.diagnosis_data import diagnosis_data
from build_tools.content.handbook import load_handbook
from build_tools.content.severity import severity
from tests.content.small_shop import FILES, changed, write


def data_of(folder: Path, files: dict[str, str]) -> dict[str, Any]:
    """Return the data of a shop, having been through JSON."""
    handbook = load_handbook(write(folder, files), folder)
    return json.loads(json.dumps(diagnosis_data(handbook)))


def test_a_fault_has_its_numbers(tmp_path: Path) -> None:
    fault = data_of(tmp_path, FILES)["faults"]["no-salt"]
    assert fault == {
        "title": "No salt",
        "customer_says": ["The water is hard."],
        "parts": [],
        "group": "Brine",
        "share_of_calls": 0.075,
        "minutes": 15,
        "homes": {"well": 0.5},
        "mistaken_for": [],
        "proved_by": [{"check": "salt-height", "result": ["none"]}],
        "follows": ["salt-bridge"],
        "repair_opens": False,
        "procedures": [],
        "simulation": [
            {"change": "salt_left", "from": 0, "to": 5, "spread": "even", "grows_per_day": 0}
        ],
        "likelihoods_from": "the trainer's own judgement",
        "likelihoods": {"complaint": {"hard": 0.97}, "salt-height": {"none": 0.97}},
    }


def test_a_check_has_its_numbers(tmp_path: Path) -> None:
    assert data_of(tmp_path, FILES)["checks"]["rod"] == {
        "title": "Rod through the salt",
        "stage": 4,
        "order": 2,
        "minutes": 0.5,
        "overlaps_minutes": 0.25,
        "kind": "feel",
        "only_for": None,
        "needs": [{"check": "salt-height", "result": ["above"]}],
        "erases": ["salt-height"],
        "opens": True,
        "results": [
            {"name": "loose", "label": "Loose", "only_for": None},
            {"name": "hollow", "label": "Hollow", "only_for": None},
        ],
        "stop_if": ["The tank is cracked."],
    }


def test_checks_stand_in_their_running_order(tmp_path: Path) -> None:
    files = changed("checks/rod.yaml", "stage: salt and brine", "stage: water's way")
    assert [*data_of(tmp_path, files)["checks"]] == ["complaint", "rod", "salt-height"]


def test_titles_and_labels_have_their_expressions_filled(tmp_path: Path) -> None:
    files = changed("checks/rod.yaml", "label: Loose", "label: Loose to {{ fact.bucket }}")
    labels = [one["label"] for one in data_of(tmp_path, files)["checks"]["rod"]["results"]]
    assert labels == ["Loose to 5 gal", "Hollow"]


@pytest.mark.parametrize(
    ("change", "text", "number"),
    [
        ("bypass_share", "40 %", 0.4),
        ("bypass_share", "0.4", 0.4),
        ("raw_hardness_factor", "1.25", 1.25),
        ("clock_offset", "-2 h", -120),
        ("leak_flow", "1 gpm", 1),
        ("hard_tap", "1", 1),
    ],
)
def test_a_severity_is_a_number_in_the_simulations_unit(
    change: str, text: str, number: float
) -> None:
    assert severity(change, text) == pytest.approx(number, rel=1e-12)


@pytest.mark.parametrize("text", ["nan", "inf", "much", "", "3 gal"])
def test_a_severity_that_is_no_number_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="[a-z“]"):
        severity("bypass_share", text)
