"""Brine against other models of it: density by Laliberté's equation, solubility by PHREEQC."""

import pytest
from thermo.electrochem import Laliberte_density

from calculators.brine import ROOM_OF_SALT
from calculators.brine_strength import (
    SATURATED,
    brine_density,
    salt_in_water,
    saturation,
    strength_of_gravity,
)
from calculators.units import GALLON, POUND

SALT = "7647-14-5"  # the registry number of sodium chloride
#: Temperature [°C]: percent by weight, computed with phreeqpython 1.6.2, pitzer.dat, halite.
PHREEQC = {0: 26.383, 10: 26.285, 20: 26.320, 25: 26.374, 40: 26.631, 50: 26.855}
#: Temperature [°C]: percent by weight, read in the table of the Salt Institute.
SALT_INSTITUTE = {0: 26.29, 10: 26.36, 15.56: 26.395, 21.11: 26.45, 26.67: 26.52, 37.78: 26.68}
#: Strength [percent by weight]: density [kg/L] at 20 °C, read in Poradnik fizykochemiczny, 1974.
DENSITY = {5: 1.034, 10: 1.0707, 15: 1.1085, 20: 1.1478, 24: 1.1804, 26: 1.1972}


def laliberte(strength):
    """Return the density [kg/L] of brine at 20 °C by Laliberté's equation."""
    return Laliberte_density(293.15, [strength / 100], [SALT]) / 1000


@pytest.mark.parametrize(("celsius", "percent"), PHREEQC.items())
def test_solubility_against_phreeqc(celsius, percent):
    assert saturation(celsius) == pytest.approx(percent, abs=0.15)


@pytest.mark.parametrize(("celsius", "percent"), SALT_INSTITUTE.items())
def test_solubility_against_the_salt_institute(celsius, percent):
    assert saturation(celsius) == pytest.approx(percent, abs=0.06)


@pytest.mark.parametrize("strength", [1, 3, 5, 8, 10, 13.2, 15, 20, 24, 26, 26.4])
def test_density_against_laliberte(strength):
    assert brine_density(strength) == pytest.approx(laliberte(strength), abs=0.0005)


@pytest.mark.parametrize(("strength", "density"), DENSITY.items())
def test_density_against_a_handbook(strength, density):
    assert brine_density(strength) == pytest.approx(density, abs=0.0005)


@pytest.mark.parametrize("strength", [2, 10, 20, 26])
def test_a_hydrometer_read_in_brine_of_laliberte(strength):
    gravity = laliberte(strength) / laliberte(0)

    assert strength_of_gravity(gravity) == pytest.approx(strength, abs=0.06)


def test_the_room_of_salt_follows_from_the_densities():
    water, salt = 100 - SATURATED, SATURATED
    room = (100 / brine_density(SATURATED) - water / brine_density(0)) / salt  # L/kg

    assert room * POUND / GALLON == pytest.approx(ROOM_OF_SALT, rel=0.03)


def test_half_the_salometer_is_less_than_half_the_salt():
    # Popular: half the salometer, half the salt. For each part of water it is 42 percent.
    half = salt_in_water(SATURATED / 2) / salt_in_water(SATURATED)

    assert half == pytest.approx(0.424, abs=0.001)


def test_cold_hardly_weakens_saturated_brine():
    # Popular: cold brine is weak. From 0 to 40 °C PHREEQC sees 0.25 percent, the handbooks 0.4.
    assert saturation(40) - saturation(0) < 0.45
