"""How long a bed lasts under each kind of control."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.quantities import working_number


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


CONTROLS = ["time clock", "delayed meter", "immediate meter", "twin tank"]
METERED = CONTROLS[1:]


@given(
    st.sampled_from(CONTROLS),
    st.floats(5000, 60000),
    st.floats(5, 40),
    st.floats(10, 300),
    st.floats(1.01, 3),
)
def test_the_interval_falls_with_water(control, capacity, setting, water, times):
    inputs = {"capacity": capacity, "setting": setting, "control": control}
    slow = run("regeneration-interval", {**inputs, "water": water})
    fast = run("regeneration-interval", {**inputs, "water": water * times})
    assume(slow["values"] and fast["values"])

    assert fast["values"]["interval"]["number"] <= slow["values"]["interval"]["number"]


@given(
    st.sampled_from(METERED), st.floats(5000, 60000), st.floats(5, 40), st.sampled_from([1, 10, 50])
)
def test_the_counter_is_a_multiple_of_its_step_and_leaves_the_reserve(
    control, capacity, setting, step
):
    water = 100
    inputs = {"capacity": capacity, "setting": setting, "control": control, "water": water}
    values = run("regeneration-interval", {**inputs, "meter_step": step})["values"]
    assume(values)
    total, counter = values["total_water"]["number"], values["counter"]["number"]
    reserve = {"delayed meter": water, "immediate meter": 0.03 * total, "twin tank": 0}[control]

    assert total == pytest.approx(capacity / setting)
    assert counter % step == 0
    assert -1e-6 <= total - reserve - counter < step + 1e-6
    late = 0.5 if control == "delayed meter" else 0
    assert values["interval"]["number"] == pytest.approx(min(counter / water + late, 14))


@given(st.floats(5000, 60000), st.floats(5, 40), st.floats(10, 100))
def test_a_clock_counts_whole_days_that_the_bed_lasts(capacity, setting, water):
    inputs = {"capacity": capacity, "setting": setting, "control": "time clock", "water": water}
    result = run("regeneration-interval", inputs)
    assume(result["values"])
    days = result["values"]["interval"]["number"]

    assert days == math.floor(days)
    assert days * water <= capacity / setting * (1 + 1e-9)
    assert days == 14 or capacity / setting < (days + 1) * water
    assert "counter" not in result["values"]


@given(readings(0, 500), readings(0, 200))
def test_a_larger_reserve_never_raises_the_counter(answer, reserve, more):
    inputs = {"capacity": 30000, "setting": 20, "water": 240}
    small = answer("regeneration-interval", "counter", reserve=reserve, **inputs)

    assert answer("regeneration-interval", "counter", reserve=reserve + more, **inputs) <= small


@pytest.mark.parametrize(
    ("water", "warning"),
    [
        (700, "The interval is very short"),
        (240, None),
        (50, "The bed would stand longer than the longest interval"),
    ],
)
def test_odd_intervals_are_warned_about(water, warning):
    result = run("regeneration-interval", {"capacity": 30000, "setting": 20, "water": water})
    warnings = result["warnings"]

    assert [text.startswith(warning) for text in warnings] == [True] if warning else warnings == []


@pytest.mark.parametrize(
    ("control", "longest", "days"),
    [("time clock", 4.5, 4), ("delayed meter", 4.5, 4.5), ("immediate meter", 30, 145 / 24)],
)
def test_no_interval_is_longer_than_the_longest(control, longest, days):
    inputs = {"capacity": 30000, "setting": 20, "water": 240, "control": control}
    result = run("regeneration-interval", {**inputs, "longest_interval": longest})

    assert result["values"]["interval"]["number"] == pytest.approx(days)
    assert result["workings"][-1]["result"] == f"{working_number(days)}\u00a0days"
