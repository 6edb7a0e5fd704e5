"""Pages show the chances that the diagnosis works with, and what each rests on."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.diagnosis_data import diagnosis_data
from build_tools.content.handbook import Handbook, load_handbook
from build_tools.diagnosis.shown_chances import LEAST, shown_chances

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def handbook() -> Handbook:
    """Return the shipped handbook's sources."""
    return load_handbook(ROOT / "docs_src", ROOT)


def test_a_simulated_check_has_counted_chances_and_a_judged_one_its_files(
    handbook: Handbook,
) -> None:
    judged = diagnosis_data(handbook)["faults"]["out-of-salt"]["likelihoods"]
    fault = shown_chances(handbook)["faults"]["out-of-salt"]
    assert {"salt-height", "cold-and-hot-pair"} <= set(fault["counted"])
    assert fault["likelihoods"]["salt-height"]["empty"] > 0.9
    assert fault["likelihoods"]["cold-and-hot-pair"] != judged["cold-and-hot-pair"]
    seals = shown_chances(handbook)["faults"]["seals-let-hard-water-cross"]
    assert "piston-and-seals-out" not in seals["counted"]
    assert seals["likelihoods"]["piston-and-seals-out"] == {"worn": 0.96, "good": 0.04}


def test_counted_chances_make_no_more_than_one_and_leave_out_what_is_chance(
    handbook: Handbook,
) -> None:
    for name, fault in shown_chances(handbook)["faults"].items():
        for check in fault["counted"]:
            chances = fault["likelihoods"][check].values()
            assert LEAST <= min(chances), (name, check)
            assert sum(chances) <= 1 + 1e-9, (name, check)


def test_without_simulated_homes_everything_is_judged() -> None:
    second = ROOT / "tests" / "second_shop"
    shop = load_handbook(second / "docs_src", second)
    judged = diagnosis_data(shop)["faults"]
    for name, fault in shown_chances(shop)["faults"].items():
        assert fault["counted"] == []
        assert fault["likelihoods"] == judged[name]["likelihoods"]
