"""The strength of brine."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.brine_strength import (
    WATER_DENSITY,
    brine_density,
    dissolving_time,
    salt_in_water,
    saturation,
    strength_of_gravity,
)


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


STRENGTH = st.floats(0, 26.9)


@given(STRENGTH)
def test_a_hydrometer_reads_back_the_strength(strength):
    gravity = brine_density(strength) / WATER_DENSITY

    assert strength_of_gravity(gravity) == pytest.approx(strength, abs=1e-9)


@given(STRENGTH, st.floats(0.001, 5))
def test_stronger_brine_is_denser(strength, more):
    assert brine_density(strength) < brine_density(strength + more)


@given(st.floats(0, 49), st.floats(0.001, 10))
def test_warm_water_dissolves_more_and_sooner(celsius, warmer):
    assert saturation(celsius) <= saturation(celsius + warmer)
    assert dissolving_time(celsius) > dissolving_time(celsius + warmer)


@given(st.floats(0, 40))
def test_ten_degrees_colder_take_more_than_half_as_long_again(celsius):
    assert dissolving_time(celsius) == pytest.approx(1.6 * dissolving_time(celsius + 10))


@given(st.floats(1, 26))
def test_salt_for_each_part_of_water_and_the_strength_agree(strength):
    each = salt_in_water(strength)

    assert 100 * each / (1 + each) == pytest.approx(strength)


@given(readings(0, 99))
def test_the_salometer_counts_hundredths(answer, reading):
    inputs = {"reading": "salometer", "salometer": reading}

    assert answer("brine-strength", "degrees", **inputs) == pytest.approx(reading, abs=1e-9)
    assert answer("brine-strength", "ratio", **inputs) <= reading + 1e-9


@given(readings(0, 2880), readings(0, 500))
def test_brine_only_gets_stronger(answer, waited, more):
    now, later = (
        answer("brine-strength", "reached", waited=min(time, 2880))
        for time in (waited, waited + more)
    )

    assert 0 <= now <= later <= 100


def test_after_the_wait_the_brine_is_within_two_percent(answer):
    wait = 60 * answer("brine-strength", "wait", temperature=50)

    assert answer("brine-strength", "reached", temperature=50, waited=wait) == pytest.approx(
        98.17, abs=0.01
    )


@pytest.mark.parametrize(("times", "warned"), [(0.99, True), (1, False), (1.01, False)])
def test_reading_too_early_is_warned_about(answer, times, warned):
    waited = 60 * times * answer("brine-strength", "wait", temperature=60)
    result = run("brine-strength", {"temperature": 60, "waited": waited})

    assert any("not stood long enough" in text for text in result["warnings"]) == warned


@pytest.mark.parametrize(
    ("reading", "verdict"), [(0, "weak"), (89.9, "weak"), (90, "strong"), (100, "strong")]
)
def test_the_judgement_turns_at_ninety_degrees(reading, verdict):
    result = run("brine-strength", {"reading": "salometer", "salometer": reading})

    assert result["values"]["verdict"]["words"].startswith(verdict)


def test_a_reading_that_just_misses_the_mark_is_not_shown_as_the_mark():
    values = run("brine-strength", {"reading": "hydrometer", "gravity": 1.18})["values"]

    assert values["degrees"]["shown"] == "89\u00a0%"
    assert values["verdict"]["words"].startswith("weak")


@pytest.mark.parametrize(("gravity", "strength"), [(0.99, 0), (1, 0)])
def test_water_holds_no_salt(answer, gravity, strength):
    assert answer("brine-strength", "strength", reading="hydrometer", gravity=gravity) == strength


@pytest.mark.parametrize(
    ("inputs", "warned"),
    [
        ({"reading": "hydrometer", "gravity": 1.2}, False),
        ({"reading": "hydrometer", "gravity": 1.204}, False),  # saturated, beside water at 60 °F
        ({"reading": "hydrometer", "gravity": 1.21}, True),
        ({"reading": "salometer", "salometer": 100}, False),
        ({"reading": "salometer", "salometer": 101.9}, False),
        ({"reading": "salometer", "salometer": 104}, True),
    ],
)
def test_a_reading_above_saturation_is_cut_and_warned_about(inputs, warned):
    result = run("brine-strength", inputs)

    assert any("above saturation" in text for text in result["warnings"]) == warned
    assert result["values"]["strength"]["number"] <= 26.396


def test_without_a_reading_nothing_is_judged():
    assert set(run("brine-strength", {})["values"]) == {"full", "in_water", "wait"}
