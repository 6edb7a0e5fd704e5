"""How thick and how heavy water is."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.water_properties import GRAVITY, density, viscosity

WARMTH = st.floats(32, 139)


@pytest.mark.parametrize(
    ("temperature", "expected"),
    [(32, 1.79178), (50, 1.30590), (68, 1.00157), (77, 0.889997), (104, 0.652733)],
)
def test_viscosity_at_round_temperatures(temperature, expected):
    assert viscosity(temperature) == pytest.approx(expected, rel=1e-5)


@pytest.mark.parametrize(
    ("temperature", "expected"),
    [(32, 999.84283), (50, 999.70263), (68, 998.20675), (104, 992.21521), (140, 983.17838)],
)
def test_density_at_round_temperatures(temperature, expected):
    assert density(temperature) == pytest.approx(expected, abs=1e-4)


@given(WARMTH, st.floats(0.1, 1))
def test_warmer_water_is_thinner(temperature, more):
    assert viscosity(temperature + more) < viscosity(temperature)


@given(st.floats(40, 139), st.floats(0.1, 1))
def test_warm_water_is_lighter(temperature, more):
    assert density(temperature + more) < density(temperature)


@given(st.floats(32, 140))
def test_water_is_heaviest_a_little_above_freezing(temperature):
    heaviest = density(3.983035 * 1.8 + 32)

    assert heaviest == pytest.approx(999.97495, abs=1e-9)
    assert density(temperature) <= heaviest + 1e-9


def test_gravity_is_the_standard_one():
    assert GRAVITY == 9.80665
