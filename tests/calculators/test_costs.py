"""Water, salt and money of regenerating."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


UNIT = {"backwash_flow": 2.4, "slow_rinse_flow": 0.45, "refill_water": 3}
PRICES = {"salt_bag_price": 8, "water_price": 6}
PRICE = readings(0, 1000)


def values(**inputs):
    result = run("regeneration-cost", {"salt": 9, "interval": 5, **UNIT, **PRICES, **inputs})
    assert result["problems"] == {}
    return {name: value["number"] for name, value in result["values"].items()}


@given(readings(0, 60), readings(0, 120), readings(0, 60), readings("0.2", 20))
def test_water_is_the_sum_of_its_steps(backwash, brine, rinse, rinse_flow):
    found = values(
        backwash_time=backwash, brine_time=brine, fast_rinse_time=rinse, fast_rinse_flow=rinse_flow
    )

    assert found["water"] == pytest.approx(2.4 * backwash + 0.45 * brine + rinse_flow * rinse + 3)
    assert found["drained"] == pytest.approx(found["water"] + 9 * 0.0438)


def test_a_blank_fast_rinse_runs_at_the_backwash_flow():
    assert values() == values(fast_rinse_flow=2.4)


@given(PRICE, PRICE, PRICE)
def test_money_is_linear_in_each_price(bag, water, sewer):
    money = values(salt_bag_price=bag, water_price=water, sewer_price=sewer)["money"]
    used = values()["water"]

    assert money == pytest.approx(9 / 40 * bag + used / 1000 * (water + sewer))


@given(st.floats(0.5, 15), st.floats(1, 4))
def test_half_as_often_costs_half(interval, times):
    often, seldom = values(interval=interval), values(interval=interval * times)

    for name in ("money_year", "water_year", "salt_year", "salt_month", "water_month"):
        assert seldom[name] == pytest.approx(often[name] / times)
    assert seldom["money"] == often["money"]


@given(st.floats(0.5, 30))
def test_a_year_is_as_many_days_as_months_together(interval):
    found = values(interval=interval)

    assert found["regenerations"] * interval == pytest.approx(30.4)
    assert found["bags_month"] * 40 == pytest.approx(found["salt_month"])
    for what in ("salt", "water", "money"):
        assert found[f"{what}_year"] / 365 == pytest.approx(found[f"{what}_month"] / 30.4)
    assert found["drained_day"] * interval == pytest.approx(found["drained"])


@given(st.floats(1, 30), st.floats(1, 20))
def test_the_other_dose_is_worked_out_like_the_first(salt, interval):
    both = values(compare="two doses", other_salt=salt, other_interval=interval)
    alone = values(salt=salt, interval=interval, refill_water=3 * salt / 9)

    for what in ("salt", "water", "money"):
        assert both[f"other_{what}_year"] == pytest.approx(alone[f"{what}_year"])
    assert both["difference_year"] == pytest.approx(
        alone["money_year"] - values()["money_year"], abs=1e-9
    )


def test_the_same_dose_costs_no_more():
    found = values(compare="two doses", other_salt=9, other_interval=5)

    assert found["difference_year"] == pytest.approx(0, abs=1e-9)


def test_water_for_capacity_needs_the_capacity():
    assert "water_for_capacity" not in values()
    assert values(capacity=30000)["water_for_capacity"] == pytest.approx(values()["water"] / 30)


def test_money_has_no_unit_and_no_currency():
    inputs = {"salt": 9, "interval": 5, **UNIT, **PRICES}
    values = run("regeneration-cost", inputs)["values"]

    money = [value for name, value in values.items() if name.startswith("money")]
    assert [value["unit"] for value in money] == ["", "", ""]
    assert all(value["label"].endswith(", about") for value in money)


def test_prices_are_never_guessed():
    problems = run("regeneration-cost", {"salt": 9, "interval": 5, **UNIT})["problems"]

    assert set(problems) == {"salt_bag_price", "water_price"}
