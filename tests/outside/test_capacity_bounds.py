"""Limits that no capacity may pass: stoichiometry, the resin itself, equilibrium in a column."""

import pytest
from molmass import Formula
from pint import UnitRegistry

from calculators import run
from calculators.capacity import capacity_of_dose

REGISTRY = UnitRegistry()
CEILING = 7000 * Formula("CaCO3").mass / (2 * Formula("NaCl").mass)  # grains/lb

#: Dose [lb/ft3]: greatest capacity [grains/ft3] that equilibrium allows, computed with phreeqpython
#: (phreeqc.dat, 40 cells, resin of 2.0 eq/L, 15 °C, 10 percent brine, 20 gpg water). A bound, not
#: a prediction: no real bed comes to equilibrium.
EQUILIBRIUM = {
    4: 24000,
    5: 29600,
    6: 34200,
    8: 39800,
    10: 42300,
    12: 43200,
    15: 43500,
    20: 43600,
}
#: Total exchange capacity of new gel resin, read in the trade press: 2.0 eq/L.
RESIN = 2.0
#: Dose: published operating capacities, lowest and highest (read in the trade press and in the
#: administrative code of Virginia; the pairs at 8 and 10 lb from memory).
PUBLISHED = {
    6: (18000, 22000),
    8: (22000, 24000),
    10: (25000, 27000),
    12: (27000, 30000),
    15: (27000, 30000),
}


@pytest.mark.parametrize(("dose", "bound"), EQUILIBRIUM.items())
def test_capacity_stays_below_equilibrium(dose, bound):
    assert capacity_of_dose(dose) < bound


@pytest.mark.parametrize("dose", [0.01, 0.5, 1, 2, 3, 6, 10, 15, 25])
def test_salt_never_gives_more_than_its_ions(dose):
    assert capacity_of_dose(dose) < CEILING * dose


def test_capacity_stays_below_the_total_of_the_resin():
    total = (
        (RESIN * Formula("CaCO3").mass / 2 * REGISTRY.gram / REGISTRY.liter).to("grain/foot**3").m
    )

    assert total == pytest.approx(43738, abs=1)
    assert capacity_of_dose(25) < total


@pytest.mark.parametrize(("dose", "published"), PUBLISHED.items())
def test_capacity_lies_among_published_ones(dose, published):
    low, high = published

    assert low * 0.999 <= capacity_of_dose(dose) <= high


def test_no_input_that_is_accepted_passes_the_ceiling():
    checked = 0
    for condition in (10, 50, 100, 105, 110, 115, 120):
        for salt in (1, 1.1, 1.5, 2, 3, 6, 25):
            result = run(
                "resin-capacity",
                {"salt": salt, "resin_volume": 1, "resin_condition": condition},
            )
            if result["values"]:
                checked += 1
                assert result["values"]["efficiency"]["number"] < CEILING
                assert result["values"]["share_of_ceiling"]["number"] < 100

    assert checked >= 28
