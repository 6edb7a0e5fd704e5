"""The injector: what it draws, and how far it thins."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.injector import (
    USUAL_MOTIVE,
    USUAL_PRESSURE,
    USUAL_SUCTION,
    motive_at,
    strength_at_bed,
    suction_at,
)

PRESSURE = st.floats(1, 125)
FLOW = st.floats(0.02, 10)


@given(PRESSURE, FLOW, st.floats(20, 125))
def test_four_times_the_pressure_drives_twice_the_water(pressure, flow, flow_pressure):
    once = motive_at(pressure, flow, flow_pressure)

    assert motive_at(4 * pressure, flow, flow_pressure) == pytest.approx(2 * once)
    assert motive_at(flow_pressure, flow, flow_pressure) == pytest.approx(flow)
    assert motive_at(0, flow, flow_pressure) == 0


@given(st.floats(0, 15), FLOW)
def test_up_to_fifteen_psi_nothing_is_drawn(pressure, flow):
    assert suction_at(pressure, flow, 50) == 0
    assert suction_at(15 * (1 + 1e-15), flow, 50) == 0
    assert suction_at(15.001, flow, 50) > 0


@given(st.floats(15.1, 125), st.floats(0.1, 50), FLOW)
def test_more_pressure_draws_more(pressure, more, flow):
    assert suction_at(pressure + more, flow, 50) > suction_at(pressure, flow, 50)


@given(st.floats(0.1, 50), FLOW, st.floats(20, 125))
def test_four_times_the_pressure_above_the_least_draws_twice(above, flow, flow_pressure):
    once = suction_at(15 + above, flow, flow_pressure)

    assert suction_at(15 + 4 * above, flow, flow_pressure) == pytest.approx(2 * once)
    assert suction_at(flow_pressure, flow, flow_pressure) == pytest.approx(flow)


def test_flows_at_low_pressure_by_hand():
    assert motive_at(18, 0.5, 50) == pytest.approx(0.3)  # the square root of 0.36
    assert suction_at(23.75, 0.24, 50) == pytest.approx(0.12)  # a quarter of 35 psi above 15


@given(FLOW, FLOW)
def test_the_salt_drawn_is_the_salt_that_reaches_the_bed(suction, motive):
    """In pounds of water: a measure of full brine weighs 1.2 and 26.4 percent of it is salt."""
    salt = 0.264 * 1.2 * suction
    all_weight = 1.2 * suction + motive

    assert strength_at_bed(suction, motive) / 100 * all_weight == pytest.approx(salt)


@given(FLOW, FLOW, st.floats(1.01, 5))
def test_more_suction_is_stronger_and_more_water_weaker(suction, motive, times):
    strength = strength_at_bed(suction, motive)

    assert strength_at_bed(suction * times, motive) > strength
    assert strength_at_bed(suction, motive * times) < strength
    assert strength_at_bed(suction * times, motive * times) == pytest.approx(strength)
    assert 0 < strength < 26.4
    assert strength_at_bed(0, motive) == 0


def test_equal_parts_by_weight_halve_the_strength():
    assert strength_at_bed(1, 1.2) == pytest.approx(13.2)


def test_the_usual_flows():
    assert (USUAL_SUCTION, USUAL_MOTIVE, USUAL_PRESSURE) == (0.16, 0.30, 50)
