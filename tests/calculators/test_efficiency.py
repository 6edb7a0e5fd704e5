"""A setting beside the published marks."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.capacity import SALT_CEILING

SALT, EFFICIENCY = st.floats(1, 30), st.floats(600, 5990)


@given(SALT, EFFICIENCY)
def test_efficiency_is_capacity_for_salt(answer, salt, efficiency):
    inputs = {"salt": salt, "capacity": salt * efficiency}
    assume(500 <= inputs["capacity"] <= 400000)

    assert answer("salt-efficiency", "efficiency", **inputs) == pytest.approx(efficiency)
    share = answer("salt-efficiency", "share_of_ceiling", **inputs)
    assert share == pytest.approx(100 * efficiency / SALT_CEILING)
    assert share <= 100


@pytest.mark.parametrize(
    ("efficiency", "met"),
    [
        (2849, []),
        (2850, ["old"]),
        (3349, ["old"]),
        (3350, ["efficient", "old"]),
        (3999, ["efficient", "old"]),
        (4000, ["efficient", "strict", "old"]),
    ],
)
@pytest.mark.parametrize("units", ["us", "metric"])
def test_a_mark_is_met_at_its_own_value(efficiency, met, units):
    inputs = {"salt": "3 lb", "capacity": f"{3 * efficiency} grains"}
    values = run("salt-efficiency", inputs, units)["values"]

    names = ("efficient", "strict", "old")
    assert [name for name in names if values[name]["words"] == "met"] == met


@pytest.mark.parametrize(
    ("gallons", "met"),
    [
        (50, ["efficient_water", "strict_water"]),
        (51, ["efficient_water"]),
        (100, ["efficient_water"]),
        (101, []),
    ],
)
@pytest.mark.parametrize("units", ["us", "metric"])
def test_a_water_mark_is_met_at_its_own_value(gallons, met, units):
    inputs = {"salt": "6 lb", "capacity": "20000 grains", "water": f"{gallons} gal"}
    values = run("salt-efficiency", inputs, units)["values"]

    names = ("efficient_water", "strict_water")
    assert [name for name in names if values[name]["words"] == "met"] == met


@pytest.mark.parametrize(("capacity", "refused"), [(5990, False), (6000, True)])
def test_more_than_the_salt_can_exchange_is_refused(capacity, refused):
    result = run("salt-efficiency", {"salt": 1, "capacity": capacity})

    assert ("no salt can exchange" in result["problems"].get("capacity", "")) == refused


def test_the_greatest_capacity_at_a_small_dose_is_refused():
    result = run("salt-efficiency", {"salt": 4.5, "capacity": 48000})

    assert "the greatest the tank can have" in result["problems"]["capacity"]


def test_without_water_there_is_no_water_mark():
    values = run("salt-efficiency", {"salt": 6, "capacity": 20000})["values"]

    assert "water_for_capacity" not in values
    assert "strict_water" not in values


def test_what_just_misses_a_mark_is_not_shown_as_the_mark():
    values = run("salt-efficiency", {"salt": 9, "capacity": 30110, "water": 76.5})["values"]

    assert (values["efficient"]["words"], values["strict_water"]["words"]) == ("missed", "missed")
    assert values["efficiency"]["shown"] == "3,346\u00a0grains/lb"
    assert values["water_for_capacity"]["shown"] == "2.54\u00a0gal/kilograin"
