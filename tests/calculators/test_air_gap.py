"""The air gap."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.air_gap import air_gap


@given(st.floats(0.125, 4))
def test_the_gap_is_twice_the_bore_and_at_least_an_inch(bore):
    assert air_gap(bore) >= 1
    assert air_gap(bore) >= 2 * bore
    assert air_gap(bore) in (1, 2 * bore)


@pytest.mark.parametrize(
    ("measured", "word", "told"),
    [("1.5 in", "wide enough", 0), ("1.49 in", "too small", 1), ("0 in", "too small", 1)],
)
def test_a_measured_gap_is_judged(measured, word, told):
    found = run("air-gap", {"bore": "3/4 in", "measured": measured})

    assert found["values"]["reading"]["words"] == word
    assert len(found["warnings"]) == told


def test_without_a_measured_gap_none_is_judged():
    found = run("air-gap", {"bore": "3/4 in"})

    assert set(found["values"]) == {"gap"}


def test_the_shown_gap_is_rounded_up():
    assert run("air-gap", {"bore": "0.51 in"})["values"]["gap"]["shown"] == "1.25\u00a0in"
