"""What runs at the drain."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.drain_flow import backwash_wanted

SHEET = {
    "tank_diameter": "10 in",
    "backwash_flow": "2.4 gpm",
    "brine_draw_flow": "0.7 gpm",
    "slow_rinse_flow": "0.45 gpm",
}
BY_TANK = {"tank_diameter": "10 in", "figures_from": "tank diameter", "resin_volume": "1.5 ft³"}


def numbers(inputs, **changed):
    found = run("drain-flow", {**inputs, **changed})
    assert found["problems"] == {}
    return {name: one["number"] for name, one in found["values"].items() if "number" in one}


def warnings(inputs, **changed):
    return run("drain-flow", {**inputs, **changed})["warnings"]


@given(st.floats(6, 24), st.floats(33, 100), st.floats(0.1, 10))
def test_the_trade_wants_more_in_warm_water_and_in_wide_tanks(diameter, temperature, more):
    wanted = backwash_wanted(diameter, temperature)

    assert backwash_wanted(diameter, temperature + more) > wanted
    assert backwash_wanted(diameter * 1.1, temperature) == pytest.approx(1.21 * wanted)


@given(st.floats(0.1, 30), st.floats(33, 110))
def test_the_rating_is_expected_whatever_the_temperature(flow, temperature):
    found = numbers(SHEET, backwash_flow=flow, temperature=temperature)

    assert found["backwash"] == found["fast_rinse"] == pytest.approx(flow)
    assert found["backwash_low"] == pytest.approx(0.85 * flow)
    assert found["backwash_high"] == pytest.approx(1.15 * flow)


def test_a_fast_rinse_of_its_own_is_taken():
    assert numbers(SHEET, fast_rinse_flow="3 gpm")["fast_rinse"] == pytest.approx(3)


def test_without_a_rating_the_tank_and_the_resin_give_the_usual_flows():
    """4.5 gpm for each square foot, 0.30 and 0.16 for each cubic foot; common practice."""
    found = numbers(BY_TANK)

    assert found["backwash"] == found["fast_rinse"] == pytest.approx(2.4544, abs=1e-4)
    assert found["slow_rinse"] == pytest.approx(0.45)
    assert found["brine_draw"] == pytest.approx(0.69)


def test_no_pressure_draws_no_brine():
    said = warnings(BY_TANK, pressure="15 psi")

    assert "At this pressure the injector draws no brine at all." in said
    assert (
        numbers(BY_TANK, pressure="15 psi")["brine_draw"]
        == numbers(BY_TANK, pressure="15 psi")["slow_rinse"]
    )


def test_nothing_is_expected_elsewhere():
    assert "nothing" in run("drain-flow", SHEET)["values"]["elsewhere"]["words"]


def test_the_sheet_must_have_more_flow_while_brine_is_drawn():
    assert (
        "brine_draw_flow" in run("drain-flow", {**SHEET, "slow_rinse_flow": "0.7 gpm"})["problems"]
    )


def test_water_too_warm_or_too_cold_for_the_rating_is_told():
    assert warnings(SHEET) == []
    assert warnings(SHEET, temperature="62 °F") == []
    [warm] = warnings(SHEET, temperature="63 °F")
    assert "less than wanted" in warm
    assert warnings(SHEET, temperature="38.5 °F") == []
    [cold] = warnings(SHEET, temperature="37.5 °F")
    assert "more than wanted" in cold
