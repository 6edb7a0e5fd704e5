"""The load of a household."""

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

    assert counted == pytest.approx(
        answer("household-load", "water", people=people + infants, setting=20)
    )


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


def test_people_alone_may_be_none_when_something_uses_water():
    result = run("household-load", {"people": 0, "setting": 20, "other_use": 10})

    assert result["values"]["water"]["number"] == 10
