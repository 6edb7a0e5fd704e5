"""What should run at the drain."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.drain_flow import backwash_wanted
from calculators.flow import usual_backwash

SHEET = {
    "tank_diameter": 10,
    "backwash_flow": 2.4,
    "brine_draw_flow": 0.7,
    "slow_rinse_flow": 0.45,
}
TANK = {"figures_from": "tank diameter", "tank_diameter": 10, "resin_volume": 1.5}
DIAMETER = st.floats(6, 23)
TEMPERATURE = st.floats(33, 109)

TOO_LITTLE = (
    "This backwash is less than the bed wants in water of this temperature: it may not lift it "
    "enough to clean."
)
TOO_MUCH = (
    "This backwash is more than the bed wants in water of this temperature: see how far it lifts, "
    "and watch for beads at the drain."
)
NOTHING_DRAWN = "At this pressure the injector draws no brine at all."


def numbers(inputs):
    result = run("drain-flow", inputs)
    assert result["problems"] == {}
    return {name: value["number"] for name, value in result["values"].items() if "number" in value}


def test_at_fifty_degrees_the_trade_wants_the_usual_flow():
    assert backwash_wanted(12, 50) == pytest.approx(4.5 * math.pi / 4)


@pytest.mark.parametrize(
    ("diameter", "temperature", "flow"),
    [(8, 40, 1.4), (9, 70, 2.5), (10, 40, 2.1), (10, 70, 3.1), (12, 70, 4.4), (16, 40, 5.5)],
)
def test_the_table_of_the_trade(diameter, temperature, flow):
    assert round(backwash_wanted(diameter, temperature), 1) == flow


@given(DIAMETER, TEMPERATURE)
def test_each_degree_is_a_step_of_the_same_size(diameter, temperature):
    step = backwash_wanted(diameter, temperature + 1) - backwash_wanted(diameter, temperature)

    assert step == pytest.approx(0.0125 * usual_backwash(diameter))


@given(DIAMETER, TEMPERATURE)
def test_warm_water_wants_more_backwash_by_both_ways(answer, diameter, temperature):
    cold = numbers({**SHEET, "tank_diameter": diameter, "temperature": temperature})
    warm = numbers({**SHEET, "tank_diameter": diameter, "temperature": temperature + 1})

    assert warm["backwash_wanted"] > cold["backwash_wanted"] > 0
    assert warm["backwash_for_half"] > cold["backwash_for_half"] > 0
    assert warm["backwash"] == cold["backwash"]


@given(DIAMETER, TEMPERATURE)
def test_the_flow_for_half_lifts_the_bed_by_half(answer, diameter, temperature):
    half = numbers({**SHEET, "tank_diameter": diameter, "temperature": temperature})
    lifted = answer(
        "bed-expansion",
        "expansion",
        flow=half["backwash_for_half"],
        tank_diameter=diameter,
        temperature=temperature,
        bed_depth=30,
        tank_height=60,
    )

    assert lifted == pytest.approx(50)


def test_the_flows_of_the_sheet():
    values = numbers(SHEET)

    assert values["backwash"] == values["fast_rinse"] == 2.4
    assert values["backwash_low"] == pytest.approx(2.04)
    assert values["backwash_high"] == pytest.approx(2.76)
    assert values["brine_draw"] == 0.7
    assert values["slow_rinse"] == 0.45
    assert values["backwash_wanted"] == pytest.approx(usual_backwash(10) * 1.0625)
    assert values["backwash_for_half"] == pytest.approx(2.8784408, rel=1e-6)


def test_fast_rinse_may_have_its_own_flow():
    values = numbers({**SHEET, "fast_rinse_flow": 1.5})

    assert (values["fast_rinse"], values["backwash"]) == (1.5, 2.4)


def test_the_usual_flows_of_a_tank():
    values = numbers({**TANK, "pressure": 23.75})

    assert values["backwash"] == values["fast_rinse"] == pytest.approx(usual_backwash(10))
    assert values["slow_rinse"] == pytest.approx(0.3 * 1.5 * 0.475**0.5)
    assert values["brine_draw"] == pytest.approx(0.16 * 1.5 / 2 + 0.45 * 0.475**0.5)


@given(st.floats(0.5, 3), st.floats(16, 80), st.floats(1.01, 3))
def test_injector_flows_are_in_proportion_to_the_resin(resin, pressure, times):
    small = numbers({**TANK, "resin_volume": resin, "pressure": pressure})
    large = numbers({**TANK, "resin_volume": resin * times, "pressure": pressure})

    assert large["slow_rinse"] == pytest.approx(times * small["slow_rinse"])
    assert large["brine_draw"] == pytest.approx(times * small["brine_draw"])
    assert small["brine_draw"] > small["slow_rinse"]


@pytest.mark.parametrize(("pressure", "warned"), [(10, True), (15, True), (16, False)])
def test_at_low_pressure_no_brine_is_drawn(pressure, warned):
    result = run("drain-flow", {**TANK, "pressure": pressure})
    values = result["values"]

    assert (NOTHING_DRAWN in result["warnings"]) == warned
    assert (values["brine_draw"]["number"] == values["slow_rinse"]["number"]) == warned


@pytest.mark.parametrize(("draw", "refused"), [(0.46, False), (0.45, True), (0.4, True)])
def test_a_sheet_on_which_no_brine_is_drawn_is_refused(draw, refused):
    result = run("drain-flow", {**SHEET, "brine_draw_flow": draw})

    assert result["problems"] == (
        {
            "brine_draw_flow": "While brine is drawn more must run at the drain than in the slow "
            "rinse: check the two figures."
        }
        if refused
        else {}
    )


@pytest.mark.parametrize(
    ("share", "warnings"),
    [
        (0.849, [TOO_LITTLE]),
        (0.85, []),
        (1, []),
        (1.15, []),
        (1.151, [TOO_MUCH]),
    ],
)
@pytest.mark.parametrize("temperature", [40, 50, 80])
def test_a_backwash_far_from_the_one_wanted_is_warned_about(share, warnings, temperature):
    flow = share * backwash_wanted(10, temperature)

    result = run("drain-flow", {**SHEET, "backwash_flow": flow, "temperature": temperature})

    assert result["warnings"] == warnings


@pytest.mark.parametrize(
    ("units", "working"),
    [("us", "1.25 % × (68 °F − 50 °F)"), ("metric", "2.25 % × (20 °C − 10 °C)")],
)
def test_the_change_by_degree_is_that_of_the_readers_own_degree(units, working):
    inputs = {
        "tank_diameter": "10 in",
        "backwash_flow": "2.4 gpm",
        "brine_draw_flow": "0.7 gpm",
        "slow_rinse_flow": "0.45 gpm",
        "temperature": "68 °F",
    }
    steps = run("drain-flow", inputs, units)["workings"]
    step = next(step for step in steps if "for each degree" in step["sentence"])

    assert step["numbers"].replace("\u00a0", " ") == f"100 % + {working}"
    assert step["result"].replace("\u00a0", " ") == "122.5 %"


def test_nothing_runs_in_the_other_positions():
    assert run("drain-flow", SHEET)["values"]["elsewhere"]["words"] == (
        "nothing: a trickle means a leaking seal"
    )
