"""Molar masses and what follows from them, against molmass."""

import pytest
from molmass import Formula

from calculators import capacity, laboratory, sodium, units, water

CALCIUM_CARBONATE = Formula("CaCO3").mass
SALT = Formula("NaCl").mass


@pytest.mark.parametrize(
    ("ours", "formula"),
    [
        (units.CALCIUM_CARBONATE, "CaCO3"),
        (units.CALCIUM_OXIDE, "CaO"),
        (capacity.SODIUM_CHLORIDE, "NaCl"),
        (water.IRON, "Fe"),
        (water.MANGANESE, "Mn"),
        (laboratory.CALCIUM, "Ca"),
        (laboratory.MAGNESIUM, "Mg"),
        (sodium.SODIUM, "Na"),
        (sodium.POTASSIUM, "K"),
        (sodium.POTASSIUM_CHLORIDE, "KCl"),
    ],
)
def test_molar_mass(ours, formula):
    # The last digit of magnesium differs between tables.
    assert ours == pytest.approx(Formula(formula).mass, rel=2e-6 if formula != "Mg" else 5e-6)


def test_ceiling_of_salt():
    expected = 7000 * CALCIUM_CARBONATE / (2 * SALT)

    assert capacity.SALT_CEILING == pytest.approx(expected, rel=2e-6)
    assert round(capacity.SALT_CEILING) == 5994


def test_ceiling_of_salt_as_the_trade_press_prints_it():
    # Read: 5,989 grains for each pound, from rounder atomic weights.
    assert capacity.SALT_CEILING == pytest.approx(5989, rel=0.001)


@pytest.mark.parametrize(("ion", "molar_mass"), [("Fe", water.IRON), ("Mn", water.MANGANESE)])
def test_charge_equivalent_of_a_metal(ion, molar_mass):
    milligrams = water.charge_equivalent(1, molar_mass) * units.GRAIN_PER_GALLON

    assert milligrams == pytest.approx(CALCIUM_CARBONATE / Formula(ion).mass, rel=2e-6)
