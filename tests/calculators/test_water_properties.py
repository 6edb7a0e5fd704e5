"""Water by its temperature."""

from hypothesis import given
from hypothesis import strategies as st

from calculators.water_properties import density, viscosity

WARMTH = st.floats(33, 138)


@given(WARMTH, st.floats(0.1, 2))
def test_warmer_water_is_thinner(temperature, more):
    assert viscosity(temperature + more) < viscosity(temperature)


@given(st.floats(40, 138), st.floats(0.1, 2))
def test_above_four_degrees_warmer_water_is_lighter(temperature, more):
    assert density(temperature + more) < density(temperature)


def test_water_is_heaviest_at_four_degrees():
    assert density(33) < density(39.169) > density(45)
    assert round(density(39.169), 3) == 999.975
