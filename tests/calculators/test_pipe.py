"""Friction in a pipe and the weight of a column of water."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.pipe import (
    SMOOTH,
    darcy_weisbach,
    friction_factor,
    hazen_williams,
    height_pressure,
    pipe_reynolds,
)
from calculators.water_properties import viscosity

FLOW = st.floats(0.05, 30)
BORE = st.floats(0.25, 2)
TEMPERATURE = st.floats(33, 110)
MORE = st.floats(1.01, 3)


def test_a_foot_of_water_by_hand():
    # 999.0170 kg/m3 × 9.80665 m/s2 × 0.3048 m ÷ 6894.757 Pa
    assert height_pressure(60) == pytest.approx(0.4331013, abs=1e-7)


@given(st.floats(40, 109))
def test_warm_water_weighs_less(temperature):
    assert height_pressure(temperature + 1) < height_pressure(temperature)


def test_hazen_williams_by_hand():
    """10 gpm is 0.0222801 cubic feet a second; 0.785 in is 0.0654167 ft; C is 140."""
    height = 4.727 * (0.02228009 / 140) ** 1.852 / 0.06541667**4.871

    assert hazen_williams(10, 0.785, 140, 60) == pytest.approx(height * 0.4331013, rel=1e-5)
    assert hazen_williams(10, 0.785, 140) == hazen_williams(10, 0.785, 140, 60)
    assert 100 * hazen_williams(10, 0.785, 140, 68) == pytest.approx(11.10, abs=0.005)


@given(FLOW, BORE, st.floats(60, 160), MORE)
def test_the_rule_goes_with_powers_of_flow_bore_and_smoothness(flow, bore, smoothness, times):
    once = hazen_williams(flow, bore, smoothness)

    assert hazen_williams(flow * times, bore, smoothness) == pytest.approx(once * times**1.852)
    assert hazen_williams(flow, bore * times, smoothness) == pytest.approx(once / times**4.871)
    assert hazen_williams(flow, bore, smoothness * times) == pytest.approx(once / times**1.852)


def test_the_reynolds_number_by_hand():
    """10 gpm is 0.000630902 m3/s; in 19.939 mm it runs at 2.02053 m/s; water of 68 °F."""
    expected = 2.0205298 * 0.019939 * 998.2067 / 0.0010015673

    assert pipe_reynolds(10, 0.785, 68) == pytest.approx(expected, rel=1e-6)


@given(FLOW, BORE, TEMPERATURE, MORE)
def test_the_reynolds_number_grows_with_flow_and_falls_with_bore(flow, bore, temperature, times):
    once = pipe_reynolds(flow, bore, temperature)

    assert pipe_reynolds(flow * times, bore, temperature) == pytest.approx(once * times)
    assert pipe_reynolds(flow, bore * times, temperature) == pytest.approx(once / times)


@given(st.floats(10, 1000), st.floats(0, 0.01))
def test_quiet_flow_has_sixty_four_over_reynolds(reynolds, roughness):
    assert friction_factor(reynolds, roughness) == pytest.approx(64 / reynolds, rel=1e-3)


@given(st.floats(1e5, 1e7), st.floats(1e-5, 0.01))
def test_whirling_flow_agrees_with_the_implicit_equation(reynolds, roughness):
    """Both sides of the equation of Colebrook and White, within the few percent of the formula."""
    root = friction_factor(reynolds, roughness) ** -0.5

    assert root == pytest.approx(
        -2 * math.log10(roughness / 3.7 + 2.51 * root / reynolds), rel=0.015
    )


@given(st.floats(4000, 1e6), st.floats(1e-6, 0.01), MORE)
def test_rough_pipe_has_more_friction_and_fast_flow_a_smaller_factor(reynolds, roughness, times):
    once = friction_factor(reynolds, roughness)

    assert friction_factor(reynolds, roughness * times) > once
    assert friction_factor(reynolds * times, roughness) < once


@pytest.mark.parametrize(
    ("reynolds", "roughness", "expected"),
    [
        (1e5, 1e-4, 0.01846262),
        (1e5, 0, 0.01787482),
        (1e8, 0.01, 0.03788461),
        (4000, 0, 0.04058973),
        (2500, 0, 0.03514509),
        (64, 0, 1.0),
    ],
)
def test_friction_factors_by_hand(reynolds, roughness, expected):
    assert friction_factor(reynolds, roughness) == pytest.approx(expected, rel=1e-5)


@given(st.floats(0.01, 0.05), st.floats(0.5, 1.5), TEMPERATURE)
def test_a_trickle_follows_the_law_of_quiet_flow(flow, bore, temperature):
    """Loss is 128 × viscosity × flow ÷ (π × bore⁴): in proportion to flow and viscosity."""
    twice = darcy_weisbach(2 * flow, bore, temperature)

    assert twice == pytest.approx(2 * darcy_weisbach(flow, bore, temperature), rel=1e-3)
    assert darcy_weisbach(flow, 2 * bore, temperature) == pytest.approx(twice / 32, rel=1e-3)


def test_a_trickle_by_hand():
    cubic_meters = 0.05 * 231 * 0.0254**3 / 60
    pascal = 128 * viscosity(50) / 1000 * cubic_meters / (math.pi * 0.0127**4)

    assert darcy_weisbach(0.05, 0.5, 50) == pytest.approx(pascal * 0.3048 / 6894.757, rel=1e-3)


@pytest.mark.parametrize(
    ("flow", "bore", "expected"), [(10, 0.785, 9.99026), (2, 0.5, 5.058754), (5, 0.5, 25.30584)]
)
def test_friction_by_the_physical_law_by_hand(flow, bore, expected):
    assert 100 * darcy_weisbach(flow, bore, 68) == pytest.approx(expected, rel=1e-5)


@given(st.floats(2, 30), st.floats(0.25, 0.6), st.floats(33, 100), st.floats(1.01, 1.2))
def test_the_loss_rises_with_flow_and_cold_and_falls_with_bore(flow, bore, temperature, times):
    once = darcy_weisbach(flow, bore, temperature)

    assert darcy_weisbach(flow * times, bore, temperature) > once
    assert darcy_weisbach(flow, bore * times, temperature) < once
    assert darcy_weisbach(flow, bore, temperature - 1) > once


def test_smooth_tube_is_as_rough_as_drawn_tube():
    assert SMOOTH == 0.0015
