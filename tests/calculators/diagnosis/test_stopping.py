"""When to stop: found, one repair for all, nothing more to learn, danger; and when to try."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.diagnosis import Knowledge, picture
from tests.calculators.diagnosis.small_knowledge import DATA, data

CRUST = {"complaint": "hard", "readings": {"level": "low", "rod": "crust"}}


def stop_of(given: dict[str, Any], of: dict[str, Any] = DATA) -> dict[str, Any] | None:
    """Return why a call stops."""
    return picture(Knowledge(of), given)["stop"]


def test_a_call_without_readings_goes_on() -> None:
    assert stop_of({}) is None


def test_a_cause_is_found_at_its_bound() -> None:
    assert stop_of(CRUST) == {"why": "found", "cause": "bridge", "proved": False, "prove": []}


def test_a_finding_that_proves_it_is_asked_for_and_then_told() -> None:
    of = data(bridge={"proved_by": [{"check": "lamp", "result": ["lit"]}]})
    asked = stop_of(CRUST, of)
    told = stop_of({**CRUST, "readings": {**CRUST["readings"], "lamp": "lit"}}, of)

    assert asked == {"why": "found", "cause": "bridge", "proved": False, "prove": ["lamp"]}
    assert told == {"why": "found", "cause": "bridge", "proved": True, "prove": []}


@pytest.mark.parametrize("check", ["valve", "draw"])
def test_no_proof_is_asked_for_that_opens_something_or_needs_more(check: str) -> None:
    of = data(bridge={"proved_by": [{"check": check, "result": "clean"}]})

    assert stop_of(CRUST, of)["prove"] == []


def test_danger_stops_everything() -> None:
    found = picture(Knowledge(DATA), {**CRUST, "dangers": ["a wet outlet"]})

    assert found["stop"] == {"why": "danger", "dangers": ["a wet outlet"]}
    assert found["next"] is None
    assert found["repair_and_see"] is None
    assert found["explanation"] == [
        "Stop here: a wet outlet. Make the place safe and get help before anything else."
    ]


def test_one_repair_for_all_causes_that_are_left() -> None:
    repair = {"procedures": ["clean-the-tank"]}
    of = data(bridge=repair, plugged=repair)

    assert stop_of({"readings": {"lamp": "lit"}}, of) == {
        "why": "one repair",
        "causes": ["bridge", "plugged"],
        "procedures": ["clean-the-tank"],
    }
    assert stop_of({"readings": {"lamp": "lit"}}, data(bridge=repair)) is None
    of["faults"]["plugged"]["group"] = "Other"
    assert stop_of({"readings": {"lamp": "lit"}}, of) is None


def test_a_procedure_that_most_faults_share_is_no_repair() -> None:
    of = data()
    for number in range(8):
        of["faults"][f"rare-{number}"] = {**of["faults"]["plugged"], "share_of_calls": 0.01}
    for one in of["faults"].values():
        one["procedures"] = ["close-the-visit"]

    assert stop_of({"readings": {"lamp": "lit"}}, of) is None


def test_nothing_more_to_learn_names_the_two_that_are_left() -> None:
    done = dict.fromkeys([name for name in DATA["checks"] if name != "complaint"], "not done")

    assert stop_of({"complaint": "salty", "readings": done}) == {
        "why": "nothing more to learn",
        "causes": ["plugged", "bridge"],
    }


@pytest.mark.parametrize(("minutes", "tried"), [(1, "bridge"), (60, None)])
def test_a_repair_is_tried_where_it_is_quick(minutes: float, tried: str | None) -> None:
    """The bridge stands at about eight in ten; the next check is the lamp of 1.1 minutes.

    Trying in vain costs 1 + 3 minutes, so it pays above 1 - 1.1/4 = 0.73; with a repair of an hour
    it would pay above 0.98.
    """
    of = data(bridge={"minutes": minutes, "likelihoods": {"rod": {"crust": 0.5}}})
    readings = {"rod": {"result": "crust", "sure": False}}

    found = picture(Knowledge(of), {"readings": readings})
    assert found["stop"] is None
    assert found["repair_and_see"] == tried
