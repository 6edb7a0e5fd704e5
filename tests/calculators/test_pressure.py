"""Pressure lost in service."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run

USUAL = {"flow": "2 gpm", "tank_diameter": "10 in", "bed_depth": "33 in"}


def result(**changed):
    return run("service-pressure", {**USUAL, **changed})


def numbers(**changed):
    found = result(**changed)
    assert found["problems"] == {}
    return {name: value["number"] for name, value in found["values"].items()}


@given(st.floats(0.5, 40), st.floats(6, 24), st.floats(6, 72))
def test_the_parts_add_up(flow, diameter, depth):
    found = numbers(flow=flow, tank_diameter=diameter, bed_depth=depth)

    assert found["softener_loss"] == pytest.approx(found["bed_loss"] + found["valve_loss"])
    assert found["total_loss"] == pytest.approx(found["softener_loss"] + found["pipe_loss"])
    assert found["margin"] == pytest.approx(15 - found["softener_loss"])


@given(st.floats(0.5, 30), st.floats(1, 30))
def test_the_valve_goes_with_the_square_of_the_flow(flow, coefficient):
    inputs = {"flow": flow, "valve_coefficient": coefficient}

    assert numbers(**inputs)["valve_loss"] == pytest.approx((flow / coefficient) ** 2)


@given(st.floats(0.5, 30), st.floats(34, 100))
def test_the_bed_costs_less_than_in_proportion_to_the_square_and_more_when_cold(flow, temperature):
    inputs = {"temperature": temperature}
    loss = numbers(flow=flow, **inputs)["bed_loss"]

    assert 1.1 * loss <= numbers(flow=1.1 * flow, **inputs)["bed_loss"] <= 1.21 * loss
    assert numbers(flow=flow, temperature=temperature + 5)["bed_loss"] < loss


@given(st.floats(0.3, 1.1), st.floats(30, 48))
def test_fines_and_dirt_cost_more(bead, voids):
    loss = numbers(bead=f"{bead} mm", voids=voids)["bed_loss"]

    assert numbers(bead=f"{bead * 1.05} mm", voids=voids)["bed_loss"] < loss
    assert numbers(bead=f"{bead} mm", voids=voids + 1)["bed_loss"] < loss


@given(st.floats(0.5, 30), st.floats(6, 24), st.floats(6, 72))
def test_the_stay_is_the_bed_over_the_flow(flow, diameter, depth):
    stay = numbers(flow=flow, tank_diameter=diameter, bed_depth=depth)["stay"]

    cubic_feet = 3.14159265 / 4 * diameter**2 * depth / 1728
    assert stay * flow == pytest.approx(cubic_feet * 7.480519, rel=1e-6)


@given(st.decimals(0, 400, places=2))
def test_the_pipe_costs_in_proportion_to_its_length(length):
    assert numbers(pipe_length=f"{length} ft")["pipe_loss"] == pytest.approx(
        float(length) / 10 * numbers(pipe_length="10 ft")["pipe_loss"]
    )


def test_what_the_gauges_show_is_set_beside_what_is_expected():
    total = numbers()["total_loss"]

    assert "measured_share" not in numbers()
    assert numbers(measured=2 * total)["measured_share"] == pytest.approx(200)
    assert result(measured=1.99 * total)["warnings"] == []
    [said] = result(measured=2.01 * total)["warnings"]
    assert "more than twice what is expected" in said


def test_a_flow_too_fast_for_the_marks_is_told():
    assert result()["warnings"] == []
    [minutes] = result(flow="7.6 gpm", valve_coefficient=10)["warnings"]
    assert "some minutes, not all day" in minutes
    assert result(flow="7.4 gpm", valve_coefficient=10)["warnings"] == []
    assert "expect hardness to slip" in " ".join(result(flow="15.1 gpm")["warnings"])
    assert "expect hardness to slip" not in " ".join(result(flow="14.9 gpm")["warnings"])


def test_a_loss_past_the_marks_is_told():
    assert "The softener alone costs more than 15\u00a0psi" in " ".join(
        result(flow="12 gpm")["warnings"]
    )
    federal = " ".join(result(flow="9 gpm")["warnings"])
    assert "With its pipe the softener costs more than 10\u00a0psi" in federal
    assert "alone" not in federal
    assert "costs more" not in " ".join(result(flow="8 gpm")["warnings"])
