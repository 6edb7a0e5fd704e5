"""The conversion sheet: every kind with a trade's unit, each factor as the calculators have it."""

from __future__ import annotations

import pytest

from build_tools.content import conversions
from build_tools.content.unit_words import spelled_out
from calculators.quantities import KINDS, parse


def test_every_kind_with_a_unit_of_the_trade_is_on_the_sheet() -> None:
    shown = {*conversions.OWN_TABLES, *(kind.name for kind in conversions.other_kinds())}
    wanted = {kind.name for kind in KINDS.values() if conversions.trade_units(kind)}
    assert shown == wanted - {"time of day", "temperature"}


@pytest.mark.parametrize("name", conversions.OWN_TABLES)
def test_a_factor_leads_there_and_back(name: str) -> None:
    (_, trade, metric), rows = conversions.factors(KINDS[name])
    assert len(rows) == len(KINDS[name].units)
    for one, in_trade, in_metric in rows:
        there = parse(one, name).to(trade).number
        assert float(in_trade.replace(",", "")) == pytest.approx(there, rel=1e-3)
        back = parse(f"{in_metric} {metric}", name).to(trade).number
        assert back == pytest.approx(there, rel=1e-3)


def test_known_factors_stand_on_the_sheet() -> None:
    assert conversions.factors(KINDS["hardness"])[1][0] == ["1 gpg", "1", "17.12"]
    assert conversions.factors(KINDS["capacity"])[1][0] == ["1 grain", "1", "0.0648"]
    assert ["Salt dose", "1 lb/ft³ = 16.02 g/L", "1 g/L = 0.06243 lb/ft³"] in conversions.pairs()
    assert conversions.temperature() == "°F = °C × 1.8 + 32; °C = (°F − 32) ÷ 1.8"


def test_common_values_stand_in_columns() -> None:
    head, rows = conversions.common_values()
    assert head == ["gpg", "mg/L", "gal", "L", "psi", "bar", "°F", "°C"]
    assert rows[0] == ["1", "17.1", "1", "3.79", "5", "0.345", "35", "2"]
    assert rows[-1] == ["30", "514", "30", "114", "150", "10.3", "180", "82"]


@pytest.mark.parametrize(
    ("unit", "words"),
    [
        ("gpg", "grains per gallon"),
        ("ft³", "cubic feet"),
        ("L/min/m²", "liters per minute per square meter"),
        ("gpg per mg/L", "grains per gallon for each milligram per liter"),
    ],
)
def test_a_sign_is_spelled_out(unit: str, words: str) -> None:
    assert spelled_out(unit) == words


def test_every_unit_can_be_spelled_out() -> None:
    for kind in KINDS.values():
        for unit in kind.units:
            assert spelled_out(unit).strip()
