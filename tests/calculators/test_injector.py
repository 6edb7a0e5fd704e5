"""The injector."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.injector import FULL_BRINE, motive_at, strength_at_bed, suction_at

PRESSURE, FLOW, AT = st.floats(16, 125), st.floats(0.05, 5), st.floats(20, 125)


@given(PRESSURE, FLOW, AT)
def test_four_times_the_pressure_passes_twice_the_water(pressure, flow, at):
    assert motive_at(4 * pressure, flow, at) == pytest.approx(2 * motive_at(pressure, flow, at))
    assert motive_at(at, flow, at) == pytest.approx(flow)
    assert suction_at(at, flow, at) == pytest.approx(flow)


@given(st.floats(0, 15), FLOW, AT)
def test_up_to_the_least_pressure_nothing_is_drawn(pressure, flow, at):
    assert suction_at(pressure, flow, at) == 0


@given(PRESSURE, FLOW, AT)
def test_suction_fails_before_the_nozzle_does(pressure, flow, at):
    share = suction_at(pressure, flow, at) / motive_at(pressure, flow, at)

    assert suction_at(pressure + 1, flow, at) > suction_at(pressure, flow, at) > 0
    assert (share <= 1 + 1e-9) == (pressure <= at + 1e-9) or pressure == pytest.approx(at)


@given(FLOW, FLOW)
def test_salt_is_neither_made_nor_lost_when_brine_is_thinned(suction, motive):
    strength = strength_at_bed(suction, motive)

    assert strength * (1.2 * suction + motive) == pytest.approx(FULL_BRINE * 1.2 * suction)
    assert 0 < strength < FULL_BRINE
    assert strength_at_bed(0, motive) == 0
