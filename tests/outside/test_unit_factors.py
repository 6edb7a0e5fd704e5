"""Every unit factor against pint; what pint does not know, against its definition."""

import pytest
from molmass import Formula
from pint import UnitRegistry

from calculators.quantities import KINDS, convert

REGISTRY = UnitRegistry()
CALCIUM_CARBONATE = Formula("CaCO3").mass
CALCIUM_OXIDE = Formula("CaO").mass

#: Units that pint spells otherwise; "/" and the rest of a ratio are taken as they stand.
SPELLED = {
    "gal": "gallon",
    "qt": "quart",
    "fl oz": "fluid_ounce",
    "days": "day",
    "lb": "pound",
    "oz": "ounce",
    "in": "inch",
    "h": "hour",
    "in²": "inch**2",
    "ft²": "foot**2",
    "ft³": "foot**3",
    "cm²": "cm**2",
    "m²": "m**2",
    "m³": "m**3",
    "grains": "grain",
    "kilograins": "kilograin",
    "gpm": "(gallon/minute)",
    "gpg": "(grain/gallon)",
    "°Clark": "grain/imperial_gallon",
    "gpg per mg/L": "(grain/gallon)/(mg/L)",
    "mg/L per mg/L": "dimensionless",
    "µg/L": "microgram/L",
    "%": "percent",
    "Ω": "ohm",
    "V": "volt",
    "A": "ampere",
    "mA": "milliampere",
    "L/min/m²": "L/min/m**2",
    "L/min/L": "(L/min/L)",
    "gpm/√psi": "(gallon/minute/psi**0.5)",
    "L/min/√bar": "(L/min/bar**0.5)",
    "m³/h/√bar": "(m**3/hour/bar**0.5)",
}

#: (kind, unit): (worth, in this unit, why pint cannot say).
BY_DEFINITION = {
    ("hardness", "°dH"): (
        10 * CALCIUM_CARBONATE / CALCIUM_OXIDE,
        "mg/L",
        "10 mg/L of calcium oxide, told as calcium carbonate",
    ),
    ("hardness", "°fH"): (10, "mg/L", "10 mg/L of calcium carbonate, by definition"),
    ("hardness", "mmol/L"): (CALCIUM_CARBONATE, "mg/L", "amount of calcium carbonate"),
    ("hardness", "meq/L"): (
        CALCIUM_CARBONATE / 2,
        "mg/L",
        "half an amount: calcium has two charges",
    ),
    ("capacity", "eq"): (CALCIUM_CARBONATE / 2, "g", "half an amount: calcium has two charges"),
    ("resin capacity", "eq/L"): (CALCIUM_CARBONATE / 2, "g/L", "half an amount of carbonate"),
    ("time of day", "12-hour clock"): (1, "24-hour clock", "one reading, shown in two ways"),
    ("time of day", "24-hour clock"): (1, "12-hour clock", "one reading, shown in two ways"),
    ("drips", "drips/min"): (1 / 60, "drips/s", "a count; only the time converts"),
    ("drips", "drips/s"): (60, "drips/min", "a count; only the time converts"),
}

KNOWN_TO_PINT = [
    (kind.name, unit)
    for kind in KINDS.values()
    for unit in kind.units
    if (kind.name, unit) not in BY_DEFINITION and kind.name != "temperature"
]


def in_pint(unit):
    if unit in SPELLED:
        return REGISTRY.parse_expression(SPELLED[unit])
    top, divided, bottom = unit.partition("/")
    quantity = REGISTRY.parse_expression(SPELLED.get(top, top))
    return quantity / in_pint(bottom) if divided else quantity


@pytest.mark.parametrize(("kind", "unit"), KNOWN_TO_PINT)
def test_factor_against_pint(kind, unit):
    for other in KINDS[kind].units:
        if (kind, other) in BY_DEFINITION:
            continue
        expected = (1 * in_pint(unit)).to(in_pint(other).units).m / in_pint(other).m
        assert convert(1.0, unit, other, kind) == pytest.approx(expected, rel=1e-12), other


@pytest.mark.parametrize(("kind", "unit"), BY_DEFINITION)
def test_factor_against_its_definition(kind, unit):
    worth, other, _ = BY_DEFINITION[kind, unit]

    assert convert(1.0, unit, other, kind) == pytest.approx(worth, rel=1e-6)


@pytest.mark.parametrize("degrees", [-40, 0, 32, 55, 60, 120, 140, 212])
def test_temperatures_against_pint(degrees):
    celsius = REGISTRY.Quantity(degrees, "degF").to("degC").m
    fahrenheit = REGISTRY.Quantity(degrees, "degC").to("degF").m

    assert convert(degrees, "°F", "°C", "temperature") == pytest.approx(celsius, abs=1e-9)
    assert convert(degrees, "°C", "°F", "temperature") == pytest.approx(fahrenheit, abs=1e-9)


def test_temperatures_have_no_third_unit():
    assert KINDS["temperature"].units == ("°F", "°C")


def test_every_unit_checked_by_definition_is_in_the_tables():
    assert all(unit in KINDS[kind].units for kind, unit in BY_DEFINITION)
