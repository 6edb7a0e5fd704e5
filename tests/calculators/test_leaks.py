"""Small leaks, whichever way they were measured."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


@given(st.floats(0.01, 400), st.floats(0.05, 2880), st.floats(1.01, 5))
def test_a_leak_is_proportional_to_the_catch_and_the_other_way_to_the_time(
    answer, caught, time, times
):
    lost = answer("small-leak", "water_lost", caught=caught / times, time=time)
    more = answer("small-leak", "water_lost", caught=caught, time=time)

    assert more == pytest.approx(times * lost)
    assert lost == pytest.approx(caught / times / 8 / time * 1440)


@given(readings(0, 400), st.floats(0.05, 0.5))
def test_drips_lose_their_number_times_their_size(answer, drips, size):
    inputs = {"measured": "drips", "drips": drips, "drop_size": size}
    lost = answer("small-leak", "water_lost", units="metric", **inputs)

    assert lost == pytest.approx(drips * size * 1.44)


@given(readings(0, 5000), st.floats(0.05, 2880))
def test_four_ways_to_measure_the_same_leak_agree(answer, metered, time):
    by_meter = answer("small-leak", "flow", measured="house meter", metered=metered, time=time)
    if metered * 8 <= 400:
        by_cup = answer("small-leak", "flow", caught=metered * 8, time=time)
        assert by_cup == pytest.approx(by_meter)
    if metered * 231 <= 100 * 20:
        inputs = {"cistern_area": 100, "fall": metered * 2.31, "time": time}
        by_cistern = answer("small-leak", "flow", measured="toilet cistern", **inputs)
        assert by_cistern == pytest.approx(by_meter)


@pytest.mark.parametrize(
    ("caught", "counted"),
    [
        ("0 pint", "no leak"),
        ("1.59 pint", "no: too slow to turn the meter, so the bed runs out unseen"),
        ("1.6 pint", "yes: it is paid for in salt and water"),
        ("8 pint", "yes: it is paid for in salt and water"),
    ],
)
def test_a_slow_leak_does_not_turn_the_meter(caught, counted):
    result = run("small-leak", {"caught": caught, "time": "1 min"})

    assert result["values"]["counted"]["shown"] == counted


def test_a_leak_as_a_share_of_the_household():
    result = run("small-leak", {"caught": 1, "time": 1, "household_use": 240})

    assert result["values"]["extra"]["shown"] == "75\u00a0%"
