"""What the benchmark of the diagnosis measures, by hand on few outcomes and on a small knowledge."""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Any

import pytest

from build_tools.benchmarks.diagnosis.hidden_calls import HiddenCall, hidden_calls, jittered
from build_tools.benchmarks.diagnosis.measure import calibration_error, figures, measure
from build_tools.benchmarks.diagnosis.policies import Outcome, policies, work_through
from build_tools.benchmarks.diagnosis.table import table
from calculators.diagnosis import Knowledge
from tests.calculators.diagnosis.small_knowledge import DATA, data

ONE = Outcome(
    fault="bridge",
    complaint="hard",
    place=1,
    group_right=True,
    declared_right_in_time=True,
    minutes=3,
    wrong=0,
    confidence=0.9,
    brier=0.1,
    log_loss=0.2,
)
OTHER = replace(
    ONE,
    place=4,
    group_right=False,
    declared_right_in_time=False,
    minutes=40,
    wrong=2,
    confidence=0.5,
    brier=1.1,
    log_loss=2.2,
)
NORMAL = {name: check["results"][0]["name"] for name, check in DATA["checks"].items()}


def worked(call: HiddenCall, policy: str, of: dict[str, Any] = DATA) -> Outcome:
    """Return what becomes of a call under a policy."""
    knowledge = Knowledge(of)
    return work_through(knowledge, call, policies(knowledge, 1)[policy])


def test_figures_are_means_over_calls() -> None:
    assert figures([ONE, ONE, OTHER]) == {
        "calls": 3,
        "first at 5 minutes": 0.6667,
        "first three at 5 minutes": 0.6667,
        "right group at 5 minutes": 0.6667,
        "declared right within 5 minutes": 0.6667,
        "mean minutes to the cause": 15.3333,
        "median minutes to the cause": 3,
        "wrong declarations a call": 0.6667,
        "Brier score at 5 minutes": 0.4333,
        "log loss at 5 minutes": 0.8667,
        "calibration error at 5 minutes": 0.2333,
    }


def test_the_calibration_error_by_hand() -> None:
    """Two calls at 0.9 of which one was right, and one at 0.5 that was wrong.

    (2 × |0.9 - 0.5| + 1 × |0.5 - 0|) / 3
    """
    assert calibration_error([ONE, replace(ONE, place=2), OTHER]) == pytest.approx(1.3 / 3)


def test_a_call_is_worked_through_to_its_cause() -> None:
    """The level is low (2 minutes), then the rod meets a crust (1 minute): found."""
    call = HiddenCall("bridge", "hard", results={**NORMAL, "level": "low", "rod": "crust"})
    found = worked(call, "engine")

    assert (found.place, found.wrong, found.group_right) == (1, 0, True)
    assert found.declared_right_in_time
    assert found.minutes == pytest.approx(3)
    assert found.confidence > 0.85


def test_a_wrong_repair_costs_its_minutes_and_the_search_goes_on() -> None:
    """A plugged injector behind a crust and a low level: the bridge is declared first."""
    call = HiddenCall(
        "plugged", "hard", results={**NORMAL, "level": "low", "rod": "crust", "draw": "stands"}
    )
    found = worked(call, "engine")

    assert found.wrong >= 1
    assert found.minutes >= 20 + 3
    assert found.place > 1
    assert not found.declared_right_in_time


def test_the_fixed_order_follows_the_running_order() -> None:
    """The lamp comes first, and tells that the power is off: one minute."""
    call = HiddenCall("no-power", "hard", results={**NORMAL, "lamp": "dark"})

    assert worked(call, "fixed order").minutes == 1


def test_hidden_calls_are_drawn_from_a_table_that_is_not_the_handbooks() -> None:
    drawn = jittered(DATA, random.Random(1))

    assert sum(drawn["bridge", "rod"]) == pytest.approx(1)
    assert drawn["bridge", "rod"][1] != pytest.approx(0.9, abs=0.001)
    assert drawn["bridge", "rod"][1] == pytest.approx(0.9, abs=0.25)


def test_hidden_calls_are_the_same_for_the_same_seed() -> None:
    assert list(hidden_calls(DATA, 5, 7)) == list(hidden_calls(DATA, 5, 7))
    assert list(hidden_calls(DATA, 5, 7)) != list(hidden_calls(DATA, 5, 8))


def test_a_simulated_fault_shows_in_the_hidden_home() -> None:
    of = data(no_power={"simulation": [{"change": "power_on", "from": 0, "to": 0}]})
    of["faults"] = {"no-power": of["faults"]["no-power"]}
    calls = list(hidden_calls(of, 3, 1))

    assert all(call.home["control"] and call.home["water"] for call in calls)
    assert {call.results["supply-voltage"] for call in calls} == {"low-or-none"}
    assert {"lamp", "rod"} <= set(calls[0].results)


def test_measure_parts_the_figures_and_the_table_shows_them() -> None:
    measured = measure(DATA, 30, 3)

    assert list(measured["policies"]) == ["engine", "fixed order", "random order"]
    assert sum(one["engine"]["calls"] for one in measured["faults"].values()) == 30
    assert sum(one["engine"]["calls"] for one in measured["complaints"].values()) == 30
    assert measured == measure(DATA, 30, 3)
    lines = table(measured).splitlines()
    assert lines[0].split("  ")[0] == "30 hidden calls, seed 3"
    assert [line[:38].strip() for line in lines[1:12]] == [
        *list(measured["policies"]["engine"])[1:],
        "mean minutes, of the fixed order's",
    ]
