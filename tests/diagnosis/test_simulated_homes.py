"""Simulated homes: made the same each time, kept as text, and stale when what makes them changes."""

from __future__ import annotations

import json
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest

from build_tools.diagnosis import simulated_homes
from build_tools.diagnosis.digest import code_of, digest_of, modules
from build_tools.diagnosis.homes_of_fault import homes_of_fault
from calculators.diagnosis import Knowledge
from calculators.diagnosis.home_codes import unpack
from calculators.diagnosis.likelihoods import MISREADING
from tests.calculators.diagnosis.small_knowledge import check, fault

RESULTS = {
    "complaint": ["hard-everywhere", "dead-display"],
    "outlet-and-plug": ["live", "dead"],
    "supply-voltage": ["in-band", "low-or-none"],
}
NO_POWER = [{"change": "power_on", "from": 0, "to": 0}]


def made(factors: dict[str, float] | None = None) -> dict[str, Any]:
    """Return a few homes without power."""
    return homes_of_fault("no-power", NO_POWER, factors or {}, RESULTS, homes=6)


@pytest.fixture(scope="module")
def data() -> dict[str, Any]:
    """Two faults of which one brings the other, and a judged one."""
    water = {"change": "raw_hardness_factor", "from": 1.5, "to": 1.5}
    return {
        "checks": {
            "complaint": check("Complaint", *RESULTS["complaint"], stage=0, minutes=0),
            "supply-voltage": check("Voltage", *RESULTS["supply-voltage"]),
            "talk": check("Talk", "nothing", "people"),
        },
        "faults": {
            "no-power": fault("No power", 1, simulation=NO_POWER),
            "hard-well": fault("Hard well", 1, simulation=[water], follows=["no-power"]),
            "feel": fault("Feel", 1),
        },
    }


def test_homes_are_the_same_each_time() -> None:
    assert made() == made()


def test_homes_show_what_the_fault_does() -> None:
    homes = made()

    assert len(homes["control"]) == len(homes["water"]) == 6
    assert set(homes["readings"]) == {"complaint", "supply-voltage"}  # the outlet is judged
    assert all(none == 4 for _, none in unpack(homes["readings"]["supply-voltage"]))
    assert all(sum(parts) == 10 for parts in unpack(homes["readings"]["complaint"]))


def test_a_class_in_which_the_fault_cannot_be_has_no_homes() -> None:
    assert "w" in made()["water"]
    assert set(made({"well": 0.0})["water"]) == {"t"}


def test_what_is_made_is_not_stale_and_can_be_read(data: dict[str, Any]) -> None:
    names = simulated_homes.stale(data, {})
    assert names == ["no-power", "hard-well", "no-power+hard-well"]

    told: list[str] = []
    kept = simulated_homes.make(data, ["no-power"], {}, told.append)
    assert told == ["no-power: 150 homes of 150 tries"]
    assert json.loads(simulated_homes.as_text(kept)) == kept
    assert simulated_homes.stale(data, kept) == ["hard-well", "no-power+hard-well"]

    knowledge = Knowledge({**data, "homes": kept})
    none = knowledge.rows("supply-voltage", MISREADING["look"])[0][1]
    assert none > 0.98


def test_a_changed_fault_is_stale_with_its_pairs_and_no_other(data: dict[str, Any]) -> None:
    kept = {
        "faults": {
            name: {"digest": digest_of(given, simulated_homes.ROOT)}
            for name, given in simulated_homes.simulated(data).items()
        }
    }
    assert simulated_homes.stale(data, kept) == []

    changed = deepcopy(data)
    changed["faults"]["hard-well"]["simulation"][0]["to"] = 1.6
    assert simulated_homes.stale(changed, kept) == ["hard-well", "no-power+hard-well"]

    renamed = deepcopy(data)
    renamed["checks"]["supply-voltage"]["results"][1]["name"] = "dark"
    assert len(simulated_homes.stale(renamed, kept)) == 3


def test_homes_of_a_fault_that_is_gone_are_dropped(data: dict[str, Any]) -> None:
    kept = simulated_homes.make(data, [], {"faults": {"gone": {}}}, print)

    assert kept["faults"] == {}


def test_comments_and_descriptions_make_nothing_stale() -> None:
    one = '"""One."""\n\nX = 1\n\n\ndef f():\n    """Say."""\n    return X\n'
    other = '"""Other,\nlonger."""\n# a remark\nX = 1\ndef f():\n    return X\n'

    assert code_of(one) == code_of(other) == "X = 1\ndef f():\n    return X"
    assert code_of(one.replace("X = 1", "X = 2")) != code_of(one)


def test_how_a_calculator_asks_makes_nothing_stale() -> None:
    declared = 'A = Calculator(\n    "a",\n    inputs=[Input("x", {})],\n)\nX = f(1)\n'

    assert code_of(declared.format("1")) == code_of(declared.format("2")) == "X = f(1)"


def test_all_that_the_simulation_imports_counts() -> None:
    found = {path.stem for path in modules(simulated_homes.ROOT, ("calculators.simulation.visit",))}

    assert {"visit", "story", "changes", "results", "brine_tank", "capacity", "units"} <= found
    assert "sources" not in found


def test_a_module_of_another_folder_counts_by_its_code(tmp_path: Path) -> None:
    folder = tmp_path / "calculators"
    folder.mkdir()
    (folder / "a.py").write_text("from calculators.b import X, Y\nimport math\n", "utf-8")
    (folder / "b.py").write_text("X = Y = 1\n", "utf-8")

    assert modules(tmp_path, ("calculators.a",)) == [folder / "a.py", folder / "b.py"]
