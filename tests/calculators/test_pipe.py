"""Friction and height in a pipe."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.pipe import (
    darcy_weisbach,
    friction_factor,
    hazen_williams,
    height_pressure,
    pipe_reynolds,
)

FLOW, BORE, WARMTH = st.floats(0.05, 30), st.floats(0.25, 4), st.floats(33, 110)


@given(FLOW, BORE, st.floats(60, 160), st.floats(1.01, 3))
def test_the_rule_goes_with_powers_of_flow_bore_and_smoothness(flow, bore, smoothness, times):
    loss = hazen_williams(flow, bore, smoothness)

    assert hazen_williams(flow * times, bore, smoothness) == pytest.approx(loss * times**1.852)
    assert hazen_williams(flow, bore * times, smoothness) == pytest.approx(loss / times**4.871)
    assert hazen_williams(flow, bore, smoothness * times) == pytest.approx(loss / times**1.852)


@given(FLOW, BORE, WARMTH, st.floats(1.05, 3))
def test_by_the_law_more_flow_costs_more_and_a_wider_bore_less(flow, bore, temperature, times):
    loss = darcy_weisbach(flow, bore, temperature)

    assert darcy_weisbach(flow * times, bore, temperature) > loss
    assert darcy_weisbach(flow, bore * times, temperature) < loss


@given(st.floats(4, 30), st.floats(0.25, 1), st.floats(33, 100))
def test_by_the_law_cold_water_costs_more(flow, bore, temperature):
    assert darcy_weisbach(flow, bore, temperature) > darcy_weisbach(flow, bore, temperature + 10)


@given(FLOW, BORE, WARMTH, st.floats(1.01, 3))
def test_the_reynolds_number_goes_with_flow_over_bore(flow, bore, temperature, times):
    number = pipe_reynolds(flow, bore, temperature)

    assert pipe_reynolds(flow * times, bore, temperature) == pytest.approx(number * times)
    assert pipe_reynolds(flow, bore * times, temperature) == pytest.approx(number / times)
    assert pipe_reynolds(flow, bore, temperature + 5) > number


@given(st.floats(10, 1500))
def test_quiet_flow_follows_the_law_of_poiseuille(reynolds):
    assert friction_factor(reynolds, 1e-4) == pytest.approx(64 / reynolds, rel=0.002)


@given(st.floats(5e3, 1e6), st.floats(1e-6, 0.01))
def test_whirling_flow_is_near_the_explicit_form_of_colebrook(reynolds, roughness):
    """Against the form of Haaland, from memory: within three percent."""
    haaland = (-1.8 * math.log10((roughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2

    assert friction_factor(reynolds, roughness) == pytest.approx(haaland, rel=0.035)


def test_height_presses_less_in_warm_water():
    assert height_pressure(110) < height_pressure(40)
    assert height_pressure(40) == pytest.approx(0.4335, abs=0.0001)
