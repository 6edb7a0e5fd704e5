"""How long resin lasts in chlorinated water."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.resin import warmth_factor, years_of_resin

CHLORINE, TEMPERATURE = st.floats(0.01, 5), st.floats(33, 120)


@given(CHLORINE, st.floats(1, 10))
def test_more_chlorine_never_lengthens_life(chlorine, times):
    assert years_of_resin(chlorine * times) <= years_of_resin(chlorine) <= 20


@given(st.floats(0.5, 2), st.floats(1, 4))
def test_below_the_longest_life_years_go_against_chlorine(chlorine, times):
    assert years_of_resin(chlorine * times) * times == pytest.approx(years_of_resin(chlorine))


@given(TEMPERATURE)
def test_ten_degrees_celsius_halve_the_life(temperature):
    assert warmth_factor(temperature + 18) == pytest.approx(warmth_factor(temperature) / 2)


@given(
    CHLORINE,
    TEMPERATURE,
    st.sampled_from(["8 percent", "10 percent"]),
    st.sampled_from(["no", "yes"]),
)
def test_the_range_encloses_the_years(chlorine, temperature, crosslinking, metals):
    inputs = {
        "chlorine": chlorine,
        "temperature": temperature,
        "crosslinking": crosslinking,
        "metals": metals,
    }
    values = run("resin-life", inputs)["values"]
    few, years, many = (values[name]["number"] for name in ("few", "years", "many"))

    assert few == pytest.approx(years / 2)
    assert many == pytest.approx(min(20, years * 1.5))
    assert 0 < years <= 20


@pytest.mark.parametrize(
    ("inputs", "years"),
    [
        ({}, 5),
        ({"crosslinking": "10 percent"}, 7.5),
        ({"metals": "yes"}, 2.5),
        ({"crosslinking": "10 percent", "metals": "yes"}, 3.75),
        ({"temperature": 78}, 2.5),
    ],
)
def test_each_circumstance_counts_once(answer, inputs, years):
    assert answer("resin-life", "years", chlorine=2, **inputs) == pytest.approx(years)


@pytest.mark.parametrize(
    ("chlorine", "limit"),
    [(0, "iron, sand and wear"), (0.5, "iron, sand and wear"), (0.51, "chlorine"), (2, "chlorine")],
)
def test_what_ends_the_life(chlorine, limit):
    assert run("resin-life", {"chlorine": chlorine})["values"]["limit"]["words"] == limit


def test_without_chlorine_nothing_is_divided_by_zero():
    formulas = [step["numbers"] for step in run("resin-life", {"chlorine": 0})["workings"]]

    assert not any("÷ 0 mg/L" in formula for formula in formulas)
