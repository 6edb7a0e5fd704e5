"""The load of a household, and small leaks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


PEOPLE = st.integers(1, 15)
WATER = st.floats(10, 300)
SETTING = st.floats(0.5, 260)


@given(PEOPLE, WATER, SETTING)
def test_load_is_linear_in_people(answer, people, water, setting):
    inputs = {"water_per_person": water, "setting": setting}
    once = answer("household-load", "load", people=people, **inputs)

    assert once == pytest.approx(people * water * setting)
    assert answer("household-load", "load", people=2 * people, **inputs) == pytest.approx(2 * once)


@given(PEOPLE, SETTING, readings(0, 5000), readings(0, 2000), readings(0, 5000))
def test_leaks_and_other_uses_add_up(answer, people, setting, leak, other, outdoor):
    plain = answer("household-load", "water", people=people, setting=setting)
    inputs = {"leak": leak, "other_use": other, "outdoor_use": outdoor}
    total = answer("household-load", "water", people=people, setting=setting, **inputs)

    assert total == pytest.approx(plain + leak + other + outdoor)


@given(st.integers(0, 10), PEOPLE)
def test_an_infant_counts_as_a_person(answer, infants, people):
    counted = answer("household-load", "water", people=people, infants=infants, setting=20)

    assert counted == pytest.approx(answer("household-load", "water", people=people + infants, setting=20))


@given(PEOPLE, st.integers(0, 900), st.integers(0, 30), st.floats(10, 100))
def test_the_busiest_day_is_never_below_a_usual_one(answer, people, nights, at_once, share):
    inputs = {
        "people": people,
        "setting": 20,
        "guest_nights": nights,
        "guests_at_once": at_once,
        "softened_share": share,
    }
    usual = answer("household-load", "water", **inputs)
    busiest = answer("household-load", "busiest_day", **inputs)

    assert busiest >= usual - 1e-9
    assert busiest == pytest.approx(usual + max(0, at_once - nights / 30.4) * 60 * share / 100)


@given(PEOPLE, st.floats(10, 100))
def test_only_the_softened_share_counts(answer, people, share):
    whole = answer("household-load", "water", people=people, setting=20)
    part = answer("household-load", "water", people=people, setting=20, softened_share=share)

    assert part == pytest.approx(whole * share / 100)


@given(st.floats(0.01, 400), st.floats(0.05, 2880), st.floats(1.01, 5))
def test_a_leak_is_proportional_to_the_catch_and_the_other_way_to_the_time(answer, caught, time, times):
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


def test_people_alone_may_be_none_when_something_uses_water():
    result = run("household-load", {"people": 0, "setting": 20, "other_use": 10})

    assert result["values"]["water"]["number"] == 10
